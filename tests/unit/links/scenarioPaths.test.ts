import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { budgetPaths } from '../../../core/links/budget.ts';
import { countedLossDb } from '../../../core/links/countedLoss.ts';
import type { PathBudget } from '../../../core/links/types.ts';
import { type Project, projectSchema } from '../../../core/model/project.ts';
import { assessFeeds } from '../../../core/power/feeds.ts';
import { solveRanges } from '../../../core/reach/ranges.ts';
import { openEndVswr } from '../../../core/rf/mismatch.ts';
import { KM_PER_NM } from '../../../core/units/constants.ts';

/**
 * Expected figures worked by hand for the demo boats: cable at the trade's tables scaled to the frequency, 0.013 dB a
 * plug pair, 0.5 dB an active splitter, 3.5 dB a television splitter. The engine uses its own catalogue and adds the
 * antenna's mismatch as an element, so it must agree within 10 % or 0.2 dB, whichever is more.
 */
const load = (name: string): Project =>
  projectSchema.parse(
    JSON.parse(readFileSync(new URL(`../../../assets/demo/${name}.backstay`, import.meta.url), 'utf8')),
  );

/** The project with one of its alternatives as the current layout. */
const layout = (project: Project, name: string): Project => {
  const found = project.alternatives.find((alternative) => alternative.name === name);
  if (!found) throw new Error(`no layout ${name}`);
  const { items, runs, feeds, dataLinks } = found;
  return { ...project, items, runs, feeds, dataLinks };
};

const idOf = (project: Project, tag: string): string => {
  const item = project.items.find((candidate) => candidate.tag === tag);
  if (!item) throw new Error(`no item ${tag}`);
  return item.id;
};

const path = (project: Project, radioTag: string, antennaTag: string): PathBudget => {
  const [radioId, antennaId] = [idOf(project, radioTag), idOf(project, antennaTag)];
  const found = budgetPaths(project).find((p) => p.radioId === radioId && p.antennaId === antennaId);
  if (!found) throw new Error(`no path ${radioTag} to ${antennaTag}`);
  return found;
};

/** Within 10 % or 0.2 dB. */
const expectLoss = (gotDb: number, handDb: number): void => {
  const allowed = Math.max(0.1 * handDb, 0.2);
  expect(Math.abs(gotDb - handDb), `engine ${gotDb.toFixed(2)} dB, by hand ${handDb} dB`).toBeLessThanOrEqual(allowed);
};

const horizonNm = (project: Project, tag: string, stationKind: string, antennaTag?: string): number => {
  const paths = budgetPaths(project);
  const pathId = antennaTag === undefined ? null : path(project, tag, antennaTag).id;
  const stationIds = project.stations.filter(({ kind }) => kind === stationKind).map(({ id }) => id);
  const found = solveRanges(project, paths).find(
    (r) => r.itemId === idOf(project, tag) && r.pathId === pathId && stationIds.includes(r.stationId),
  );
  if (!found) throw new Error(`no range ${tag} to ${stationKind}`);
  return found.horizonKm / KM_PER_NM;
};

const feedTo = (project: Project, tag: string) => {
  const id = idOf(project, tag);
  const found = assessFeeds(project).find(({ loadId }) => loadId === id);
  if (!found) throw new Error(`no feed to ${tag}`);
  return found;
};

/** 10 % of the hand figure. */
const near = (got: number, hand: number): void => {
  expect(Math.abs(got - hand), `engine ${got}, by hand ${hand}`).toBeLessThanOrEqual(0.1 * hand + 0.05);
};

describe('ketch Brannoch Tern', () => {
  const found = load('brannoch-tern');
  const proposed = layout(found, 'Proposed');

  it.each([
    ['VHF-1', 'A1', 5.3, 7.4, 70],
    ['AIS-1', 'A1', 5.37, 0.58, 71],
  ])('%s to %s loses %f dB: %f W arrive, %f per cent lost', (radio, antenna, handDb, watts, lost) => {
    const got = path(found, radio, antenna);
    expectLoss(got.lossDb, handDb);
    near(got.wattsAtAntenna ?? 0, watts);
    near(got.lostPercent, lost);
  });

  it('5.30 dB hide a missing antenna: the open end reads 1.84', () => {
    expect(path(found, 'VHF-1', 'A1').openEndVswr).toBeCloseTo(1.84, 1);
  });

  it('the splitter bypassed: 4.65 dB, 8.6 W', () => {
    const vhfId = idOf(found, 'VHF-1');
    const splitterId = idOf(found, 'SP-1');
    const runs = found.runs
      .filter((run) => run.from.itemId !== splitterId || run.to.itemId !== vhfId)
      .filter((run) => run.from.itemId !== vhfId || run.to.itemId !== splitterId)
      .map((run) => {
        const isTrunk = run.number === 'W02';
        const socket = { itemId: vhfId, portId: 'rf' };
        return isTrunk
          ? {
              ...run,
              from: run.from.itemId === splitterId ? socket : run.from,
              to: run.to.itemId === splitterId ? socket : run.to,
            }
          : run;
      });
    const got = path({ ...found, runs }, 'VHF-1', 'A1');
    expectLoss(got.lossDb, 4.65);
    near(got.wattsAtAntenna ?? 0, 8.6);
  });

  it('L-band: 12 m of thin cable lose nine tenths', () => {
    // By hand 9.96 dB, from a club table's RG-58 at 1.2 GHz scaled to 81 dB/100 m. The catalogue's stranded RG-58C/U, fitted
    // to 1 GHz, gives 99.9 up there; the trade name covers cables of 54 to 89 at 1575 MHz. So above the hand figure it may be.
    const got = path(found, 'SAT-1', 'A3');
    expect(got.lossDb).toBeGreaterThan(0.9 * 9.96);
    expect(got.lossDb).toBeLessThan(1.25 * 9.96);
    expect(got.lostPercent).toBeGreaterThan(87);
  });

  it.each([
    ['ship', 20.2],
    ['coast', 36.4],
    ['yacht', 18.2],
    ['raft', 11.5],
  ])('horizon from A1 to %s: %f nautical miles', (kind, nm) => {
    expect(Math.abs(horizonNm(found, 'VHF-1', kind, 'A1') - nm)).toBeLessThan(0.1);
  });

  it.each([
    ['ship', 14.4],
    ['coast', 30.6],
  ])('horizon of the hand-held in the cockpit to %s: %f nautical miles', (kind, nm) => {
    expect(Math.abs(horizonNm(found, 'VHF-2', kind) - nm)).toBeLessThan(0.1);
  });

  it('the supply of VHF-1 drops 0.31 V, 2.4 per cent, and passes', () => {
    const got = feedTo(found, 'VHF-1');
    near(got.totalDropV, 0.31);
    near(got.totalDropPercent, 2.4);
    expect(got.totalDropPercent).toBeLessThan(got.limitPercent);
    expect(got.protection.verdict).toBe('good');
  });

  /** Loss of the named runs and joints of a path, without the jumper and changeover switch the layout has besides. */
  const lossOf = (budget: PathBudget, ...numbers: readonly string[]): number =>
    budget.elements
      .filter(({ label }) => numbers.some((number) => label.endsWith(number) || label.startsWith(`${number},`)))
      .reduce((sum, { lossDb }) => sum + lossDb, 0);

  it('proposed: mast cable and tail of 400-class with one joint lose 1.16 dB, 19.1 W would arrive, open end 7.5', () => {
    const feederDb = lossOf(path(proposed, 'VHF-1', 'A1'), 'W01', 'J1', 'W02');
    expectLoss(feederDb, 1.16);
    near(25 * 10 ** (-feederDb / 10), 19.1);
    near(openEndVswr(feederDb), 7.5);
  });

  it('proposed: AIS on its own whip 1.65 dB, L-band on 400-class 1.69 dB', () => {
    const ais = budgetPaths(proposed).find(({ service }) => service === 'ais');
    const sat = budgetPaths(proposed).find(({ service }) => service === 'l-band');
    if (!ais || !sat) throw new Error('no path');
    expectLoss(lossOf(ais, 'W12'), 1.65);
    expectLoss(sat.lossDb, 1.69);
  });

  it('RG-213 instead loses 1.98 dB and passes the 40 per cent rule; with the splitter kept, 2.64 dB, it fails', () => {
    const thick = proposed.runs.map((run) =>
      ['W01', 'W02'].includes(run.number) ? { ...run, cableId: 'coax-rg-213-u' } : run,
    );
    const feederDb = lossOf(path({ ...proposed, runs: thick }, 'VHF-1', 'A1'), 'W01', 'J1', 'W02');
    expectLoss(feederDb, 1.98);
    expect(feederDb).toBeLessThan(found.settings.feederLossLimitDb);
    const splitterAndLeadDb = lossOf(path(found, 'VHF-1', 'A1'), 'SP-1', 'W03');
    expectLoss(feederDb + splitterAndLeadDb, 2.64);
    expect(feederDb + splitterAndLeadDb).toBeGreaterThan(found.settings.feederLossLimitDb);
  });
});

describe('trawler Pelluna', () => {
  const found = load('pelluna');

  it.each([
    ['VHF-A', 'A1', 6.29, 5.9],
    ['VHF-B', 'A2', 1.27, 18.7],
    ['AIS-1', 'A3', 0.95, 4.0],
  ])('%s to %s loses %f dB: %f W arrive', (radio, antenna, handDb, watts) => {
    const got = path(found, radio, antenna);
    expectLoss(got.lossDb, handDb);
    near(got.wattsAtAntenna ?? 0, watts);
  });

  it.each([
    ['coast', 27.0],
    ['ship', 15.9],
    ['yacht', 9.5],
  ])('horizon from A1 to %s: %f nautical miles', (kind, nm) => {
    expect(Math.abs(horizonNm(found, 'VHF-A', kind, 'A1') - nm)).toBeLessThan(0.1);
  });

  it('supplies: VHF-A drops 0.96 V, 7.6 %, VHF-B 0.69 V, 5.5 %; 4 and 6 mm² would do', () => {
    const [a, b] = [feedTo(found, 'VHF-A'), feedTo(found, 'VHF-B')];
    near(a.dropV, 0.96);
    near(a.totalDropPercent, 7.6);
    near(b.dropV, 0.69);
    near(b.totalDropPercent, 5.5);
    expect([a.smallestAreaMm2, b.smallestAreaMm2]).toEqual([4, 6]);
    expect([a.protection.verdict, b.protection.verdict]).toEqual(['good', 'missing']);
  });
});

describe('catamaran Vessarine', () => {
  const found = load('vessarine');

  it.each([
    ['VHF-1', 'A1', 1.23, 18.8],
    ['VHF-2', 'A2', 1.92, 16.1],
    ['AIS-1', 'A3', 2.05, 3.1],
  ])('%s to %s loses %f dB: %f W arrive', (radio, antenna, handDb, watts) => {
    const got = path(found, radio, antenna);
    expectLoss(got.lossDb, handDb);
    near(got.wattsAtAntenna ?? 0, watts);
  });

  it('the open end of W31 should read 7.1 and reads 2.2: 4.26 dB measured, 3 dB unexplained', () => {
    const got = path(found, 'VHF-1', 'A1');
    near(got.openEndVswr, 7.1);
    expect(got.measuredLossDb).toBeCloseTo(4.26, 2);
    near((got.measuredLossDb ?? 0) - got.lossDb, 3.0);
    expect(countedLossDb(got)).toBeGreaterThan(4.26);
  });

  it('L-band: 6 m of thin cable lose 5.1 dB', () => {
    expectLoss(path(found, 'SAT-2', 'A4').lossDb, 5.1);
  });

  it.each([
    ['VHF-1', 'A1', 'ship', 21.1],
    ['VHF-1', 'A1', 'coast', 37.2],
    ['VHF-1', 'A1', 'yacht', 19.9],
    ['VHF-2', 'A2', 'ship', 16.1],
    ['VHF-2', 'A2', 'coast', 32.2],
  ])('horizon of %s from %s to %s: %f nautical miles', (radio, antenna, kind, nm) => {
    expect(Math.abs(horizonNm(found, radio, kind, antenna) - nm)).toBeLessThan(0.1);
  });
});
