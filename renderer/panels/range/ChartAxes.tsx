import { formatNumber } from '../../../core/units/format.ts';
import { useApp } from '../../store/context.ts';
import { bareNumber, symbolOf } from '../pathLoss/figures.ts';
import { LEFT_PX, type LevelScale, PLOT_PX, RIGHT_PX } from './chartLayout.ts';
import type { DistanceScale } from './scale.ts';

/** Grid, figures and names of both axes. */
export function ChartAxes({
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
  const [right, bottom] = [width - RIGHT_PX, top + PLOT_PX];
  return (
    <g>
      {level.ticks(5).map((dbm) => (
        <g key={dbm}>
          <path className="range-grid" d={`M${LEFT_PX} ${level(dbm)}H${right}`} />
          <text className="range-tick" x={LEFT_PX - 5} y={level(dbm) + 4} textAnchor="end">
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
      <path className="chart-frame" d={`M${LEFT_PX} ${top}V${bottom}H${right}`} />
    </g>
  );
}
