import { describe, expect, it } from 'vitest';
import { foEMhz } from '../../core/propagation/eLayer.ts';
import { hoursAfterSunset, solarDeclinationDeg, solarZenithDeg } from '../../core/propagation/sun.ts';
import { cell, type Row, readTable, worst } from './table.ts';

const rows = readTable('sunAndELayer.csv');
const place = (row: Row) => ({
  latitudeDeg: cell(row, 'latitudeDeg'),
  declinationDeg: solarDeclinationDeg(cell(row, 'month')),
});

/** Minutes the sun dial is ahead of the clock on the 15th, from an almanac, from memory, to a quarter of a minute. */
const DIAL_AHEAD: Readonly<Record<number, number>> = { 1: -9.3, 4: -0.1, 7: -6, 10: 14.2 };
const solarHour = (row: Row): number =>
  (cell(row, 'utHour') + cell(row, 'longitudeDeg') / 15 + (DIAL_AHEAD[cell(row, 'month')] ?? Number.NaN) / 60 + 24) %
  24;
const eLayer = (row: Row, hoursLate: number): number => {
  const hours = hoursAfterSunset(place(row), solarHour(row));
  return foEMhz({
    latitudeDeg: cell(row, 'latitudeDeg'),
    declinationDeg: cell(row, 'declinationDeg'),
    zenithDeg: cell(row, 'zenithDeg'),
    sunspotNumber: cell(row, 'sunspotNumber'),
    hoursAfterSunset: hours === null || cell(row, 'zenithDeg') < 90 ? null : (hours + hoursLate) % 24,
  });
};

describe('sun over 60 sea points, the published routines of P.533', () => {
  it('declination within 0.4 degrees (worst 0.38: their orbit starts on another day)', () => {
    expect(rows).toHaveLength(60);
    const { error, row } = worst(rows, (r) => place(r).declinationDeg - cell(r, 'declinationDeg'));
    expect(error, JSON.stringify(row)).toBeLessThan(0.4);
  });

  it('declination by an almanac (from memory): solstices and the 15ths near the equinoxes within 0.15 degrees', () => {
    for (const [month, degrees] of [
      [1, -21.2],
      [3, -2.2],
      [4, 9.7],
      [6, 23.3],
      [10, -8.4],
      [12, -23.25],
    ] as const)
      expect(Math.abs(solarDeclinationDeg(month) - degrees)).toBeLessThan(0.15);
  });

  it('zenith angle within 0.5 degrees (worst 0.42), longitude and time turned into local solar time', () => {
    const { error, row } = worst(rows, (r) => solarZenithDeg(place(r), solarHour(r)) - cell(r, 'zenithDeg'));
    expect(error, JSON.stringify(row)).toBeLessThan(0.5);
  });
});

describe('foE, Rec. ITU-R P.1239-3 section 4', () => {
  const isUp = (row: Row): boolean => cell(row, 'zenithDeg') < 90;

  it('by day, 42 rows within 1e-4 MHz, the last printed digit (worst 5e-5)', () => {
    const day = rows.filter(isUp);
    const { error, row } = worst(day, (r) => eLayer(r, 0) - cell(r, 'foEMhz'));
    expect(day.length).toBe(42);
    expect(error, JSON.stringify(row)).toBeLessThan(1e-4);
  });

  it('by night within 0.03 MHz (worst 0.019), counted as that program does: an hour later than the sun set', () => {
    const night = rows.filter((row) => !isUp(row));
    const { error, row } = worst(night, (r) => eLayer(r, 1) - cell(r, 'foEMhz'));
    expect(error, JSON.stringify(row)).toBeLessThan(0.03);
  });

  it('counted from sunset as the Recommendation says it is at most 0.31 MHz above that program, in the two hours of dusk', () => {
    const { error, row } = worst(rows, (r) => eLayer(r, 0) - cell(r, 'foEMhz'));
    expect(error, JSON.stringify(row)).toBeLessThan(0.31);
    for (const r of rows) expect(eLayer(r, 0) - cell(r, 'foEMhz')).toBeGreaterThan(-1e-3);
  });

  it('from our own sun and clock, by day: within 0.02 MHz (worst 0.019)', () => {
    const { error, row } = worst(rows.filter(isUp), (r) => {
      const zenithDeg = Math.min(solarZenithDeg(place(r), solarHour(r)), 89.9);
      const sun = { ...place(r), zenithDeg, sunspotNumber: cell(r, 'sunspotNumber'), hoursAfterSunset: null };
      return foEMhz(sun) - cell(r, 'foEMhz');
    });
    expect(error, JSON.stringify(row)).toBeLessThan(0.02);
  });
});
