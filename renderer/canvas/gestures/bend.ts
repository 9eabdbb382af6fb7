import { fromDrawing } from '../../../core/drawing/projection.ts';
import { addBend, moveBend } from '../../../core/edit/route.ts';
import { runLengthM } from '../../../core/links/route.ts';
import type { Run } from '../../../core/model/project.ts';
import { formatQuantity } from '../../../core/units/format.ts';
import { shownProject } from '../../store/store.ts';
import type { PointPx } from '../../store/view.ts';
import type { Gesture, Scene } from './gesture.ts';
import { placeNear, snapSketch } from './snap.ts';

/** Drags a bend of a run: an old one, or a new one pulled out of leg `index`. It snaps to places unless Alt is held. */
export function bendGesture(scene: Scene, run: Run, index: number, isNew: boolean, yM: number): Gesture {
  const { store } = scene;
  const projection = scene.projection();
  return {
    cursor: 'grabbing',
    move: (at, { alt }) => {
      const { xM, zM } = fromDrawing(projection, at);
      const place = alt ? null : placeNear(store.getState().project, projection, { xM, zM });
      const bend = { position: { xM, yM, zM }, placeId: place?.id ?? null };
      store
        .getState()
        .previewEdit((project) =>
          isNew ? addBend(project, run.id, bend, index) : moveBend(project, run.id, index, bend),
        );
      store.getState().setView({ sketch: { ...snapSketch(projection, place), ...lengthTip(scene, run.id, at) } });
    },
    finish: (moved) => {
      store.getState().setView({ sketch: null });
      if (moved)
        store.getState().commitPreview(`${run.number} ${isNew ? 'bent' : 'bend moved'}${newLength(scene, run.id)}`);
    },
    cancel: () => {
      store.getState().cancelPreview();
      store.getState().setView({ sketch: null });
    },
  };
}

function newLength(scene: Scene, runId: string): string {
  const state = scene.store.getState();
  const project = shownProject(state);
  const run = project.runs.find(({ id }) => id === runId);
  if (!run || run.measuredLengthM !== null) return '';
  return `, ${formatQuantity({ value: runLengthM(project, run), unit: 'm' }, state.preferences)}`;
}

function lengthTip(scene: Scene, runId: string, at: PointPx) {
  const run = shownProject(scene.store.getState()).runs.find(({ id }) => id === runId);
  const length = newLength(scene, runId).replace(', ', '');
  const text = length === '' ? 'Length stays as measured' : length;
  return run ? { tip: { at, text: `${run.number} ${text}`, refusal: false } } : {};
}
