import type { HfHour } from '../../../core/reach/types.ts';

/** Hatches of the cells: slanted for the edge, level for the E layer that screens. */
export function HourPatterns({ id }: { id: string }) {
  return (
    <defs>
      <pattern id={`${id}-edge`} width={4} height={4} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path className="hours-hatch" d="M0 0V4" />
      </pattern>
      <pattern id={`${id}-screened`} width={4} height={4} patternUnits="userSpaceOnUse">
        <path className="hours-hatch" d="M0 2H4" />
      </pattern>
    </defs>
  );
}

/** One hour of one band: filled when open, hatched at the edge, barred when screened, a wave for the ground wave, empty when shut. */
export function HourGlyph({
  cell: { state, isBest },
  x,
  y,
  width,
  height,
  patternId,
}: {
  cell: Pick<HfHour, 'state' | 'isBest'>;
  /** Middle, px. */
  x: number;
  y: number;
  width: number;
  height: number;
  patternId: string;
}) {
  const hatch = state === 'edge' || state === 'screened' ? { fill: `url(#${patternId}-${state})` } : {};
  const swing = Math.min(3, height / 4);
  return (
    <>
      <rect
        className={`hours-box hours-box--${state}`}
        x={x - width / 2}
        y={y - height / 2}
        width={width}
        height={height}
      />
      {state === 'edge' || state === 'screened' ? (
        <rect x={x - width / 2} y={y - height / 2} width={width} height={height} {...hatch} />
      ) : null}
      {state === 'ground' ? (
        <path
          className="hours-wave"
          d={`M${x - width / 2 + 1} ${y}q${(width - 2) / 4} ${-2 * swing} ${(width - 2) / 2} 0t${(width - 2) / 2} 0`}
        />
      ) : null}
      {state === 'shut' ? <path className="hours-dash" d={`M${x - 2} ${y}h4`} /> : null}
      {isBest ? (
        <path
          className={state === 'open' ? 'hours-best hours-best--open' : 'hours-best'}
          d={`M${x} ${y - height / 2 + 2}l${height / 2 - 2} ${height / 2 - 2}l${2 - height / 2} ${height / 2 - 2}l${2 - height / 2} ${2 - height / 2}z`}
        />
      ) : null}
    </>
  );
}
