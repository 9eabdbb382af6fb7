import type { Projection } from '../../core/drawing/types.ts';
import type { Item, Project, Subject } from '../../core/model/project.ts';
import type { PointPx } from '../store/view.ts';
import { distance, isInside } from './geometry.ts';
import { itemBounds, itemPoint } from './handles.ts';

/** Lines can be hit this far from their middle, px, so symbols reach over each other by as much. */
export const HIT_REACH_PX = 7;

/**
 * Which item a hit means. Small symbols close together reach over one another, and the last drawn would always win; of
 * those whose box holds the point, the one whose middle is nearest is meant. Balloons and wires mean what was hit.
 */
export function meantSubject(project: Project, projection: Projection, at: PointPx, hit: Subject): Subject {
  if (hit.kind !== 'item') return hit;
  const holds = (item: Item): boolean =>
    item.endPosition === null && isInside(at, itemBounds(project, item, projection), HIT_REACH_PX);
  const own = project.items.find(({ id }) => id === hit.id);
  if (!own || !holds(own)) return hit;
  let best = own;
  let bestPx = Number.POSITIVE_INFINITY;
  for (const item of project.items) {
    const awayPx = holds(item) ? distance(at, itemPoint(project, item, projection)) : Number.POSITIVE_INFINITY;
    if (awayPx >= bestPx) continue;
    best = item;
    bestPx = awayPx;
  }
  return { kind: 'item', id: best.id };
}
