import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { useId, useMemo, useRef } from 'react';
import { textWidth } from '../../../core/drawing/textWidth.ts';
import { levelCurve } from '../../../core/links/levelCurve.ts';
import type { LevelPoint, RangeResult } from '../../../core/links/types.ts';
import type { Project, Station } from '../../../core/model/project.ts';
import { useElementSize } from '../../canvas/useElementSize.ts';
import { useApp } from '../../store/context.ts';
import { useFormat } from '../../ui/text.ts';
import { bareNumber, symbolOf } from '../pathLoss/figures.ts';
import { inLanes, laneCount } from './lanes.ts';
import { distanceScale, farthestKm } from './scale.ts';
import { curveSummary } from './summary.ts';

const LEFT = 38;
const RIGHT = 10;
const PLOT = 170;
const LANE = 16;
const TEXT = 12;

/** Median level against distance, with the two levels it is held against and the three distances that follow. */
export function LevelChart({ project, result, station }: { project: Project; result: RangeResult; station: Station }) {
  const { rich, quantity } = useFormat();
  const preferences = useApp((state) => state.preferences);
  const titleId = useId();
  const box = useRef<HTMLDivElement>(null);
  const width = useElementSize(box)?.width ?? 400;
  const distance = distanceScale(farthestKm([result]), LEFT, width - RIGHT, preferences, 8);
  const { endKm } = distance;
  const curve = useMemo(
    () => levelCurve(project, result, { fromKm: endKm / 100, toKm: endKm, points: 100 }),
    [project, result, endKm],
  );
  const marks = markTags(result, (km) => quantity(km, 'km')).map((mark) => ({ ...mark, atX: distance.x(mark.km) }));
  const placed = inLanes(marks, LEFT, width - RIGHT);
  const top = laneCount(placed) * LANE + 4;
  const level = levelScale(curve.points, curve.sensitivityDbm, curve.dependableDbm, top);
  const bottom = top + PLOT;
  const path = line<LevelPoint>()
    .x((point) => distance.x(point.distanceKm))
    .y((point) => level(point.levelDbm))(curve.points.filter((point) => point.levelDbm <= (level.domain()[1] ?? 0)));
  return (
    <section className="panel-section">
      <h3 className="heading">Level against distance, {station.name}</h3>
      <div ref={box} className="chart">
        <svg width={width} height={bottom + 34} role="img" aria-labelledby={`${titleId} ${titleId}-d`}>
          <title id={titleId}>{`Level against distance to ${station.name}`}</title>
          <desc id={`${titleId}-d`}>{rich(curveSummary(result, curve, station.name))}</desc>
          {level.ticks(5).map((dbm) => (
            <g key={dbm}>
              <path className="range-grid" d={`M${LEFT} ${level(dbm)}H${width - RIGHT}`} />
              <text className="range-tick" x={LEFT - 5} y={level(dbm) + 4} textAnchor="end">
                {bareNumber(dbm, 'dBm', preferences, 0)}
              </text>
            </g>
          ))}
          {distance.ticks.map((tick) => (
            <g key={tick.shown}>
              <path className="range-grid" d={`M${tick.x} ${top}V${bottom}`} />
              <text className="range-tick" x={tick.x} y={bottom + 14} textAnchor="middle">
                {tick.shown.toFixed(Number.isInteger(tick.shown) ? 0 : 1).replace('.', preferences.decimal)}
              </text>
            </g>
          ))}
          <text className="range-tick" x={width - RIGHT} y={bottom + 28} textAnchor="end">
            distance, {symbolOf('km', preferences)}
          </text>
          <text className="range-tick" x={0} y={bottom + 28}>
            level, dBm
          </text>
          <path className="chart-frame" d={`M${LEFT} ${top}V${bottom}H${width - RIGHT}`} />
          {path === null ? null : <path className="chart-curve" d={path} />}
          {marks.map((mark, index) => (
            <Mark key={mark.kind} mark={mark} at={placed[index] ?? { left: LEFT, lane: 0 }} bottom={bottom} />
          ))}
          <Levels
            result={result}
            sensitivityDbm={curve.sensitivityDbm}
            dependableDbm={curve.dependableDbm}
            y={level}
            right={width - RIGHT}
          />
        </svg>
      </div>
      <p className="small soft">
        Median level at {result.limitedBy === 'transmit' ? `the receiver of ${station.name}` : 'your own receiver'}, the
        end that gives out first; smooth sea, no ducting.
      </p>
    </section>
  );
}

interface MarkTag {
  readonly kind: 'dependable' | 'typical' | 'horizon';
  readonly km: number;
  readonly text: string;
  readonly width: number;
}

function markTags(result: RangeResult, distanceText: (km: number) => string): readonly MarkTag[] {
  const tag = (kind: MarkTag['kind'], km: number): MarkTag => {
    const text = `${kind} ${distanceText(km)}`;
    return { kind, km, text, width: textWidth(text, TEXT) + 4 };
  };
  return [
    tag('dependable', result.dependable.nominalKm),
    tag('typical', result.typical.nominalKm),
    tag('horizon', result.horizonKm),
  ];
}

/** Level axis: down to where the curve ends, or below what is needed; up to what it has close by, where it is steepest. */
function levelScale(points: readonly LevelPoint[], sensitivityDbm: number, dependableDbm: number, top: number) {
  const early = points[Math.floor(points.length / 25)]?.levelDbm ?? sensitivityDbm + 60;
  const last = points.at(-1)?.levelDbm ?? sensitivityDbm - 10;
  const high = Math.max(early, dependableDbm + 10);
  const low = Math.min(sensitivityDbm - 14, last);
  return scaleLinear()
    .domain([low, high])
    .nice(5)
    .range([top + PLOT, top]);
}

function Mark({
  mark,
  at,
  bottom,
}: {
  mark: MarkTag & { readonly atX: number };
  at: { readonly left: number; readonly lane: number };
  bottom: number;
}) {
  const y = at.lane * LANE + 12;
  return (
    <g>
      <path className={`chart-mark chart-mark--${mark.kind}`} d={`M${mark.atX} ${y + 4}V${bottom}`} />
      <text className="chart-tag" x={at.left + 2} y={y}>
        {mark.text}
      </text>
    </g>
  );
}

/** The upper line has its words above it and the lower one below, so they cannot meet however small the margin is. */
function Levels({
  result,
  sensitivityDbm,
  dependableDbm,
  y,
  right,
}: {
  result: RangeResult;
  sensitivityDbm: number;
  dependableDbm: number;
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
