import { scaleLinear } from 'd3-scale';
import type { RangeResult } from '../../../core/reach/types.ts';
import { KM_PER_NM } from '../../../core/units/constants.ts';
import type { UnitPreferences } from '../../../core/units/preferences.ts';

/** Distances on one line, px, with round ticks in the reader's own unit. */
export interface DistanceScale {
  readonly x: (km: number) => number;
  readonly endKm: number;
  readonly ticks: readonly { readonly x: number; readonly shown: number }[];
}

/** The farthest thing a result has to show, km. */
export function farthestKm(results: readonly RangeResult[]): number {
  return Math.max(1, ...results.map(({ horizonKm, typical }) => Math.max(horizonKm, typical.highKm)));
}

/** A scale from 0 to a round distance at or beyond the farthest. */
export function distanceScale(
  farKm: number,
  left: number,
  right: number,
  preferences: UnitPreferences,
  tickCount = 6,
): DistanceScale {
  const perUnit = preferences.distance === 'nm' ? KM_PER_NM : 1;
  const scale = scaleLinear()
    .domain([0, farKm / perUnit])
    .nice(tickCount)
    .range([left, right]);
  const [, end = farKm / perUnit] = scale.domain();
  return {
    x: (km) => scale(km / perUnit),
    endKm: end * perUnit,
    ticks: scale.ticks(tickCount).map((shown) => ({ x: scale(shown), shown })),
  };
}
