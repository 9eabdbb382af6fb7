import type { LevelCurve } from '../../../core/reach/levelCurve.ts';
import { useFormat } from '../../ui/text.ts';
import { LEFT_PX } from './chartLayout.ts';
import { LANE_PX, type RangeMark } from './marks.ts';

/** One of the three distances: a line down through the plot, its words above it. */
export function ChartMark({ mark, bottom }: { mark: RangeMark; bottom: number }) {
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
export function ChartThresholds({
  curve: { sensitivityDbm, dependableDbm },
  y,
  right,
}: {
  curve: LevelCurve;
  y: (dbm: number) => number;
  right: number;
}) {
  const { quantity } = useFormat();
  const marginDb = dependableDbm - sensitivityDbm;
  return (
    <g>
      {marginDb > 0 ? (
        <>
          <path className="chart-level chart-level--margin" d={`M${LEFT_PX} ${y(dependableDbm)}H${right}`} />
          <text className="chart-tag" x={right - 2} y={y(dependableDbm) - 5} textAnchor="end">
            with {quantity(marginDb, 'dB', 1)} margin, {quantity(dependableDbm, 'dBm', 0)}
          </text>
        </>
      ) : null}
      <path className="chart-level" d={`M${LEFT_PX} ${y(sensitivityDbm)}H${right}`} />
      <text className="chart-tag" x={LEFT_PX + 4} y={y(sensitivityDbm) + 14}>
        sensitivity, {quantity(sensitivityDbm, 'dBm', 0)}
      </text>
    </g>
  );
}
