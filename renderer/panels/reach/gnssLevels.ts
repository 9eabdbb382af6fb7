import type { PathElement } from '../../../core/links/types.ts';
import type { GnssResult } from '../../../core/reach/types.ts';

/** One step of the gain from the antenna's element to the receiver's socket. */
export interface LevelStep {
  readonly label: string;
  /** Gain before and after it, dB over the element. */
  readonly fromDb: number;
  readonly toDb: number;
}

/** What loses less than this is no step of its own, dB. */
const SMALL_DB = 0.3;

/**
 * The gain step by step: up by the antenna's amplifier, down by each thing on the way. What the elements leave of the net
 * gain, such as an amplifier on the way, is a step of its own, so that the last step always ends at the net gain.
 */
export function levelSteps(
  netGainDb: number,
  amplifierDb: number | null,
  elements: readonly Pick<PathElement, 'label' | 'lossDb'>[],
): readonly LevelStep[] {
  const steps: LevelStep[] = [];
  let level = 0;
  const add = (label: string, gainDb: number): void => {
    steps.push({ label, fromDb: level, toDb: level + gainDb });
    level += gainDb;
  };
  if (amplifierDb !== null) add('amplifier in the antenna', amplifierDb);
  for (const { label, lossDb } of elements) if (lossDb >= SMALL_DB) add(label, -lossDb);
  const smallDb = elements.reduce((sum, { lossDb }) => (lossDb < SMALL_DB ? sum + lossDb : sum), 0);
  if (smallDb >= 0.05) add('plugs and the like', -smallDb);
  const left = netGainDb - level;
  if (Math.abs(left) >= 0.05) add(left > 0 ? 'amplifier on the way' : 'what else is on the way', left);
  return steps;
}

/** Where the level diagram draws what, px; gain upwards. */
export interface LevelLayout {
  readonly y: (db: number) => number;
  readonly ticks: readonly number[];
  readonly steps: readonly (LevelStep & { readonly number: number; readonly x: number; readonly width: number })[];
  /** The receiver's window, cut to the picture; null where none is known. */
  readonly window: { readonly top: number; readonly bottom: number } | null;
  readonly socketX: number;
  readonly right: number;
  readonly bottom: number;
}

export const LEVEL_LEFT = 34;
const [TOP, PLOT, SOCKET_PX] = [24, 140, 84];

/** @param width of the drawing, px */
export function levelLayout(steps: readonly LevelStep[], window: GnssResult['window'], width: number): LevelLayout {
  const marks = [0, ...steps.flatMap(({ fromDb, toDb }) => [fromDb, toDb]), window?.minDb ?? 0, window?.maxDb ?? 0];
  const low = Math.floor((Math.min(...marks) - 2) / 10) * 10;
  const high = Math.ceil((Math.max(...marks) + 2) / 10) * 10;
  const bottom = TOP + PLOT;
  const y = (db: number): number => bottom - (PLOT * (db - low)) / (high - low);
  const right = width - 4;
  const socketX = right - SOCKET_PX;
  const stepPx = (socketX - LEVEL_LEFT) / Math.max(1, steps.length);
  const apart = high - low > 60 ? 20 : 10;
  return {
    y,
    ticks: Array.from({ length: Math.floor((high - low) / apart) + 1 }, (_, index) => low + index * apart),
    steps: steps.map((step, index) => ({
      ...step,
      number: index + 1,
      x: LEVEL_LEFT + index * stepPx,
      width: stepPx,
    })),
    window:
      window === null || (window.minDb === null && window.maxDb === null)
        ? null
        : { top: y(window.maxDb ?? high), bottom: y(window.minDb ?? low) },
    socketX,
    right,
    bottom,
  };
}
