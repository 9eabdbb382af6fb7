const RADIANS_PER_DEGREE = Math.PI / 180;
/** Slope of the earth's axis. */
const OBLIQUITY_DEG = 23.44;
/** Day of the year of the 15th of each month. */
const FIFTEENTH = [15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349] as const;

/**
 * Declination of the sun at noon on the 15th of a month, degrees, north above 0.
 * @param month 1 to 12
 * @throws RangeError outside
 * Source: low-precision sun of the Astronomical Almanac, from memory, set to the middle of the leap-year cycle, so within
 * 0.2 degrees of any year. The published program of P.533 has an orbit of its own, up to 0.4 degrees away.
 * Checked by: tests/published/eLayer.test.ts
 */
export function solarDeclinationDeg(month: number): number {
  const day = FIFTEENTH[month - 1];
  if (day === undefined) throw new RangeError(`A month must be 1 to 12, not ${month}.`);
  const anomaly = (357.9 + 0.9856 * (day - 1)) * RADIANS_PER_DEGREE;
  const meanDeg = 280.84 + 0.98565 * (day - 1);
  const longitude = (meanDeg + 1.915 * Math.sin(anomaly) + 0.02 * Math.sin(2 * anomaly)) * RADIANS_PER_DEGREE;
  return Math.asin(Math.sin(OBLIQUITY_DEG * RADIANS_PER_DEGREE) * Math.sin(longitude)) / RADIANS_PER_DEGREE;
}

/** Where the sun is seen from. */
export interface SunPlace {
  /** -90 to 90. */
  readonly latitudeDeg: number;
  /** -23.5 to 23.5. */
  readonly declinationDeg: number;
}

/**
 * Angle of the sun from straight up, degrees, 0 to 180; 90 is sunrise and sunset.
 * @param solarHour local solar time, 0 to 24: the sun stands due south or north at 12
 * @throws RangeError outside
 * Source: spherical triangle. Checked by: tests/published/eLayer.test.ts
 */
export function solarZenithDeg(place: SunPlace, solarHour: number): number {
  requirePlace(place, solarHour);
  const [latitude, declination] = [place.latitudeDeg * RADIANS_PER_DEGREE, place.declinationDeg * RADIANS_PER_DEGREE];
  const hourAngle = (solarHour - 12) * 15 * RADIANS_PER_DEGREE;
  const cosine =
    Math.sin(latitude) * Math.sin(declination) + Math.cos(latitude) * Math.cos(declination) * Math.cos(hourAngle);
  return Math.acos(Math.min(1, Math.max(-1, cosine))) / RADIANS_PER_DEGREE;
}

/**
 * Hours since the sun set; null while it is up and where it did not set that day.
 * @throws RangeError as `solarZenithDeg`
 */
export function hoursAfterSunset(place: SunPlace, solarHour: number): number | null {
  requirePlace(place, solarHour);
  const { latitudeDeg, declinationDeg } = place;
  const cosine = -Math.tan(latitudeDeg * RADIANS_PER_DEGREE) * Math.tan(declinationDeg * RADIANS_PER_DEGREE);
  if (Math.abs(cosine) >= 1) return null;
  const sunsetHour = 12 + Math.acos(cosine) / RADIANS_PER_DEGREE / 15;
  const since = (solarHour - sunsetHour + 24) % 24;
  return since <= 24 - 2 * (sunsetHour - 12) ? since : null;
}

function requirePlace({ latitudeDeg, declinationDeg }: SunPlace, solarHour: number): void {
  requireSpan('latitudeDeg', latitudeDeg, -90, 90);
  requireSpan('declinationDeg', declinationDeg, -23.5, 23.5);
  requireSpan('solarHour', solarHour, 0, 24);
}

function requireSpan(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low} to ${high}, not ${value}.`);
}
