import type { PartOf } from '../model/part.ts';
import { LEAST_HEIGHT_M } from '../propagation/sphericalEarth.ts';
import {
  type CollinearAntenna,
  elevationSeenDeg,
  type Heel,
  polarisationLossDb,
  tiltLossByWidthDb,
  tiltLossDb,
} from '../rf/pattern.ts';
import type { TrialState } from './types.ts';

/** What leaning takes from an antenna towards the horizon. */
export interface Lean {
  /** Heel at which the most is lost, roll included, degrees; above 0 to starboard. */
  readonly worstHeelDeg: number;
  /** Elevation of the horizon in the antenna's own frame there, degrees. */
  readonly elevationDeg: number;
  readonly tiltDb: number;
  readonly tiltToleranceDb: number;
  readonly polarisationDb: number;
}

const UPRIGHT: Lean = { worstHeelDeg: 0, elevationDeg: 0, tiltDb: 0, tiltToleranceDb: 0, polarisationDb: 0 };
/** Step between the angles tried on either side of the heel, degrees: well below the narrowest lobe there is. */
const ROLL_STEP_DEG = 1;

/** @throws RangeError for a state outside the spans of `TrialState` */
export function requireTrialState(state: TrialState): void {
  requireSpan('A heel', state.heelDeg, -60, 60);
  requireSpan('A roll', state.rollDeg, 0, 45);
  requireSpan('A bearing', state.bearingDeg, 0, 360);
  if (![50, 90, 99].includes(state.timePercent))
    throw new RangeError(`The share of the time is 50, 90 or 99 per cent, not ${state.timePercent}.`);
}

/**
 * Pattern and polarisation at the worst angle of the roll, towards a station on the horizon with an upright antenna. By the
 * half waves of the antenna where they are known, else by its half-power width. Rolling is not monotone: a lobe beside
 * the null can make a greater angle lose less, so every degree of the roll is tried. A helicopter is taken to be on the horizon too.
 * Polarisation is lost by vertical antennas only; the partner's is taken as vertical.
 */
export function leanOf(state: TrialState, antenna: PartOf<'antenna'>): Lean {
  const { heelDeg, rollDeg, bearingDeg } = state;
  if (heelDeg === 0 && rollDeg === 0) return UPRIGHT;
  // In steps from the heel outwards, so that a wider roll tries all that a narrower one did.
  const offsets = Array.from({ length: Math.floor(rollDeg / ROLL_STEP_DEG) + 1 }, (_, i) => i * ROLL_STEP_DEG);
  return [...offsets, rollDeg]
    .flatMap((offset) => [heelDeg + offset, heelDeg - offset])
    .map((angle) => leanAt(Math.min(90, Math.max(-90, angle)), bearingDeg, antenna))
    .reduce((worst, lean) => (lostDb(lean) > lostDb(worst) ? lean : worst));
}

/**
 * Height of an antenna when the boat heels about the waterline amidships, m: z cos h + y sin h. Heeling to starboard lifts
 * what stands to port. Never below the least height the sea model takes.
 */
export function heeledHeightM(heelDeg: number, yM: number, zM: number): number {
  const heel = (heelDeg * Math.PI) / 180;
  return Math.max(LEAST_HEIGHT_M, zM * Math.cos(heel) + yM * Math.sin(heel));
}

const lostDb = ({ tiltDb, polarisationDb }: Lean): number => tiltDb + polarisationDb;

function leanAt(worstHeelDeg: number, bearingDeg: number, antenna: PartOf<'antenna'>): Lean {
  // The antenna leans to starboard, bearing 90; that it may lean to port instead makes no odds to either formula.
  const heel: Heel = { heelDeg: Math.abs(worstHeelDeg), azimuthDeg: bearingDeg - 90 };
  const elevationDeg = elevationSeenDeg(heel);
  const polarisationDb = antenna.traits.polarisation === 'vertical' ? polarisationLossDb(heel) : 0;
  return { worstHeelDeg, elevationDeg, ...tiltOf(antenna, elevationDeg), polarisationDb };
}

function tiltOf({ figures }: PartOf<'antenna'>, elevationDeg: number): Pick<Lean, 'tiltDb' | 'tiltToleranceDb'> {
  const stack = stackOf(figures);
  if (stack) {
    const { tolerance } = figures.pitchWavelengths ?? { tolerance: 0 };
    const at = (offset: number): number => {
      const pitchWavelengths = Math.min(1, Math.max(0.5, stack.pitchWavelengths + offset));
      return tiltLossDb({ ...stack, pitchWavelengths }, elevationDeg);
    };
    return spread(at(0), at(-tolerance), at(tolerance));
  }
  const { value, tolerance } = figures.hpbwDeg;
  const at = (widthDeg: number): number => tiltLossByWidthDb(Math.min(180, Math.max(1, widthDeg)), elevationDeg);
  return spread(at(value), at(value - tolerance), at(value + tolerance));
}

const spread = (tiltDb: number, a: number, b: number) => ({
  tiltDb,
  tiltToleranceDb: Math.max(Math.abs(a - tiltDb), Math.abs(b - tiltDb)),
});

/** The half waves of an antenna, where it states some that the pattern can be reckoned for. */
export function stackOf({ elements, pitchWavelengths }: PartOf<'antenna'>['figures']): CollinearAntenna | null {
  if (!elements || !pitchWavelengths) return null;
  const isKnown = Number.isInteger(elements.value) && elements.value >= 1 && elements.value <= 16;
  const isPitch = pitchWavelengths.value >= 0.5 && pitchWavelengths.value <= 1;
  return isKnown && isPitch ? { elements: elements.value, pitchWavelengths: pitchWavelengths.value } : null;
}

function requireSpan(what: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new RangeError(`${what} must be ${low} to ${high}, not ${value}.`);
}
