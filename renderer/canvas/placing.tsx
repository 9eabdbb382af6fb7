import { createContext, type ReactNode, type RefObject, useContext, useMemo, useRef, useState } from 'react';
import { indexProject } from '../../core/catalogue/lookup.ts';
import type { PlaceablePart } from '../../core/model/part.ts';
import { isPlaceable } from '../../core/model/placeable.ts';
import { Icon } from '../app/icons.tsx';
import { useAppStore } from '../store/context.ts';
import type { AppStore } from '../store/store.ts';
import type { PointPx } from '../store/view.ts';
import { DRAG_THRESHOLD_PX, type Scene } from './gestures/gesture.ts';
import { placeGesture } from './gestures/place.ts';

/** The sheet as the Parts list needs it: what it is, and where on it a point of the window lies (null beside it). */
export interface SheetHandle {
  readonly scene: Scene;
  pointOf(client: PointPx): PointPx | null;
  /** Gives it the keyboard, so that undo and the arrow keys go on from what was just put there. */
  focus(): void;
}

interface Placing {
  readonly sheet: RefObject<SheetHandle | null>;
  start(partId: string, event: globalThis.PointerEvent): void;
}

const PlacingContext = createContext<Placing | null>(null);

function useContextValue(): Placing {
  const placing = useContext(PlacingContext);
  if (!placing) throw new Error('PlacingProvider is missing above this component');
  return placing;
}

/** Starts dragging a part out of the Parts list. */
export const usePlacing = (): Placing['start'] => useContextValue().start;
/** Where the sheet puts its handle. */
export const useSheetHandle = (): Placing['sheet'] => useContextValue().sheet;

/** Carries a part from the Parts list to the sheet, with a ghost of it at the pointer. */
export function PlacingProvider({ children }: { children: ReactNode }) {
  const store = useAppStore();
  const sheet = useRef<SheetHandle | null>(null);
  const [ghost, setGhost] = useState<{ part: PlaceablePart; at: PointPx } | null>(null);
  const placing = useMemo<Placing>(
    () => ({
      sheet,
      start: (partId, event) => {
        const part = indexProject(store.getState().project).parts.get(partId);
        if (part && isPlaceable(part)) carry(store, sheet, part, event, setGhost);
      },
    }),
    [store],
  );
  return (
    <PlacingContext value={placing}>
      {children}
      {ghost ? (
        <div className="ghost" style={{ transform: `translate(${ghost.at.x + 10}px, ${ghost.at.y - 34}px)` }}>
          <Icon name={ghost.part.kind} />
          {ghost.part.name}
        </div>
      ) : null}
    </PlacingContext>
  );
}

function carry(
  store: AppStore,
  sheet: RefObject<SheetHandle | null>,
  part: PlaceablePart,
  start: globalThis.PointerEvent,
  setGhost: (ghost: { part: PlaceablePart; at: PointPx } | null) => void,
): void {
  const handle = sheet.current;
  if (!handle) return;
  const gesture = placeGesture(handle.scene, part);
  let isCarried = false;
  const handleMove = (event: globalThis.PointerEvent): void => {
    const at = { x: event.clientX, y: event.clientY };
    if (!isCarried && Math.hypot(at.x - start.clientX, at.y - start.clientY) < DRAG_THRESHOLD_PX) return;
    isCarried = true;
    event.preventDefault();
    setGhost({ part, at });
    gesture.over(handle.pointOf(at));
  };
  const stop = (): void => {
    window.removeEventListener('pointermove', handleMove);
    window.removeEventListener('pointerup', handleUp);
    window.removeEventListener('pointercancel', handleCancel);
    window.removeEventListener('keydown', handleKey, true);
    store.getState().setView({ sketch: null });
    setGhost(null);
  };
  const handleUp = (event: globalThis.PointerEvent): void => {
    stop();
    if (!isCarried) return;
    gesture.drop(handle.pointOf({ x: event.clientX, y: event.clientY }));
    handle.focus();
  };
  const handleCancel = (): void => stop();
  const handleKey = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') stop();
  };
  window.addEventListener('pointermove', handleMove);
  window.addEventListener('pointerup', handleUp);
  window.addEventListener('pointercancel', handleCancel);
  window.addEventListener('keydown', handleKey, true);
}
