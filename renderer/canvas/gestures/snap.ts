import { toDrawing } from '../../../core/drawing/projection.ts';
import type { Projection } from '../../../core/drawing/types.ts';
import type { Place } from '../../../core/model/boat.ts';
import type { Project } from '../../../core/model/project.ts';
import type { Sketch } from '../../store/view.ts';
import { snapReachM } from './gesture.ts';

/** The place that something at this spot of the profile snaps to, or null. Distances are as seen from the side. */
export function placeNear(
  project: Project,
  projection: Projection,
  spot: { readonly xM: number; readonly zM: number },
): Place | null {
  let best: Place | null = null;
  let bestM = snapReachM(projection);
  for (const place of project.places) {
    const awayM = Math.hypot(place.position.xM - spot.xM, place.position.zM - spot.zM);
    if (awayM > bestM) continue;
    best = place;
    bestM = awayM;
  }
  return best;
}

/** What the sheet shows for a place that would be snapped to. */
export function snapSketch(projection: Projection, place: Place | null): Sketch {
  return place ? { snap: { at: toDrawing(projection, place.position), name: place.name } } : {};
}
