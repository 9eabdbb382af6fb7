import fc from 'fast-check';
import type { FaultTree, Gate } from '../../../core/faultTree/types.ts';

/** Random coherent trees with sharing, votes, repeated inputs and empty gates, small enough to try every subset. */
export const randomTree = (maxEvents: number): fc.Arbitrary<FaultTree> =>
  fc
    .record({
      events: fc.integer({ min: 1, max: maxEvents }),
      gates: fc.array(
        fc.record({
          op: fc.constantFrom<Gate['op']>('and', 'or', 'or', 'and', 'atleast'),
          k: fc.integer({ min: 0, max: 4 }),
          inputs: fc.array(fc.nat(60), { maxLength: 5 }),
        }),
        { minLength: 1, maxLength: 10 },
      ),
      hits: fc.array(fc.array(fc.nat(60), { minLength: 1, maxLength: 3 }), { maxLength: 2 }),
    })
    .map(({ events, gates, hits }) => {
      const names = Array.from({ length: events }, (_, i) => `e${i}`);
      const made = new Map<string, Gate>();
      gates.forEach(({ op, k, inputs }, index) => {
        // A gate takes only events and gates before it, so no circle can come up.
        const below = [...names, ...[...made.keys()]];
        const ids = inputs.map((pick) => below[pick % below.length] ?? 'e0');
        made.set(`g${index}`, op === 'atleast' ? { op, inputs: ids, k } : { op, inputs: ids });
      });
      const all = [...names, ...made.keys()];
      const causes = hits.map((picks, i) => ({
        id: `c${i}`,
        hits: picks.map((pick) => all[pick % all.length] ?? 'e0'),
      }));
      return { events: names, gates: made, top: `g${gates.length - 1}`, causes };
    });

/** Whether the top is down with just these down: the meaning of a tree, word for word. */
export function isDown(tree: FaultTree, down: ReadonlySet<string>): boolean {
  const known = new Map<string, boolean>();
  const value = (id: string): boolean => {
    const seen = known.get(id);
    if (seen !== undefined) return seen;
    const gate = tree.gates.get(id);
    const votes = (gate?.inputs ?? []).filter(value).length;
    let own = down.has(id);
    if (gate?.op === 'or') own = votes > 0;
    if (gate?.op === 'and') own = votes === gate.inputs.length;
    if (gate?.op === 'atleast') own = votes >= (gate.k ?? 0);
    const result = own || tree.causes.some((cause) => down.has(cause.id) && cause.hits.includes(id));
    known.set(id, result);
    return result;
  };
  return value(tree.top);
}

/** Every subset of the events and causes, as sets of ids. */
export function* subsetsOf(tree: FaultTree): Generator<ReadonlySet<string>> {
  const ids = [...tree.events, ...tree.causes.map(({ id }) => id)];
  for (let bits = 0; bits < 2 ** ids.length; bits += 1) yield new Set(ids.filter((_, i) => (bits >> i) & 1));
}
