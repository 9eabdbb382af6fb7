import { fromDrawing } from '../../../core/drawing/projection.ts';
import { moveItems, snapToPlace } from '../../../core/edit/items.ts';
import type { Item } from '../../../core/model/project.ts';
import { movedWords } from '../../commands/words.ts';
import { shownProject } from '../../store/store.ts';
import type { PointPx } from '../../store/view.ts';
import type { Gesture, Scene } from './gesture.ts';
import { placeNear, snapSketch } from './snap.ts';

/** Moves items together; a single one snaps to places unless Alt is held. Results follow while it moves. */
export function moveGesture(scene: Scene, start: PointPx, held: Item, ids: readonly string[]): Gesture {
  const { store } = scene;
  const projection = scene.projection();
  const from = fromDrawing(projection, start);
  return {
    cursor: 'grabbing',
    move: (at, { alt }) => {
      const to = fromDrawing(projection, at);
      const by = { dxM: to.xM - from.xM, dyM: 0, dzM: to.zM - from.zM };
      const spot = { xM: held.position.xM + by.dxM, zM: held.position.zM + by.dzM };
      const place = alt || ids.length > 1 ? null : placeNear(store.getState().project, projection, spot);
      store
        .getState()
        .previewEdit((project) => (place ? snapToPlace(project, held.id, place.id) : moveItems(project, ids, by)));
      store.getState().setView({ sketch: snapSketch(projection, place) });
    },
    finish: (moved) => {
      const state = store.getState();
      state.setView({ sketch: null });
      if (moved) state.commitPreview(movedWords(shownProject(state), ids, state.preferences));
    },
    cancel: () => {
      store.getState().cancelPreview();
      store.getState().setView({ sketch: null });
    },
  };
}
