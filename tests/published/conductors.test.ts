import { describe, expect, it } from 'vitest';
import { COPPER_OHM_MM2_PER_M, copperOhmPerKm, voltageDropV } from '../../core/power/drop.ts';
import { M_PER_FT } from '../../core/units/constants.ts';
import { awgAreaMm2 } from '../../core/units/format.ts';
import { cell, readTable, worst } from './table.ts';

/** What the copper of the tables has, against the warm 0.0175 the sum takes: 17.241 ohm mm2/km (IEC 60028, from memory). */
const WARM = (COPPER_OHM_MM2_PER_M * 1000) / 17.241;

describe('AWG sizes (areas and resistances from the AWG definition, ampacities of 33 CFR 183.425 Table 5)', () => {
  const rows = readTable('conductorsAwg.csv');
  const sizeOf = (text: string): number => (/^0+$/.test(text) ? 1 - text.length : Number(text));

  it('15 areas within 0.5 %', () => {
    expect(rows).toHaveLength(15);
    const { error, row } = worst(rows, (r) => awgAreaMm2(sizeOf(r.size ?? '')) / cell(r, 'areaMm2') - 1);
    expect(error, `worst ${100 * error} % at ${JSON.stringify(row)}`).toBeLessThan(0.005);
  });

  it('15 resistances within 0.5 % once the warm-copper allowance of 1.5 % is taken off', () => {
    const { error, row } = worst(
      rows,
      (r) => copperOhmPerKm(awgAreaMm2(sizeOf(r.size ?? ''))) / WARM / cell(r, 'ohmPerKm') - 1,
    );
    expect(error, `worst ${100 * error} % at ${JSON.stringify(row)}`).toBeLessThan(0.005);
  });
});

describe('metric sizes (IEC 60228, maximum resistance at 20 °C)', () => {
  it('the sum lies below the class 5 tinned maximum, by 11 to 19 %, which makers must stay under, at every size', () => {
    const rows = readTable('conductorsMetric.csv');
    expect(rows).toHaveLength(15);
    for (const row of rows) {
      const share = copperOhmPerKm(cell(row, 'areaMm2')) / cell(row, 'class5TinnedOhmPerKm');
      expect(share, JSON.stringify(row)).toBeGreaterThan(0.81);
      expect(share, JSON.stringify(row)).toBeLessThan(0.93);
    }
  });
});

describe('voltage drop', () => {
  it('1.6 A over 22 m of wire in all, 1.5 mm²: 0.38 V by 0.0164·I·L/S (boat volt-drop note, ISO 10133 form)', () => {
    // The metric rule takes colder copper, 0.0164; ours reads 6.7 % more.
    const ruleV = voltageDropV(1.6, 11, (0.0164 * 1000) / 1.5);
    expect(ruleV).toBeCloseTo(0.385, 3);
    expect(voltageDropV(1.6, 11, copperOhmPerKm(1.5)) / ruleV).toBeCloseTo(0.0175 / 0.0164, 6);
  });

  it('10 A, 21 ft in all, 12 V, 3 %: 10 AWG holds and 14 AWG does not; at 10 % 16 AWG holds (chandlery catalogue)', () => {
    const dropShare = (awg: number, lengthFt: number): number =>
      voltageDropV(10, (lengthFt / 2) * M_PER_FT, copperOhmPerKm(awgAreaMm2(awg))) / 12;
    // The catalogue rounds the length up to its 25 ft column before it picks 10 AWG.
    expect(dropShare(10, 25)).toBeLessThan(0.03);
    expect(dropShare(12, 25)).toBeGreaterThan(0.03);
    expect(dropShare(14, 21)).toBeGreaterThan(0.03);
    expect(dropShare(16, 25)).toBeLessThan(0.1);
    expect(dropShare(18, 25)).toBeGreaterThan(0.1);
  });

  it('25 W VHF at 5.5 A (worked by hand for the demo boats, copper 0.0175, per cent of 12.6 V)', () => {
    const cases: readonly (readonly [number, number, number, number])[] = [
      [4.0, 2.5, 0.31, 2.4],
      [7.5, 1.5, 0.96, 7.6],
      [7.5, 4, 0.36, 2.9],
      [7.5, 6, 0.24, 1.9],
      [9.0, 2.5, 0.69, 5.5],
      [9.0, 6, 0.29, 2.3],
    ];
    for (const [lengthM, areaMm2, volts, percent] of cases) {
      const dropV = voltageDropV(5.5, lengthM, copperOhmPerKm(areaMm2));
      expect(dropV).toBeCloseTo(volts, 2);
      expect((100 * dropV) / 12.6).toBeCloseTo(percent, 1);
    }
  });
});
