import type { PointPx } from '../../store/view.ts';
import { panned } from '../camera.ts';
import type { Gesture, Scene } from './gesture.ts';

/** Moves the sheet under the pointer. */
export function panGesture(scene: Scene, start: PointPx): Gesture {
  const projection = scene.projection();
  const before = scene.store.getState().camera;
  return {
    cursor: 'grabbing',
    move: (at) =>
      scene.store.getState().setView({
        camera: panned(projection, scene.size(), at.x - start.x, at.y - start.y),
      }),
    finish: () => {},
    cancel: () => scene.store.getState().setView({ camera: before }),
  };
}
