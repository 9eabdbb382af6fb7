import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import type { LevelCurve } from '../../../core/reach/levelCurve.ts';
import type { LevelPoint } from '../../../core/reach/types.ts';

/** Room left of the plot for the figures of the level axis, right of it, and height of the plot, px. */
export const LEFT_PX = 38;
export const RIGHT_PX = 10;
export const PLOT_PX = 176;

export type LevelScale = ScaleLinear<number, number>;

/** Level axis: down to where the curve ends, or below what is needed; up to what it has close by, where it is steepest. */
export function levelScale({ points, sensitivityDbm, dependableDbm }: LevelCurve, top: number): LevelScale {
  const early = points[Math.floor(points.length / 25)]?.levelDbm ?? sensitivityDbm + 60;
  const last = points.at(-1)?.levelDbm ?? sensitivityDbm - 10;
  return scaleLinear()
    .domain([Math.min(sensitivityDbm - 14, last), Math.max(early, dependableDbm + 10)])
    .nice(5)
    .range([top + PLOT_PX, top]);
}

/** A curve as an SVG path; with gaps where it gives no level. */
export function curvePath(
  points: readonly LevelPoint[],
  levelOf: (point: LevelPoint) => number | null,
  x: (km: number) => number,
  y: (dbm: number) => number,
): string {
  const draw = line<LevelPoint>()
    .defined((point) => levelOf(point) !== null)
    .x((point) => x(point.distanceKm))
    .y((point) => y(levelOf(point) ?? 0));
  return draw([...points]) ?? '';
}

/** What lies within the tolerances of a curve, as an SVG path. */
export function bandPath(points: readonly LevelPoint[], x: (km: number) => number, y: (dbm: number) => number): string {
  const draw = area<LevelPoint>()
    .x((point) => x(point.distanceKm))
    .y0((point) => y(point.lowDbm))
    .y1((point) => y(point.highDbm));
  return draw([...points]) ?? '';
}

/** Whether a curve knows more than its smooth line: the sea's reflection, or what the air scatters. */
export const hasFine = ({ points }: LevelCurve): boolean =>
  points.some(({ twoRayDbm, scatterDbm }) => twoRayDbm !== null || scatterDbm !== null);
