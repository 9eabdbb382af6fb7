const RADIANS_PER_DEGREE = Math.PI / 180;
/** Sunspot number beyond which the layer grows no further (P.533 program). */
const MOST_SUNSPOTS = 160;
/** Time-of-day factor at sunset, before its power. */
const SUNSET = 0.072;

/** What the E layer hangs on: the sun above, and the sun's activity. */
export interface ELayerSun {
  /** -90 to 90. */
  readonly latitudeDeg: number;
  /** Of the sun, -23.5 to 23.5. */
  readonly declinationDeg: number;
  /** Of the sun, 0 to 180 from straight up. */
  readonly zenithDeg: number;
  /** Twelve-month mean, 0 to 300; counted to 160. */
  readonly sunspotNumber: number;
  /** Since sunset, 0 to 24; null by day, and where the sun does not set. */
  readonly hoursAfterSunset: number | null;
}

/**
 * Median critical frequency of the E layer, MHz: the fourth root of activity × season × latitude × time of day.
 * @throws RangeError outside the spans of `ELayerSun`
 * Source: Rec. ITU-R P.1239-3 section 4, read through the published program of P.533. Regular layer only: sporadic E, which
 * carries far higher frequencies on summer days, is not in it.
 * Checked by: tests/published/eLayer.test.ts
 */
export function foEMhz(sun: ELayerSun): number {
  requireSun(sun);
  const sunspots = Math.min(sun.sunspotNumber, MOST_SUNSPOTS);
  const flux = 63.7 + 0.728 * sunspots + 0.00089 * sunspots ** 2;
  const cosLatitude = Math.cos(sun.latitudeDeg * RADIANS_PER_DEGREE);
  const isLow = Math.abs(sun.latitudeDeg) < 32;
  const activity = 1 + 0.0094 * (flux - 66);
  const noonDeg = Math.min(Math.abs(sun.latitudeDeg - sun.declinationDeg), 80);
  const power = isLow ? -1.93 + 1.92 * cosLatitude : 0.11 - 0.49 * cosLatitude;
  const season = Math.cos(noonDeg * RADIANS_PER_DEGREE) ** power;
  const latitude = isLow ? 23 + 116 * cosLatitude : 92 + 35 * cosLatitude;
  const floor = 0.004 * (1 + 0.021 * flux) ** 2;
  return Math.max(activity * season * latitude * timeOfDay(sun), floor) ** 0.25;
}

function timeOfDay({ latitudeDeg, zenithDeg, hoursAfterSunset }: ELayerSun): number {
  const power = Math.abs(latitudeDeg) <= 12 ? 1.31 : 1.2;
  if (zenithDeg < 90) {
    const liftDeg = zenithDeg <= 73 ? 0 : 6.27e-13 * (zenithDeg - 50) ** 8;
    return Math.cos((zenithDeg - liftDeg) * RADIANS_PER_DEGREE) ** power;
  }
  const byAngle = Math.exp(25.2 - 0.28 * zenithDeg);
  const byHours = hoursAfterSunset === null ? 0 : Math.exp(-1.4 * hoursAfterSunset);
  return SUNSET ** power * Math.max(byAngle, byHours);
}

function requireSun({ latitudeDeg, declinationDeg, zenithDeg, sunspotNumber, hoursAfterSunset }: ELayerSun): void {
  requireSpan('latitudeDeg', latitudeDeg, -90, 90);
  requireSpan('declinationDeg', declinationDeg, -23.5, 23.5);
  requireSpan('zenithDeg', zenithDeg, 0, 180);
  requireSpan('sunspotNumber', sunspotNumber, 0, 300);
  if (hoursAfterSunset !== null) requireSpan('hoursAfterSunset', hoursAfterSunset, 0, 24);
}

function requireSpan(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low} to ${high}, not ${value}.`);
}
