/** A path whose level varies in time. */
export interface VariablePath {
  /** 0 to 2000. */
  readonly distanceKm: number;
  /** Antenna heights above the sea, m: 0 to 10 000. */
  readonly h1M: number;
  readonly h2M: number;
  /** 20 to 20 000. */
  readonly frequencyMhz: number;
}

/** Deviation curve over the effective distance: what it tends to, a hump, and the distances that shape both, km. */
interface Curve {
  readonly endDb: number;
  readonly humpDb: number;
  readonly riseKm: number;
  readonly humpKm: number;
  readonly widthKm: number;
}

/** Maritime temperate, over sea. */
const BELOW_MEDIAN: Curve = { endDb: 8.51, humpDb: 169.8, riseKm: 609.8, humpKm: 119.9, widthKm: 106.6 };
const ABOVE_MEDIAN: Curve = { endDb: 8.43, humpDb: 8.19, riseKm: 136.2, humpKm: 188.5, widthKm: 122.9 };
/** Beyond this many deviations (10 per cent of the time) the strongest levels follow a wider spread. */
const DUCTING_FROM = 1.282;
const DUCTING_FACTOR = 1.518;

const RADIUS_KM = 9000;
/** At the effective distance of 130 km diffraction and scatter are alike. */
const ALIKE_KM = 130;

/**
 * Loss to add to the median for a level that holds for a share of the time, dB: 0 at 50 per cent, above 0 beyond it. It is
 * the slow change of the air over the hours and seasons of a year, not the fading of waves and swell.
 * @param timePercent 1 to 99
 * @throws RangeError outside the spans
 * Validity: maritime temperate climate, over sea, a whole year. No ducting by name: below 10 per cent of the time the
 * spread is that of measured paths of the 1950s and 60s. What the model also has, its own shift of the median over the
 * reference and the doubt of the situation, is left out: the median is that of the smooth sea here.
 * Source: Irregular Terrain Model, NTIA Report 82-100 (Algorithm, section 5), by the constants of its published code.
 * Checked by: tests/published/variability.test.ts
 */
export function timeVariabilityDb(path: VariablePath, timePercent: number): number {
  requireSpan('timePercent', timePercent, 1, 99);
  if (timePercent === 50) return 0;
  const distanceKm = effectiveDistanceKm(path);
  const deviations = normalDeviate(timePercent / 100);
  if (deviations < 0) return -deviations * deviationDb(BELOW_MEDIAN, distanceKm);
  const above = deviationDb(ABOVE_MEDIAN, distanceKm);
  if (deviations <= DUCTING_FROM) return 0 - deviations * above;
  return 0 - above * (DUCTING_FACTOR * (deviations - DUCTING_FROM) + DUCTING_FROM);
}

/** Distance on the scale of the curves, km: 130 where diffraction and scatter are alike. */
export function effectiveDistanceKm({ distanceKm, h1M, h2M, frequencyMhz }: VariablePath): number {
  requireSpan('distanceKm', distanceKm, 0, 2000);
  requireSpan('h1M', h1M, 0, 10_000);
  requireSpan('h2M', h2M, 0, 10_000);
  requireSpan('frequencyMhz', frequencyMhz, 20, 20_000);
  const horizonsKm = Math.sqrt(0.002 * RADIUS_KM * h1M) + Math.sqrt(0.002 * RADIUS_KM * h2M);
  const alikeKm = horizonsKm + Math.cbrt((575.7e12 * 47.7) / frequencyMhz) / 1000;
  return distanceKm < alikeKm ? (ALIKE_KM * distanceKm) / alikeKm : ALIKE_KM + distanceKm - alikeKm;
}

function deviationDb({ endDb, humpDb, riseKm, humpKm, widthKm }: Curve, distanceKm: number): number {
  const rise = (distanceKm / riseKm) ** 2;
  return ((endDb + humpDb / (1 + ((distanceKm - humpKm) / widthKm) ** 2)) * rise) / (1 + rise);
}

/** Standard deviations exceeded with a probability: Abramowitz and Stegun 26.2.23, within 4.5e-4. */
function normalDeviate(probability: number): number {
  const t = Math.sqrt(-2 * Math.log(Math.min(probability, 1 - probability)));
  const above = 2.515516 + t * (0.802853 + t * 0.010328);
  const below = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  const size = t - above / below;
  return probability > 0.5 ? -size : size;
}

function requireSpan(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low} to ${high}, not ${value}.`);
}
