import type { Projection } from '../../core/drawing/types.ts';
import type { Camera, PointPx } from '../store/view.ts';

export interface SizePx {
  readonly width: number;
  readonly height: number;
}

/** Closest and furthest view, px per metre: a connector at one end, a harbour at the other. */
export const MIN_SCALE = 4;
export const MAX_SCALE = 900;

/** The projection that puts the camera's point in the middle of the sheet. */
export function projectionOf(camera: Camera, size: SizePx): Projection {
  return {
    originX: size.width / 2 + camera.xM * camera.scale,
    originY: size.height / 2 + camera.zM * camera.scale,
    scale: camera.scale,
  };
}

/** The camera that sees what `projection` shows on a sheet of this size. */
export function cameraOf(projection: Projection, size: SizePx): Camera {
  const { originX, originY, scale } = projection;
  return { xM: (originX - size.width / 2) / scale, zM: (originY - size.height / 2) / scale, scale };
}

/** Zooms by `factor` and keeps the boat's point under `at` where it is. */
export function zoomed(projection: Projection, size: SizePx, factor: number, at: PointPx): Camera {
  const scale = Math.min(MAX_SCALE, Math.max(MIN_SCALE, projection.scale * factor));
  const ratio = scale / projection.scale;
  return cameraOf(
    {
      originX: at.x + (projection.originX - at.x) * ratio,
      originY: at.y + (projection.originY - at.y) * ratio,
      scale,
    },
    size,
  );
}

/** Moves the sheet by so many px. */
export function panned(projection: Projection, size: SizePx, dx: number, dy: number): Camera {
  return cameraOf({ ...projection, originX: projection.originX + dx, originY: projection.originY + dy }, size);
}
