import type { HorizonRule, Station } from '../../../core/model/project.ts';
import type { RangeResult } from '../../../core/reach/types.ts';
import { inLanes, laneCount, type PlacedTag } from './lanes.ts';
import { LANE_PX, rangeMarks, tagWidth } from './marks.ts';
import { farthestKm } from './scale.ts';
import { seaLine } from './sea.ts';

const MARGIN = 14;
const DEPTH = 92;

/** An antenna over the sea, px: its staff, and where its words went. */
export interface SeaStand extends PlacedTag {
  readonly key: 'own' | 'partner';
  readonly x: number;
  readonly foot: number;
  readonly head: number;
  readonly text: string;
}

/** Everything the strip draws, px. `times` is how much taller heights are drawn than distances. */
export function seaLayout(
  result: RangeResult,
  station: Station,
  rule: HorizonRule,
  width: number,
  words: { readonly m: (value: number) => string; readonly km: (value: number) => string },
) {
  const sea = seaLine(rule, result.ownHeightM);
  const endKm = farthestKm([result]) * 1.02;
  const x = (km: number): number => MARGIN + ((width - 2 * MARGIN) * km) / endKm;
  const antennas = [
    { key: 'own', name: 'own', km: 0, heightM: result.ownHeightM },
    { key: 'partner', name: station.name, km: result.dependable.nominalKm, heightM: station.antennaHeightM },
  ] as const;
  const tags = antennas.map((antenna) => {
    const text = `${antenna.name} ${words.m(antenna.heightM)}`;
    return { ...antenna, text, atX: x(antenna.km), width: tagWidth(text) };
  });
  const heads = inLanes(tags, 0, width);
  const top = laneCount(heads) * LANE_PX + 8;
  const lowestM = Math.min(sea.surfaceM(0), sea.surfaceM(endKm));
  const highestM = Math.max(0, ...antennas.map(({ km, heightM }) => sea.surfaceM(km) + heightM));
  const pxPerM = DEPTH / Math.max(1, highestM - lowestM);
  const y = (heightM: number): number => top + (highestM - heightM) * pxPerM;
  const stands = tags.map(({ key, km, heightM, text, atX }, index): SeaStand => {
    const surfaceM = sea.surfaceM(km);
    const place = heads[index] ?? { left: 0, lane: 0 };
    return { key, text, x: atX, foot: y(surfaceM), head: y(surfaceM + heightM), ...place };
  });
  const { marks, lanes } = rangeMarks(result, x, words.km, [0, width]);
  const foot = top + DEPTH + 6;
  return {
    stands,
    marks: marks.map((mark) => ({ ...mark, surface: y(sea.surfaceM(mark.km)) })),
    surface: surfacePath(sea.surfaceM, endKm, x, y),
    sight: { from: x(0), to: x(result.horizonKm), y: y(0) },
    ends: { from: x(0), to: x(endKm) },
    foot,
    height: foot + 12 + lanes * LANE_PX,
    grazeKm: sea.grazeKm,
    times: Math.round(pxPerM / ((x(1) - x(0)) / 1000)),
  };
}

function surfacePath(
  surfaceM: (km: number) => number,
  endKm: number,
  x: (km: number) => number,
  y: (heightM: number) => number,
): string {
  const points = Array.from({ length: 61 }, (_, i) => (i / 60) * endKm);
  return `M${points.map((km) => `${x(km).toFixed(1)} ${y(surfaceM(km)).toFixed(1)}`).join('L')}`;
}
