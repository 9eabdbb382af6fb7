import { useId, useRef } from 'react';
import type { GnssResult } from '../../../core/reach/types.ts';
import { useElementSize } from '../../canvas/useElementSize.ts';
import { useApp } from '../../store/context.ts';
import { useFormat } from '../../ui/text.ts';
import { bareNumber } from '../pathLoss/figures.ts';
import { LEVEL_LEFT, type LevelLayout, type LevelStep, levelLayout } from './gnssLevels.ts';

/** The gain from element to socket: up in the antenna, down along the lead, and the window the receiver wants it in. */
export function GnssLevels({ result, steps }: { result: GnssResult; steps: readonly LevelStep[] }) {
  const { quantity } = useFormat();
  const id = useId();
  const box = useRef<HTMLDivElement>(null);
  const width = useElementSize(box)?.width ?? 400;
  const layout = levelLayout(steps, result.window, width);
  const net = steps.at(-1)?.toDb ?? 0;
  const said = steps.map(({ label, fromDb, toDb }) => `${label} ${quantity(toDb - fromDb, 'dB', 1)}`).join(', ');
  return (
    <div ref={box} className="chart levels">
      <svg width={width} height={layout.bottom + 26} role="img" aria-labelledby={`${id}-t`}>
        <title id={`${id}-t`}>{`Gain from the antenna to the receiver: ${said}; net ${quantity(net, 'dB', 1)}.`}</title>
        <pattern id={`${id}-w`} width={6} height={6} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className="levels-hatch" d="M0 0V6" />
        </pattern>
        <Axis layout={layout} />
        <Window layout={layout} patternId={`${id}-w`} />
        {layout.steps.map((step) => (
          <Step key={step.number} step={step} y={layout.y} />
        ))}
        <path className="levels-line" d={`M${layout.socketX} ${layout.y(net)}H${layout.right}`} />
        <text className="chart-tag levels-net" x={layout.right - 3} y={layout.y(net) - 5} textAnchor="end">
          {quantity(net, 'dB', 1)}
        </text>
        <text className="range-tick" x={layout.right} y={layout.bottom + 20} textAnchor="end">
          at the socket
        </text>
      </svg>
      <ol className="levels-list small">
        {steps.map(({ label, fromDb, toDb }) => (
          <li key={`${label} ${fromDb}`}>
            {label} <span className="mono-num">{quantity(toDb - fromDb, 'dB', 1)}</span>
          </li>
        ))}
      </ol>
    </div>
  );
}

function Axis({ layout: { ticks, y, right, bottom } }: { layout: LevelLayout }) {
  const preferences = useApp((state) => state.preferences);
  return (
    <g>
      {ticks.map((db) => (
        <g key={db}>
          <path className="range-grid" d={`M${LEVEL_LEFT} ${y(db)}H${right}`} />
          <text className="range-tick" x={LEVEL_LEFT - 5} y={y(db) + 4} textAnchor="end">
            {bareNumber(db, 'dB', preferences, 0)}
          </text>
        </g>
      ))}
      <text className="range-tick" x={0} y={bottom + 20}>
        gain, dB
      </text>
    </g>
  );
}

function Window({ layout: { window, socketX, right }, patternId }: { layout: LevelLayout; patternId: string }) {
  if (!window) return null;
  const box = { x: socketX, y: window.top, width: right - socketX, height: Math.max(2, window.bottom - window.top) };
  return (
    <g>
      <rect className="levels-window" {...box} />
      <rect {...box} fill={`url(#${patternId})`} />
      <path className="levels-edge" d={`M${socketX} ${window.top}H${right}M${socketX} ${window.bottom}H${right}`} />
    </g>
  );
}

function Step({ step, y }: { step: LevelLayout['steps'][number]; y: (db: number) => number }) {
  const middle = step.x + step.width / 2;
  const top = Math.min(y(step.fromDb), y(step.toDb));
  return (
    <g>
      <path
        className="levels-line"
        d={`M${step.x} ${y(step.fromDb)}H${middle}V${y(step.toDb)}H${step.x + step.width}`}
      />
      <circle className="dome-balloon" cx={middle} cy={top - 12} r={8} />
      <text className="dome-number" x={middle} y={top - 8} textAnchor="middle">
        {step.number}
      </text>
    </g>
  );
}
