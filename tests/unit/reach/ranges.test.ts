import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { budgetPaths } from '../../../core/links/budget.ts';
import { countedLossDb } from '../../../core/links/countedLoss.ts';
import { DEFAULT_MARGIN, marginDb } from '../../../core/model/margin.ts';
import type { PartOf } from '../../../core/model/part.ts';
import type { Project } from '../../../core/model/project.ts';
import { seaPathLossDb } from '../../../core/propagation/sphericalEarth.ts';
import { levelCurve } from '../../../core/reach/levelCurve.ts';
import { solveRanges } from '../../../core/reach/ranges.ts';
import type { RangeResult } from '../../../core/reach/types.ts';
import { MODEL_TOLERANCE_DB } from '../../../core/reach/ways.ts';
import { KM_PER_NM } from '../../../core/units/constants.ts';
import { f, item, project, radio, run, WHIP } from '../links/fixture.ts';

const HANDHELD: PartOf<'standalone'> = {
  kind: 'standalone',
  id: 'hand',
  name: 'hand-held',
  description: '',
  ports: [],
  standaloneClass: 'handheld-vhf-dsc',
  figures: { txPowerW: f(5), frequencyMhz: f(156.8), rxSensitivityDbm: f(-107), gainDbi: f(-3) },
  traits: { dsc: true, internalGnss: true },
};
/** A whip with no mismatch whose feed is at its base, so that the figures below can be checked by hand. */
const PERFECT: PartOf<'antenna'> = {
  ...WHIP,
  id: 'perfect',
  figures: { ...WHIP.figures, vswr: f(1), feedHeightM: f(0), gainDbi: f(2.15) },
};
const LOSS_3_DB_M = 300 / Math.sqrt(156.8);

const masthead = (lengthM = LOSS_3_DB_M, over: Partial<Project> = {}) =>
  project(
    [item('vhf1', 'vhf'), item('whip1', 'perfect', 20)],
    [run('w1', 'whip1.feed', 'vhf1.ant', lengthM)],
    [PERFECT, HANDHELD],
    over,
  );
const ranges = (p: Project) => solveRanges(p, budgetPaths(p));
const to = (results: readonly RangeResult[], stationId: string): RangeResult => {
  const found = results.find((r) => r.stationId === stationId);
  if (!found) throw new Error(`no range to ${stationId}`);
  return found;
};

describe('25 W between two 20 m masts, 3 dB of feeder each', () => {
  const yacht = to(ranges(masthead()), 'yacht');

  it('typical is 30.6 nautical miles (P.526 over sea, −107 dBm)', () => {
    expect(Math.abs(yacht.typical.nominalKm / KM_PER_NM - 30.627)).toBeLessThan(0.01);
  });

  it('dependable is about 15 nautical miles by the default margin (common practice, no source)', () => {
    expect(marginDb(DEFAULT_MARGIN)).toBe(20);
    expect(Math.abs(yacht.dependable.nominalKm / KM_PER_NM - 15.1)).toBeLessThan(0.06);
  });

  it('the horizon is a landmark between the two', () => {
    expect(yacht.horizonKm / KM_PER_NM).toBeCloseTo(19.91, 2);
    expect(yacht.horizonKm).toBeLessThan(yacht.typical.nominalKm);
    expect(yacht.horizonKm).toBeGreaterThan(yacht.dependable.nominalKm);
  });

  it('3 dB of feeder costs 2 to 3 nautical miles of the typical range', () => {
    expect(yacht.feederCostTypicalKm / KM_PER_NM).toBeGreaterThan(2);
    expect(yacht.feederCostTypicalKm / KM_PER_NM).toBeLessThan(3);
    const free = to(ranges(masthead(0)), 'yacht');
    expect(yacht.typical.nominalKm + yacht.feederCostTypicalKm).toBeCloseTo(free.typical.nominalKm, 3);
    expect(yacht.dependable.nominalKm + yacht.feederCostDependableKm).toBeCloseTo(free.dependable.nominalKm, 3);
    expect(free.feederCostTypicalKm).toBe(0);
  });

  it('the band is what ±(4 dB of model and the own side’s tolerances) make of it', () => {
    const bandDb = Math.hypot(MODEL_TOLERANCE_DB, 2, 0.3);
    const path = { frequencyMhz: 156.8, h1M: 20, h2M: 20 };
    const lossDb = (distanceKm: number) => seaPathLossDb({ ...path, distanceKm });
    expect(lossDb(yacht.typical.highKm) - lossDb(yacht.typical.nominalKm)).toBeCloseTo(bandDb, 1);
    expect(lossDb(yacht.typical.nominalKm) - lossDb(yacht.typical.lowKm)).toBeCloseTo(bandDb, 1);
  });
});

describe('which way gives out first', () => {
  it('a coast station of 50 W is heard farther than it hears', () => {
    expect(to(ranges(masthead()), 'coast').limitedBy).toBe('transmit');
  });

  it('a raft’s 5 W hand-held is what limits a 25 W set', () => {
    expect(to(ranges(masthead()), 'raft').limitedBy).toBe('receive');
  });

  it('a set that cannot transmit is judged by what it hears', () => {
    const silent = project(
      [item('ais1', 'rx'), item('whip1', 'whip', 16)],
      [run('w1', 'whip1.feed', 'ais1.ant', 10)],
      [
        radio('rx', {
          radioClass: 'ais-receiver',
          figures: { ...radio('x').figures, txPowerW: f(0), frequencyMhz: f(162) },
        }),
      ],
    );
    expect(ranges(silent).map(({ stationId, limitedBy }) => [stationId, limitedBy])).toEqual([
      ['yacht', 'receive'],
      ['coast', 'receive'],
    ]);
  });

  it('a station without AIS has no AIS range; a hand-held has a voice range to all, at the height of the hand', () => {
    const both = project(
      [item('ais1', 'ais'), item('whip1', 'whip', 16), item('h1', 'hand', 2.2)],
      [run('w1', 'whip1.feed', 'ais1.ant', 10)],
      [HANDHELD],
    );
    const results = ranges(both);
    expect(results.filter(({ service }) => service === 'ais').map(({ stationId }) => stationId)).toEqual([
      'yacht',
      'coast',
    ]);
    const hand = results.filter(({ itemId }) => itemId === 'h1');
    expect(hand.map(({ stationId }) => stationId)).toEqual(['yacht', 'coast', 'raft']);
    expect(
      hand.every(({ pathId, ownHeightM, service }) => pathId === null && ownHeightM === 2.2 && service === 'voice'),
    ).toBe(true);
  });
});

describe('what a range rests on', () => {
  it('a measured feeder loss before the computed one', () => {
    const base = masthead();
    const measured: Project = {
      ...base,
      measurements: [
        {
          id: 'm',
          subject: { kind: 'item', id: 'vhf1' },
          kind: 'open-end-vswr',
          value: 2,
          frequencyMhz: null,
          date: null,
          instrument: '',
          note: '',
        },
      ],
    };
    const [path] = budgetPaths(measured);
    if (!path) throw new Error('no path');
    expect(path.lossDb).toBeCloseTo(3, 9);
    expect(countedLossDb(path)).toBeCloseTo(4.771, 3);
    expect(to(ranges(measured), 'yacht').typical.nominalKm).toBeLessThan(to(ranges(base), 'yacht').typical.nominalKm);
  });

  it('the horizon rule moves the landmark and nothing else', () => {
    const base = masthead();
    const trade = { ...base, settings: { ...base.settings, horizonRule: 'trade-2.25' as const } };
    const [a, b] = [to(ranges(base), 'yacht'), to(ranges(trade), 'yacht')];
    expect(b.horizonKm / KM_PER_NM).toBeCloseTo(20.12, 2);
    expect(b.typical).toEqual(a.typical);
  });

  it('an antenna drawn under water still gives a number', () => {
    const base = masthead();
    const sunk = { ...base, items: base.items.map((i) => ({ ...i, position: { ...i.position, zM: -1 } })) };
    expect(to(ranges(sunk), 'yacht').ownHeightM).toBe(0.1);
  });

  it('keeps the results of what did not change', () => {
    const base = masthead();
    const renamed = { ...base, title: 'Other' };
    expect(to(ranges(renamed), 'yacht')).toBe(to(ranges(base), 'yacht'));
    const stricter = { ...base, settings: { ...base.settings, margin: [] } };
    const bare = to(ranges(stricter), 'yacht');
    expect(bare.dependable.nominalKm).toBeCloseTo(bare.typical.nominalKm, 3);
  });
});

describe('properties', () => {
  const lengths = fc.double({ min: 0, max: 60, noNaN: true });

  it('more cable never reaches farther, and dependable never beyond typical', () => {
    fc.assert(
      fc.property(lengths, lengths, (a, b) => {
        const [short, long] = [
          to(ranges(masthead(Math.min(a, b))), 'yacht'),
          to(ranges(masthead(Math.max(a, b))), 'yacht'),
        ];
        expect(long.typical.nominalKm).toBeLessThanOrEqual(short.typical.nominalKm + 1e-3);
        expect(long.dependable.nominalKm).toBeLessThanOrEqual(long.typical.nominalKm);
        expect(long.typical.lowKm).toBeLessThanOrEqual(long.typical.nominalKm);
        expect(long.typical.highKm).toBeGreaterThanOrEqual(long.typical.nominalKm);
      }),
      { numRuns: 60, seed: 20 },
    );
  });
});

describe('level curve', () => {
  const base = masthead();
  const yacht = to(ranges(base), 'yacht');

  it('meets the sensitivity at the typical range and the margin line at the dependable one', () => {
    const levelAt = (km: number) =>
      levelCurve(base, budgetPaths(base), yacht, { fromKm: km, toKm: km + 1, points: 2 }).points[0]?.levelDbm;
    const curve = levelCurve(base, budgetPaths(base), yacht);
    expect(levelAt(yacht.typical.nominalKm)).toBeCloseTo(curve.sensitivityDbm, 2);
    expect(levelAt(yacht.dependable.nominalKm)).toBeCloseTo(curve.dependableDbm, 2);
    expect(curve.dependableDbm - curve.sensitivityDbm).toBe(20);
  });

  it('falls all the way, from the first distance to the last, in either spacing', () => {
    for (const spacing of ['linear', 'logarithmic'] as const) {
      const { points } = levelCurve(base, budgetPaths(base), yacht, { spacing, fromKm: 0.1, toKm: 80, points: 50 });
      expect(points).toHaveLength(50);
      expect(points[0]?.distanceKm).toBeCloseTo(0.1, 9);
      expect(points.at(-1)?.distanceKm).toBeCloseTo(80, 9);
      points.slice(1).forEach((point, i) => {
        expect(point.levelDbm).toBeLessThan(points[i]?.levelDbm ?? Number.NaN);
      });
    }
  });

  it('refuses distances that do not rise', () => {
    expect(() => levelCurve(base, budgetPaths(base), yacht, { fromKm: 5, toKm: 2 })).toThrow(RangeError);
    expect(() => levelCurve(base, budgetPaths(base), yacht, { points: 1 })).toThrow(RangeError);
  });
});
