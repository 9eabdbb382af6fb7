import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { minimalCutSets } from '../../core/faultTree/cutSets.ts';
import { importanceOf } from '../../core/faultTree/importance.ts';
import { singlePoints } from '../../core/faultTree/scenarios.ts';
import type { CutSet, FaultTree } from '../../core/faultTree/types.ts';
import { unavailabilityOf } from '../../core/faultTree/unavailability.ts';
import { readTree, type WrittenTree } from '../support/faultTrees.ts';

/**
 * Fault trees with known answers. Every case in data/faultTrees.json names where its answer comes from: sample trees of a
 * public fault-tree analyser, NUREG-0492 (chapters VIII and XI), Vesely 1970, Barlow and Proschan 1975, or exhaustive
 * enumeration for the invented ones.
 */
interface Row {
  readonly birnbaum: number;
  readonly criticality: number | null;
  readonly raw: number | null;
  readonly rrw: number | null;
  readonly fvCutSets: number | null;
}
interface Case extends WrittenTree {
  readonly id: string;
  readonly expected: {
    readonly mcs: readonly CutSet[];
    readonly mcsByOrder: readonly number[];
    readonly probability: number;
    readonly rareEvent: number;
    readonly importance?: Readonly<Record<string, Row>>;
  };
}

const { cases } = JSON.parse(readFileSync(new URL('./data/faultTrees.json', import.meta.url), 'utf8')) as {
  cases: Case[];
};
const named = cases.map((each) => [each.id, each] as const);

function allSets(tree: FaultTree): readonly CutSet[] {
  const sets = minimalCutSets(tree);
  if (sets.lostFromStart) return [[]];
  return sets.countByOrder.flatMap((_, index) => sets.ofOrder(index + 1));
}

/** The files print twelve digits. */
const near = (actual: number | null, wanted: number | null): void => {
  if (wanted === null || actual === null) expect(actual).toBe(wanted);
  else expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(2e-11 * Math.max(1, Math.abs(wanted)));
};

describe('small published trees', () => {
  it('has all twenty', () => {
    expect(cases).toHaveLength(20);
  });

  it.each(named)('%s: every minimal cut set', (_, { expected, ...written }) => {
    const { tree } = readTree(written);
    expect(allSets(tree)).toEqual(expected.mcs);
    expect(minimalCutSets(tree).countByOrder).toEqual(expected.mcsByOrder);
  });

  it.each(named)('%s: the single points by a pass that knows no diagrams', (_, { expected, ...written }) => {
    const isLost = expected.mcs.some((set) => set.length === 0);
    const ids = isLost ? [] : expected.mcs.filter((set) => set.length === 1).map(([id]) => id);
    expect(singlePoints(readTree(written).tree)).toEqual({ lostFromStart: isLost, ids });
  });

  it.each(named)('%s: exact probability and importances', (_, { expected, ...written }) => {
    const { tree, probabilityOf } = readTree(written);
    const answer = unavailabilityOf(tree)(probabilityOf);
    expect(answer.isExact).toBe(true);
    expect(answer.highest).toBe(answer.lowest);
    expect(Math.abs(answer.lowest - expected.probability)).toBeLessThanOrEqual(
      1e-12 * Math.max(1e-6, expected.probability),
    );
    const sets = minimalCutSets(tree);
    if (!sets.lostFromStart) near(sets.rareEventSum((id) => probabilityOf.get(id) ?? 0).sum, expected.rareEvent);
    const rows = new Map((importanceOf(answer, sets, probabilityOf) ?? []).map((row) => [row.id, row]));
    for (const [id, wanted] of Object.entries(expected.importance ?? {})) {
      const row = rows.get(id);
      near(row?.birnbaum ?? 0, wanted.birnbaum);
      if (!row) continue;
      near(row.criticality, wanted.criticality);
      near(row.riskAchievementWorth, wanted.raw);
      near(row.riskReductionWorth, wanted.rrw);
      near(row.fussellVesely, wanted.fvCutSets);
    }
  });
});

interface Benchmark extends WrittenTree {
  readonly expected: {
    readonly mcsCount: number;
    readonly mcsByOrder: readonly number[];
    readonly probability: number;
    readonly sha256ToOrder4: string;
    readonly sha256All: string | null;
    readonly birnbaum: Readonly<Record<string, number>>;
  };
}

/**
 * Six trees of the Aralia collection (CC BY-SA 4.0, so they are not part of this project): the variable names the folder that
 * holds them. Their answers are those of two programs that agree.
 */
const FOLDER = process.env.FAULT_TREE_BENCHMARKS ?? '';
const BENCHMARKS = ['chinese', 'baobab2', 'das9201', 'isp9604', 'edfpa15q', 'edf9202'];

describe('published benchmark trees (FAULT_TREE_BENCHMARKS names their folder)', () => {
  it.skipIf(!existsSync(FOLDER)).each(BENCHMARKS)('%s', (name) => {
    const { expected, ...written } = JSON.parse(readFileSync(join(FOLDER, `${name}.json`), 'utf8')) as Benchmark;
    const { tree, probabilityOf } = readTree(written);
    const sets = minimalCutSets(tree);
    expect(sets.countByOrder).toEqual(expected.mcsByOrder);
    expect(sets.count).toBe(expected.mcsCount);
    const short = minimalCutSets(tree, 4);
    expect(hashOf([1, 2, 3, 4].flatMap((order) => short.ofOrder(order)))).toBe(expected.sha256ToOrder4);
    if (expected.sha256All !== null) expect(hashOf(allSets(tree))).toBe(expected.sha256All);
    const answer = unavailabilityOf(tree)(probabilityOf);
    expect(answer.isExact).toBe(true);
    expect(Math.abs(answer.lowest / expected.probability - 1)).toBeLessThan(1e-9);
    for (const [id, wanted] of Object.entries(expected.birnbaum)) {
      expect(Math.abs((answer.birnbaum?.get(id) ?? 0) - wanted)).toBeLessThanOrEqual(1e-9 * Math.abs(wanted) + 1e-15);
    }
  });
});

/** Ids of a set joined by a space, lines sorted by code unit and joined by a line feed. */
function hashOf(sets: readonly CutSet[]): string {
  const lines = sets.map((set) => set.join(' ')).sort();
  return createHash('sha256').update(lines.join('\n')).digest('hex');
}
