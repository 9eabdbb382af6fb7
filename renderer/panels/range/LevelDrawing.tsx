import { useId } from 'react';
import type { LevelCurve } from '../../../core/reach/levelCurve.ts';
import type { RangeResult } from '../../../core/reach/types.ts';
import { useFormat } from '../../ui/text.ts';
import { ChartAxes } from './ChartAxes.tsx';
import { ChartMark, ChartThresholds } from './ChartMarks.tsx';
import { bandPath, curvePath, LEFT_PX, type LevelScale, PLOT_PX, RIGHT_PX } from './chartLayout.ts';
import type { RangeMark } from './marks.ts';
import type { DistanceScale } from './scale.ts';
import { curveSummary } from './summary.ts';

/** Where things of the chart are, px. */
export interface ChartFrame {
  readonly distance: DistanceScale;
  readonly level: LevelScale;
  readonly top: number;
  readonly width: number;
}

/** The chart as a picture: axes, curves, thresholds and distances. */
export function LevelDrawing({
  frame,
  curve,
  restCurve,
  marks,
  isFine,
  range,
  stationName,
}: {
  frame: ChartFrame;
  curve: LevelCurve;
  restCurve: LevelCurve | null;
  marks: readonly RangeMark[];
  isFine: boolean;
  range: RangeResult;
  stationName: string;
}) {
  const { rich } = useFormat();
  const id = useId();
  const { level, top, width } = frame;
  return (
    <svg width={width} height={top + PLOT_PX + 34} role="img" aria-labelledby={`${id}t ${id}d`}>
      <title id={`${id}t`}>{`Level against distance to ${stationName}`}</title>
      <desc id={`${id}d`}>{rich(curveSummary(range, curve, stationName))}</desc>
      <clipPath id={`${id}c`}>
        <rect x={LEFT_PX} y={top} width={Math.max(0, width - RIGHT_PX - LEFT_PX)} height={PLOT_PX} />
      </clipPath>
      <ChartAxes {...frame} />
      <g clipPath={`url(#${id}c)`}>
        <Curves frame={frame} curve={curve} restCurve={restCurve} isFine={isFine} />
      </g>
      {marks.map((mark) => (
        <ChartMark key={mark.kind} mark={mark} bottom={top + PLOT_PX} />
      ))}
      <ChartThresholds curve={curve} y={level} right={width - RIGHT_PX} />
    </svg>
  );
}

/**
 * The upright curve is set against the thresholds that are drawn, because trying may change which receiver gives out
 * first.
 */
function Curves({
  frame: { distance, level },
  curve,
  restCurve,
  isFine,
}: {
  frame: ChartFrame;
  curve: LevelCurve;
  restCurve: LevelCurve | null;
  isFine: boolean;
}) {
  const { points, sensitivityDbm } = curve;
  const liftDb = restCurve ? sensitivityDbm - restCurve.sensitivityDbm : 0;
  return (
    <>
      <path className="chart-band" d={bandPath(points, distance.x, level)} />
      {restCurve ? (
        <path
          className="chart-rest"
          d={curvePath(restCurve.points, (point) => point.levelDbm + liftDb, distance.x, level)}
        />
      ) : null}
      {isFine ? (
        <>
          <path className="chart-fine" d={curvePath(points, (point) => point.twoRayDbm, distance.x, level)} />
          <path className="chart-scatter" d={curvePath(points, (point) => point.scatterDbm, distance.x, level)} />
        </>
      ) : null}
      <path className="chart-curve" d={curvePath(points, (point) => point.levelDbm, distance.x, level)} />
    </>
  );
}
