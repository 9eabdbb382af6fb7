import type { Material, Overhead } from '../model/boat.ts';
import { BLOCKED_DB } from './skyShares.ts';

/** Distances inside which an upright of this breadth costs 2 dB at L-band, m (L-band terminal installation manual, read). */
const TWO_DB_AT: readonly (readonly [breadthM: number, distanceM: number])[] = [
  [0.2, 2],
  [0.4, 9],
  [0.6, 22],
  [0.8, 40],
  [1, 65],
];
const WIDEST = [1, 65] as const;
/** What that table is for, MHz. */
const TABLE_MHZ = 1600;
/** Fresnel parameter of half the breadth at which the shadow of a strip is 2 dB deep in its middle. */
const STRIP_2_DB = 0.2319;
/** Beyond it the shadow is deeper than what counts as blocked. */
const STRIP_DARK = 4.6;
const HIGH_MHZ = 3000;

/** Up to 3 GHz, and above it, dB. */
type ThroughDb = readonly [low: number, high: number];

/** What a shell lets through. GRP, wood and cloth: common practice, no source; wet or thick ones take more. */
const THROUGH: Readonly<Record<Material, ThroughDb>> = {
  grp: [1.5, 5],
  wood: [3, 10],
  fabric: [1, 2],
  steel: [BLOCKED_DB, BLOCKED_DB],
  aluminium: [BLOCKED_DB, BLOCKED_DB],
  carbon: [BLOCKED_DB, BLOCKED_DB],
  ferrocement: [BLOCKED_DB, BLOCKED_DB],
};
/** A wet sail of woven cloth; a dry one takes next to nothing. Common practice, no source. Carbon sails block: not known here. */
const SAIL: ThroughDb = [2, 6];

const pick = ([low, high]: ThroughDb, frequencyMhz: number): number => (frequencyMhz > HIGH_MHZ ? high : low);

/** Loss through a shell of a material, dB; 20 is as good as shut. Common practice, no source. @throws RangeError for no frequency */
export function shellLossDb(material: Material, frequencyMhz: number): number {
  return pick(THROUGH[material], checked('A frequency', frequencyMhz));
}

/** Loss through what is overhead, dB: 0 in the open, 20 under metal or carbon. @throws RangeError for no frequency */
export function overheadLossDb(overhead: Overhead, frequencyMhz: number): number {
  if (overhead === 'open') return 0;
  return shellLossDb(overhead === 'metal' ? 'steel' : overhead, frequencyMhz);
}

/** Loss through a set sail, dB: wet cloth. Common practice, no source. @throws RangeError for no frequency */
export function sailLossDb(frequencyMhz: number): number {
  return pick(SAIL, checked('A frequency', frequencyMhz));
}

/**
 * Loss behind an upright of metal, dB, at most 20: what it takes of a satellite right behind it.
 * Published: the distances at which breadths of 0.2 to 1 m cost 2 dB at L-band, and 1 dB at twice the distance; breadths
 * between by their logarithms, beyond the table by the square. Farther off the loss falls as the distance grows; nearer it is
 * the shadow of a flat strip in its middle, from which the table itself is 0.25 dB off at 2 dB and 0.4 dB at 1 dB. Other frequencies by the same
 * Fresnel number, breadth squared over distance and wavelength.
 * @throws RangeError for a breadth, distance or frequency that is not above 0
 * Source: obstruction table of an L-band terminal installation manual; strip by Fresnel's integrals (textbook, from memory)
 */
export function uprightLossDb(breadthM: number, distanceM: number, frequencyMhz: number): number {
  const reachM = twoDbAtM(checked('A breadth', breadthM)) * (checked('A frequency', frequencyMhz) / TABLE_MHZ);
  const depth = reachM / checked('A distance', distanceM);
  return depth <= 1 ? 2 * depth : stripLossDb(STRIP_2_DB * Math.sqrt(depth));
}

function twoDbAtM(breadthM: number): number {
  const above = TWO_DB_AT.findIndex(([breadth]) => breadth >= breadthM);
  const [to, from] = [TWO_DB_AT[above], TWO_DB_AT[above - 1]];
  if (to && from) return from[1] * (to[1] / from[1]) ** (Math.log(breadthM / from[0]) / Math.log(to[0] / from[0]));
  const [breadth, distanceM] = to ?? WIDEST;
  return distanceM * (breadthM / breadth) ** 2;
}

/** In the middle behind a strip of half breadth v: |1 - (1 + j)(C(v) - j S(v))|, dB, at most 20. */
function stripLossDb(v: number): number {
  if (v >= STRIP_DARK) return BLOCKED_DB;
  const [c, s] = fresnel(v);
  return Math.min(BLOCKED_DB, -20 * Math.log10(Math.hypot(1 - c - s, c - s)));
}

/** Fresnel's integrals C and S from 0 to v, by Simpson's rule; good to 1e-4 up to 5. */
function fresnel(v: number): readonly [c: number, s: number] {
  const parts = 200;
  let [c, s] = [0, 0];
  for (let index = 0; index <= parts; index++) {
    const weight = index === 0 || index === parts ? 1 : index % 2 === 0 ? 2 : 4;
    const phase = (Math.PI / 2) * ((v * index) / parts) ** 2;
    c += weight * Math.cos(phase);
    s += weight * Math.sin(phase);
  }
  const step = v / parts / 3;
  return [c * step, s * step];
}

function checked(what: string, value: number): number {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${what} must be above 0, not ${value}.`);
  return value;
}
