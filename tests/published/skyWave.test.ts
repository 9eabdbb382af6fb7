import { describe, expect, it } from 'vitest';
import { freeSpaceLossDb } from '../../core/propagation/freeSpace.ts';
import {
  eLayerMufMhz,
  eLayerScreeningMhz,
  f2BasicMuf,
  f2MirrorHeightKm,
  hopGeometry,
  longestHopKm,
  secantAtHeight,
  workingFrequencyMhz,
} from '../../core/propagation/skyWave.ts';
import { cell, type Row, readTable, worst } from './table.ts';

describe('one-hop geometry, Rec. ITU-R P.533 sections 4, 5.1, 5.2', () => {
  const rows = readTable('hopGeometry.csv');
  const hop = (row: Row) => hopGeometry(cell(row, 'hopKm'), cell(row, 'virtualHeightKm'));

  it.each([
    ['takeoffDeg', (r: Row) => hop(r).takeoffDeg],
    ['incidenceDeg', (r: Row) => hop(r).incidenceDeg],
    ['secant', (r: Row) => hop(r).secant],
    ['secantAt110', (r: Row) => secantAtHeight(hop(r).takeoffDeg, 110)],
    ['slantPathKm', (r: Row) => hop(r).slantPathKm],
    ['delayMs', (r: Row) => hop(r).delayMs],
    ['slantLossDb', (r: Row) => freeSpaceLossDb(8.291, hop(r).slantPathKm)],
  ] as const)('%s: 57 vectors within 1e-3 (worst below 1e-4, the last printed digit)', (column, reckoned) => {
    expect(rows).toHaveLength(57);
    const { error, row } = worst(rows, (r) => reckoned(r) - cell(r, column));
    expect(error, `worst ${error} at ${JSON.stringify(row)}`).toBeLessThan(1e-4);
  });

  it('longest hops, at 0 and 3 degrees: E 2351 and 1776 km; 250 km 3513, 2907; 300 km 3836, 3225; 400 km 4402, 3783', () => {
    const expected = [
      [110, 2351, 1776],
      [250, 3513, 2907],
      [300, 3836, 3225],
      [400, 4402, 3783],
    ] as const;
    for (const [heightKm, flatKm, threeDegreesKm] of expected) {
      expect(Math.abs(longestHopKm(heightKm) - flatKm)).toBeLessThan(0.51);
      expect(Math.abs(longestHopKm(heightKm, 3) - threeDegreesKm)).toBeLessThan(0.51);
    }
  });

  it('the secant cannot pass 5.45 at 110 km and 3.37 at 300 km', () => {
    expect(secantAtHeight(0, 110)).toBeCloseTo(5.45, 2);
    expect(secantAtHeight(0, 300)).toBeCloseTo(3.37, 2);
  });

  it('a hop of any length and height comes back: take-off, incidence and half the arc make a right angle', () => {
    for (const heightKm of [80, 110, 250, 300, 450])
      for (let hopKm = 1; hopKm < longestHopKm(heightKm); hopKm *= 1.3) {
        const { takeoffDeg, incidenceDeg } = hopGeometry(hopKm, heightKm);
        const halfArcDeg = ((hopKm / 2 / 6371.009) * 180) / Math.PI;
        expect(takeoffDeg + incidenceDeg + halfArcDeg).toBeCloseTo(90, 8);
        expect(longestHopKm(heightKm, takeoffDeg)).toBeCloseTo(hopKm, 6);
      }
  });

  it('farther is flatter, higher is steeper', () => {
    expect(hopGeometry(1500, 300).takeoffDeg).toBeLessThan(hopGeometry(1000, 300).takeoffDeg);
    expect(hopGeometry(1000, 350).takeoffDeg).toBeGreaterThan(hopGeometry(1000, 300).takeoffDeg);
  });

  it.each([
    [0, 300],
    [-100, 300],
    [3837, 300],
    [2352, 110],
    [500, 50],
    [500, 1001],
    [Number.NaN, 300],
    [500, Number.NaN],
  ])('refuses a hop of %d km at %d km', (hopKm, heightKm) => {
    expect(() => hopGeometry(hopKm, heightKm)).toThrow(RangeError);
  });
});

describe('F2 basic MUF, Rec. ITU-R P.533 section 3.5.1 (P.1240)', () => {
  const rows = readTable('f2Muf.csv');
  const ionosphere = (row: Row) => ({
    foF2Mhz: cell(row, 'foF2Mhz'),
    foEMhz: cell(row, 'foEMhz'),
    m3000: cell(row, 'm3000'),
    gyrofrequencyMhz: cell(row, 'gyrofrequencyMhz'),
  });
  const muf = (row: Row) => f2BasicMuf(ionosphere(row), cell(row, 'hopKm'));

  it.each([
    ['correctedM3000', (r: Row) => muf(r).correctedM3000],
    ['longestHopKm', (r: Row) => muf(r).longestHopKm],
    ['distanceFactor', (r: Row) => muf(r).distanceFactor],
    ['distanceFactor3000', (r: Row) => muf(r).distanceFactor3000],
    ['mufMhz', (r: Row) => muf(r).mufMhz],
    ['workingFrequencyMhz', (r: Row) => workingFrequencyMhz(muf(r).mufMhz)],
    ['mirrorHeightKm', (r: Row) => f2MirrorHeightKm(cell(r, 'm3000'))],
    ['takeoffDeg', (r: Row) => hopGeometry(cell(r, 'hopKm'), f2MirrorHeightKm(cell(r, 'm3000'))).takeoffDeg],
  ] as const)('%s: 36 vectors within 1e-3 (worst below 1e-4, the last printed digit)', (column, reckoned) => {
    expect(rows).toHaveLength(36);
    const { error, row } = worst(rows, (r) => reckoned(r) - cell(r, column));
    expect(error, `worst ${error} at ${JSON.stringify(row)}`).toBeLessThan(1e-4);
  });

  it('E-layer MUF by the secant law: 24 vectors within 1e-3, and none where the hop is too long for it', () => {
    const short = rows.filter((r) => r.eLayerMufMhz !== '');
    expect(short).toHaveLength(24);
    const { error, row } = worst(
      short,
      (r) => (eLayerMufMhz(cell(r, 'foEMhz'), cell(r, 'hopKm')) ?? Number.NaN) - cell(r, 'eLayerMufMhz'),
    );
    expect(error, `worst ${error} MHz at ${JSON.stringify(row)}`).toBeLessThan(1e-3);
    for (const long of rows.filter((r) => r.eLayerMufMhz === ''))
      expect(eLayerMufMhz(cell(long, 'foEMhz'), cell(long, 'hopKm'))).toBeNull();
  });

  it('E layer in the way of F2: 1.05 foE sec i, 300 km mirror and 1000 km hop, foE 3 MHz gives 6.32 MHz', () => {
    expect(eLayerScreeningMhz(3, hopGeometry(1000, 300).takeoffDeg)).toBeCloseTo(1.05 * 3 * 2.0069, 3);
    expect(eLayerScreeningMhz(0, 28)).toBe(0);
    expect(eLayerMufMhz(0, 500)).toBeNull();
  });

  const DAY = { foF2Mhz: 8, foEMhz: 3.3, m3000: 3, gyrofrequencyMhz: 1.2 };
  const NIGHT = { foF2Mhz: 4, foEMhz: 0, m3000: 2.9, gyrofrequencyMhz: 1.2 };

  it('near-vertical hops carry a little more than foF2, 3000 km carries M times it', () => {
    for (const ionosphere of [DAY, NIGHT]) {
      const factor = (hopKm: number) => f2BasicMuf(ionosphere, hopKm).mufMhz / ionosphere.foF2Mhz;
      expect(factor(1)).toBeGreaterThan(1);
      expect(factor(300)).toBeLessThan(1.25);
      expect(Math.abs(factor(3000) - ionosphere.m3000)).toBeLessThan(0.1);
    }
  });

  it('a hop straight up carries foF2 and half the gyrofrequency, as the extraordinary wave does', () => {
    expect(f2BasicMuf(DAY, 1).mufMhz).toBeCloseTo(8.6, 2);
    expect(f2BasicMuf(NIGHT, 1).mufMhz).toBeCloseTo(4.6, 2);
  });

  it('from 100 km on a longer hop carries a higher frequency, and so does a denser layer', () => {
    // Below that the published formula dips by 0.03 MHz: the share of the gyrofrequency falls before the secant rises.
    let before = 0;
    for (let hopKm = 100; hopKm <= 4000; hopKm += 50) {
      const { mufMhz } = f2BasicMuf(DAY, hopKm);
      expect(mufMhz).toBeGreaterThan(before);
      expect(f2BasicMuf({ ...DAY, foF2Mhz: 9 }, hopKm).mufMhz).toBeGreaterThan(mufMhz);
      before = mufMhz;
    }
  });

  it('no E layer counts as the least ratio of 2, so a dying one makes no step at the ratio itself', () => {
    const none = f2BasicMuf({ ...DAY, foEMhz: 0 }, 1000);
    expect(none).toEqual(f2BasicMuf({ ...DAY, foEMhz: 4 }, 1000));
    // Common reading of the method; between no E layer and a faint one it changes the MUF by less than 2 per cent.
    expect(Math.abs(f2BasicMuf({ ...DAY, foEMhz: 0.5 }, 1000).mufMhz / none.mufMhz - 1)).toBeLessThan(0.02);
  });

  it.each([
    [{ ...DAY, foF2Mhz: 0 }, 1000],
    [{ ...DAY, foEMhz: -1 }, 1000],
    [{ ...DAY, m3000: 1.9 }, 1000],
    [{ ...DAY, m3000: 4.1 }, 1000],
    [{ ...DAY, gyrofrequencyMhz: Number.NaN }, 1000],
    [DAY, 0],
    [DAY, 4001],
  ])('refuses %j over %d km', (ionosphere, hopKm) => {
    expect(() => f2BasicMuf(ionosphere, hopKm)).toThrow(RangeError);
  });

  it('refuses what is no frequency, height or angle', () => {
    expect(() => workingFrequencyMhz(0)).toThrow(RangeError);
    expect(() => f2MirrorHeightKm(5)).toThrow(RangeError);
    expect(() => eLayerScreeningMhz(3, -1)).toThrow(RangeError);
    expect(() => secantAtHeight(20, 10)).toThrow(RangeError);
  });
});
