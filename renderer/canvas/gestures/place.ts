import { fromDrawing, toDrawing } from '../../../core/drawing/projection.ts';
import { insertIntoRun } from '../../../core/edit/inline.ts';
import { runRoute } from '../../../core/links/route.ts';
import type { Position } from '../../../core/model/boat.ts';
import type { PlaceablePart } from '../../../core/model/part.ts';
import type { Run } from '../../../core/model/project.ts';
import { addPart, goesIntoRun, insertPart } from '../../commands/place.ts';
import { positionWords } from '../../commands/words.ts';
import type { PointPx, Sketch } from '../../store/view.ts';
import { nearestSegment } from '../geometry.ts';
import type { Scene } from './gesture.ts';
import { placeNear } from './snap.ts';

/** How near to a run an inline device must be let go to go into it, px. */
const RUN_REACH_PX = 10;

/** A part carried over the sheet from the Parts list; null points are beside the sheet. */
export interface PlaceGesture {
  over(at: PointPx | null): void;
  drop(at: PointPx | null): void;
}

/** Drops a part on a place, in free air, or (an inline device) into the run under it. */
export function placeGesture(scene: Scene, part: PlaceablePart): PlaceGesture {
  return {
    over: (at) => scene.store.getState().setView({ sketch: at ? sketchOf(scene, part, at) : null }),
    drop: (at) => {
      if (!at) {
        const text = `${part.name} was not added: let it go over the drawing.`;
        scene.store.getState().say({ tone: 'plain', text });
        return;
      }
      const onRun = goesIntoRun(part) ? runAt(scene, at) : null;
      if (onRun) {
        insertPart(scene.store, part, onRun.run.id, onRun.position);
        return;
      }
      const { xM, zM } = fromDrawing(scene.projection(), at);
      const place = placeNear(scene.store.getState().project, scene.projection(), { xM, zM });
      addPart(scene.store, part, place ? { placeId: place.id } : { position: { xM, yM: 0, zM }, placeId: null });
    },
  };
}

function sketchOf(scene: Scene, part: PlaceablePart, at: PointPx): Sketch {
  const { project, preferences } = scene.store.getState();
  const projection = scene.projection();
  const onRun = goesIntoRun(part) ? runAt(scene, at) : null;
  if (onRun) {
    const refusal = insertRefusal(scene, part, onRun.run.id);
    const text = refusal ?? `Into ${onRun.run.number}`;
    return {
      snap: { at: toDrawing(projection, onRun.position), name: '' },
      tip: { at, text, refusal: refusal !== null },
    };
  }
  const spot = fromDrawing(projection, at);
  const place = placeNear(project, projection, spot);
  const text = place ? `At ${place.name}` : `Free-standing at ${positionWords(spot, preferences)}`;
  return {
    ...(place ? { snap: { at: toDrawing(projection, place.position), name: '' } } : {}),
    tip: { at, text, refusal: false },
  };
}

function insertRefusal(scene: Scene, part: PlaceablePart, runId: string): string | null {
  try {
    insertIntoRun(scene.store.getState().project, runId, part.id);
    return null;
  } catch (error) {
    if (error instanceof Error && error.name === 'RefusedEdit') return error.message;
    throw error;
  }
}

/** The run under a point and the spot of its route there. */
function runAt(scene: Scene, at: PointPx): { run: Run; position: Position } | null {
  const { project } = scene.store.getState();
  let best: { run: Run; position: Position } | null = null;
  let bestPx = RUN_REACH_PX;
  for (const run of project.runs) {
    const route = runRoute(project, run);
    const points = route.map((position) => toDrawing(scene.projection(), position));
    const leg = nearestSegment(at, points);
    const [a, b] = [route[leg?.index ?? 0], route[(leg?.index ?? 0) + 1]];
    if (!leg || !a || !b || leg.distance > bestPx) continue;
    best = { run, position: between(a, b, leg.t) };
    bestPx = leg.distance;
  }
  return best;
}

const between = (a: Position, b: Position, t: number): Position => ({
  xM: a.xM + t * (b.xM - a.xM),
  yM: a.yM + t * (b.yM - a.yM),
  zM: a.zM + t * (b.zM - a.zM),
});
