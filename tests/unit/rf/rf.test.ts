import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cascade, lossStage, sensitivityDbm } from '../../../core/rf/cascade.ts';
import { attenuationDbPer100m, coaxLoss, coaxLossDb, temperatureFactor } from '../../../core/rf/coax.ts';
import {
  afterLossW,
  combineTolerances,
  dbmToWatts,
  lossOfPercentDb,
  lostPercent,
  powerToleranceDb,
  wattsToDbm,
} from '../../../core/rf/decibels.ts';
import { tableLossDb } from '../../../core/rf/lossTable.ts';
import {
  lossOfOpenEndVswrDb,
  mismatchLossDb,
  openEndVswr,
  reflectionOfVswr,
  returnLossDb,
  totalLineLossDb,
  vswrAtInput,
  vswrOfReflection,
} from '../../../core/rf/mismatch.ts';
import { COAX, PLUG } from '../links/fixture.ts';

const positive = (max: number) => fc.double({ min: 0.01, max, noNaN: true });

describe('decibels', () => {
  it('go there and back', () => {
    fc.assert(
      fc.property(positive(2000), (watts) => {
        expect(dbmToWatts(wattsToDbm(watts)) / watts).toBeCloseTo(1, 10);
      }),
      { seed: 1 },
    );
    fc.assert(
      fc.property(fc.double({ min: 0, max: 99, noNaN: true }), (percent) => {
        expect(lostPercent(lossOfPercentDb(percent))).toBeCloseTo(percent, 9);
      }),
      { seed: 2 },
    );
  });

  it('known values: 25 W is 43.98 dBm, 1 mW is 0 dBm, nothing lost is 0 per cent', () => {
    expect(wattsToDbm(25)).toBeCloseTo(43.979, 3);
    expect(wattsToDbm(0.001)).toBe(0);
    expect(lostPercent(0)).toBe(0);
    expect(Object.is(lossOfPercentDb(0), 0)).toBe(true);
    expect(afterLossW(25, 10)).toBeCloseTo(2.5, 12);
  });

  it('tolerances combine as independent ones do', () => {
    expect(combineTolerances([3, 4])).toBe(5);
    expect(combineTolerances([])).toBe(0);
    expect(powerToleranceDb(10, 10)).toBeCloseTo(3.01, 2);
  });

  it('refuse what has no level', () => {
    for (const watts of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => wattsToDbm(watts)).toThrow(RangeError);
    expect(() => lossOfPercentDb(100)).toThrow(RangeError);
    expect(() => lostPercent(Number.NaN)).toThrow(RangeError);
  });
});

describe('coax', () => {
  it('is k1 √f + k2 f per 100 m and grows with length and frequency', () => {
    expect(attenuationDbPer100m(COAX, 100)).toBe(10);
    expect(coaxLossDb(COAX, 25, 100)).toBe(2.5);
    expect(coaxLossDb(COAX, 0, 100)).toBe(0);
    expect(coaxLossDb(COAX, 10, 400)).toBeGreaterThan(coaxLossDb(COAX, 10, 100));
  });

  it('loses 0.2 % more per kelvin (maker’s data sheets, from memory)', () => {
    expect(coaxLossDb(COAX, 100, 100, 45)).toBeCloseTo(10.5, 9);
    expect(temperatureFactor(20)).toBe(1);
    expect(() => temperatureFactor(120)).toThrow(RangeError);
  });

  it('refuses to guess beyond its table, where a budget carries on with a wider tolerance', () => {
    expect(() => attenuationDbPer100m(COAX, 5)).toThrow(/10 to 1000 MHz/);
    expect(() => coaxLossDb(COAX, -1, 100)).toThrow(RangeError);
    expect(coaxLoss(COAX, 100, 100)).toEqual({ lossDb: 10, toleranceDb: 1, extrapolated: false });
    const beyond = coaxLoss(COAX, 100, 1600);
    expect(beyond.extrapolated).toBe(true);
    expect(beyond.toleranceDb).toBeCloseTo(0.15 * 40, 9);
  });
});

describe('loss table', () => {
  const table = PLUG.lossTable;
  it('runs straight between rows and stays level beyond them', () => {
    expect(tableLossDb(table, 150)).toBeCloseTo(0.02, 12);
    expect(tableLossDb(table, 100)).toBe(0.01);
    expect(tableLossDb(table, 200)).toBe(0.03);
    expect(tableLossDb(table, 1)).toBe(0.01);
    expect(tableLossDb(table, 5000)).toBe(0.03);
  });

  it('does not mind the order of rows; one row is a constant', () => {
    expect(tableLossDb({ ...table, rows: [...table.rows].reverse() }, 150)).toBeCloseTo(0.02, 12);
    expect(tableLossDb({ ...table, rows: [{ frequencyMhz: 150, lossDb: 0.5 }] }, 2000)).toBe(0.5);
  });

  it('refuses a frequency that is none', () => {
    expect(() => tableLossDb(table, 0)).toThrow(RangeError);
    expect(() => tableLossDb(table, Number.NaN)).toThrow(RangeError);
  });
});

describe('mismatch', () => {
  const vswrs = fc.double({ min: 1.001, max: 50, noNaN: true });
  const losses = fc.double({ min: 0.01, max: 30, noNaN: true });

  it('VSWR and reflection, open-end VSWR and loss go there and back', () => {
    fc.assert(
      fc.property(vswrs, losses, (vswr, lossDb) => {
        expect(vswrOfReflection(reflectionOfVswr(vswr)) / vswr).toBeCloseTo(1, 9);
        expect(lossOfOpenEndVswrDb(openEndVswr(lossDb)) / lossDb).toBeCloseTo(1, 6);
      }),
      { seed: 3 },
    );
  });

  it('loss hides the load: the radio never reads worse than the antenna, and less the more the line loses', () => {
    fc.assert(
      fc.property(vswrs, losses, losses, (vswr, a, b) => {
        const [small, large] = [Math.min(a, b), Math.max(a, b)];
        expect(vswrAtInput(small, vswr)).toBeLessThanOrEqual(vswr);
        expect(vswrAtInput(large, vswr)).toBeLessThanOrEqual(vswrAtInput(small, vswr));
      }),
      { seed: 4 },
    );
  });

  it('a line with a mismatch loses at least its matched loss, exactly that with a match', () => {
    fc.assert(
      fc.property(vswrs, losses, (vswr, lossDb) => {
        expect(totalLineLossDb(lossDb, vswr)).toBeGreaterThanOrEqual(lossDb - 1e-9);
        expect(totalLineLossDb(lossDb, 1)).toBeCloseTo(lossDb, 9);
      }),
      { seed: 5 },
    );
    expect(mismatchLossDb(1)).toBe(0);
  });

  it('5.30 dB hides even a missing antenna: 1.84 at the radio (worked by hand for the demo boats)', () => {
    expect(openEndVswr(5.3)).toBeCloseTo(1.84, 2);
    expect(openEndVswr(1.23)).toBeCloseTo(7.1, 1);
    expect(openEndVswr(1.16)).toBeCloseTo(7.5, 1);
  });

  it('refuses what has no number', () => {
    expect(() => reflectionOfVswr(0.9)).toThrow(RangeError);
    expect(() => vswrOfReflection(1)).toThrow(RangeError);
    expect(() => returnLossDb(1)).toThrow(RangeError);
    expect(() => openEndVswr(0)).toThrow(RangeError);
    expect(() => openEndVswr(1e-20)).toThrow(RangeError);
    expect(() => lossOfOpenEndVswrDb(1)).toThrow(RangeError);
    expect(() => totalLineLossDb(-1, 2)).toThrow(RangeError);
  });
});

describe('cascade', () => {
  it('losses alone add up in any order', () => {
    const { gainDb, noiseFigureDb } = cascade([lossStage(1), lossStage(2), lossStage(0.5)]);
    expect(gainDb).toBeCloseTo(-3.5, 9);
    expect(noiseFigureDb).toBeCloseTo(3.5, 9);
    expect(cascade([])).toEqual({ gainDb: 0, noiseFigureDb: 0 });
  });

  it('refuses a stage without numbers', () => {
    expect(() => cascade([{ gainDb: 3, noiseFigureDb: -1 }])).toThrow(RangeError);
    expect(() => sensitivityDbm(3, 0, 10)).toThrow(RangeError);
  });
});
