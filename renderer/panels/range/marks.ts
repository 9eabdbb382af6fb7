import { textWidth } from '../../../core/drawing/textWidth.ts';
import type { RangeResult } from '../../../core/reach/types.ts';
import { inLanes, laneCount, type PlacedTag, type Tag } from './lanes.ts';

/** Size of the words in a chart, px, and the height of a line of them. */
export const TAG_PX = 12;
export const LANE_PX = 16;

/** One of the three distances of a result, with its words and where they went. */
export interface RangeMark extends Tag, PlacedTag {
  readonly kind: 'dependable' | 'typical' | 'horizon';
  readonly km: number;
  readonly text: string;
}

/** The three distances of a result on a line, their words in lanes so that none overlaps another. */
export function rangeMarks(
  result: RangeResult,
  x: (km: number) => number,
  distanceText: (km: number) => string,
  [from, to]: readonly [number, number],
): { readonly marks: readonly RangeMark[]; readonly lanes: number } {
  const tags = (
    [
      { kind: 'dependable', km: result.dependable.nominalKm },
      { kind: 'typical', km: result.typical.nominalKm },
      { kind: 'horizon', km: result.horizonKm },
    ] as const
  ).map((mark) => {
    const text = `${mark.kind} ${distanceText(mark.km)}`;
    return { ...mark, text, atX: x(mark.km), width: tagWidth(text) };
  });
  const placed = inLanes(tags, from, to);
  return {
    marks: tags.map((tag, index) => ({ ...tag, ...(placed[index] ?? { left: from, lane: 0 }) })),
    lanes: laneCount(placed),
  };
}

export const tagWidth = (text: string): number => textWidth(text, TAG_PX) + 4;
