import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { useId, useMemo, useRef } from 'react';
import type { Project, Station } from '../../../core/model/project.ts';
import { type LevelCurve, levelCurve } from '../../../core/reach/levelCurve.ts';
import type { LevelPoint, RangeResult } from '../../../core/reach/types.ts';
import { formatNumber } from '../../../core/units/format.ts';
import { useElementSize } from '../../canvas/useElementSize.ts';
import { useApp } from '../../store/context.ts';
import { useFormat } from '../../ui/text.ts';
import { bareNumber, symbolOf } from '../pathLoss/figures.ts';
import { LANE_PX, type RangeMark, rangeMarks } from './marks.ts';
import { type DistanceScale, distanceScale, farthestKm } from './scale.ts';
import { curveSummary } from './summary.ts';

const LEFT = 38;
const RIGHT = 10;
const PLOT = 170;

/** Median level against distance, with the two levels it is held against and the three distances that follow. */
export function LevelChart({ project, result, station }: { project: Project; result: RangeResult; station: Station }) {
  const { rich, quantity } = useFormat();
  const preferences = useApp((state) => state.preferences);
  const titleId = useId();
  const box = useRef<HTMLDivElement>(null);
  const width = useElementSize(box)?.width ?? 400;
  const right = width - RIGHT;
  const distance = distanceScale(farthestKm([result]), LEFT, right, preferences, 8);
  const { endKm } = distance;
  const curve = useMemo(
    () => levelCurve(project, result, { fromKm: endKm / 100, toKm: endKm, points: 100 }),
    [project, result, endKm],
  );
  const { marks, lanes } = rangeMarks(result, distance.x, (km) => quantity(km, 'km'), [LEFT, right]);
  const top = lanes * LANE_PX + 4;
  const level = levelScale(curve, top);
  return (
    <section className="panel-section">
      <h3 className="heading">Level against distance, {station.name}</h3>
      <div ref={box} className="chart">
        <svg width={width} height={top + PLOT + 34} role="img" aria-labelledby={`${titleId} ${titleId}-d`}>
          <title id={titleId}>{`Level against distance to ${station.name}`}</title>
          <desc id={`${titleId}-d`}>{rich(curveSummary(result, curve, station.name))}</desc>
          <Axes distance={distance} level={level} top={top} width={width} />
          <path className="chart-curve" d={curvePath(curve.points, distance.x, level)} />
          {marks.map((mark) => (
            <Mark key={mark.kind} mark={mark} bottom={top + PLOT} />
          ))}
          <Levels result={result} curve={curve} y={level} right={right} />
        </svg>
      </div>
      <p className="small soft">
        Median level at {result.limitedBy === 'transmit' ? `the receiver of ${station.name}` : 'your own receiver'}, the
        end that gives out first; smooth sea, no ducting.
      </p>
    </section>
  );
}

type LevelScale = ScaleLinear<number, number>;

/** The curve as far up as the axis goes; closer by it only gets steeper. */
function curvePath(points: readonly LevelPoint[], x: (km: number) => number, level: LevelScale): string {
  const [, high = 0] = level.domain();
  const draw = line<LevelPoint>()
    .x((point) => x(point.distanceKm))
    .y((point) => level(point.levelDbm));
  return draw(points.filter((point) => point.levelDbm <= high)) ?? '';
}

function Axes({
  distance,
  level,
  top,
  width,
}: {
  distance: DistanceScale;
  level: LevelScale;
  top: number;
  width: number;
}) {
  const preferences = useApp((state) => state.preferences);
  const [right, bottom] = [width - RIGHT, top + PLOT];
  return (
    <g>
      {level.ticks(5).map((dbm) => (
        <g key={dbm}>
          <path className="range-grid" d={`M${LEFT} ${level(dbm)}H${right}`} />
          <text className="range-tick" x={LEFT - 5} y={level(dbm) + 4} textAnchor="end">
            {bareNumber(dbm, 'dBm', preferences, 0)}
          </text>
        </g>
      ))}
      {distance.ticks.map((tick) => (
        <g key={tick.shown}>
          <path className="range-grid" d={`M${tick.x} ${top}V${bottom}`} />
          <text className="range-tick" x={tick.x} y={bottom + 14} textAnchor="middle">
            {formatNumber(tick.shown, Number.isInteger(tick.shown) ? 0 : 1, preferences)}
          </text>
        </g>
      ))}
      <text className="range-tick" x={right} y={bottom + 28} textAnchor="end">
        distance, {symbolOf('km', preferences)}
      </text>
      <text className="range-tick" x={0} y={bottom + 28}>
        level, dBm
      </text>
      <path className="chart-frame" d={`M${LEFT} ${top}V${bottom}H${right}`} />
    </g>
  );
}

/** Level axis: down to where the curve ends, or below what is needed; up to what it has close by, where it is steepest. */
function levelScale({ points, sensitivityDbm, dependableDbm }: LevelCurve, top: number): LevelScale {
  const early = points[Math.floor(points.length / 25)]?.levelDbm ?? sensitivityDbm + 60;
  const last = points.at(-1)?.levelDbm ?? sensitivityDbm - 10;
  return scaleLinear()
    .domain([Math.min(sensitivityDbm - 14, last), Math.max(early, dependableDbm + 10)])
    .nice(5)
    .range([top + PLOT, top]);
}

function Mark({ mark, bottom }: { mark: RangeMark; bottom: number }) {
  const y = mark.lane * LANE_PX + 12;
  return (
    <g>
      <path className={`chart-mark chart-mark--${mark.kind}`} d={`M${mark.atX} ${y + 4}V${bottom}`} />
      <text className="chart-tag" x={mark.left + 2} y={y}>
        {mark.text}
      </text>
    </g>
  );
}

/** The upper line has its words above it and the lower one below, so they cannot meet however small the margin is. */
function Levels({
  result,
  curve: { sensitivityDbm, dependableDbm },
  y,
  right,
}: {
  result: RangeResult;
  curve: LevelCurve;
  y: (dbm: number) => number;
  right: number;
}) {
  const { quantity } = useFormat();
  return (
    <g>
      {result.marginDb > 0 ? (
        <>
          <path className="chart-level chart-level--margin" d={`M${LEFT} ${y(dependableDbm)}H${right}`} />
          <text className="chart-tag" x={right - 2} y={y(dependableDbm) - 5} textAnchor="end">
            with {quantity(result.marginDb, 'dB', 1)} margin, {quantity(dependableDbm, 'dBm', 0)}
          </text>
        </>
      ) : null}
      <path className="chart-level" d={`M${LEFT} ${y(sensitivityDbm)}H${right}`} />
      <text className="chart-tag" x={LEFT + 4} y={y(sensitivityDbm) + 14}>
        sensitivity, {quantity(sensitivityDbm, 'dBm', 0)}
      </text>
    </g>
  );
}
