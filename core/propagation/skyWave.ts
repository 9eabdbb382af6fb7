import { SPEED_OF_LIGHT_M_PER_S } from '../units/constants.ts';

const EARTH_RADIUS_KM = 6371.009;
/** Height at which the E layer is taken to reflect, km (P.533). */
export const E_LAYER_HEIGHT_KM = 110;
const RADIANS_PER_DEGREE = Math.PI / 180;

/** One hop as a mirror at a virtual height would make it. */
export interface HopGeometry {
  /** Angle of the ray above the horizontal at both ends, degrees. */
  readonly takeoffDeg: number;
  /** Angle of incidence at the mirror, degrees from the vertical. */
  readonly incidenceDeg: number;
  /** Secant of it: a flat layer turns back its critical frequency times this. */
  readonly secant: number;
  readonly slantPathKm: number;
  readonly delayMs: number;
}

/** What a sounding of the ionosphere, or a prediction, says of it at the middle of the hop. */
export interface Ionosphere {
  /** Critical frequency of the F2 layer, MHz: 0.5 to 25. */
  readonly foF2Mhz: number;
  /** Critical frequency of the E layer, MHz: 0 (none, as at night) to 10. */
  readonly foEMhz: number;
  /** M(3000)F2: 2 to 4. */
  readonly m3000: number;
  /** Electron gyrofrequency at 300 km, MHz: 0.5 to 2. */
  readonly gyrofrequencyMhz: number;
}

/** The highest frequency a hop by the F2 layer carries, and the figures on the way there. */
export interface F2Muf {
  readonly mufMhz: number;
  /** Longest hop by this layer, km. */
  readonly longestHopKm: number;
  /** Distance factor of the hop and of 3000 km, and the corrected M(3000): the C and B of the method. */
  readonly distanceFactor: number;
  readonly distanceFactor3000: number;
  readonly correctedM3000: number;
}

/**
 * Geometry of one hop reflected at a virtual height, over a spherical earth.
 * @param hopKm ground distance of the hop, km, 1 to `longestHopKm(virtualHeightKm)`
 * @param virtualHeightKm 60 to 1000; about 110 for the E layer, 250 to 400 for F2
 * @throws RangeError outside; a longer hop would leave below the horizon
 * Not a prediction: it says where the ray goes if the layer holds, nothing about whether it does, nor how strong the wave
 * arrives. No tilts, no multiple hops, no absorption.
 * Source: Rec. ITU-R P.533 sections 4, 5.1 and 5.2, through its published reference code.
 * Checked by: tests/published/skyWave.test.ts (57 vectors)
 */
export function hopGeometry(hopKm: number, virtualHeightKm: number): HopGeometry {
  requireHop(hopKm, longestHopKm(virtualHeightKm));
  const half = hopKm / (2 * EARTH_RADIUS_KM);
  const ratio = EARTH_RADIUS_KM / (EARTH_RADIUS_KM + virtualHeightKm);
  const takeoff = Math.atan(1 / Math.tan(half) - ratio / Math.sin(half));
  const incidence = Math.asin(ratio * Math.cos(takeoff));
  const slantPathKm = (2 * EARTH_RADIUS_KM * Math.sin(half)) / Math.cos(takeoff + half);
  return {
    takeoffDeg: takeoff / RADIANS_PER_DEGREE,
    incidenceDeg: incidence / RADIANS_PER_DEGREE,
    secant: 1 / Math.cos(incidence),
    slantPathKm,
    delayMs: (slantPathKm * 1e6) / SPEED_OF_LIGHT_M_PER_S,
  };
}

/**
 * Secant of the angle at which a ray of a given take-off meets a height, as for the E layer on the way to the F2.
 * @param takeoffDeg 0 to 90
 * @param heightKm 60 to 1000
 * @throws RangeError outside
 * Source and checks: see `hopGeometry`.
 */
export function secantAtHeight(takeoffDeg: number, heightKm: number): number {
  return 1 / Math.cos(incidenceRad(takeoffDeg, heightKm));
}

/**
 * Longest single hop by a mirror at a height, km.
 * @param leastTakeoffDeg lowest angle the antenna can use, 0 to 90; P.533 itself takes 3
 * @throws RangeError outside
 * Source and checks: see `hopGeometry`.
 */
export function longestHopKm(virtualHeightKm: number, leastTakeoffDeg = 0): number {
  const incidence = incidenceRad(leastTakeoffDeg, virtualHeightKm);
  return 2 * EARTH_RADIUS_KM * (Math.PI / 2 - leastTakeoffDeg * RADIANS_PER_DEGREE - incidence);
}

function incidenceRad(takeoffDeg: number, heightKm: number): number {
  requireSpan('takeoffDeg', takeoffDeg, 0, 90);
  requireSpan('heightKm', heightKm, 60, 1000);
  const cosine = Math.cos(takeoffDeg * RADIANS_PER_DEGREE);
  return Math.asin((EARTH_RADIUS_KM * cosine) / (EARTH_RADIUS_KM + heightKm));
}

/**
 * Basic maximum usable frequency of one hop by the F2 layer, MHz: of the median of a month when the ionosphere given is
 * that median. Honest limits: it is as good as the four figures given, which this program does not know by itself; storms
 * move it by a third and more; it says nothing of level, absorption or noise.
 * @param hopKm 1 to the longest hop by this layer, at most 4000
 * @throws RangeError outside this and the spans of `Ionosphere`
 * Source: Rec. ITU-R P.533 section 3.5.1, which is P.1240, through the published reference code.
 * Checked by: tests/published/skyWave.test.ts (36 vectors)
 */
export function f2BasicMuf(ionosphere: Ionosphere, hopKm: number): F2Muf {
  requireIonosphere(ionosphere);
  const { foF2Mhz, foEMhz, m3000: m, gyrofrequencyMhz } = ionosphere;
  const x = foEMhz > 0 ? Math.max(foF2Mhz / foEMhz, 2) : 2;
  const b = m - 0.124 + (m * m - 4) * (0.0215 + 0.005 * Math.sin(7.854 / x - 1.9635));
  const reach = 12610 + 2140 / x ** 2 - 49720 / x ** 4 + 688900 / x ** 6;
  const longest = Math.min(4780 + reach * (1 / b - 0.303), 4000);
  requireHop(hopKm, longest);
  const factor = distanceFactor(hopKm, longest);
  const factor3000 = distanceFactor(3000, longest);
  const ordinaryMhz = (1 + (factor / factor3000) * (b - 1)) * foF2Mhz;
  return {
    mufMhz: ordinaryMhz + (gyrofrequencyMhz / 2) * (1 - hopKm / longest),
    longestHopKm: longest,
    distanceFactor: factor,
    distanceFactor3000: factor3000,
    correctedM3000: b,
  };
}

function distanceFactor(hopKm: number, longestKm: number): number {
  const z = 1 - (2 * hopKm) / longestKm;
  return 0.74 + z * (-0.591 + z * (-0.424 + z * (-0.09 + z * (0.088 + z * (0.181 + z * 0.096)))));
}

/**
 * Height of the mirror that stands for the F2 layer, km, at most 500.
 * @param m3000 M(3000)F2, 2 to 4
 * @throws RangeError outside
 * Source: Rec. ITU-R P.533, through its reference code. Checked by: tests/published/skyWave.test.ts
 */
export function f2MirrorHeightKm(m3000: number): number {
  requireSpan('m3000', m3000, 2, 4);
  return Math.min(1490 / m3000 - 176, 500);
}

/**
 * Highest frequency a hop by the E layer carries, MHz; null where there is no E layer or the hop is too long for it.
 * @param foEMhz critical frequency of the E layer, 0 to 10
 * @throws RangeError outside, or for a hop below 1 km
 * Source: secant law at 110 km, Rec. ITU-R P.533. Checked by: tests/published/skyWave.test.ts
 */
export function eLayerMufMhz(foEMhz: number, hopKm: number): number | null {
  requireSpan('foEMhz', foEMhz, 0, 10);
  if (!Number.isFinite(hopKm)) throw new RangeError(`hopKm must be a finite number, not ${hopKm}.`);
  if (foEMhz === 0 || hopKm > longestHopKm(E_LAYER_HEIGHT_KM)) return null;
  return foEMhz * hopGeometry(hopKm, E_LAYER_HEIGHT_KM).secant;
}

/**
 * Frequency below which the E layer keeps a ray from the F2, MHz; 0 without an E layer.
 * @param takeoffDeg of the ray that would go by the F2 layer, 0 to 90
 * @throws RangeError outside
 * Source: 1.05 foE sec i at 110 km, Rec. ITU-R P.533, through its reference code.
 */
export function eLayerScreeningMhz(foEMhz: number, takeoffDeg: number): number {
  requireSpan('foEMhz', foEMhz, 0, 10);
  return 1.05 * foEMhz * secantAtHeight(takeoffDeg, E_LAYER_HEIGHT_KM);
}

/**
 * Frequency to work on so that it holds on most days of the month, MHz: 0.85 of the monthly median maximum.
 * @throws RangeError for what is not a positive number
 * Source: US federal glossary of telecommunication terms. The tables of P.1239 are finer.
 */
export function workingFrequencyMhz(mufMhz: number): number {
  requireSpan('mufMhz', mufMhz, Number.MIN_VALUE, 1000);
  return 0.85 * mufMhz;
}

function requireIonosphere({ foF2Mhz, foEMhz, m3000, gyrofrequencyMhz }: Ionosphere): void {
  requireSpan('foF2Mhz', foF2Mhz, 0.5, 25);
  requireSpan('foEMhz', foEMhz, 0, 10);
  requireSpan('m3000', m3000, 2, 4);
  requireSpan('gyrofrequencyMhz', gyrofrequencyMhz, 0.5, 2);
}

function requireHop(hopKm: number, longestKm: number): void {
  if (hopKm >= 1 && hopKm <= longestKm) return;
  throw new RangeError(`One hop by this layer spans 1 to ${Math.floor(longestKm)} km, not ${hopKm}.`);
}

function requireSpan(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low} to ${high}, not ${value}.`);
}
