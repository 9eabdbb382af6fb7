import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freeSpaceLossDb } from '../../../core/propagation/freeSpace.ts';
import { horizonKm } from '../../../core/propagation/horizon.ts';
import { MAX_REACH_KM, reachKm } from '../../../core/propagation/reach.ts';
import { seaPathLossDb, sphericalEarthLoss } from '../../../core/propagation/sphericalEarth.ts';

const FREQUENCIES = [100, 156.8, 162.025, 406, 900, 1600, 3000];
const HEIGHTS = [0, 0.5, 1.5, 3, 6, 10, 15, 20, 40, 100, 300];

describe('loss over sea', () => {
  it('grows with distance for every pair of heights, so that a range is single', () => {
    let worstStepDb = Number.POSITIVE_INFINITY;
    for (const frequencyMhz of FREQUENCIES) {
      for (const h1M of HEIGHTS) {
        for (const h2M of HEIGHTS) {
          let before = Number.NEGATIVE_INFINITY;
          for (let i = 0; i <= 300; i += 1) {
            const lossDb = seaPathLossDb({ frequencyMhz, h1M, h2M, distanceKm: 0.01 * 40_000 ** (i / 300) });
            worstStepDb = Math.min(worstStepDb, lossDb - before);
            before = lossDb;
          }
        }
      }
    }
    expect(worstStepDb, `smallest step ${worstStepDb} dB`).toBeGreaterThan(0);
  });

  it('has no step at the horizon nor where diffraction begins', () => {
    for (const frequencyMhz of FREQUENCIES) {
      for (const [h1M, h2M] of [
        [20, 20],
        [15, 1.5],
        [100, 3],
        [6, 0.5],
      ] as const) {
        const path = { frequencyMhz, h1M, h2M };
        const { horizonKm: edgeKm } = sphericalEarthLoss({ ...path, distanceKm: 10 });
        const at = (distanceKm: number) => seaPathLossDb({ ...path, distanceKm });
        expect(Math.abs(at(edgeKm * (1 + 1e-7)) - at(edgeKm * (1 - 1e-7)))).toBeLessThan(1e-4);
      }
    }
  });

  it('is more over fresh water than over sea for low vertical antennas at VHF, much the same at UHF or horizontally', () => {
    for (const frequencyMhz of FREQUENCIES) {
      const path = { frequencyMhz, h1M: 10, h2M: 3, distanceKm: 40 };
      const [sea, lake] = [seaPathLossDb(path), seaPathLossDb({ ...path, water: 'fresh-water' })];
      if (frequencyMhz < 200) expect(lake).toBeGreaterThan(sea + 0.5);
      else expect(Math.abs(lake - sea)).toBeLessThan(1);
      const flat = { ...path, h1M: 60, h2M: 60, distanceKm: 90, polarisation: 'horizontal' } as const;
      expect(Math.abs(seaPathLossDb({ ...flat, water: 'fresh-water' }) - seaPathLossDb(flat))).toBeLessThan(0.01);
    }
  });

  it('falls beyond the horizon as the air bends the ray more', () => {
    for (const frequencyMhz of FREQUENCIES) {
      const at = (effectiveRadiusKm: number) =>
        seaPathLossDb({ frequencyMhz, h1M: 10, h2M: 10, distanceKm: 60, effectiveRadiusKm });
      expect(at(8500)).toBe(seaPathLossDb({ frequencyMhz, h1M: 10, h2M: 10, distanceKm: 60 }));
      expect(at(12_000)).toBeLessThan(at(8500));
      expect(at(6371)).toBeGreaterThan(at(8500));
    }
    expect(() => seaPathLossDb({ frequencyMhz: 160, h1M: 1, h2M: 1, distanceKm: 5, effectiveRadiusKm: 0 })).toThrow(
      RangeError,
    );
  });

  it('is that of free space while the ray is clear', () => {
    const path = { frequencyMhz: 162, h1M: 25, h2M: 25, distanceKm: 2 };
    expect(sphericalEarthLoss(path).branch).toBe('clear');
    expect(seaPathLossDb(path)).toBe(freeSpaceLossDb(162, 2));
  });

  it('does not mind which end is which', () => {
    const one = seaPathLossDb({ frequencyMhz: 156.8, h1M: 16.7, h2M: 1.2, distanceKm: 18 });
    expect(seaPathLossDb({ frequencyMhz: 156.8, h1M: 1.2, h2M: 16.7, distanceKm: 18 })).toBe(one);
  });

  it('is less for vertical than for horizontal polarisation near the water (surface wave)', () => {
    const path = { frequencyMhz: 156.8, h1M: 1.5, h2M: 1.5, distanceKm: 20 };
    expect(seaPathLossDb({ ...path, polarisation: 'horizontal' })).toBeGreaterThan(seaPathLossDb(path) + 5);
  });

  it.each([
    ['frequencyMhz', { frequencyMhz: 5 }],
    ['frequencyMhz', { frequencyMhz: Number.NaN }],
    ['distanceKm', { distanceKm: 0 }],
    ['distanceKm', { distanceKm: Number.POSITIVE_INFINITY }],
    ['h1M', { h1M: -1 }],
    ['h2M', { h2M: 20_000 }],
  ])('refuses %s out of span', (name, over) => {
    const path = { frequencyMhz: 156.8, distanceKm: 20, h1M: 15, h2M: 15, ...over };
    expect(() => seaPathLossDb(path)).toThrow(RangeError);
    expect(() => seaPathLossDb(path)).toThrow(name);
  });
});

describe('free space and horizon', () => {
  it('doubling distance or frequency adds 6.02 dB', () => {
    expect(freeSpaceLossDb(156.8, 20) - freeSpaceLossDb(156.8, 10)).toBeCloseTo(6.0206, 4);
    expect(freeSpaceLossDb(313.6, 10) - freeSpaceLossDb(156.8, 10)).toBeCloseTo(6.0206, 4);
  });

  it('refuses what has no answer', () => {
    expect(() => freeSpaceLossDb(0, 1)).toThrow(RangeError);
    expect(() => freeSpaceLossDb(156.8, Number.NaN)).toThrow(RangeError);
    expect(() => horizonKm('geometric', -1, 2)).toThrow(RangeError);
  });

  it('the rules keep their order: no refraction, 2.2, four thirds, 2.25', () => {
    const rules = ['geometric', 'trade-2.2', 'four-thirds-earth', 'trade-2.25'] as const;
    const distances = rules.map((rule) => horizonKm(rule, 16, 25));
    expect(distances).toEqual([...distances].sort((a, b) => a - b));
  });
});

describe('reach', () => {
  const REACH = { frequencyMhz: 156.8, h1M: 16.7, h2M: 25 };

  it('is where the loss meets the limit, to a metre', () => {
    fc.assert(
      fc.property(fc.double({ min: 60, max: 250, noNaN: true }), (maxLossDb) => {
        const km = reachKm(REACH, maxLossDb);
        const loss = (distanceKm: number) => seaPathLossDb({ ...REACH, distanceKm });
        expect(loss(km - 0.001)).toBeLessThanOrEqual(maxLossDb);
        expect(loss(km + 0.001)).toBeGreaterThanOrEqual(maxLossDb);
      }),
      { numRuns: 300, seed: 7 },
    );
  });

  it('ends at nothing and at the model’s last distance', () => {
    expect(reachKm(REACH, -50)).toBe(0);
    expect(reachKm(REACH, 900)).toBe(MAX_REACH_KM);
    expect(() => reachKm(REACH, Number.NaN)).toThrow(RangeError);
  });
});
