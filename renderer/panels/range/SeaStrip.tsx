import { useId, useRef } from 'react';
import type { Project, Station } from '../../../core/model/project.ts';
import type { RangeResult } from '../../../core/reach/types.ts';
import { useElementSize } from '../../canvas/useElementSize.ts';
import { useFormat } from '../../ui/text.ts';
import { LANE_PX, type RangeMark } from './marks.ts';
import { type SeaStand, seaLayout } from './seaLayout.ts';

/** Own boat and partner on the curve of the sea: distances to scale, heights to one scale of their own. */
export function SeaStrip({ project, result, station }: { project: Project; result: RangeResult; station: Station }) {
  const { quantity } = useFormat();
  const titleId = useId();
  const box = useRef<HTMLDivElement>(null);
  const width = useElementSize(box)?.width ?? 400;
  const words = { m: (value: number) => quantity(value, 'm'), km: (value: number) => quantity(value, 'km') };
  const layout = seaLayout(result, station, project.settings.horizonRule, width, words);
  const { stands, marks, surface, sight, ends, foot } = layout;
  const said = [...stands, ...marks].map(({ text }) => text).join(', ');
  return (
    <>
      <div ref={box} className="chart">
        <svg width={width} height={layout.height} role="img" aria-labelledby={titleId}>
          <title id={titleId}>{`Antennas above one sea, and how far: ${said}.`}</title>
          <path className="sea-body" d={`${surface}L${ends.to} ${foot}L${ends.from} ${foot}Z`} />
          <path className="sea-line" d={surface} />
          <path className="sea-sight" d={`M${sight.from} ${sight.y}H${sight.to}`} />
          {stands.map((stand) => (
            <Stand key={stand.key} stand={stand} />
          ))}
          {marks.map((mark) => (
            <SeaMark key={mark.kind} mark={mark} foot={foot} />
          ))}
        </svg>
      </div>
      <p className="small soft">
        Distances to scale; heights {layout.times} times as tall. The sea curves as the horizon rule has it; the dashed
        line of sight grazes it at {quantity(layout.grazeKm, 'km')}. {station.name} stands at the dependable range.
      </p>
    </>
  );
}

/** A staff from the sea to the antenna, on the same exaggerated scale of heights, with its height written over it. */
function Stand({ stand: { x, foot, head, text, left, lane } }: { stand: SeaStand }) {
  return (
    <g>
      <path className="sea-staff" d={`M${x} ${foot}V${head}`} />
      <circle className="sea-head" cx={x} cy={head} r={2.5} />
      <path className="sea-hull" d={`M${x - 8} ${foot - 2}h16l-3 4h-10z`} />
      <path className="sea-leader" d={`M${x} ${lane * LANE_PX + 15}V${head - 4}`} />
      <text className="chart-tag" x={left + 2} y={lane * LANE_PX + 12}>
        {text}
      </text>
    </g>
  );
}

function SeaMark({ mark, foot }: { mark: RangeMark & { readonly surface: number }; foot: number }) {
  const y = foot + 16 + mark.lane * LANE_PX;
  return (
    <g>
      <path className={`chart-mark chart-mark--${mark.kind}`} d={`M${mark.atX} ${mark.surface}V${y - 11}`} />
      <text className="chart-tag" x={mark.left + 2} y={y}>
        {mark.text}
      </text>
    </g>
  );
}
