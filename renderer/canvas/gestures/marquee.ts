import type { Subject } from '../../../core/model/project.ts';
import type { PointPx } from '../../store/view.ts';
import { isInside, rectBetween } from '../geometry.ts';
import { itemPoint } from '../handles.ts';
import type { Gesture, Scene } from './gesture.ts';

/** Selects the items inside a rectangle; with `keep` on top of what is selected. A click selects nothing. */
export function marqueeGesture(scene: Scene, start: PointPx, keep: boolean): Gesture {
  let end = start;
  const { store } = scene;
  return {
    move: (at) => {
      end = at;
      store.getState().setView({ sketch: { marquee: { from: start, to: at } } });
    },
    finish: (moved) => {
      store.getState().setView({ sketch: null });
      if (moved) store.getState().select(itemsBetween(scene, start, end), keep ? 'add' : 'replace');
      else if (!keep) store.getState().select([]);
    },
    cancel: () => store.getState().setView({ sketch: null }),
  };
}

function itemsBetween(scene: Scene, from: PointPx, to: PointPx): Subject[] {
  const rect = rectBetween(from, to);
  const projection = scene.projection();
  const { project } = scene.store.getState();
  return project.items
    .filter((item) => isInside(itemPoint(project, item, projection), rect))
    .map(({ id }) => ({ kind: 'item', id }));
}
