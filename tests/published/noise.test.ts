import { describe, expect, it } from 'vitest';
import {
  desenseDb,
  effectiveSensitivityDbm,
  externalNoise,
  type FieldAntenna,
  galacticNoise,
  manMadeNoise,
  type NoiseEnvironment,
  noiseFieldDbuvPerM,
  noisePowerDbm,
  systemNoiseFigureDb,
} from '../../core/rf/noise.ts';
import { cell, type Row, readTable, worst } from './table.ts';

const BANDWIDTH_HZ = 2700;
const rows = readTable('externalNoise.csv');
const filled = (column: string): Row[] => rows.filter((row) => row[column] !== '');
const mhz = (row: Row): number => cell(row, 'frequencyMhz');

function check(column: string, count: number, tolerance: number, value: (row: Row) => number): void {
  const those = filled(column);
  expect(those).toHaveLength(count);
  const { error, row } = worst(those, (r) => value(r) - cell(r, column));
  expect(error, `worst ${error} at ${JSON.stringify(row)}`).toBeLessThan(tolerance);
}

describe('external noise, Rec. ITU-R P.372', () => {
  it.each<[NoiseEnvironment, string, number]>([
    ['city', 'cityDb', 17],
    ['residential', 'residentialDb', 17],
    ['rural', 'ruralDb', 17],
    ['quiet-rural', 'quietRuralDb', 13],
  ])('man-made, %s: within 1e-3 dB', (environment, column, count) => {
    check(column, count, 1e-3, (row) => manMadeNoise(environment, mhz(row)).medianDb);
  });

  it('galactic, and rural plus galactic: within 1e-3 dB', () => {
    check('galacticDb', 15, 1e-3, (row) => galacticNoise(mhz(row)).medianDb);
    check(
      'ruralPlusGalacticDb',
      15,
      1e-3,
      (row) => externalNoise({ environment: 'rural', frequencyMhz: mhz(row) }).medianDb,
    );
  });

  it.each<[NoiseEnvironment, FieldAntenna, string, number]>([
    ['rural', 'short-monopole', 'ruralMonopoleDbuv', 17],
    ['residential', 'short-monopole', 'residentialMonopoleDbuv', 17],
    ['quiet-rural', 'short-monopole', 'quietRuralMonopoleDbuv', 13],
    ['residential', 'half-wave-dipole', 'residentialDipoleDbuv', 17],
  ])('noise field, %s on a %s: within 1e-3 dB', (environment, antenna, column, count) => {
    const field = (row: Row): number =>
      noiseFieldDbuvPerM(manMadeNoise(environment, mhz(row)).medianDb, mhz(row), BANDWIDTH_HZ, antenna);
    check(column, count, 1e-3, field);
  });

  it('noise power: within 0.03 dB (the table rounds kT0 to -174 dBm/Hz; it is -173.98)', () => {
    check('ruralPowerDbm', 17, 0.03, (row) => noisePowerDbm(manMadeNoise('rural', mhz(row)).medianDb, BANDWIDTH_HZ));
  });

  it.each<[FieldAntenna, number]>([
    ['isotropic', 1],
    ['half-wave-dipole', 1.641],
    // Effective height h against radiation resistance 40 pi^2 (h / wavelength)^2, on the total field at the ground.
    ['short-monopole', 0.75],
  ])('field constant of a %s from first principles, within 0.12 dB', (antenna, gain) => {
    const wavelengthM = 299.792458;
    const powerW = 1.380649e-23 * 290;
    const fieldUvPerM = 1e6 * Math.sqrt((powerW * 480 * Math.PI ** 2) / (gain * wavelengthM ** 2));
    expect(Math.abs(noiseFieldDbuvPerM(0, 1, 1, antenna) - 20 * Math.log10(fieldUvPerM))).toBeLessThan(0.12);
  });
});

describe('what noise does to a receiver', () => {
  /** A receiver of -119 dBm class, noise figure 6.2 dB, behind 3 dB of cable at 156.8 MHz: worked by hand. */
  const vhf = { lineLossDb: 3, receiverNoiseFigureDb: 6.2 };
  it.each([
    ['on a dummy load at 290 K', 0, 9.2, -119],
    ['rural', 6.389, 10.7, -117.5],
    ['residential', 11.689, 13.4, -114.8],
    ['city', 15.989, 16.7, -111.5],
  ])('%s: external noise %d dB makes the system %d dB and the receiver worth %d dBm', (_name, externalDb, f, dbm) => {
    expect(Math.abs(systemNoiseFigureDb({ ...vhf, externalDb }) - f)).toBeLessThan(0.06);
    expect(Math.abs(effectiveSensitivityDbm(-119, { ...vhf, externalDb }) - dbm)).toBeLessThan(0.06);
  });

  it('MF example: residential noise at 2.182 MHz in 2.7 kHz is a field of 8.7 dBuV/m', () => {
    const { medianDb } = manMadeNoise('residential', 2.182);
    expect(noiseFieldDbuvPerM(medianDb, 2.182, BANDWIDTH_HZ, 'short-monopole')).toBeCloseTo(8.7, 1);
  });

  it('thermal noise in 25 kHz is -130.0 dBm (open AIS handbook, section 27.5)', () => {
    expect(noisePowerDbm(0, 25_000)).toBeCloseTo(-130, 1);
  });

  it('the equation of P.372 written out agrees to rounding', () => {
    for (const [externalDb, lineLossDb, receiverNoiseFigureDb] of [
      [0, 0, 0],
      [58, 0.5, 12],
      [6.4, 6, 3],
      [-5, 2, 8],
    ] as const) {
      const [fa, lc, fr] = [externalDb, lineLossDb, receiverNoiseFigureDb].map((value) => 10 ** (value / 10));
      const factor = (fa ?? 0) + ((lc ?? 0) - 1) + (lc ?? 0) * ((fr ?? 0) - 1);
      const got = systemNoiseFigureDb({ externalDb, lineLossDb, receiverNoiseFigureDb });
      expect(got).toBeCloseTo(10 * Math.log10(factor), 9);
    }
  });
});

describe('relations that hold whatever the figures', () => {
  const chain = { externalDb: 12, lineLossDb: 2, receiverNoiseFigureDb: 6 };
  it('more loss, a noisier receiver or more noise outside never help', () => {
    for (let more = 0.5; more < 20; more += 0.5) {
      expect(systemNoiseFigureDb({ ...chain, lineLossDb: 2 + more })).toBeGreaterThan(systemNoiseFigureDb(chain));
      expect(systemNoiseFigureDb({ ...chain, receiverNoiseFigureDb: 6 + more })).toBeGreaterThan(
        systemNoiseFigureDb(chain),
      );
      expect(desenseDb({ ...chain, externalDb: 12 + more })).toBeGreaterThan(desenseDb(chain));
    }
  });

  it('no cable changes nothing, and under strong noise a decibel of cable costs next to nothing', () => {
    expect(systemNoiseFigureDb({ externalDb: 0, lineLossDb: 0, receiverNoiseFigureDb: 6 })).toBeCloseTo(6, 9);
    const mf = { externalDb: 58, lineLossDb: 0, receiverNoiseFigureDb: 12 };
    expect(systemNoiseFigureDb({ ...mf, lineLossDb: 3 }) - systemNoiseFigureDb(mf)).toBeLessThan(0.01);
  });

  it('the galaxy is heard above foF2 only', () => {
    const quiet = { environment: 'quiet-rural', frequencyMhz: 8.291 } as const;
    const shielded = externalNoise({ ...quiet, foF2Mhz: 9 });
    const manMade = manMadeNoise('quiet-rural', 8.291);
    expect(shielded.medianDb).toBeCloseTo(manMade.medianDb, 9);
    expect(shielded.upperDecileDb).toBeCloseTo(manMade.upperDecileDb, 9);
    expect(shielded.lowerDecileDb).toBeCloseTo(manMade.lowerDecileDb, 9);
    const open = externalNoise({ ...quiet, foF2Mhz: 8 });
    expect(open.medianDb).toBeGreaterThan(shielded.medianDb + 3);
    // The steady galaxy narrows the spread to between its own 2 dB and that of the man-made part.
    expect(open.upperDecileDb).toBeGreaterThan(2);
    expect(open.upperDecileDb).toBeLessThan(manMade.upperDecileDb - 1);
  });

  it('lightning counts in full to 10 MHz, is gone at 20, and has no step between', () => {
    const above = (frequencyMhz: number): number =>
      externalNoise({ environment: 'rural', frequencyMhz, atmospheric: 'severe' }).medianDb -
      externalNoise({ environment: 'rural', frequencyMhz }).medianDb;
    expect(above(2.182)).toBeCloseTo(30, 9);
    expect(above(10)).toBeCloseTo(30, 9);
    expect(above(20)).toBeCloseTo(0, 9);
    expect(above(156.8)).toBe(0);
    for (let f = 9; f < 21; f += 0.05) {
      expect(above(f + 0.05)).toBeLessThanOrEqual(above(f) + 1e-9);
      expect(above(f) - above(f + 0.05)).toBeLessThan(0.5);
    }
  });

  it('the sum has no step and falls with frequency where the galaxy fades out, 100 to 125 MHz', () => {
    const sum = (frequencyMhz: number): number => externalNoise({ environment: 'rural', frequencyMhz }).medianDb;
    for (let f = 95; f < 130; f += 0.1) {
      expect(sum(f)).toBeGreaterThan(sum(f + 0.1));
      expect(sum(f) - sum(f + 0.1)).toBeLessThan(0.05);
    }
    expect(sum(125)).toBeCloseTo(manMadeNoise('rural', 125).medianDb, 9);
  });

  it('quieter places are quieter, and deciles lie outside the median', () => {
    const order = (['city', 'residential', 'rural', 'quiet-rural'] as const).map((place) => manMadeNoise(place, 12));
    expect(order.map(({ medianDb }) => medianDb)).toEqual(order.map(({ medianDb }) => medianDb).sort((a, b) => b - a));
    expect(order.map(({ upperDecileDb, lowerDecileDb }) => [upperDecileDb, lowerDecileDb])).toEqual([
      [11, 6.7],
      [10.6, 5.3],
      [9.2, 4.6],
      [9.2, 4.6],
    ]);
  });

  it('refuses what lies outside', () => {
    expect(() => manMadeNoise('rural', 251)).toThrow(RangeError);
    expect(() => manMadeNoise('rural', 0.29)).toThrow(RangeError);
    expect(() => manMadeNoise('quiet-rural', 30.1)).toThrow(RangeError);
    expect(() => galacticNoise(101)).toThrow(RangeError);
    expect(() => externalNoise({ environment: 'city', frequencyMhz: Number.NaN })).toThrow(RangeError);
    expect(() => noisePowerDbm(0, 0)).toThrow(RangeError);
    expect(() => noisePowerDbm(Number.NaN, 1)).toThrow(RangeError);
    expect(() => noiseFieldDbuvPerM(0, 0, 1, 'isotropic')).toThrow(RangeError);
    expect(() => noiseFieldDbuvPerM(0, 1, -1, 'isotropic')).toThrow(RangeError);
    expect(() => systemNoiseFigureDb({ ...chain, lineLossDb: -1 })).toThrow(RangeError);
    expect(() => systemNoiseFigureDb({ ...chain, externalDb: Number.NaN })).toThrow(RangeError);
    expect(() => effectiveSensitivityDbm(Number.NaN, chain)).toThrow(RangeError);
  });
});
