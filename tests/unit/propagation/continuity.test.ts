import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groundWaveCurve } from '../../../core/propagation/groundWave.ts';
import { type SeaPath, seaPathLossDb, sphericalEarthLoss } from '../../../core/propagation/sphericalEarth.ts';
import { seaMedianLoss, troposcatterPathLossDb } from '../../../core/propagation/troposcatter.ts';
import { twoRay } from '../../../core/propagation/twoRay.ts';
import { effectiveDistanceKm, timeVariabilityDb } from '../../../core/propagation/variability.ts';
import { externalNoise } from '../../../core/rf/noise.ts';
import { leastEfficiency, shortAntenna } from '../../../core/rf/shortAntenna.ts';
import { halfWaveIsolation } from '../../../core/siting/coupling.ts';
import { noteWorst } from '../../support/worst.ts';
import { anySea, between, SEED, type SeaWithoutDistance, scaled } from './anyPath.ts';

// Where two regimes of a model meet nothing may jump: a range is found by following the curve.

const STEP_DB = 0.5;

/** Loss just beyond a distance less loss just before it. */
const stepDb = (lossDb: (distanceKm: number) => number, distanceKm: number): number =>
  Math.abs(lossDb(distanceKm * (1 + 1e-9)) - lossDb(distanceKm * (1 - 1e-9)));

/** Where the branch changes from clear to interpolated, km; null where the ray is never clear or always. */
function clearanceEdgeKm(path: SeaWithoutDistance, edgeKm: number): number | null {
  const isClear = (distanceKm: number) => sphericalEarthLoss({ ...path, distanceKm }).branch === 'clear';
  let [near, far] = [0.002, edgeKm * 0.999];
  if (!isClear(near) || isClear(far)) return null;
  for (let i = 0; i < 60; i += 1) {
    const middle = (near + far) / 2;
    if (isClear(middle)) near = middle;
    else far = middle;
  }
  return near;
}

describe('where two regimes meet there is no step above 0.5 dB', () => {
  it('smooth earth: at the horizon, and where diffraction begins', () => {
    let [worstHorizonDb, worstClearDb] = [0, 0];
    fc.assert(
      fc.property(anySea, (path) => {
        const { horizonKm: edgeKm } = sphericalEarthLoss({ ...path, distanceKm: 0.002 });
        const lossDb = (distanceKm: number) => seaPathLossDb({ ...path, distanceKm });
        worstHorizonDb = Math.max(worstHorizonDb, stepDb(lossDb, edgeKm));
        const clearKm = clearanceEdgeKm(path, edgeKm);
        if (clearKm !== null) worstClearDb = Math.max(worstClearDb, stepDb(lossDb, clearKm));
        expect(Math.max(worstHorizonDb, worstClearDb), JSON.stringify(path)).toBeLessThan(STEP_DB);
      }),
      SEED,
    );
    // In fact there is next to none.
    noteWorst(`worstHorizonDb ${worstHorizonDb}`);
    expect(worstHorizonDb, `${worstHorizonDb} dB`).toBeLessThan(1e-4);
    noteWorst(`worstClearDb ${worstClearDb}`);
    expect(worstClearDb, `${worstClearDb} dB`).toBeLessThan(1e-4);
  });

  it('smooth earth: no step in height nor in frequency either, but for 0.04 dB where the height gain changes its form', () => {
    let worstDb = 0;
    fc.assert(
      fc.property(anySea, scaled(0.5, 300), (path, distanceKm) => {
        const at = (over: Partial<SeaPath>) => seaPathLossDb({ ...path, distanceKm, ...over });
        for (const key of ['h1M', 'h2M', 'frequencyMhz'] as const)
          worstDb = Math.max(worstDb, Math.abs(at({ [key]: path[key] * 1.0001 }) - at({})));
      }),
      SEED,
    );
    noteWorst(`worstDb ${worstDb}`);
    expect(worstDb, `${worstDb} dB`).toBeLessThan(STEP_DB);
  });

  it('ground wave, 1.6 to 30 MHz over any ground and air: at 80 f^(-1/3) km, where one series hands over to the other', () => {
    let worstDb = 0;
    const medium = fc.record({
      frequencyMhz: scaled(1.6, 30),
      surfaceRefractivity: between(250, 400),
      ground: fc.record({ permittivity: between(3, 90), conductivitySPerM: scaled(1e-4, 6) }),
    });
    fc.assert(
      fc.property(medium, (given) => {
        const curve = groundWaveCurve(given);
        const meetKm = 80 / Math.cbrt(given.frequencyMhz);
        worstDb = Math.max(
          worstDb,
          stepDb((distanceKm) => curve(distanceKm).attenuationDb, meetKm),
        );
      }),
      { ...SEED, numRuns: 150 },
    );
    noteWorst(`worstDb ${worstDb}`);
    expect(worstDb, `${worstDb} dB`).toBeLessThan(0.05);
  });

  it('two rays and smooth sea do NOT meet where the two rays end: 1 dB under to 8 dB over, so that no range joins them', () => {
    // Up to there the two rays are full-wave theory to 0.1 dB; the gap is what the smooth-sea model leaves out inside the horizon.
    const gaps: number[] = [];
    for (const frequencyMhz of [100, 156.8, 162.025, 406, 900, 2400])
      for (const [h1M, h2M] of [
        [4, 4],
        [10, 3],
        [20, 1.5],
        [20, 3],
        [20, 20],
        [60, 20],
        [15, 15],
        [1.5, 1.5],
      ] as const) {
        const edgeKm = Math.sqrt(17) * (Math.sqrt(h1M) + Math.sqrt(h2M));
        let last: SeaPath | null = null;
        for (let distanceKm = (h1M + h2M) / 950; distanceKm < edgeKm * 0.99; distanceKm *= 1.01) {
          const path = { frequencyMhz, h1M, h2M, distanceKm };
          if (twoRay(path).validity === 'holds') last = path;
        }
        if (last) gaps.push(twoRay(last).withSurfaceWaveDb - sphericalEarthLoss(last).lossDb);
      }
    expect(gaps).toHaveLength(48);
    const text = `${Math.min(...gaps)} to ${Math.max(...gaps)} dB`;
    noteWorst(text);
    expect(Math.min(...gaps), text).toBeGreaterThan(-1);
    expect(Math.max(...gaps), text).toBeLessThan(8);
  });

  it('sea median: where scatter begins, at the horizon of any pair, air and frequency', () => {
    fc.assert(
      fc.property(anySea, (path) => {
        const { horizonKm: edgeKm } = sphericalEarthLoss({ ...path, distanceKm: 0.002 });
        expect(stepDb((distanceKm) => seaMedianLoss({ ...path, distanceKm }).lossDb, edgeKm)).toBeLessThan(1e-3);
        expect(stepDb((distanceKm) => troposcatterPathLossDb({ ...path, distanceKm }), edgeKm)).toBeLessThan(1e-3);
      }),
      SEED,
    );
  });

  it('time variability: at its two joins, in distance and in the share of time', () => {
    fc.assert(
      fc.property(
        scaled(1, 200),
        scaled(1, 200),
        scaled(30, 3000),
        between(1.1, 98),
        (h1M, h2M, frequencyMhz, percent) => {
          const path = { h1M, h2M, frequencyMhz };
          for (let distanceKm = 1; distanceKm < 1500; distanceKm *= 1.02) {
            const [here, on] = [distanceKm, distanceKm * 1.0001].map((km) => ({ ...path, distanceKm: km }));
            if (!here || !on) continue;
            expect(Math.abs(effectiveDistanceKm(on) - effectiveDistanceKm(here))).toBeLessThan(0.3);
            expect(Math.abs(timeVariabilityDb(on, percent) - timeVariabilityDb(here, percent))).toBeLessThan(0.05);
          }
          const at = { ...path, distanceKm: 150 };
          expect(Math.abs(timeVariabilityDb(at, percent * 1.0001) - timeVariabilityDb(at, percent))).toBeLessThan(0.05);
        },
      ),
      { ...SEED, numRuns: 20 },
    );
  });

  it('external noise: nowhere from 0.3 to 250 MHz, whatever lightning and galaxy add', () => {
    for (const atmospheric of ['none', 'moderate', 'strong', 'severe'] as const)
      for (let frequencyMhz = 0.3; frequencyMhz < 249; frequencyMhz *= 1.001) {
        const at = (mhz: number) => externalNoise({ environment: 'rural', frequencyMhz: mhz, atmospheric }).medianDb;
        expect(Math.abs(at(frequencyMhz * 1.001) - at(frequencyMhz)), `${frequencyMhz} MHz`).toBeLessThan(STEP_DB);
      }
  });

  it('short antenna: at 0.35 wavelengths, where the closed forms end, and at three quarters', () => {
    const MHZ_OF_A_WAVE = 299.792458 / 10;
    fc.assert(
      fc.property(between(0, 40), between(0.5, 1), (groundLossOhm, verticalShare) => {
        const wire = { lengthM: 10, verticalShare, radiusMm: 3 };
        const short = (waves: number) =>
          shortAntenna({ ...wire, frequencyMhz: waves * MHZ_OF_A_WAVE }, { groundLossOhm }).efficiency;
        const long = (waves: number) =>
          leastEfficiency({ ...wire, frequencyMhz: waves * MHZ_OF_A_WAVE }, groundLossOhm);
        const end = 10 * Math.log10(long(0.35 + 1e-9) / short(0.35 - 1e-9));
        const later = 10 * Math.log10(long(0.75 + 1e-9) / long(0.75 - 1e-9));
        expect(Math.abs(end)).toBeLessThan(STEP_DB);
        expect(Math.abs(later)).toBeLessThan(STEP_DB);
      }),
      SEED,
    );
  });

  it('isolation: where the sum over the antenna becomes finer', () => {
    for (const sideM of [0.2, 1].map((waves) => (waves * 299.792458) / 156.8))
      for (const upM of [0, 0.3, 0.8]) {
        const at = (side: number) => halfWaveIsolation({ frequencyMhz: 156.8, sideM: side, upM }).isolationDb;
        expect(stepDb(at, sideM)).toBeLessThan(1e-4);
      }
  });
});
