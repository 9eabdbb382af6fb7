import { memo, useMemo, useRef, useState } from 'react';
import type { PathBudget } from '../../../core/links/types.ts';
import type { Project, Station } from '../../../core/model/project.ts';
import { type LevelCurve, levelCurve } from '../../../core/reach/levelCurve.ts';
import type { RangeResult, TrialState } from '../../../core/reach/types.ts';
import { useElementSize } from '../../canvas/useElementSize.ts';
import { useApp } from '../../store/context.ts';
import { useFormat } from '../../ui/text.ts';
import { ChartKey } from './ChartKey.tsx';
import { ChartReading } from './ChartReading.tsx';
import { hasFine, LEFT_PX, levelScale, RIGHT_PX } from './chartLayout.ts';
import { type ChartFrame, LevelDrawing } from './LevelDrawing.tsx';
import { LANE_PX, rangeMarks } from './marks.ts';
import { distanceScale, farthestKm } from './scale.ts';
import { isTried } from './trial.ts';

interface LevelChartProps {
  readonly project: Project;
  readonly paths: readonly PathBudget[];
  readonly upright: RangeResult;
  readonly tried: RangeResult;
  readonly state: TrialState;
  readonly station: Station;
}

/** Level against distance as the boat is tried, what it is held against, and the three distances that follow. */
export const LevelChart = memo(function LevelChart(props: LevelChartProps) {
  const { upright, tried, station } = props;
  const { quantity } = useFormat();
  const preferences = useApp((state) => state.preferences);
  const [wantsFine, setFine] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const width = useElementSize(box)?.width ?? 400;
  const right = width - RIGHT_PX;
  const distance = distanceScale(farthestKm([upright, tried]), LEFT_PX, right, preferences, 8);
  const { curve, restCurve } = useCurves(props, distance.endKm, wantsFine);
  const { marks, lanes } = rangeMarks(tried, distance.x, (km) => quantity(km, 'km'), [LEFT_PX, right]);
  const top = lanes * LANE_PX + 4;
  const frame: ChartFrame = { distance, level: levelScale(curve, top), top, width };
  const isFine = wantsFine && hasFine(curve);
  return (
    <section className="panel-section">
      <h3 className="heading">Level against distance, {station.name}</h3>
      <div ref={box} className="chart">
        <LevelDrawing {...{ frame, curve, restCurve, marks, isFine }} range={tried} stationName={station.name} />
        <ChartReading {...frame} curve={curve} />
      </div>
      <ChartKey curve={curve} hasRest={restCurve !== null} wantsFine={wantsFine} onFine={setFine} />
      <p className="small soft">{footnote(props.state.timePercent, tried, station)}</p>
    </section>
  );
});

function footnote(timePercent: number, range: RangeResult, station: Station): string {
  const level = timePercent === 50 ? 'Median level' : `Level that holds ${timePercent} % of the time`;
  const where = range.limitedBy === 'transmit' ? `the receiver of ${station.name}` : 'your own receiver';
  return `${level} at ${where}, the end that gives out first; smooth sea, no ducting.`;
}

/** The curve as tried and, when anything is, the one upright; over the span of the axis. */
function useCurves(
  { project, paths, upright, state }: LevelChartProps,
  endKm: number,
  isFine: boolean,
): { readonly curve: LevelCurve; readonly restCurve: LevelCurve | null } {
  const curve = useMemo(
    () => levelCurve(project, paths, upright, { ...spanTo(endKm, isFine), state }),
    [project, paths, upright, endKm, state, isFine],
  );
  const restCurve = useMemo(
    () => (isTried(state) ? levelCurve(project, paths, upright, spanTo(endKm, false)) : null),
    [project, paths, upright, endKm, state],
  );
  return { curve, restCurve };
}

/** The lobes close in need more points than the smooth curve. */
function spanTo(endKm: number, isFine: boolean) {
  const points = isFine ? 600 : 100;
  return { fromKm: endKm / points, toKm: endKm, points };
}
