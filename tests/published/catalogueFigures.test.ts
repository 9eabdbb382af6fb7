import { describe, expect, it } from 'vitest';
import { COAX } from '../../core/catalogue/coax.ts';
import { CONDUCTORS } from '../../core/catalogue/conductors.ts';
import { CONNECTORS } from '../../core/catalogue/connectors.ts';
import { coaxLoss } from '../../core/rf/coax.ts';
import { tableLossDb } from '../../core/rf/lossTable.ts';
import { strongSignalMargins } from '../../core/rf/overload.ts';
import { cell, type Row, readTable, worst } from './table.ts';

const coaxOf = (id: string | undefined) => {
  const part = COAX.find((each) => each.id === id);
  if (!part) throw new Error(`No coax ${id}.`);
  return part;
};

describe('connectors against a network-analyser table', () => {
  const lossDb = (row: Row): number => {
    const part = CONNECTORS.find(({ connectorType }) => connectorType === row.type);
    return part ? tableLossDb(part.lossTable, cell(row, 'frequencyMhz')) : Number.NaN;
  };
  const rows = readTable('connectorPoints.csv');

  it('UHF type to 1300 MHz and N to 2000 MHz: within 0.01 dB', () => {
    const held = rows.filter((row) => row.type === 'n' || cell(row, 'frequencyMhz') <= 1300);
    expect(held.length).toBeGreaterThan(18);
    const { error, row } = worst(held, (r) => lossDb(r) - cell(r, 'lossDb'));
    expect(error, `worst ${error} dB at ${JSON.stringify(row)}`).toBeLessThan(0.01);
  });

  it('UHF type above 1300 MHz: the peak is held where two measured parts happened to cancel', () => {
    for (const row of rows.filter((each) => each.type === 'uhf' && cell(each, 'frequencyMhz') > 1300)) {
      expect(lossDb(row)).toBe(0.43);
      expect(cell(row, 'lossDb')).toBeLessThan(0.3);
    }
  });
});

describe('bodies of coax', () => {
  it('19 types: impedance, velocity factor, diameter, bend and mass as in the tables they come from', () => {
    const rows = readTable('coaxProperties.csv');
    expect(rows).toHaveLength(19);
    const columns = [
      ['ohm', 'impedanceOhm'],
      ['velocityFactor', 'velocityFactor'],
      ['diameterMm', 'outsideDiameterMm'],
      ['bendMm', 'bendOnceMm'],
      ['gPerM', 'massGPerM'],
    ] as const;
    for (const row of rows)
      for (const [column, key] of columns)
        expect(coaxOf(row.partId).figures[key]?.value, `${row.partId} ${column}`).toBe(cell(row, column));
  });

  it('2 dB at 1620 MHz is reached at 5.9 m of the 240 class, 11.4 m of the 400 class and 2.0 m of RG-58C/U (developer guide, table 13: 2 dB of cable at most)', () => {
    for (const [id, lengthM] of [
      ['coax-240-class', 5.9],
      ['coax-400-class', 11.4],
      ['coax-rg-58c-u', 2],
    ] as const)
      expect(Math.abs(2 / coaxLoss(coaxOf(id), 1, 1620).lossDb - lengthM), id).toBeLessThan(0.06);
  });
});

describe('ampacities', () => {
  it.each([
    ['conductorsMetric.csv', 'ISO 10133 Table A.1, from memory', (row: Row) => cell(row, 'areaMm2'), null],
    ['conductorsAwg.csv', '33 CFR 183.425 Table 5', (row: Row) => row.size, 'awg'],
  ] as const)('%s: 15 sizes at 105 °C insulation, %s', (table, _, sizeOf, trait) => {
    const rows = readTable(table);
    expect(rows).toHaveLength(15);
    for (const row of rows) {
      const part = CONDUCTORS.find(({ figures, traits }) =>
        trait
          ? (traits.awg ?? '').replace(/ AWG$/, '') === awgName(String(sizeOf(row)))
          : traits.awg === null && figures.areaMm2.value === sizeOf(row),
      );
      expect(part?.figures.ampacityA.value, JSON.stringify(row)).toBe(cell(row, 'ampacity105A'));
    }
  });
});

/** `00` in the table is written 2/0 by the trade. */
const awgName = (size: string): string => (/^0+$/.test(size) ? `${size.length}/0` : size);

describe('coupling worked in a handbook (open AIS handbook, section 31.3.1)', () => {
  it('44 dBm through 26 dB is +18 dBm, 33 dB over the AIS limit 5 MHz away; through 48 dB it is -4 dBm', () => {
    expect(strongSignalMargins('ais', 44 - 26, 6)[0]?.marginDb).toBe(-33);
    expect(strongSignalMargins('ais', 44 - 48, 6)[0]?.marginDb).toBe(-11);
  });
});
