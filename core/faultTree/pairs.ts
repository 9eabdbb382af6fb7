import type { CutSet } from './types.ts';

/** "Any of these together with any of those": many pairs that are one fact. */
export interface PairGroup {
  readonly either: readonly string[];
  readonly or: readonly string[];
}

/**
 * Pairs told shortly: events that make pairs with just the same others are one class, and two classes that pair are one group.
 * Ten parts of one chain against ten of another are a hundred pairs but one sentence. Own idea, no source.
 * @param pairs cut sets of two events each; others are left out
 * @returns groups by falling number of pairs, then by their first ids; every pair is in exactly one
 */
export function groupPairs(pairs: readonly CutSet[]): readonly PairGroup[] {
  const partners = new Map<string, Set<string>>();
  const join = (a: string, b: string): void => {
    const known = partners.get(a);
    if (known) known.add(b);
    else partners.set(a, new Set([b]));
  };
  for (const [a, b, more] of pairs) {
    if (a === undefined || b === undefined || more !== undefined) continue;
    join(a, b);
    join(b, a);
  }
  const classes = new Map<string, string[]>();
  for (const id of [...partners.keys()].sort()) {
    const key = [...(partners.get(id) ?? [])].sort().join('\u0000');
    classes.set(key, [...(classes.get(key) ?? []), id]);
  }
  const groups: PairGroup[] = [];
  for (const either of classes.values()) {
    for (const or of classes.values()) {
      const [first, other] = [either[0], or[0]];
      if (first === undefined || other === undefined || first >= other) continue;
      if (partners.get(first)?.has(other)) groups.push({ either, or });
    }
  }
  return groups.sort((a, b) => b.either.length * b.or.length - a.either.length * a.or.length);
}
