import { useId, useRef } from 'react';
import { textWidth } from '../../../core/drawing/textWidth.ts';
import type { RangeResult } from '../../../core/links/types.ts';
import type { Project, Station } from '../../../core/model/project.ts';
import { useElementSize } from '../../canvas/useElementSize.ts';
import { useFormat } from '../../ui/text.ts';
import { inLanes, laneCount } from './lanes.ts';
import { farthestKm } from './scale.ts';
import { seaLine } from './sea.ts';

const LEFT = 14;
const RIGHT = 14;
const DEPTH = 92;
const LANE = 16;
const TEXT = 12;

/** Own boat and partner on the curve of the sea: distances to scale, heights to one scale of their own. */
export function SeaStrip({ project, result, station }: { project: Project; result: RangeResult; station: Station }) {
  const { quantity } = useFormat();
  const titleId = useId();
  const box = useRef<HTMLDivElement>(null);
  const width = useElementSize(box)?.width ?? 400;
  const sea = seaLine(project.settings.horizonRule, result.ownHeightM);
  const endKm = farthestKm([result]) * 1.02;
  const x = (km: number): number => LEFT + ((width - LEFT - RIGHT) * km) / endKm;
  const lowestM = Math.min(sea.surfaceM(0), sea.surfaceM(endKm));
  const highestM = Math.max(0, sea.surfaceM(result.dependable.nominalKm) + station.antennaHeightM);
  const pxPerM = DEPTH / Math.max(1, highestM - lowestM);
  const marks = stripMarks(result, (km) => quantity(km, 'km')).map((mark) => ({ ...mark, atX: x(mark.km) }));
  const placed = inLanes(marks, 0, width);
  const partnerKm = result.dependable.nominalKm;
  const stands = [
    { name: 'own', km: 0, heightM: result.ownHeightM },
    { name: station.name, km: partnerKm, heightM: station.antennaHeightM },
  ].map((stand) => {
    const text = `${stand.name} ${quantity(stand.heightM, 'm')}`;
    return { ...stand, text, atX: x(stand.km), width: textWidth(text, TEXT) + 4 };
  });
  const heads = inLanes(stands, 0, width);
  const top = laneCount(heads) * LANE + 8;
  const y = (heightM: number): number => top + (highestM - heightM) * pxPerM;
  const seaD = seaPath(sea.surfaceM, endKm, x, y);
  const foot = top + DEPTH + 6;
  const times = Math.round(pxPerM / ((x(1) - x(0)) / 1000));
  return (
    <section className="panel-section">
      <h3 className="heading">To scale, {station.name}</h3>
      <div ref={box} className="chart">
        <svg width={width} height={foot + 12 + laneCount(placed) * LANE} role="img" aria-labelledby={titleId}>
          <title id={titleId}>
            {`Own antenna ${quantity(result.ownHeightM, 'm')} and ${station.name} ${quantity(station.antennaHeightM, 'm')} above one sea: ${marks.map(({ text }) => text).join(', ')}.`}
          </title>
          <path className="sea-body" d={`${seaD}L${x(endKm)} ${foot}L${x(0)} ${foot}Z`} />
          <path className="sea-line" d={seaD} />
          <path className="sea-sight" d={`M${x(0)} ${y(0)}H${x(result.horizonKm)}`} />
          {stands.map((stand, index) => {
            const at = heads[index] ?? { left: 0, lane: 0 };
            const surfaceM = sea.surfaceM(stand.km);
            return (
              <g key={stand.km}>
                <Stand x={stand.atX} foot={y(surfaceM)} head={y(surfaceM + stand.heightM)} />
                <path
                  className="sea-leader"
                  d={`M${stand.atX} ${at.lane * LANE + 15}V${y(surfaceM + stand.heightM) - 4}`}
                />
                <text className="chart-tag" x={at.left + 2} y={at.lane * LANE + 12}>
                  {stand.text}
                </text>
              </g>
            );
          })}
          {marks.map((mark, index) => {
            const at = placed[index] ?? { left: 0, lane: 0 };
            const textY = foot + 12 + at.lane * LANE + 4;
            return (
              <g key={mark.kind}>
                <path
                  className={`chart-mark chart-mark--${mark.kind}`}
                  d={`M${mark.atX} ${y(sea.surfaceM(mark.km))}V${textY - 11}`}
                />
                <text className="chart-tag" x={at.left + 2} y={textY}>
                  {mark.text}
                </text>
              </g>
            );
          })}
        </svg>
      </div>
      <p className="small soft">
        Distances to scale; heights {times} times as tall. The sea curves as the horizon rule has it; the dashed line of
        sight grazes it at {quantity(sea.grazeKm, 'km')}. {station.name} stands at the dependable range.
      </p>
    </section>
  );
}

function stripMarks(result: RangeResult, distanceText: (km: number) => string) {
  const marks = [
    { kind: 'dependable', km: result.dependable.nominalKm },
    { kind: 'typical', km: result.typical.nominalKm },
    { kind: 'horizon', km: result.horizonKm },
  ] as const;
  return marks.map((mark) => {
    const text = `${mark.kind} ${distanceText(mark.km)}`;
    return { ...mark, text, width: textWidth(text, TEXT) + 4 };
  });
}

function seaPath(
  surfaceM: (km: number) => number,
  endKm: number,
  x: (km: number) => number,
  y: (heightM: number) => number,
): string {
  const points = Array.from({ length: 61 }, (_, i) => (i / 60) * endKm);
  return `M${points.map((km) => `${x(km).toFixed(1)} ${y(surfaceM(km)).toFixed(1)}`).join('L')}`;
}

/** A staff from the sea to the antenna, on the same exaggerated scale of heights. */
function Stand({ x, foot, head }: { x: number; foot: number; head: number }) {
  return (
    <g>
      <path className="sea-staff" d={`M${x} ${foot}V${head}`} />
      <circle className="sea-head" cx={x} cy={head} r={2.5} />
      <path className="sea-hull" d={`M${x - 8} ${foot - 2}h16l-3 4h-10z`} />
    </g>
  );
}
