import { toDrawing } from '../../../core/drawing/projection.ts';
import { runRoute } from '../../../core/links/route.ts';
import type { Item, Run, Subject } from '../../../core/model/project.ts';
import type { PointPx } from '../../store/view.ts';
import { distance, nearest, nearestSegment } from '../geometry.ts';
import { portHandles } from '../handles.ts';
import { bendGesture } from './bend.ts';
import { connectGesture } from './connect.ts';
import { BEND_REACH_PX, type Gesture, type Modifiers, PORT_REACH_PX, type Scene } from './gesture.ts';
import { marqueeGesture } from './marquee.ts';
import { moveGesture } from './move.ts';

/** What a press of the main button begins, by what lies under it: port, bend, finding, part, run, or bare paper. */
export function pressGesture(scene: Scene, at: PointPx, hoveredId: string | null, modifiers: Modifiers): Gesture {
  const port = portAt(scene, at, hoveredId);
  if (port) return connectGesture(scene, port.endpoint, port.at);
  const bend = bendAt(scene, at);
  scene.store.getState().setView({ bend: bend ? { runId: bend.run.id, index: bend.index } : null });
  if (bend) return bendGesture(scene, bend.run, bend.index, false, bend.yM);
  const hit = scene.subjectAt(at);
  if (!hit) return marqueeGesture(scene, at, modifiers.shift);
  if (hit.isMark) return markGesture(scene, hit.subject);
  if (modifiers.shift) return clickGesture(() => scene.store.getState().select([hit.subject], 'toggle'));
  return subjectGesture(scene, at, hit.subject);
}

function subjectGesture(scene: Scene, at: PointPx, subject: Subject): Gesture {
  const { project, selection } = scene.store.getState();
  const isSelected = selection.some(({ kind, id }) => kind === subject.kind && id === subject.id);
  if (subject.kind === 'item') {
    const item = project.items.find(({ id }) => id === subject.id);
    if (item) return itemGesture(scene, at, item, isSelected);
  }
  if (subject.kind === 'run' && isSelected) {
    const run = project.runs.find(({ id }) => id === subject.id);
    if (run) return newBendGesture(scene, at, run);
  }
  return clickGesture(() => scene.store.getState().select([subject]));
}

function itemGesture(scene: Scene, at: PointPx, item: Item, isSelected: boolean): Gesture {
  const { store } = scene;
  const subject: Subject = { kind: 'item', id: item.id };
  if (!isSelected) store.getState().select([subject]);
  const ids = store
    .getState()
    .selection.filter(({ kind }) => kind === 'item')
    .map(({ id }) => id);
  const gesture = moveGesture(scene, at, item, ids);
  return {
    ...gesture,
    finish: (moved) => {
      gesture.finish(moved);
      // A plain click on one of several selected items means that one.
      if (!moved && ids.length > 1) store.getState().select([subject]);
    },
  };
}

function newBendGesture(scene: Scene, at: PointPx, run: Run): Gesture {
  const route = runRoute(scene.store.getState().project, run);
  const projection = scene.projection();
  const leg = nearestSegment(
    at,
    route.map((position) => toDrawing(projection, position)),
  );
  const [a, b] = [route[leg?.index ?? 0], route[(leg?.index ?? 0) + 1]];
  if (!leg || !a || !b) return clickGesture(() => {});
  return bendGesture(scene, run, leg.index, true, a.yM + leg.t * (b.yM - a.yM));
}

function markGesture(scene: Scene, subject: Subject): Gesture {
  return clickGesture(() => {
    scene.store.getState().select([subject]);
    scene.store.getState().showPanel('findings');
  });
}

/** A press that means only what its click does, done at once so that the selection answers to the finger. */
function clickGesture(click: () => void): Gesture {
  click();
  return { move: () => {}, finish: () => {}, cancel: () => {} };
}

/** The port handle under the pointer, among those that are shown: of the hovered and the selected items. */
export function portAt(scene: Scene, at: PointPx, hoveredId: string | null) {
  const { project, selection } = scene.store.getState();
  const ids = new Set(selection.filter(({ kind }) => kind === 'item').map(({ id }) => id));
  if (hoveredId !== null) ids.add(hoveredId);
  const handles = [...ids].flatMap((id) => portHandles(project, id, scene.projection()));
  return nearest(at, handles, PORT_REACH_PX / 2);
}

/** The bend handle of the selected run under the pointer. */
export function bendAt(scene: Scene, at: PointPx): { run: Run; index: number; yM: number } | null {
  const { project, selection } = scene.store.getState();
  for (const { kind, id } of selection) {
    const run = kind === 'run' ? project.runs.find((candidate) => candidate.id === id) : undefined;
    if (!run) continue;
    const index = run.via.findIndex(
      ({ position }) => distance(at, toDrawing(scene.projection(), position)) <= BEND_REACH_PX,
    );
    const bend = run.via[index];
    if (bend) return { run, index, yM: bend.position.yM };
  }
  return null;
}
