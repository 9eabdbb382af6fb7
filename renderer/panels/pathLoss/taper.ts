import { area, curveLinear } from 'd3-shape';
import type { PathElement } from '../../../core/links/types.ts';

/** One element of the band, px: from left to right, its height falling with the power in it. */
export interface TaperStep {
  readonly left: number;
  readonly width: number;
  readonly heightIn: number;
  readonly heightOut: number;
  readonly shape: string;
}

export interface TaperSize {
  readonly left: number;
  readonly width: number;
  /** Height of the whole power, px. */
  readonly height: number;
}

/** Room for the number of an element under it, px. */
const LEAST_STEP_PX = 13;
const LEAST_SHARED_PX = 6;

/**
 * The power along a path as a band on a base line: as high as the share of the power that is left. Cables are as long as
 * they are aboard, over a least width that everything else has.
 * @param lengthsM of the cables among the elements; null for what has no length
 */
export function taperSteps(
  elements: readonly PathElement[],
  lengthsM: readonly (number | null)[],
  { left, width, height }: TaperSize,
): readonly TaperStep[] {
  const least = Math.max(LEAST_SHARED_PX, Math.min(LEAST_STEP_PX, width / Math.max(1, elements.length)));
  const wholeM = lengthsM.reduce<number>((sum, lengthM) => sum + (lengthM ?? 0), 0);
  const spare = Math.max(0, width - least * elements.length);
  let x = left;
  return elements.map((element, index) => {
    const own = wholeM > 0 ? (spare * (lengthsM[index] ?? 0)) / wholeM : spare / elements.length;
    const step = stepOf(element, x, least + own, height);
    x += step.width;
    return step;
  });
}

/** Share of the power that is left after a loss. */
export const shareLeft = (lossDb: number): number => 10 ** (-lossDb / 10);

function stepOf(element: PathElement, left: number, width: number, height: number): TaperStep {
  const before = element.runningLossDb - element.lossDb;
  // Power falls by the same share for every metre, so within a long cable the edge is a curve, not a line.
  const parts = Math.max(1, Math.round(width / 8));
  const points = Array.from({ length: parts + 1 }, (_, i) => i / parts);
  const shape = area<number>()
    .x((share) => round(left + share * width))
    .y0(round(height))
    .y1((share) => round(height - height * shareLeft(before + share * element.lossDb)))
    .curve(curveLinear)(points);
  return {
    left,
    width,
    heightIn: height * shareLeft(before),
    heightOut: height * shareLeft(element.runningLossDb),
    shape: shape ?? '',
  };
}

const round = (px: number): number => Math.round(px * 100) / 100;

/** Indexes of the elements worth a name in the picture: those that take a noticeable share, most first. */
export function namedElements(elements: readonly PathElement[], most: number): readonly number[] {
  return elements
    .map((element, index) => ({ index, share: element.shareLostPercent }))
    .filter(({ share }) => share >= 2)
    .toSorted((a, b) => b.share - a.share)
    .slice(0, most)
    .map(({ index }) => index);
}
