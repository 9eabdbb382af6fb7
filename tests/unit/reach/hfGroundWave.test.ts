import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groundWaveFieldDbuvPerM } from '../../../core/propagation/groundWave.ts';
import { groundWaveReachKm, MAX_GROUND_WAVE_KM } from '../../../core/reach/hfGroundWave.ts';

describe('how far the ground wave keeps a field', () => {
  it('the field at the reach is the field asked for, within 0.05 dB, at 8 frequencies and 200 fields', () => {
    let worst = 0;
    for (const frequencyMhz of [0.49, 0.518, 2.182, 4.125, 6.215, 8.291, 12.29, 22.159])
      for (let fieldDb = 0; fieldDb < 50; fieldDb += 2) {
        const reachKm = groundWaveReachKm(frequencyMhz, 100, fieldDb);
        if (reachKm === MAX_GROUND_WAVE_KM || reachKm === 0) continue;
        worst = Math.max(
          worst,
          Math.abs(groundWaveFieldDbuvPerM({ frequencyMhz, distanceKm: reachKm }, 100) - fieldDb),
        );
      }
    expect(worst).toBeGreaterThan(0);
    expect(worst).toBeLessThan(0.05);
  });

  it('more power and a lower field never reach less', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(0.518, 2.182, 8.291, 22.159),
        fc.double({ min: 0.1, max: 1000, noNaN: true }),
        fc.double({ min: -20, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (mhz, watts, fieldDb, more) => {
          const reachKm = groundWaveReachKm(mhz, watts, fieldDb);
          expect(groundWaveReachKm(mhz, watts * (1 + more), fieldDb)).toBeGreaterThanOrEqual(reachKm);
          expect(groundWaveReachKm(mhz, watts, fieldDb - more)).toBeGreaterThanOrEqual(reachKm);
        },
      ),
      { seed: 5 },
    );
  });

  it('nothing within a kilometre is 0, and what lasts past the end is the end', () => {
    expect(groundWaveReachKm(2.182, 1, 200)).toBe(0);
    expect(groundWaveReachKm(0.518, 1e6, -60)).toBe(MAX_GROUND_WAVE_KM);
  });

  it('refuses a power, a field and a frequency that are none', () => {
    expect(() => groundWaveReachKm(2, 0, 10)).toThrow(RangeError);
    expect(() => groundWaveReachKm(2, 10, Number.NaN)).toThrow(RangeError);
    expect(() => groundWaveReachKm(40, 10, 10)).toThrow(RangeError);
  });
});
