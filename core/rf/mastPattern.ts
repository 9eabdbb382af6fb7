import { SPEED_OF_LIGHT_M_PER_S } from '../units/constants.ts';
import { besselFunctions } from './bessel.ts';
import { type CollinearAntenna, collinearGainDbi, patternShare } from './pattern.ts';

/** An upright antenna and the upright round conductor beside it: a mast, a pole, a stay. */
export interface BesideConductor {
  /** 30 to 500 MHz. */
  readonly frequencyMhz: number;
  /** Of the conductor, m: 0.002 to 1. */
  readonly diameterM: number;
  /** From axis to axis, m: more than half the diameter, 5 at most. */
  readonly axisToAxisM: number;
  readonly antenna: CollinearAntenna;
}

/** What the conductor makes of the antenna's gain along the horizon, lossless. */
export interface MastPattern {
  /** Gain, dBi, every 5 degrees from straight away from the conductor (first) to over it (last); the other half mirrors it. */
  readonly gainsDbi: readonly number[];
  /** Without the conductor, dBi. */
  readonly freeGainDbi: number;
  /** Weakest direction against the antenna alone, dB (below 0), and its angle from straight away, degrees 0 to 180. */
  readonly leastDb: number;
  readonly leastDeg: number;
  readonly bestDb: number;
  /** Whole width of the directions that lose more than 3 dB, degrees, in steps of 5. */
  readonly shadowDeg: number;
  /** Feed resistance over that of the antenna alone. */
  readonly feedRatio: number;
}

export const MAST_STEP_DEG = 5;
/** Conductor there must be above and below the middle of the antenna for the formula, m. */
export const CONDUCTOR_ENDS_M = 1;
const SHADOW_DB = 3;
/** Panels of Simpson's rule over half the sphere. */
const PANELS = 80;

/**
 * Pattern along the horizon and feed resistance of an antenna beside an endless round conductor.
 * @throws RangeError outside the spans of `BesideConductor`, or for an antenna outside those of `CollinearAntenna`
 * Validity: upright conductor that goes on for a metre above and below the antenna's middle, nothing else near; see
 * `conductorBeside`. The feed resistance is right to 5 per cent; its reactance is not given.
 * Source: field of a current beside a conducting cylinder, T = sum of e_n j^n cos(n phi) [J_n(kr) - J_n(ka) H_n(kr) / H_n(ka)],
 * k times the sine of the angle from the axis (classical series, from memory). The mean over the azimuth is the sum of
 * e_n |b_n|^2. Checked by: tests/published/mastPattern.test.ts (method of moments, worst 0.6 dB)
 */
export function mastPattern(given: BesideConductor): MastPattern {
  requireSpans(given);
  const { frequencyMhz, antenna } = given;
  const k = (2 * Math.PI * frequencyMhz * 1e6) / SPEED_OF_LIGHT_M_PER_S;
  const freeGainDbi = collinearGainDbi(antenna);
  let [withIt, alone] = [0, 0];
  // At the very end of the wire (u = 1) nothing is sent.
  for (let i = 0; i < PANELS; i += 1) {
    const u = i / PANELS;
    const weight = i === 0 ? 1 : 2 + 2 * (i % 2);
    const share = weight * patternShare(antenna, (Math.asin(u) * 180) / Math.PI);
    alone += share;
    withIt += share * meanOf(terms(given, k * Math.sqrt(1 - u * u)));
  }
  const feedRatio = withIt / alone;
  const across = terms(given, k);
  const gainsDbi = Array.from(
    { length: 180 / MAST_STEP_DEG + 1 },
    (_, i) => freeGainDbi + 10 * Math.log10(powerAt(across, (i * MAST_STEP_DEG * Math.PI) / 180) / feedRatio),
  );
  return { gainsDbi, freeGainDbi, feedRatio, ...summaryOf(gainsDbi, freeGainDbi) };
}

/** How much of a conductor stands beside an antenna; the formula is for `beside`, the effect is nought for `clear`. */
export type ConductorReach = 'beside' | 'at-its-end' | 'clear';

/**
 * Whether an upright conductor from foot to top stands beside an antenna from its lower to its upper end. Above the top the
 * effect is 0.2 dB and less (method of moments); where the conductor ends within a metre of the middle it lies in between.
 * @throws RangeError when a top is below its foot or a height is no number
 */
export function conductorBeside(
  antenna: { readonly lowM: number; readonly highM: number },
  conductor: { readonly lowM: number; readonly highM: number },
): ConductorReach {
  const heightsM = [antenna.lowM, antenna.highM, conductor.lowM, conductor.highM];
  if (!heightsM.every(Number.isFinite)) throw new RangeError('Heights must be finite numbers.');
  if (!(antenna.highM >= antenna.lowM && conductor.highM >= conductor.lowM))
    throw new RangeError('The top of an antenna and of a conductor must not be below its foot.');
  if (antenna.lowM >= conductor.highM || antenna.highM <= conductor.lowM) return 'clear';
  const middleM = (antenna.lowM + antenna.highM) / 2;
  const isLong = conductor.highM >= middleM + CONDUCTOR_ENDS_M && conductor.lowM <= middleM - CONDUCTOR_ENDS_M;
  return isLong ? 'beside' : 'at-its-end';
}

/** Real and imaginary part of what multiplies e_n j^n cos(n phi), by order. */
type Terms = readonly (readonly [re: number, im: number])[];

function terms({ diameterM, axisToAxisM }: BesideConductor, kappa: number): Terms {
  const [outer, inner] = [kappa * axisToAxisM, (kappa * diameterM) / 2];
  const orders = Math.ceil(outer + 6 * Math.cbrt(outer) + 12);
  const far = besselFunctions(orders, outer);
  const near = besselFunctions(orders, Math.max(inner, 1e-6));
  return far.j.map((j, n) => {
    const [y, ja, ya] = [far.y[n] ?? 0, near.j[n] ?? 0, near.y[n] ?? 0];
    // J_n(ka) H_n(kr) / H_n(ka) with H = J - jY; where Y is beyond all bounds nothing is scattered any more.
    const size = ja * ja + ya * ya;
    if (!(size < 1e200)) return [j, 0];
    return [j - (ja * (j * ja + y * ya)) / size, (ja * (y * ja - j * ya)) / size];
  });
}

const weightOf = (n: number): number => (n === 0 ? 1 : 2);

/** Mean over the azimuth of |T|^2. */
function meanOf(found: Terms): number {
  return found.reduce((sum, [re, im], n) => sum + weightOf(n) * (re * re + im * im), 0);
}

/** |T|^2 towards an azimuth. */
function powerAt(found: Terms, azimuthRad: number): number {
  let [re, im] = [0, 0];
  for (const [n, term] of found.entries()) {
    const share = weightOf(n) * Math.cos(n * azimuthRad);
    // Times j^n: a quarter turn per order.
    const [a, b] = QUARTER_TURNS[n % 4] ?? [1, 0];
    re += share * (a * term[0] - b * term[1]);
    im += share * (a * term[1] + b * term[0]);
  }
  return re * re + im * im;
}

const QUARTER_TURNS: readonly (readonly [number, number])[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

function summaryOf(
  gainsDbi: readonly number[],
  freeGainDbi: number,
): Pick<MastPattern, 'leastDb' | 'leastDeg' | 'bestDb' | 'shadowDeg'> {
  const least = Math.min(...gainsDbi);
  const last = gainsDbi.length - 1;
  // Ahead and astern stand once on the whole circle, every other direction twice.
  const steps = gainsDbi.reduce(
    (sum, gain, i) => sum + (gain < freeGainDbi - SHADOW_DB ? (i === 0 || i === last ? 1 : 2) : 0),
    0,
  );
  return {
    leastDb: least - freeGainDbi,
    leastDeg: gainsDbi.indexOf(least) * MAST_STEP_DEG,
    bestDb: Math.max(...gainsDbi) - freeGainDbi,
    shadowDeg: steps * MAST_STEP_DEG,
  };
}

function requireSpans({ frequencyMhz, diameterM, axisToAxisM }: BesideConductor): void {
  requireSpan('frequencyMhz', frequencyMhz, 30, 500);
  requireSpan('diameterM', diameterM, 0.002, 1);
  requireSpan('axisToAxisM', axisToAxisM, 0, 5);
  if (axisToAxisM <= diameterM / 2)
    throw new RangeError(`axisToAxisM must be more than half the diameter, ${diameterM / 2}, not ${axisToAxisM}.`);
}

function requireSpan(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low} to ${high}, not ${value}.`);
}
