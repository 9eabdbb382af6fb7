/**
 * Vertical pattern of a whip as N half-wave elements in a row, fed alike, and what heel makes of it. Angles in degrees;
 * elevation is counted from the plane across the antenna. Lossless, in free space: no mast, no sea.
 * Source: field of a half-wave dipole times the factor of a uniform array, as in any antenna handbook.
 * Checked by: tests/published/patterns.test.ts, against a numerical solution by the method of moments.
 */
export interface CollinearAntenna {
  /** Half-wave elements, 1 to 16. */
  readonly elements: number;
  /** Distance between their centres in wavelengths, 0.5 (touching) to 1. */
  readonly pitchWavelengths: number;
}

/** Direction to the other station from an antenna that leans. */
export interface Heel {
  /** Lean of the antenna, 0 to 90. */
  readonly heelDeg: number;
  /** Bearing of the other station from the direction of heel: 0 or 180 is abeam, 90 fore and aft. */
  readonly azimuthDeg: number;
}

/**
 * Real whips fill their nulls: no direction loses more than this. Common practice (15 to 20), no source; a handbook gives
 * 15 to 25 dB for a "9 dB" whip at 20 degrees.
 */
export const DEEPEST_NULL_DB = 20;
const MAX_ELEMENTS = 16;
/** Panels of Simpson's rule for the directivity: 25 to the narrowest lobe there is. */
const PANELS = 400;

/**
 * Power towards an elevation over the power straight across, 0 to about 1: the ideal pattern with its nulls.
 * @throws RangeError for an antenna outside its spans or an elevation outside -90 to 90
 */
export function patternShare(antenna: CollinearAntenna, elevationDeg: number): number {
  requireAntenna(antenna);
  requireSpan('An elevation', elevationDeg, -90, 90);
  return shareAt(antenna, Math.sin(radians(elevationDeg)));
}

/** Directivity straight across, dBi, by integration over the sphere: the gain of a lossless antenna. @throws RangeError */
export function collinearGainDbi(antenna: CollinearAntenna): number {
  requireAntenna(antenna);
  // Over u = sin(elevation) the sphere is even; Simpson's rule on one half.
  let sum = 0;
  for (let i = 0; i <= PANELS; i += 1) {
    const weight = i === 0 || i === PANELS ? 1 : 2 + 2 * (i % 2);
    sum += weight * shareAt(antenna, i / PANELS);
  }
  return -10 * Math.log10(sum / (3 * PANELS));
}

/** Width of the main lobe between its half-power points, degrees, by bisection. @throws RangeError */
export function halfPowerWidthDeg(antenna: CollinearAntenna): number {
  requireAntenna(antenna);
  // The share falls all the way to the first null, which lies at 1 / (N pitch) or, for one element, at the axis.
  let [inside, outside] = [0, Math.min(1, 1 / (antenna.elements * antenna.pitchWavelengths))];
  for (let i = 0; i < 60; i += 1) {
    const middle = (inside + outside) / 2;
    if (shareAt(antenna, middle) > 0.5) inside = middle;
    else outside = middle;
  }
  return (2 * Math.asin(inside) * 180) / Math.PI;
}

/** Length of the radiating part, m: a half wave, and a pitch for each further element; no end effect. @throws RangeError */
export function collinearLengthM(antenna: CollinearAntenna, wavelengthM: number): number {
  requireAntenna(antenna);
  if (!(wavelengthM > 0 && Number.isFinite(wavelengthM))) {
    throw new RangeError(`A wavelength must be above 0 m, not ${wavelengthM}.`);
  }
  return ((antenna.elements - 1) * antenna.pitchWavelengths + 0.5) * wavelengthM;
}

/** Loss against straight across at an elevation, dB, nulls filled to 20 dB. @throws RangeError */
export function tiltLossDb(antenna: CollinearAntenna, elevationDeg: number): number {
  return filled(-10 * Math.log10(patternShare(antenna, elevationDeg)));
}

/**
 * The same where only the half-power width is known: 12 (elevation / width)^2 dB, 20 at most.
 * Within 0.05 dB of the pattern inside the half-power points; outside them the true lobe falls faster, to its null.
 * @throws RangeError for a width outside 1 to 180 or an elevation outside -90 to 90
 * Source: parabola through the half-power points, as ITU-R sector patterns use it (from memory).
 */
export function tiltLossByWidthDb(widthDeg: number, elevationDeg: number): number {
  requireSpan('A beam width', widthDeg, 1, 180);
  requireSpan('An elevation', elevationDeg, -90, 90);
  return filled(12 * (elevationDeg / widthDeg) ** 2);
}

/** Elevation in the leaning antenna's own frame where the horizon lies: sin e = sin heel cos azimuth. @throws RangeError */
export function elevationSeenDeg(heel: Heel): number {
  return (Math.asin(sineSeen(heel)) * 180) / Math.PI;
}

/**
 * Loss of polarisation against an upright partner on the horizon, dB: cos^2 heel / (1 - sin^2 heel cos^2 azimuth). None
 * abeam, where the whip leans towards or away from the partner; 20 log cos heel fore and aft. Capped at 20 dB.
 * @throws RangeError
 */
export function polarisationLossDb(heel: Heel): number {
  const across = 1 - sineSeen(heel) ** 2;
  const upright = Math.cos(radians(heel.heelDeg)) ** 2;
  // Lying flat with its end to the partner it sends nothing there: the pattern has the loss, not the polarisation.
  if (across < 1e-12) return 0;
  return filled(-10 * Math.log10(upright / across));
}

/** Gain of a leaning antenna towards an upright partner on the horizon, dBi: pattern and polarisation. @throws RangeError */
export function heeledGainDbi(antenna: CollinearAntenna, heel: Heel): number {
  return collinearGainDbi(antenna) - tiltLossDb(antenna, elevationSeenDeg(heel)) - polarisationLossDb(heel);
}

/** Share by u = sin(elevation). */
function shareAt({ elements, pitchWavelengths }: CollinearAntenna, u: number): number {
  const acrossSquared = 1 - u * u;
  // Off the very end of the wire the dipole's share tends to nought.
  if (acrossSquared < 1e-12) return 0;
  const half = Math.PI * pitchWavelengths * u;
  const between = Math.sin(half);
  const array = Math.abs(between) < 1e-9 ? 1 : Math.sin(elements * half) / (elements * between);
  return (Math.cos((Math.PI / 2) * u) * array) ** 2 / acrossSquared;
}

function sineSeen({ heelDeg, azimuthDeg }: Heel): number {
  requireSpan('A heel', heelDeg, 0, 90);
  requireSpan('An azimuth', azimuthDeg, -360, 360);
  return Math.sin(radians(heelDeg)) * Math.cos(radians(azimuthDeg));
}

/** A loss between nought (rounding may leave a hair below) and the filled null. */
const filled = (lossDb: number): number => Math.min(DEEPEST_NULL_DB, Math.max(0, lossDb));
const radians = (degrees: number): number => (degrees * Math.PI) / 180;

function requireAntenna({ elements, pitchWavelengths }: CollinearAntenna): void {
  if (!Number.isInteger(elements)) throw new RangeError(`Elements must be a whole number, not ${elements}.`);
  requireSpan('Elements', elements, 1, MAX_ELEMENTS);
  requireSpan('A pitch', pitchWavelengths, 0.5, 1);
}

function requireSpan(what: string, value: number, min: number, max: number): void {
  if (!(value >= min && value <= max)) throw new RangeError(`${what} must be ${min} to ${max}, not ${value}.`);
}
