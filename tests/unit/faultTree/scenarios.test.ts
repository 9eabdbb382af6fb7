import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { singlePoints } from '../../../core/faultTree/scenarios.ts';
import type { Cause, FaultTree, Gate } from '../../../core/faultTree/types.ts';

/** Truth of a node with a set of things down, by plain recursion: the independent check of the one-pass method. */
function isDown(tree: FaultTree, node: string, down: ReadonlySet<string>): boolean {
  if (tree.causes.some((cause) => down.has(cause.id) && cause.hits.includes(node))) return true;
  const gate = tree.gates.get(node);
  if (!gate) return down.has(node);
  const votes = gate.inputs.filter((input) => isDown(tree, input, down)).length;
  if (gate.op === 'or') return votes > 0;
  return gate.op === 'and' ? votes === gate.inputs.length : votes >= (gate.k ?? 0);
}

function bruteForce(tree: FaultTree): string[] {
  const ids = [...tree.events, ...tree.causes.map((cause) => cause.id)];
  return ids.filter((id) => isDown(tree, tree.top, new Set([id]))).sort();
}

const gateShape = fc.record({
  op: fc.constantFrom('and', 'or', 'atleast') as fc.Arbitrary<Gate['op']>,
  picks: fc.array(fc.nat(1000), { maxLength: 5 }),
  k: fc.integer({ min: 0, max: 4 }),
});

/** Random trees of up to 12 events and 8 gates with shared nodes; each gate may use events and the gates before it. */
const trees: fc.Arbitrary<FaultTree> = fc
  .record({
    eventCount: fc.integer({ min: 1, max: 12 }),
    shapes: fc.array(gateShape, { minLength: 1, maxLength: 8 }),
    causeHits: fc.array(fc.array(fc.nat(1000), { minLength: 1, maxLength: 4 }), { maxLength: 2 }),
  })
  .map(({ eventCount, shapes, causeHits }) => {
    const events = Array.from({ length: eventCount }, (_, index) => `e${index}`);
    const nodes = [...events];
    const gates = new Map<string, Gate>();
    shapes.forEach((shape, index) => {
      const inputs = shape.picks.map((pick) => nodes[pick % nodes.length] ?? 'e0');
      gates.set(`g${index}`, shape.op === 'atleast' ? { op: shape.op, inputs, k: shape.k } : { op: shape.op, inputs });
      nodes.push(`g${index}`);
    });
    const causes: Cause[] = causeHits.map((picks, index) => ({
      id: `c${index}`,
      hits: picks.map((pick) => nodes[pick % nodes.length] ?? 'e0'),
    }));
    return { events, gates, top: `g${shapes.length - 1}`, causes };
  });

describe('singlePoints', () => {
  it('equals trying every event and cause alone', () => {
    fc.assert(
      fc.property(trees, (tree) => {
        const found = singlePoints(tree);
        const lostFromStart = isDown(tree, tree.top, new Set());
        expect(found.lostFromStart).toBe(lostFromStart);
        expect(found.ids).toEqual(lostFromStart ? [] : bruteForce(tree));
      }),
      { numRuns: 500 },
    );
  });

  it('does not depend on the order of events, gates or inputs', () => {
    fc.assert(
      fc.property(trees, (tree) => {
        const turned: FaultTree = {
          events: [...tree.events].reverse(),
          gates: new Map(
            [...tree.gates].reverse().map(([id, gate]) => [id, { ...gate, inputs: [...gate.inputs].reverse() }]),
          ),
          top: tree.top,
          causes: [...tree.causes].reverse(),
        };
        expect(singlePoints(turned)).toEqual(singlePoints(tree));
      }),
    );
  });

  it('never gains a single point from one more alternative', () => {
    fc.assert(
      fc.property(trees, fc.array(fc.nat(11), { maxLength: 5 }), (tree, picks) => {
        const gates = new Map(tree.gates);
        gates.set('spare', { op: 'or', inputs: picks.map((pick) => `e${pick % tree.events.length}`) });
        gates.set('both', { op: 'and', inputs: [tree.top, 'spare'] });
        const before = singlePoints(tree);
        const after = singlePoints({ ...tree, gates, top: 'both' });
        if (!before.lostFromStart) expect(before.ids).toEqual(expect.arrayContaining([...after.ids]));
      }),
    );
  });

  it('never loses a single point to one more cause, and finds a cause that takes everything', () => {
    fc.assert(
      fc.property(trees, (tree) => {
        const before = singlePoints(tree);
        const after = singlePoints({ ...tree, causes: [...tree.causes, { id: 'all', hits: [tree.top] }] });
        if (before.lostFromStart) return;
        expect(after.ids).toEqual([...before.ids, 'all'].sort());
      }),
    );
  });

  it('keeps to the empty-gate conventions', () => {
    const gates = new Map<string, Gate>([
      ['nothingCanFail', { op: 'or', inputs: [] }],
      ['noWayAtAll', { op: 'and', inputs: [] }],
      ['noVote', { op: 'atleast', inputs: ['A'], k: 0 }],
      ['tooMany', { op: 'atleast', inputs: ['A'], k: 2 }],
    ]);
    const of = (top: string) => singlePoints({ events: ['A'], gates, top, causes: [] });
    expect(of('nothingCanFail')).toEqual({ lostFromStart: false, ids: [] });
    expect(of('noWayAtAll')).toEqual({ lostFromStart: true, ids: [] });
    expect(of('noVote')).toEqual({ lostFromStart: true, ids: [] });
    expect(of('tooMany')).toEqual({ lostFromStart: false, ids: [] });
  });

  it('refuses a tree that runs in a circle', () => {
    const gates = new Map<string, Gate>([
      ['P', { op: 'or', inputs: ['Q'] }],
      ['Q', { op: 'and', inputs: ['A', 'P'] }],
    ]);
    expect(() => singlePoints({ events: ['A'], gates, top: 'P', causes: [] })).toThrow(RangeError);
  });

  it('counts beyond one machine word of events', () => {
    const events = Array.from({ length: 100 }, (_, index) => `e${index}`);
    const gates = new Map<string, Gate>([['top', { op: 'or', inputs: ['e31', 'e32', 'e64', 'e99'] }]]);
    expect(singlePoints({ events, gates, top: 'top', causes: [] }).ids).toEqual(['e31', 'e32', 'e64', 'e99']);
  });
});
