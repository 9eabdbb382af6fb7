import { describe, expect, it } from 'vitest';
import {
  type BaseFedWire,
  conductorLossOhm,
  feedImpedance,
  insulatorPeakV,
  LONGEST_WAVELENGTHS,
  leastEfficiency,
  lengthInWavelengths,
  shortAntenna,
} from '../../core/rf/shortAntenna.ts';
import { cell, type Row, readTable, worst } from './table.ts';

const rows = readTable('hfWireImpedance.csv');
const wire = (row: Row): BaseFedWire => ({
  lengthM: cell(row, 'lengthM'),
  verticalShare: Math.sin((cell(row, 'elevationDeg') * Math.PI) / 180),
  radiusMm: cell(row, 'radiusMm'),
  frequencyMhz: cell(row, 'frequencyMhz'),
});
const waves = (row: Row): number => lengthInWavelengths(wire(row));
const radiation = (row: Row): number => cell(row, 'radiationOhm');
const percentOff = (row: Row): number => 100 * (feedImpedance(wire(row)).radiationOhm / radiation(row) - 1);
const short = rows.filter((row) => waves(row) <= LONGEST_WAVELENGTHS);
const at = (elevationDeg: number): Row[] => short.filter((row) => cell(row, 'elevationDeg') === elevationDeg);

describe('short HF antenna against a wire-grid solver (nec2c, perfect ground)', () => {
  // Worst 5.9, 5.1, 8.5 and 14.7 per cent.
  it.each([
    [90, 26, 6],
    [70, 4, 5.2],
    [60, 4, 8.6],
    [45, 4, 14.8],
  ])('radiation resistance at %i degrees of slope: %i rows within %f per cent', (slope, count, percent) => {
    expect(at(slope)).toHaveLength(count);
    const { error, row } = worst(at(slope), percentOff);
    expect(error, JSON.stringify(row)).toBeLessThan(percent);
  });

  it('the triangular current, 40 pi² (h/λ)², is as good below a tenth of a wave and 50 % low from a quarter wave up', () => {
    const triangular = (row: Row): number => (100 * 40 * (Math.PI * waves(row)) ** 2) / radiation(row) - 100;
    const below = at(90).filter((row) => waves(row) < 0.1);
    expect(worst(below, triangular).error).toBeLessThan(5.2);
    expect(worst(at(90), triangular).error).toBeGreaterThan(50);
    expect(worst(at(90), percentOff).error).toBeLessThan(6);
  });

  it('reactance: standing wires within 1 % or 8 ohm (worst 7.0 ohm), slopes to 60 degrees 8 ohm, 45 degrees 18 ohm', () => {
    for (const [slope, ohm] of [
      [90, 8],
      [70, 8],
      [60, 8],
      [45, 18],
    ] as const)
      for (const row of at(slope)) {
        const solved = cell(row, 'reactanceOhm');
        const error = Math.abs(feedImpedance(wire(row)).reactanceOhm - solved);
        expect(error, JSON.stringify(row)).toBeLessThan(Math.max(ohm, Math.abs(solved) / 100));
      }
  });

  it('efficiency behind 5, 10 and 20 ohm from the R of the forms: standing within 0.25 dB, slopes within 0.5 dB', () => {
    for (const row of short) {
      const standing = cell(row, 'elevationDeg') === 90;
      for (const groundOhm of [5, 10, 20]) {
        const { radiationOhm } = feedImpedance(wire(row));
        const shareOf = (ohm: number): number => 10 * Math.log10(ohm / (ohm + groundOhm));
        const error = Math.abs(shareOf(radiationOhm) - shareOf(radiation(row)));
        expect(error, JSON.stringify(row)).toBeLessThan(standing ? 0.25 : 0.5);
      }
    }
  });

  it('beyond 0.35 wavelengths the least efficiency is never above the solver, at most 0.5 dB low standing, 1.3 dB sloping', () => {
    const long = rows.filter((row) => waves(row) > LONGEST_WAVELENGTHS);
    expect(long).toHaveLength(16);
    for (const row of long)
      for (const groundOhm of [5, 10, 20]) {
        const solved = radiation(row) / (radiation(row) + groundOhm);
        const differenceDb = 10 * Math.log10(leastEfficiency(wire(row), groundOhm) / solved);
        expect(differenceDb, JSON.stringify(row)).toBeLessThan(0);
        expect(differenceDb, JSON.stringify(row)).toBeGreaterThan(cell(row, 'elevationDeg') === 90 ? -0.5 : -1.3);
      }
  });

  it('loss of the conductor: within 7 % to 0.2 wavelengths (worst 6.2), 20 % at 0.28 (worst 19.4)', () => {
    const table = readTable('hfWireLoss.csv');
    expect(table).toHaveLength(12);
    for (const row of table) {
      const standing = { lengthM: cell(row, 'lengthM'), verticalShare: 1, radiusMm: 3 };
      const given = { ...standing, frequencyMhz: cell(row, 'frequencyMhz') };
      const percent = lengthInWavelengths(given) < 0.2 ? 7 : 20;
      const ohm = conductorLossOhm(given, cell(row, 'conductivityMSPerM'));
      expect(Math.abs(100 * (ohm / cell(row, 'conductorOhm') - 1)), JSON.stringify(row)).toBeLessThan(percent);
    }
  });

  it('sea in place of a perfect ground moves the resistance by no more than 7 ohm: less than the spread of earths aboard', () => {
    const table = readTable('hfSeaGround.csv');
    expect(table).toHaveLength(7);
    expect(worst(table, (row) => cell(row, 'seaOhm') - cell(row, 'perfectOhm')).error).toBeLessThan(7);
  });
});

describe('short HF antenna, by hand', () => {
  // Textbook closed forms worked out apart from the engine; percent at 2, 5, 10 and 20 ohm. The textbook reactance is 9 to
  // 11 % larger than the solver's, which costs its coil up to two points.
  it.each([
    [7, 2.182, 1.0, [12, 9, 6, 4]],
    [7, 4.125, 3.9, [46, 34, 24, 15]],
    [7, 6.215, 9.6, [74, 60, 46, 31]],
    [7, 8.291, 19.4, [88, 77, 65, 48]],
    [10, 2.182, 2.2, [25, 18, 13, 8]],
    [10, 4.125, 8.5, [68, 55, 42, 28]],
    [10, 6.215, 23.2, [90, 81, 69, 53]],
    [10, 8.291, 55.9, [97, 92, 85, 74]],
  ] as const)(
    '%f m at %f MHz: %f ohm and its efficiencies within two points',
    (lengthM, frequencyMhz, ohm, percents) => {
      const standing = { lengthM, verticalShare: 1, radiusMm: 3, frequencyMhz };
      [2, 5, 10, 20].forEach((groundLossOhm, i) => {
        const antenna = shortAntenna(standing, { groundLossOhm });
        expect(antenna.radiationOhm).toBeCloseTo(ohm, 1);
        expect(Math.abs(100 * antenna.efficiency - (percents[i] ?? Number.NaN))).toBeLessThan(2);
      });
    },
  );

  it('a product test takes a 13.1 m vertical at 1.8 MHz as 3 ohm of radiation; the closed form gives 2.55', () => {
    const vertical = { lengthM: 13.1, verticalShare: 1, radiusMm: 3, frequencyMhz: 1.8 };
    expect(Math.abs(feedImpedance(vertical).radiationOhm - 3)).toBeLessThan(0.5);
  });

  it('150 W into a 7 m whip at 2.182 MHz over 10 ohm: thousands of volts at the insulator', () => {
    const antenna = shortAntenna(
      { lengthM: 7, verticalShare: 1, radiusMm: 3, frequencyMhz: 2.182 },
      { groundLossOhm: 10 },
    );
    // Current √(2·150/17.1) = 4.2 A peak through 1215 ohm.
    expect(insulatorPeakV(antenna, 10, 150)).toBeGreaterThan(5000);
    expect(insulatorPeakV(antenna, 10, 150)).toBeLessThan(5200);
  });
});
