import fc from 'fast-check';
import type { FaultTree, Gate } from '../../../core/faultTree/types.ts';

/** Random coherent trees with sharing, votes, repeated inputs and empty gates, small enough to try every subset. */
export const randomTree = (maxEvents: number, minEvents = 1): fc.Arbitrary<FaultTree> =>
  fc
    .record({
      events: fc.integer({ min: minEvents, max: maxEvents }),
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

const shape = fc.record({ op: fc.constantFrom<Gate['op']>('and', 'or', 'atleast'), k: fc.integer({ min: 1, max: 3 }) });

/** As `randomTree` with so many events, and a top that hangs on everything no gate has used yet, so that no event is idle. */
export const wholeTree = (events: number): fc.Arbitrary<FaultTree> =>
  fc.tuple(randomTree(events, events), fc.tuple(shape, shape, shape), shape).map(([tree, shapes, last]) => {
    const used = new Set([...tree.gates.values()].flatMap(({ inputs }) => inputs));
    const idle = tree.events.filter((id) => !used.has(id));
    const gates = new Map(tree.gates);
    shapes.forEach(({ op, k }, index) => {
      const inputs = idle.filter((_, n) => n % shapes.length === index);
      if (inputs.length > 0) gates.set(`rest${index}`, { op, k: Math.min(k, inputs.length), inputs });
    });
    gates.set('whole', { ...last, inputs: [...gates.keys()].filter((id) => !used.has(id)) });
    return { ...tree, gates, top: 'whole' };
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

/**
 * For every subset of events and causes, as a number whose bit i is the i-th of `ids`, whether the top is down. Gates of random
 * trees come inputs first, so one pass over them does.
 */
export function truthTable(tree: FaultTree): { ids: readonly string[]; isDown: Uint8Array } {
  const ids = [...tree.events, ...tree.causes.map(({ id }) => id)];
  const bitOf = new Map(ids.map((id, bit) => [id, bit]));
  const gates = [...tree.gates];
  const hitBy = (id: string): number[] =>
    tree.causes.filter(({ hits }) => hits.includes(id)).map((c) => bitOf.get(c.id) ?? 0);
  const hits = new Map([...tree.events, ...tree.gates.keys()].map((id) => [id, hitBy(id)]));
  const isDown = new Uint8Array(2 ** ids.length);
  const value = new Map<string, boolean>();
  for (let bits = 0; bits < isDown.length; bits += 1) {
    const has = (bit: number): boolean => ((bits >> bit) & 1) === 1;
    for (const id of tree.events) value.set(id, has(bitOf.get(id) ?? 0) || (hits.get(id) ?? []).some(has));
    for (const [id, { op, k, inputs }] of gates) {
      let votes = 0;
      for (const input of inputs) if (value.get(input)) votes += 1;
      const needed = op === 'and' ? inputs.length : op === 'or' ? 1 : (k ?? 0);
      value.set(id, votes >= needed || (hits.get(id) ?? []).some(has));
    }
    isDown[bits] = Number(value.get(tree.top));
  }
  return { ids, isDown };
}
