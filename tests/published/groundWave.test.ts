import { describe, expect, it } from 'vitest';
import {
  add,
  type Complex,
  complex,
  divide,
  multiply,
  polar,
  scale,
  subtract,
} from '../../core/propagation/complex.ts';
import { faddeeva } from '../../core/propagation/faddeeva.ts';
import { freeSpaceLossDb } from '../../core/propagation/freeSpace.ts';
import {
  type Ground,
  groundWaveAttenuation,
  groundWaveCurve,
  groundWaveFieldDbuvPerM,
  groundWaveLossDb,
  SEA_GROUND,
} from '../../core/propagation/groundWave.ts';
import { residueRoot } from '../../core/propagation/residueRoots.ts';
import { cell, type Row, readTable, worst } from './table.ts';

const pathOf = (row: Row) => ({ frequencyMhz: cell(row, 'frequencyMhz'), distanceKm: cell(row, 'distanceKm') });
const fieldOf = (row: Row): number => groundWaveFieldDbuvPerM(pathOf(row), 1000);

/** From the sea to the poorest ground the spans allow. Permittivities and conductivities: from memory, as P.368 draws. */
const GROUNDS: Readonly<Record<string, Ground>> = {
  sea: SEA_GROUND,
  'fresh water': { permittivity: 80, conductivitySPerM: 0.003 },
  'wet land': { permittivity: 30, conductivitySPerM: 0.01 },
  'dry land': { permittivity: 7, conductivitySPerM: 0.0003 },
  poorest: { permittivity: 1, conductivitySPerM: 1e-5 },
};
const FREQUENCIES_MHZ = [0.01, 0.03, 0.1, 0.3, 0.518, 1, 2.182, 4.125, 8.291, 12.29, 16.42, 22, 30];

describe('ground wave over sea against the published code of Rec. ITU-R P.368-10 (LFMF)', () => {
  const rows = readTable('groundWaveSea.csv');

  it('field of 1 kW radiated: 70 vectors within 0.02 dB (worst 0.0043, see the next check)', () => {
    expect(rows).toHaveLength(70);
    const { error, row } = worst(rows, (r) => fieldOf(r) - cell(r, 'fieldDbuvPerM'));
    expect(error, `worst ${error} dB at ${JSON.stringify(row)}`).toBeLessThan(0.02);
  });

  it('nearly all of that is the rounding of its radiation constant: the median difference is 0.0042 dB', () => {
    // It reckons with 4.77 dBi and 376.73 ohm where the convention of 300 mV/m means 4.7712 dBi and 120 pi ohm; both
    // together are 0.0042 dB. It ends its residue series at a term of 5e-4 of the sum, which is another 0.004 dB.
    const differences = rows.map((r) => fieldOf(r) - cell(r, 'fieldDbuvPerM')).sort((a, b) => a - b);
    expect(differences[35]).toBeCloseTo(0.0042, 3);
  });

  it('basic loss by the P.368 convention: 70 vectors within 0.02 dB (worst 0.0061)', () => {
    const { error, row } = worst(rows, (r) => groundWaveLossDb(pathOf(r)) - cell(r, 'lossDb'));
    expect(error, `worst ${error} dB at ${JSON.stringify(row)}`).toBeLessThan(0.02);
  });

  it('takes the same series at every distance', () => {
    const METHODS = { flat_earth_curved: 'flat-earth-with-curvature', residue_series: 'residue-series' };
    for (const row of rows)
      expect(groundWaveAttenuation(pathOf(row)).method).toBe(METHODS[row.method as keyof typeof METHODS]);
  });

  it('an independent residue series, 10 to 1000 km: within 0.02 dB, in the residue region within 1e-3', () => {
    const all = worst(rows, (r) => fieldOf(r) - cell(r, 'ownSeriesFieldDbuvPerM'));
    expect(all.error, `worst ${all.error} dB at ${JSON.stringify(all.row)}`).toBeLessThan(0.02);
    const far = worst(
      rows.filter((r) => r.method === 'residue_series'),
      (r) => fieldOf(r) - cell(r, 'ownSeriesFieldDbuvPerM'),
    );
    expect(far.error, `worst ${far.error} dB at ${JSON.stringify(far.row)}`).toBeLessThan(1e-3);
  });

  it('GRWAVE, behind the older curves, has another atmosphere: 0.1 dB to 150 km, 1.2 dB to 1000 km, and always less field', () => {
    const near = rows.filter((r) => cell(r, 'distanceKm') <= 150);
    expect(worst(near, (r) => fieldOf(r) - cell(r, 'grwaveFieldDbuvPerM')).error).toBeLessThan(0.1);
    expect(worst(rows, (r) => fieldOf(r) - cell(r, 'grwaveFieldDbuvPerM')).error).toBeLessThan(1.2);
    for (const row of rows) expect(fieldOf(row)).toBeGreaterThan(cell(row, 'grwaveFieldDbuvPerM'));
  });

  it('P.368 prints loss = 142.0 + 20 log f - field: ours keeps it within 0.01 dB', () => {
    const { error } = worst(
      rows,
      (r) => groundWaveLossDb(pathOf(r)) - (142 + 20 * Math.log10(cell(r, 'frequencyMhz')) - fieldOf(r)),
    );
    expect(error).toBeLessThan(0.0101);
  });
});

describe('ground wave over salt water of 1 S/m and dry land, from the validation file of the same code', () => {
  const rows = readTable('groundWaveGrounds.csv');
  const groundPathOf = (row: Row) => ({
    ...pathOf(row),
    ground: { permittivity: cell(row, 'permittivity'), conductivitySPerM: cell(row, 'conductivitySPerM') },
  });

  it('15 kHz to 30 MHz, 1 to 10 000 km: field and loss of 66 vectors within 0.02 dB (worst below 0.007)', () => {
    expect(rows).toHaveLength(66);
    const field = worst(rows, (r) => groundWaveFieldDbuvPerM(groundPathOf(r), 1000) - cell(r, 'fieldDbuvPerM'));
    expect(field.error, `worst ${field.error} dB at ${JSON.stringify(field.row)}`).toBeLessThan(0.02);
    const loss = worst(rows, (r) => groundWaveLossDb(groundPathOf(r)) - cell(r, 'lossDb'));
    expect(loss.error, `worst ${loss.error} dB at ${JSON.stringify(loss.row)}`).toBeLessThan(0.02);
  });
});

describe('the mathematics behind it', () => {
  it('Faddeeva function: w(0) = 1, w(j) = e erfc(1), w(1) = 1/e + j 2/√π Dawson(1) (tables of functions)', () => {
    expect(faddeeva(complex(0)).re).toBeCloseTo(1, 12);
    expect(faddeeva(complex(0, 1)).re).toBeCloseTo(0.427583576155807, 12);
    expect(faddeeva(complex(1)).re).toBeCloseTo(Math.exp(-1), 12);
    expect(faddeeva(complex(1)).im).toBeCloseTo((2 / Math.sqrt(Math.PI)) * 0.538079506912768, 11);
    expect(() => faddeeva(complex(1, -0.1))).toThrow(RangeError);
  });

  it('roots fulfil w′(t) = q w(t), by the power series of the Airy function', () => {
    for (const angle of [Math.PI / 4, Math.PI / 3, Math.PI / 2])
      for (const size of [0.05, 0.5, 1, 1.5, 2.2, 5, 40])
        for (const n of [1, 2, 3, 5]) {
          const q = polar(size, angle);
          const { value, slope } = outgoingAiry(residueRoot(n, q));
          // The slope against its own scale, since w is nearly 0 at the roots for a large q.
          const miss = subtract(divide(slope, q), value);
          const scaleOf = Math.hypot(value.re, value.im) + Math.hypot(slope.re, slope.im);
          expect(Math.hypot(miss.re, miss.im) / scaleOf).toBeLessThan(2e-5);
        }
  });
});

/** Ai and Ai′ at t e^(2πi/3), by powers; good to about 1e-9 for the sizes used here. */
function outgoingAiry(t: Complex): { value: Complex; slope: Complex } {
  const turn = polar(1, (2 * Math.PI) / 3);
  const z = multiply(t, turn);
  let term: Complex = complex(0.355028053887817);
  let other: Complex = scale(z, -0.258819403792807);
  let value = add(term, other);
  let zSlope = other;
  for (let k = 0; k < 120; k += 3) {
    const cube = multiply(z, multiply(z, z));
    term = scale(multiply(term, cube), 1 / ((k + 2) * (k + 3)));
    other = scale(multiply(other, cube), 1 / ((k + 3) * (k + 4)));
    value = add(value, add(term, other));
    zSlope = add(zSlope, add(scale(term, k + 3), scale(other, k + 4)));
  }
  return { value, slope: multiply(divide(zSlope, z), turn) };
}

describe('how it behaves', () => {
  it.each(Object.entries(GROUNDS))('%s: loss grows with distance, one wavelength to 10 000 km', (_, ground) => {
    for (const frequencyMhz of FREQUENCIES_MHZ) {
      const attenuation = groundWaveCurve({ frequencyMhz, ground });
      let before = -Infinity;
      for (let distanceKm = 0.3 / frequencyMhz; distanceKm < 10_000; distanceKm *= 1.04) {
        const lossDb = freeSpaceLossDb(frequencyMhz, distanceKm) + attenuation(distanceKm).attenuationDb;
        expect(lossDb, `${frequencyMhz} MHz, ${distanceKm} km`).toBeGreaterThan(before);
        before = lossDb;
      }
    }
  });

  it('sea: loss grows with frequency at every distance', () => {
    for (const distanceKm of [31, 60, 100, 200, 500, 1000, 3000]) {
      const losses = FREQUENCIES_MHZ.map((frequencyMhz) => groundWaveLossDb({ frequencyMhz, distanceKm }));
      for (let i = 1; i < losses.length; i += 1) expect(losses[i]).toBeGreaterThan(losses[i - 1] ?? Infinity);
    }
  });

  it.each(Object.entries(GROUNDS))('%s: the two series meet within 0.03 dB (over sea 0.007)', (name, ground) => {
    for (let frequencyMhz = 0.01; frequencyMhz <= 30; frequencyMhz *= 1.05) {
      const meetKm = 80 / Math.cbrt(frequencyMhz);
      if (meetKm < 0.3 / frequencyMhz) continue;
      const curve = groundWaveCurve({ frequencyMhz, ground });
      const stepDb = curve(meetKm * (1 + 1e-9)).attenuationDb - curve(meetKm * (1 - 1e-9)).attenuationDb;
      expect(Math.abs(stepDb), `${frequencyMhz} MHz`).toBeLessThan(name === 'sea' ? 0.007 : 0.03);
    }
  });

  it('powers and closed form of the curvature terms meet without a step, as do both ways to a root', () => {
    for (const ground of Object.values(GROUNDS))
      for (const distanceKm of [22, 200]) {
        const level = Array.from(
          { length: 1800 },
          (_, i) => groundWaveAttenuation({ frequencyMhz: 2 + 0.015 * i, distanceKm, ground }).attenuationDb,
        );
        // Fourth differences: a smooth curve has next to none, a step of 1e-5 dB shows.
        for (let order = 1; order <= 4; order += 1)
          for (let i = level.length - 1; i >= order; i -= 1) level[i] = (level[i] ?? 0) - (level[i - 1] ?? 0);
        const steps = level.slice(4).map(Math.abs);
        expect(Math.max(...steps), `${distanceKm} km over ${JSON.stringify(ground)}`).toBeLessThan(1e-5);
      }
  });

  it('near, over sea, next to nothing is lost: 300 mV/m for 1 kW at 1 km, and less than 0.1 dB of attenuation at 10 km and 500 kHz', () => {
    expect(groundWaveFieldDbuvPerM({ frequencyMhz: 0.5, distanceKm: 1 }, 1000)).toBeCloseTo(109.54, 1);
    const { attenuationDb } = groundWaveAttenuation({ frequencyMhz: 0.5, distanceKm: 10 });
    expect(attenuationDb).toBeGreaterThan(0);
    expect(attenuationDb).toBeLessThan(0.1);
  });

  it('ten times the power is 10 dB, whatever the path', () => {
    const path = { frequencyMhz: 2.182, distanceKm: 300 };
    expect(groundWaveFieldDbuvPerM(path, 100) - groundWaveFieldDbuvPerM(path, 10)).toBeCloseTo(10, 9);
  });

  it('denser air bends the wave farther: less loss beyond the horizon with a higher refractivity', () => {
    const at = (surfaceRefractivity: number) =>
      groundWaveLossDb({ frequencyMhz: 8.291, distanceKm: 400, surfaceRefractivity });
    expect(at(380)).toBeLessThan(at(315));
    expect(at(315)).toBeLessThan(at(250));
  });

  it.each([
    { frequencyMhz: 0.009, distanceKm: 100 },
    { frequencyMhz: 30.1, distanceKm: 100 },
    { frequencyMhz: 2, distanceKm: 0 },
    { frequencyMhz: 2, distanceKm: 0.14 },
    { frequencyMhz: 2, distanceKm: 10_001 },
    { frequencyMhz: 2, distanceKm: Number.NaN },
    { frequencyMhz: 2, distanceKm: 100, surfaceRefractivity: 500 },
    { frequencyMhz: 2, distanceKm: 100, ground: { permittivity: 0.5, conductivitySPerM: 5 } },
    { frequencyMhz: 2, distanceKm: 100, ground: { permittivity: 70, conductivitySPerM: 0 } },
  ])('refuses %j', (path) => {
    expect(() => groundWaveAttenuation(path)).toThrow(RangeError);
    expect(() => groundWaveLossDb(path)).toThrow(RangeError);
  });

  it('refuses no power', () => {
    expect(() => groundWaveFieldDbuvPerM({ frequencyMhz: 2, distanceKm: 100 }, 0)).toThrow(RangeError);
  });
});
