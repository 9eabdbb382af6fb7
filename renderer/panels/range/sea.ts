import type { HorizonRule } from '../../../core/model/project.ts';
import { horizonKm } from '../../../core/propagation/horizon.ts';

/**
 * The sea between two antennas, seen from the side: heights above the line of sight that grazes it, m (0 on that line,
 * negative below). The curve is that of the horizon rule, so the two mastheads touch the line exactly at the horizon.
 */
export interface SeaLine {
  /** Height of the surface at a distance from the own boat, m. */
  readonly surfaceM: (distanceKm: number) => number;
  /** Where the line of sight touches the sea, km from the own boat. */
  readonly grazeKm: number;
}

/** @param ownHeightM height of the own antenna above the water, m, >= 0 */
export function seaLine(rule: HorizonRule, ownHeightM: number): SeaLine {
  const kmPerRootM = horizonKm(rule, 1, 0);
  const grazeKm = horizonKm(rule, ownHeightM, 0);
  return { grazeKm, surfaceM: (distanceKm) => -(((distanceKm - grazeKm) / kmPerRootM) ** 2) };
}
