import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minimalCutSets } from '../../../core/faultTree/cutSets.ts';
import { type Importance, importanceOf } from '../../../core/faultTree/importance.ts';
import { singlePoints } from '../../../core/faultTree/scenarios.ts';
import { solverOf } from '../../../core/faultTree/solver.ts';
import type { CutSet, FaultTree } from '../../../core/faultTree/types.ts';
import { unavailabilityOf } from '../../../core/faultTree/unavailability.ts';
import { isDown, randomTree, subsetsOf, truthTable, wholeTree } from './randomTrees.ts';

// Random trees against trying out every subset of what can fail (exhaustive enumeration, no source needed).

const RUNS = { numRuns: 250, seed: 20_261_125 };

const join = (set: Iterable<string>): string => [...set].sort().join(' ');

/** Minimal sets by their definition: down with it, up with any one of them mended. */
function setsByTrying(tree: FaultTree): string[] {
  const found: string[] = [];
  for (const down of subsetsOf(tree)) {
    if (!isDown(tree, down)) continue;
    const isMinimal = [...down].every((id) => !isDown(tree, new Set([...down].filter((other) => other !== id))));
    if (isMinimal) found.push(join(down));
  }
  return found.sort();
}

function setsOf(tree: FaultTree, maxOrder?: number): CutSet[] {
  const sets = minimalCutSets(tree, maxOrder);
  return sets.countByOrder.flatMap((_, index) => sets.ofOrder(index + 1));
}

const chance = (index: number): number => 0.05 + ((index * 37) % 90) / 100;
const chancesOf = (tree: FaultTree): Map<string, number> =>
  new Map([...tree.events, ...tree.causes.map(({ id }) => id)].map((id, index) => [id, chance(index)]));

function probabilityByTrying(tree: FaultTree, of: ReadonlyMap<string, number>): number {
  let sum = 0;
  for (const down of subsetsOf(tree)) {
    if (isDown(tree, down)) sum += [...of].reduce((p, [id, q]) => p * (down.has(id) ? q : 1 - q), 1);
  }
  return sum;
}

type Table = ReturnType<typeof truthTable>;

/** Minimal sets by their definition, bit by bit: down, and up with any one of them mended. */
function setsInTable({ ids, isDown }: Table): string[][] {
  const bits = ids.map((_, bit) => 1 << bit);
  const found: string[][] = [];
  isDown.forEach((down, subset) => {
    if (down && bits.every((bit) => (subset & bit) === 0 || !isDown[subset ^ bit]))
      found.push(ids.filter((_, bit) => (subset >> bit) & 1));
  });
  return found;
}

function probabilityInTable({ ids, isDown }: Table, of: ReadonlyMap<string, number>): number {
  const chances = ids.map((id) => of.get(id) ?? 0);
  let sum = 0;
  isDown.forEach((down, subset) => {
    if (down) sum += chances.reduce((p, q, bit) => p * ((subset >> bit) & 1 ? q : 1 - q), 1);
  });
  return sum;
}

/** Every importance by its definition, from the chance of the top with the event set. */
function importanceInTable(table: Table, sets: readonly string[][], of: ReadonlyMap<string, number>, id: string) {
  const [p, p1, p0] = [of, new Map([...of, [id, 1]]), new Map([...of, [id, 0]])].map((chances) =>
    probabilityInTable(table, chances),
  ) as [number, number, number];
  const own = of.get(id) ?? 0;
  const chance = (set: readonly string[]): number => set.reduce((product, each) => product * (of.get(each) ?? 0), 1);
  const sum = (list: readonly string[][]): number => list.reduce((total, set) => total + chance(set), 0);
  return {
    birnbaum: p1 - p0,
    criticality: (p - p0) / p,
    fussellVesely: sum(sets.filter((set) => set.includes(id))) / sum(sets),
    diagnosis: (own * p1) / p,
    riskAchievementWorth: p1 / p,
    riskReductionWorth: p / p0,
  };
}

/** Nulls stand for nothing to divide by. */
function expectImportance(row: Importance, wanted: ReturnType<typeof importanceInTable>): void {
  for (const key of Object.keys(wanted) as (keyof typeof wanted)[]) {
    const value = row[key];
    if (value === null) expect(Number.isFinite(wanted[key]), `${key} of ${row.id}`).toBe(false);
    else expect(Math.abs(value - wanted[key]) / Math.max(1, Math.abs(value)), `${key} of ${row.id}`).toBeLessThan(1e-9);
  }
}

describe('random trees against every subset tried', () => {
  it('finds every minimal cut set and no other', () => {
    fc.assert(
      fc.property(randomTree(9), (tree) => {
        const wanted = setsByTrying(tree);
        const sets = minimalCutSets(tree);
        if (sets.lostFromStart) expect(wanted).toEqual(['']);
        else expect(setsOf(tree).map(join).sort()).toEqual(wanted);
      }),
      RUNS,
    );
  });

  it('does so at sixteen events, causes among them, with the probability and every importance of each', () => {
    let largest = 0;
    fc.assert(
      fc.property(wholeTree(14), (tree) => {
        const table = truthTable(tree);
        const wanted = setsInTable(table);
        const sets = minimalCutSets(tree);
        if (sets.lostFromStart) return;
        expect(setsOf(tree).map(join).sort()).toEqual(wanted.map(join).sort());
        const of = chancesOf(tree);
        const answer = unavailabilityOf(tree)(of);
        expect(answer.lowest).toBeCloseTo(probabilityInTable(table, of), 12);
        const rows = importanceOf(answer, sets, of) ?? [];
        largest = Math.max(largest, rows.length);
        for (const row of rows) expectImportance(row, importanceInTable(table, wanted, of, row.id));
      }),
      { numRuns: 20, seed: 7 },
    );
    // Some tree hangs on all sixteen.
    expect(largest).toBe(16);
  });

  it('gives the first orders of the whole when cut off there, and agrees with the pass for single points', () => {
    fc.assert(
      fc.property(randomTree(12), fc.integer({ min: 1, max: 4 }), (tree, maxOrder) => {
        const all = minimalCutSets(tree);
        const short = minimalCutSets(tree, maxOrder);
        const counts = all.countByOrder.slice(0, maxOrder);
        while (counts.at(-1) === 0) counts.pop();
        expect(short.countByOrder.filter((_, i) => i < counts.length)).toEqual(counts);
        expect(short.count).toBe(counts.reduce((sum, n) => sum + n, 0));
        const lone = singlePoints(tree);
        expect(lone.lostFromStart).toBe(all.lostFromStart);
        expect(lone.ids).toEqual(all.ofOrder(1).map(([id]) => id));
      }),
      RUNS,
    );
  });

  it('gives the exact probability, and with each event set what importance says', () => {
    fc.assert(
      fc.property(randomTree(8), (tree) => {
        const of = chancesOf(tree);
        const answer = unavailabilityOf(tree)(of);
        expect(answer.isExact).toBe(true);
        expect(answer.lowest).toBeCloseTo(probabilityByTrying(tree, of), 12);
        for (const row of importanceOf(answer, minimalCutSets(tree), of) ?? []) {
          const p1 = probabilityByTrying(tree, new Map([...of, [row.id, 1]]));
          const p0 = probabilityByTrying(tree, new Map([...of, [row.id, 0]]));
          expect(row.birnbaum).toBeCloseTo(p1 - p0, 12);
          if (row.criticality !== null) expect(row.criticality).toBeCloseTo((answer.lowest - p0) / answer.lowest, 9);
        }
      }),
      { ...RUNS, numRuns: 120 },
    );
  });

  it('keeps the order of bounds: likeliest set, exact, sum over all sets', () => {
    fc.assert(
      fc.property(randomTree(10), (tree) => {
        const of = chancesOf(tree);
        const sets = minimalCutSets(tree);
        if (sets.lostFromStart) return;
        const { lowest } = unavailabilityOf(tree)(of);
        const chances = setsOf(tree).map((set) => set.reduce((p, id) => p * (of.get(id) ?? 0), 1));
        expect(lowest).toBeGreaterThanOrEqual(Math.max(0, ...chances) - 1e-12);
        const { sum } = sets.rareEventSum((id) => of.get(id) ?? 0);
        expect(sum).toBeCloseTo(
          chances.reduce((total, p) => total + p, 0),
          9,
        );
        expect(lowest).toBeLessThanOrEqual(sum + 1e-12);
      }),
      RUNS,
    );
  });

  it('answers the same whatever the order of gates and inputs, and for many tops of one solver', () => {
    fc.assert(
      fc.property(randomTree(10), (tree) => {
        const turned = new Map(
          [...tree.gates].reverse().map(([id, gate]) => [id, { ...gate, inputs: [...gate.inputs].reverse() }]),
        );
        expect(setsOf({ ...tree, gates: turned })).toEqual(setsOf(tree));
        const solver = solverOf(tree);
        for (const top of tree.gates.keys()) {
          const alone = minimalCutSets({ ...tree, top });
          const shared = solver.cutSets(top);
          expect(shared.countByOrder).toEqual(alone.countByOrder);
          expect(solver.unavailability(top)(chancesOf(tree)).lowest).toBeCloseTo(
            unavailabilityOf({ ...tree, top })(chancesOf(tree)).lowest,
            12,
          );
        }
      }),
      { ...RUNS, numRuns: 80 },
    );
  });
});
