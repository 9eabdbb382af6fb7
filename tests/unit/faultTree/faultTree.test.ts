import { describe, expect, it } from 'vitest';
import { minimalCutSets } from '../../../core/faultTree/cutSets.ts';
import { importanceOf } from '../../../core/faultTree/importance.ts';
import { groupPairs } from '../../../core/faultTree/pairs.ts';
import { solverOf } from '../../../core/faultTree/solver.ts';
import type { FaultTree, Gate } from '../../../core/faultTree/types.ts';
import { unavailabilityOf } from '../../../core/faultTree/unavailability.ts';

const tree = (gates: Record<string, Gate>, events: string[], top = 'TOP'): FaultTree => ({
  events,
  gates: new Map(Object.entries(gates)),
  top,
  causes: [],
});
const or = (...inputs: string[]): Gate => ({ op: 'or', inputs });
const and = (...inputs: string[]): Gate => ({ op: 'and', inputs });
const atLeast = (k: number, ...inputs: string[]): Gate => ({ op: 'atleast', k, inputs });
const binomial = (n: number, k: number): number => (k === 0 ? 1 : (binomial(n - 1, k - 1) * n) / k);

describe('votes', () => {
  it('counts at least k of n without writing the combinations out', () => {
    const events = Array.from({ length: 59 }, (_, i) => `e${i}`);
    const vote = tree({ TOP: atLeast(15, ...events) }, events);
    const sets = minimalCutSets(vote);
    // C(59, 15), about 4e13: exact in a double.
    expect(sets.countByOrder[14]).toBe(binomial(59, 15));
    expect(sets.count).toBe(binomial(59, 15));
    const p = new Map(events.map((id) => [id, 0.1]));
    const exactly = (j: number): number => binomial(59, j) * 0.1 ** j * 0.9 ** (59 - j);
    const wanted = Array.from({ length: 45 }, (_, i) => exactly(15 + i)).reduce((a, b) => a + b, 0);
    expect(unavailabilityOf(vote)(p).lowest).toBeCloseTo(wanted, 12);
  });

  it('takes one as or, all as and, none as lost, more than there are as never', () => {
    const of = (k: number) => minimalCutSets(tree({ TOP: atLeast(k, 'a', 'b') }, ['a', 'b']));
    expect(of(1).countByOrder).toEqual([2]);
    expect(of(2).countByOrder).toEqual([0, 1]);
    expect(of(0).lostFromStart).toBe(true);
    expect(of(3).count).toBe(0);
  });

  it('counts a repeated input once per mention', () => {
    expect(minimalCutSets(tree({ TOP: atLeast(2, 'a', 'a', 'b') }, ['a', 'b'])).ofOrder(1)).toEqual([['a']]);
  });
});

describe('edges of importance', () => {
  it('has no ratio where there is nothing to divide by', () => {
    const both = tree({ TOP: and('a', 'b') }, ['a', 'b']);
    const rows = (p: Record<string, number>) => {
      const of = new Map(Object.entries(p));
      return importanceOf(unavailabilityOf(both)(of), minimalCutSets(both), of);
    };
    expect(rows({ a: 0.1, b: 0.2 })?.map((row) => row.riskReductionWorth)).toEqual([null, null]);
    expect(rows({ a: 0, b: 0.2 })?.map((row) => row.criticality)).toEqual([null, null]);
  });
});

/** At least three rows and at least three columns of one grid: whatever order suits the rows is bad for the columns. */
function gridOf(size: number): { grid: FaultTree; events: string[] } {
  const at = Array.from({ length: size }, (_, i) => i);
  const gates: Record<string, Gate> = {};
  for (const i of at) {
    gates[`r${i}`] = or(...at.map((j) => `e${i * size + j}`));
    gates[`c${i}`] = or(...at.map((j) => `e${j * size + i}`));
  }
  gates.R = atLeast(3, ...at.map((i) => `r${i}`));
  gates.C = atLeast(3, ...at.map((i) => `c${i}`));
  gates.TOP = and('R', 'C');
  const events = Array.from({ length: size * size }, (_, i) => `e${i}`);
  return { grid: tree(gates, events), events };
}

describe('a tree no diagram fits', () => {
  it('has its cut sets still: three things in three rows and three columns', () => {
    // Its function takes more nodes than are tried (functions.ts), so these come family by family.
    const sets = minimalCutSets(gridOf(9).grid, 3);
    // Three of nine rows, three of nine columns, matched in any of six ways.
    expect(sets.countByOrder).toEqual([0, 0, binomial(9, 3) ** 2 * 6]);
    const three = sets.ofOrder(3);
    expect(three).toHaveLength(binomial(9, 3) ** 2 * 6);
    for (const set of three) {
      const cells = set.map((id) => Number(id.slice(1)));
      expect(new Set(cells.map((cell) => Math.floor(cell / 9))).size).toBe(3);
      expect(new Set(cells.map((cell) => cell % 9)).size).toBe(3);
    }
  });

  it('gives bounds that hold, and says so', () => {
    const { grid, events } = gridOf(7);
    const of = new Map(events.map((id) => [id, 0.01]));
    const exact = unavailabilityOf(grid)(of);
    const bounded = unavailabilityOf(grid, 500)(of);
    expect(exact.isExact).toBe(true);
    expect([bounded.isExact, bounded.birnbaum]).toEqual([false, null]);
    // Three events in three rows and three columns do it: the likeliest explanation is one such three.
    expect(bounded.lowest).toBeCloseTo(0.01 ** 3, 12);
    expect(bounded.lowest).toBeLessThan(exact.lowest);
    expect(bounded.highest).toBeGreaterThan(exact.highest);
    expect(bounded.highest).toBeLessThan(1);
    // At small chances too, where a difference from 1 would be rounding.
    for (const p of [1e-4, 1e-6]) {
      const small = new Map(events.map((id) => [id, p]));
      expect(unavailabilityOf(grid, 500)(small).highest).toBeGreaterThanOrEqual(unavailabilityOf(grid)(small).highest);
    }
    const vote = {
      events: events.slice(0, 10),
      top: 'v',
      causes: [],
      gates: new Map([['v', { op: 'atleast' as const, k: 4, inputs: events.slice(0, 10) }]]),
    };
    for (const p of [1e-4, 1e-6]) {
      const small = new Map(vote.events.map((id) => [id, p]));
      // The bound is the exact value here, but for the last place.
      const exactVote = unavailabilityOf(vote)(small).lowest;
      expect(unavailabilityOf(vote, 1)(small).highest).toBeGreaterThan(exactVote * (1 - 1e-12));
      expect(unavailabilityOf(vote, 1)(small).highest).toBeLessThan(exactVote * (1 + 1e-9));
    }
  });
});

describe('sets listed', () => {
  it('are sorted by id within and among each other, however long they are', () => {
    // Thirty events of sixty do not fit into one exact number.
    const events = Array.from({ length: 60 }, (_, i) => `e${i}`);
    const [late, early] = [events.slice(30), events.slice(0, 30)];
    const either = tree({ TOP: or('L', 'E'), L: and(...late), E: and(...early) }, events);
    expect(minimalCutSets(either).ofOrder(30)).toEqual([early.toSorted(), late.toSorted()]);
  });

  it('are none of an order that has none', () => {
    const sets = minimalCutSets(tree({ TOP: and('a', 'b') }, ['a', 'b']));
    expect([0, 1, 3, 1.5].map((order) => sets.ofOrder(order))).toEqual([[], [], [], []]);
  });
});

describe('pairs told shortly', () => {
  it('groups two chains of parts into one sentence', () => {
    const first = ['RAD1', 'CABLE1', 'ANT1'];
    const second = ['RAD2', 'ANT2'];
    const two = tree({ TOP: and('A', 'B'), A: or('BUS', ...first), B: or('BUS', ...second) }, [
      'BUS',
      ...first,
      ...second,
    ]);
    const sets = solverOf(two).cutSets('TOP', 2);
    expect(sets.countByOrder).toEqual([1, 6]);
    expect(groupPairs(sets.ofOrder(2))).toEqual([{ either: [...first].sort(), or: [...second].sort() }]);
  });

  it('puts every pair in exactly one group', () => {
    const pairs = [
      ['a', 'b'],
      ['a', 'c'],
      ['b', 'c'],
      ['c', 'd'],
    ];
    const told = groupPairs(pairs).flatMap(({ either, or: others }) =>
      either.flatMap((a) => others.map((b) => [a, b].sort().join())),
    );
    expect(told.sort()).toEqual(pairs.map((pair) => pair.join()).sort());
  });
});
