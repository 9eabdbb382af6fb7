import fc from 'fast-check';
import type { SeaPath } from '../../../core/propagation/sphericalEarth.ts';

// Random paths for the properties of the propagation models, seeded so that a failure comes back.

export const SEED = { seed: 20_240, numRuns: 400 };
export const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Evenly by the logarithm, so that low heights and short distances come as often as great ones. */
export const scaled = (min: number, max: number) =>
  between(Math.log(min), Math.log(max)).map((log) => Math.min(max, Math.max(min, Math.exp(log))));

export const anySea = fc.record({
  frequencyMhz: scaled(30, 6000),
  h1M: scaled(0.1, 200),
  h2M: scaled(0.1, 200),
  polarisation: fc.constantFrom('vertical' as const, 'horizontal' as const),
  water: fc.constantFrom('sea' as const, 'fresh-water' as const),
  effectiveRadiusKm: scaled(2000, 50_000),
});
export type SeaWithoutDistance = Omit<SeaPath, 'distanceKm'>;
