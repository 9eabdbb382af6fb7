import type { Projection } from '../../../core/drawing/types.ts';
import type { Subject } from '../../../core/model/project.ts';
import type { AppStore } from '../../store/store.ts';
import type { PointPx } from '../../store/view.ts';
import type { SizePx } from '../camera.ts';

/** What a gesture knows of the sheet it happens on. */
export interface Scene {
  readonly store: AppStore;
  projection(): Projection;
  size(): SizePx;
  /** What is drawn at a point, topmost first; `isMark` for the number of a finding. */
  subjectAt(at: PointPx): { readonly subject: Subject; readonly isMark: boolean } | null;
}

export interface Modifiers {
  readonly shift: boolean;
  readonly alt: boolean;
}

/** One press of the pointer until its release. `move` comes at most once per frame; `finish` and `cancel` end it. */
export interface Gesture {
  readonly cursor?: 'grabbing' | 'crosshair';
  move(at: PointPx, modifiers: Modifiers): void;
  /** `moved` is false for a click that never left its spot. */
  finish(moved: boolean): void;
  cancel(): void;
}

/** How far the pointer may tremble before a click becomes a drag, px. */
export const DRAG_THRESHOLD_PX = 4;
export const PORT_REACH_PX = 12;
export const BEND_REACH_PX = 9;
/** A part snaps to a place this near, m; less when zoomed far in, so that it can still be put beside one. */
const SNAP_M = 0.6;
const SNAP_PX = 30;

export function snapReachM(projection: Projection): number {
  return Math.min(SNAP_M, SNAP_PX / projection.scale);
}
