import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freeSpaceLossDb } from '../../../core/propagation/freeSpace.ts';
import { horizonKm } from '../../../core/propagation/horizon.ts';
import { reachKm } from '../../../core/propagation/reach.ts';
import { satellitePathLossDb } from '../../../core/propagation/satellite.ts';
import { seaPathLossDb, sphericalEarthLoss } from '../../../core/propagation/sphericalEarth.ts';
import { seaMedianLoss, troposcatterPathLossDb } from '../../../core/propagation/troposcatter.ts';
import { twoRay } from '../../../core/propagation/twoRay.ts';
import { cascade, lossStage } from '../../../core/rf/cascade.ts';
import { halfWaveIsolation } from '../../../core/siting/coupling.ts';
import { stackIsolation } from '../../../core/siting/stackIsolation.ts';
import { noteWorst } from '../../support/worst.ts';
import { anySea, between, SEED, scaled } from './anyPath.ts';

// What must hold whatever the figures, on seeded random paths: the same both ways, more loss with distance, no less reach from
// higher up.

describe('the same both ways', () => {
  it('swapped heights give the identical number: smooth earth, sea median, scatter, two rays, horizon', () => {
    fc.assert(
      fc.property(anySea, scaled(0.5, 300), (path, distanceKm) => {
        const [there, back] = [
          { ...path, distanceKm },
          { ...path, distanceKm, h1M: path.h2M, h2M: path.h1M },
        ];
        expect(sphericalEarthLoss(back)).toEqual(sphericalEarthLoss(there));
        expect(seaPathLossDb(back)).toBe(seaPathLossDb(there));
        expect(seaMedianLoss(back)).toEqual(seaMedianLoss(there));
        expect(troposcatterPathLossDb(back)).toBe(troposcatterPathLossDb(there));
        expect(horizonKm('geometric', path.h2M, path.h1M)).toBe(horizonKm('geometric', path.h1M, path.h2M));
        expect(reachKm({ ...path, h1M: path.h2M, h2M: path.h1M }, 150)).toBe(reachKm(path, 150));
        const nearKm = (path.h1M + path.h2M) / 900 + 0.001;
        if (nearKm < sphericalEarthLoss(there).horizonKm / 2)
          expect(twoRay({ ...back, distanceKm: nearKm })).toEqual(twoRay({ ...there, distanceKm: nearKm }));
      }),
      SEED,
    );
  });

  it('swapped antennas give the identical isolation, with gain and over the sea to 1e-9 dB', () => {
    const pair = fc.record({ sideM: between(0.3, 12), upM: between(-8, 8) });
    const row = fc.record({ elements: fc.integer({ min: 1, max: 4 }), pitchWavelengths: between(0.5, 0.9) });
    fc.assert(
      fc.property(pair, row, row, ({ sideM, upM }, first, second) => {
        const plain = { frequencyMhz: 156.8, sideM, upM };
        expect(halfWaveIsolation({ ...plain, upM: -upM }).isolationDb).toBe(halfWaveIsolation(plain).isolationDb);
        const over = { water: 'sea', firstHeightM: 20 } as const;
        const there = stackIsolation({ ...plain, first, second, over }).isolationDb;
        const swapped = { ...plain, upM: -upM, first: second, second: first };
        const back = stackIsolation({ ...swapped, over: { ...over, firstHeightM: 20 + upM } }).isolationDb;
        expect(Math.abs(back - there)).toBeLessThan(1e-9);
      }),
      { ...SEED, numRuns: 100 },
    );
  });
});

describe('farther loses more, higher never loses more beyond the horizon', () => {
  it('free space and satellites: farther, and nearer to the horizon, is more', () => {
    fc.assert(
      fc.property(scaled(1, 6000), scaled(0.01, 1000), between(0, 89), (frequencyMhz, distanceKm, elevationDeg) => {
        expect(freeSpaceLossDb(frequencyMhz, distanceKm * 1.01)).toBeGreaterThan(
          freeSpaceLossDb(frequencyMhz, distanceKm),
        );
        expect(satellitePathLossDb(frequencyMhz, 780, elevationDeg)).toBeGreaterThan(
          satellitePathLossDb(frequencyMhz, 780, elevationDeg + 1),
        );
      }),
      SEED,
    );
  });

  it('smooth sea and sea median, vertical, 100 MHz to 3 GHz: loss grows with distance', () => {
    fc.assert(
      fc.property(
        scaled(100, 3000),
        scaled(0.1, 200),
        scaled(0.1, 200),
        scaled(0.01, 390),
        (frequencyMhz, h1M, h2M, km) => {
          const at = (distanceKm: number) => ({ frequencyMhz, h1M, h2M, distanceKm });
          expect(seaPathLossDb(at(km * 1.02))).toBeGreaterThan(seaPathLossDb(at(km)));
          expect(seaMedianLoss(at(km * 1.02)).lossDb).toBeGreaterThan(seaMedianLoss(at(km)).lossDb);
        },
      ),
      { ...SEED, numRuns: 2000 },
    );
  });

  it('beyond the horizon of both heights a higher antenna loses no more, but for 0.02 dB', () => {
    // Where the height gain changes its form (B = 2) the published formula falls by 0.017 dB before it rises on.
    let worstDb = 0;
    fc.assert(
      fc.property(anySea, scaled(1.001, 4), scaled(1, 8), (path, factor, beyond) => {
        const higher = { ...path, h1M: path.h1M * factor };
        const { horizonKm: edgeKm } = sphericalEarthLoss({ ...higher, distanceKm: 0.002 });
        const distanceKm = Math.min(edgeKm * beyond, 1900);
        worstDb = Math.max(worstDb, seaPathLossDb({ ...higher, distanceKm }) - seaPathLossDb({ ...path, distanceKm }));
      }),
      { ...SEED, numRuns: 4000 },
    );
    // Step by step through that place, too, which random heights seldom meet.
    for (const frequencyMhz of [100, 156.8, 406, 1600])
      for (let h1M = 0.2; h1M < 80; h1M *= 1.0005) {
        const at = (heightM: number) => seaPathLossDb({ frequencyMhz, h1M: heightM, h2M: 3, distanceKm: 90 });
        worstDb = Math.max(worstDb, at(h1M * 1.0005) - at(h1M));
      }
    noteWorst(`worstDb ${worstDb}`);
    expect(worstDb, `${worstDb} dB`).toBeLessThan(0.02);
  });

  it('more loss allowed never reaches less far, a higher pair sees no less far', () => {
    fc.assert(
      fc.property(anySea, between(60, 220), scaled(0.01, 40), (path, limitDb, moreDb) => {
        expect(reachKm(path, limitDb + moreDb)).toBeGreaterThanOrEqual(reachKm(path, limitDb));
        expect(horizonKm('trade-2.25', path.h1M * 1.1, path.h2M)).toBeGreaterThan(
          horizonKm('trade-2.25', path.h1M, path.h2M),
        );
      }),
      SEED,
    );
  });
});

describe('a chain of losses', () => {
  it('is their sum in any order, whatever their size; a perfect splitter of n ways costs 10 log n and a line of nothing nothing', () => {
    fc.assert(
      fc.property(fc.array(between(0, 2000), { minLength: 1, maxLength: 6 }), between(0, 20), (losses, figureDb) => {
        const stages = losses.map(lossStage);
        const receiver = { gainDb: 0, noiseFigureDb: figureDb };
        const total = losses.reduce((a, b) => a + b, 0);
        const chain = cascade([...stages, receiver]);
        expect(chain.noiseFigureDb).toBeCloseTo(total + figureDb, 6);
        expect(cascade([...stages].reverse()).gainDb).toBeCloseTo(-total, 6);
        expect(cascade([...stages, lossStage(0), receiver])).toEqual(chain);
        for (const ways of [2, 3, 4]) {
          const split = cascade([lossStage(10 * Math.log10(ways)), ...stages, receiver]);
          expect(split.noiseFigureDb - chain.noiseFigureDb).toBeCloseTo(10 * Math.log10(ways), 6);
        }
      }),
      SEED,
    );
  });
});
