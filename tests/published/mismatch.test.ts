import { describe, expect, it } from 'vitest';
import { cascade, lossStage, sensitivityDbm } from '../../core/rf/cascade.ts';
import { afterLossW, dbmToWatts, lossOfPercentDb, lostPercent, wattsToDbm } from '../../core/rf/decibels.ts';
import {
  lossOfOpenEndVswrDb,
  mismatchLossDb,
  openEndVswr,
  reflectionOfVswr,
  returnLossDb,
  totalLineLossDb,
  vswrAtInput,
  vswrOfReflection,
} from '../../core/rf/mismatch.ts';

describe('worked examples of handbooks: line loss and power', () => {
  it.each([
    ['12.5 W through 30 m at 20.3 dB/100 m', 12.5, 6.09, 34.88, 3.08],
    ['12.5 W through 30 m at 4.9 dB/100 m', 12.5, 1.47, 39.5, 8.91],
  ])('%s (open AIS handbook, section 32.6.1)', (_, watts, lossDb, levelDbm, wattsOut) => {
    expect(wattsToDbm(watts) - lossDb).toBeCloseTo(levelDbm, 2);
    expect(afterLossW(watts, lossDb)).toBeCloseTo(wattsOut, 2);
    expect(dbmToWatts(levelDbm)).toBeCloseTo(wattsOut, 1);
  });

  it('100 W through 75 ft at 2.3 dB/100 ft leaves 67.2 W (a web page on coax loss; its arithmetic only)', () => {
    expect(afterLossW(100, 0.75 * 2.3)).toBeCloseTo(67.2, 1);
  });

  it('100 W in, 97 W out, 2 W back: 0.13 dB, return loss 17 dB, VSWR 1.33 (article on lightning protectors, 2006)', () => {
    expect(lossOfPercentDb(3)).toBeCloseTo(0.132, 3);
    const vswr = vswrOfReflection(Math.sqrt(0.02));
    expect(vswr).toBeCloseTo(1.33, 2);
    expect(returnLossDb(vswr)).toBeCloseTo(16.99, 2);
  });

  it('25 W behind 3 dB into a half-wave dipole is 12.5 W ERP and 20.6 W EIRP (rule of 47 CFR 80.765)', () => {
    const erpDbm = wattsToDbm(25) - 3;
    expect(dbmToWatts(erpDbm)).toBeCloseTo(12.5, 1);
    expect(dbmToWatts(erpDbm + 2.15)).toBeCloseTo(20.6, 1);
  });
});

describe('mismatch (open AIS handbook, sections 32.3.1 and 27.7)', () => {
  it.each([
    [1.2, 0.091, 20.8, 0.8, 0.036],
    [1.5, 0.2, 14, 4, 0.177],
    [1.8, 0.286, 10.9, 8.2, 0.37],
    [2, 0.333, 9.54, 11.1, 0.512],
    [3, 0.5, 6.02, 25, 1.249],
    [5, 0.667, 3.52, 44.4, 2.553],
  ])('VSWR %f', (vswr, reflection, returnDb, reflectedPercent, mismatchDb) => {
    expect(reflectionOfVswr(vswr)).toBeCloseTo(reflection, 3);
    expect(Math.abs(returnLossDb(vswr) - returnDb)).toBeLessThan(0.05);
    expect(100 * reflectionOfVswr(vswr) ** 2).toBeCloseTo(reflectedPercent, 1);
    expect(mismatchLossDb(vswr)).toBeCloseTo(mismatchDb, 3);
  });

  it('a line that loses 10 dB and is open at the far end reads 1.2 (section 27.7, pitfall)', () => {
    expect(openEndVswr(10)).toBeCloseTo(1.222, 3);
  });

  it('return loss at the radio is that of the antenna plus twice the line: 9.54 + 2 × 3 (section 32.8.2)', () => {
    expect(returnLossDb(vswrAtInput(3, 2))).toBeCloseTo(9.542 + 6, 2);
  });
});

describe('additional loss due to a mismatched load (handbook rule as coded in an open RF program)', () => {
  it.each([
    [1, 2, 1.196],
    [1, 3, 1.504],
    [2, 3, 2.794],
    [3, 2, 3.389],
    [3, 5, 5.039],
    [6, 3, 7.18],
  ])('%f dB line, VSWR %f at the load: %f dB', (matchedDb, vswr, totalDb) => {
    expect(totalLineLossDb(matchedDb, vswr)).toBeCloseTo(totalDb, 3);
  });
});

describe('noise of a chain', () => {
  it('filter, amplifier, filter, mixer: 3.83 dB (web tutorial on noise-figure cascades)', () => {
    const { noiseFigureDb } = cascade([
      lossStage(2),
      { gainDb: 18, noiseFigureDb: 1.5 },
      lossStage(1),
      { gainDb: -6, noiseFigureDb: 8 },
    ]);
    expect(noiseFigureDb).toBeCloseTo(3.83, 2);
    // The page rounds thermal noise to -174 dBm/Hz; 290 K gives -173.975.
    expect(Math.abs(sensitivityDbm(3.83, 10e6, -1) + 101.17)).toBeLessThan(0.03);
  });

  it('moving the amplifier first gives 2.03 dB; the same page prints 1.76, which Friis does not give', () => {
    const { noiseFigureDb } = cascade([
      { gainDb: 18, noiseFigureDb: 1.5 },
      lossStage(2),
      lossStage(1),
      { gainDb: -6, noiseFigureDb: 8 },
    ]);
    expect(noiseFigureDb).toBeCloseTo(2.03, 2);
  });

  it('active GNSS antenna 29 dB, 5 dB of cable, receiver 6.5 dB: 24 dB ahead, system 1.9 dB (receiver user guide)', () => {
    const ahead = cascade([{ gainDb: 29, noiseFigureDb: 1.8 }, lossStage(5)]);
    const system = cascade([{ gainDb: 29, noiseFigureDb: 1.8 }, lossStage(5), { gainDb: 0, noiseFigureDb: 6.5 }]);
    expect(ahead.gainDb).toBeCloseTo(24, 6);
    // The guide rounds up: Friis gives 1.85.
    expect(system.noiseFigureDb).toBeCloseTo(1.85, 2);
  });

  it('thermal noise in 25 kHz is -130 dBm (open AIS handbook, section 27.5)', () => {
    expect(sensitivityDbm(0, 25_000, 0)).toBeCloseTo(-130, 1);
  });
});

describe('feeder rules of the trade', () => {
  it('40 per cent of the power is 2.218 dB (racing rule: masthead antenna feeder loses 40 per cent at most)', () => {
    expect(lossOfPercentDb(40)).toBeCloseTo(2.218, 3);
    expect(lostPercent(2.218)).toBeCloseTo(40, 1);
    expect(lostPercent(3.0103)).toBeCloseTo(50, 3);
  });

  it('an open-end VSWR of 4.0 means 40 per cent lost, 3.0 means half (open-end test of a radio journal, 2005)', () => {
    expect(lostPercent(lossOfOpenEndVswrDb(4))).toBeCloseTo(40, 6);
    expect(lostPercent(lossOfOpenEndVswrDb(3))).toBeCloseTo(50, 6);
    expect(openEndVswr(lossOfPercentDb(40))).toBeCloseTo(4, 6);
  });
});
