import { KM_PER_NM } from '../units/constants.ts';

/** How the horizon distance is reckoned; the trade's round constants are shown as such. */
export type HorizonBasis = 'four-thirds-earth' | 'trade-2.25' | 'trade-2.2' | 'geometric';

const MEAN_EARTH_RADIUS_KM = 6371;

/** km per square root of a metre of height for an effective earth radius. */
const kmPerRootM = (radiusKm: number): number => Math.sqrt(2 * radiusKm * 0.001);

const KM_PER_ROOT_M: Readonly<Record<HorizonBasis, number>> = {
  'four-thirds-earth': kmPerRootM((4 / 3) * MEAN_EARTH_RADIUS_KM),
  // Common practice, no source: 1.1 % above and below 4/3 earth.
  'trade-2.25': 2.25 * KM_PER_NM,
  'trade-2.2': 2.2 * KM_PER_NM,
  geometric: kmPerRootM(MEAN_EARTH_RADIUS_KM),
};

/**
 * Distance at which two antennas over a smooth sea lose sight of each other, km. A landmark, not a limit: the median
 * level of a 25 W set holds beyond it, a handheld's gives out short of it.
 * @param basis four-thirds earth (standard refraction), a trade constant, or no refraction at all
 * @param h1M height of one antenna above the sea, m, >= 0
 * @param h2M height of the other, m, >= 0
 * @throws RangeError when a height is negative or not finite
 * Source: d = sqrt(2 ae)(sqrt h1 + sqrt h2), ae = 4/3 x 6371 km (Rec. ITU-R P.526, standard refraction).
 * Checked by: tests/published/propagation.test.ts
 */
export function horizonKm(basis: HorizonBasis, h1M: number, h2M: number): number {
  for (const heightM of [h1M, h2M]) {
    if (!(heightM >= 0 && Number.isFinite(heightM)))
      throw new RangeError(`A height must be 0 m or more, not ${heightM}.`);
  }
  return KM_PER_ROOT_M[basis] * (Math.sqrt(h1M) + Math.sqrt(h2M));
}
