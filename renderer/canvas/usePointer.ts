import { type PointerEvent, type RefObject, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { fromDrawing } from '../../core/drawing/projection.ts';
import type { Subject } from '../../core/model/project.ts';
import type { PointPx } from '../store/view.ts';
import { zoomed } from './camera.ts';
import { distance, isInside } from './geometry.ts';
import { DRAG_THRESHOLD_PX, type Gesture, type Modifiers, type Scene } from './gestures/gesture.ts';
import { panGesture } from './gestures/pan.ts';
import { bendAt, portAt, pressGesture } from './gestures/press.ts';
import { itemBounds, type PortHandle } from './handles.ts';

/** How far around a hovered item its ports stay shown, px. */
const HOVER_MARGIN_PX = 18;

interface Active {
  readonly gesture: Gesture;
  readonly start: PointPx;
  moved: boolean;
  next: { at: PointPx; modifiers: Modifiers } | null;
  frame: number;
}

export interface Hover {
  readonly itemId: string | null;
  readonly cursor: string;
  /** The port under the pointer, for its name. */
  readonly port: PortHandle | null;
}

const NO_HOVER: Hover = { itemId: null, cursor: 'default', port: null };

/** Pointer and wheel handling of the sheet: at most one gesture at a time, moved at most once per frame. */
export function usePointer(scene: Scene, surface: RefObject<HTMLElement | null>) {
  const active = useRef<Active | null>(null);
  const [hover, setHover] = useState<Hover>(NO_HOVER);
  const hovered = useRef(hover);
  hovered.current = hover;
  const isSpaceHeld = useHeldSpace();

  const end = useCallback((how: 'finish' | 'cancel') => {
    const current = active.current;
    active.current = null;
    if (!current) return;
    cancelAnimationFrame(current.frame);
    if (how === 'cancel') current.gesture.cancel();
    else {
      if (current.next) current.gesture.move(current.next.at, current.next.modifiers);
      current.gesture.finish(current.moved);
    }
    setHover((known) => ({ ...known, cursor: 'default', port: null }));
  }, []);
  useEscape(active, end);
  useWheel(scene, surface);

  const handlers = useMemo(
    () => pointerHandlers({ scene, active, hovered, isSpaceHeld, setHover, end }),
    [scene, end, isSpaceHeld],
  );
  return { handlers, hover };
}

interface Hand {
  readonly scene: Scene;
  readonly active: RefObject<Active | null>;
  readonly hovered: RefObject<Hover>;
  readonly isSpaceHeld: RefObject<boolean>;
  setHover(hover: Hover | ((known: Hover) => Hover)): void;
  end(how: 'finish' | 'cancel'): void;
}

function pointerHandlers({ scene, active, hovered, isSpaceHeld, setHover, end }: Hand) {
  return {
    onPointerDown: (event: PointerEvent): void => {
      if (active.current || event.button === 2) return;
      const at = pointOf(event);
      event.currentTarget.setPointerCapture(event.pointerId);
      const isPan = event.button === 1 || isSpaceHeld.current;
      if (isPan) event.preventDefault();
      const gesture = isPan
        ? panGesture(scene, at)
        : pressGesture(scene, at, hovered.current.itemId, modifiersOf(event));
      active.current = { gesture, start: at, moved: false, next: null, frame: 0 };
    },
    onPointerMove: (event: PointerEvent): void => {
      const at = pointOf(event);
      const current = active.current;
      if (current) followGesture(current, at, modifiersOf(event), setHover);
      else setHover(sameOr(hovered.current, hoverAt(scene, at, hovered.current.itemId, isSpaceHeld.current)));
      scene.store.getState().setView({ pointer: fromDrawing(scene.projection(), at) });
    },
    onPointerUp: (): void => end('finish'),
    onPointerCancel: (): void => end('cancel'),
    onPointerLeave: (): void => {
      if (active.current) return;
      scene.store.getState().setView({ pointer: null });
      setHover(NO_HOVER);
    },
  };
}

function pointOf(event: PointerEvent): PointPx {
  const box = event.currentTarget.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
}

function followGesture(
  current: Active,
  at: PointPx,
  modifiers: Modifiers,
  setHover: (change: (known: Hover) => Hover) => void,
): void {
  if (!current.moved && distance(at, current.start) < DRAG_THRESHOLD_PX) return;
  if (!current.moved && current.gesture.cursor) {
    const cursor = current.gesture.cursor;
    setHover((known) => ({ ...known, cursor, port: null }));
  }
  current.moved = true;
  if (!current.next) {
    current.frame = requestAnimationFrame(() => {
      const next = current.next;
      current.next = null;
      if (next) current.gesture.move(next.at, next.modifiers);
    });
  }
  current.next = { at, modifiers };
}

function hoverAt(scene: Scene, at: PointPx, hoveredId: string | null, isPanning: boolean): Hover {
  if (isPanning) return { itemId: hoveredId, cursor: 'grab', port: null };
  const port = portAt(scene, at, hoveredId);
  if (port) return { itemId: hoveredId, cursor: 'crosshair', port };
  if (bendAt(scene, at)) return { itemId: null, cursor: 'move', port: null };
  const hit = scene.subjectAt(at);
  if (hit?.subject.kind === 'item' && !hit.isMark) return { itemId: hit.subject.id, cursor: 'grab', port: null };
  const stays = hoveredId !== null && isNear(scene, hoveredId, at);
  return { itemId: stays ? hoveredId : null, cursor: hit ? cursorOver(scene, hit.subject) : 'default', port: null };
}

function cursorOver(scene: Scene, subject: Subject): string {
  const { selection } = scene.store.getState();
  const isSelected = selection.some(({ kind, id }) => kind === subject.kind && id === subject.id);
  return subject.kind === 'run' && isSelected ? 'move' : 'pointer';
}

function isNear(scene: Scene, itemId: string, at: PointPx): boolean {
  const { project } = scene.store.getState();
  const item = project.items.find(({ id }) => id === itemId);
  const bounds = item && itemBounds(project, item, scene.projection());
  return !!bounds && isInside(at, bounds, HOVER_MARGIN_PX);
}

const sameOr = (before: Hover, after: Hover): Hover =>
  before.itemId === after.itemId &&
  before.cursor === after.cursor &&
  before.port?.endpoint.itemId === after.port?.endpoint.itemId &&
  before.port?.endpoint.portId === after.port?.endpoint.portId
    ? before
    : after;

const modifiersOf = (event: PointerEvent): Modifiers => ({ shift: event.shiftKey, alt: event.altKey });

/** Whether the space bar is down outside a text field: the hand that moves the sheet. */
function useHeldSpace(): RefObject<boolean> {
  const held = useRef(false);
  useEffect(() => {
    const handleDown = (event: KeyboardEvent): void => {
      const isOnSheet = event.target instanceof Element && event.target.closest('[data-area="drawing"], body');
      const isControl = event.target instanceof Element && event.target.closest('input, textarea, button, [role]');
      const isSurface = event.target instanceof Element && event.target.matches('[data-area="drawing"]');
      if (event.key !== ' ' || !isOnSheet || (isControl && !isSurface)) return;
      held.current = true;
      event.preventDefault();
    };
    const handleUp = (event: KeyboardEvent): void => {
      if (event.key === ' ') held.current = false;
    };
    window.addEventListener('keydown', handleDown);
    window.addEventListener('keyup', handleUp);
    return () => {
      window.removeEventListener('keydown', handleDown);
      window.removeEventListener('keyup', handleUp);
    };
  }, []);
  return held;
}

/** Escape drops the gesture under way before it means anything else. */
function useEscape(active: RefObject<Active | null>, end: (how: 'cancel') => void): void {
  useEffect(() => {
    const handleKey = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || !active.current) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      end('cancel');
    };
    window.addEventListener('keydown', handleKey, true);
    return () => window.removeEventListener('keydown', handleKey, true);
  }, [active, end]);
}

/** The wheel zooms about the pointer; Shift and a sideways wheel move the sheet. Not passive, or the page would zoom too. */
function useWheel(scene: Scene, surface: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const element = surface.current;
    const handleWheel = (event: WheelEvent): void => {
      event.preventDefault();
      const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
      const at = { x: event.clientX - box.left, y: event.clientY - box.top };
      const factor = Math.exp(-event.deltaY * (event.deltaMode === 1 ? 0.05 : 0.0016));
      scene.store.getState().setView({ camera: zoomed(scene.projection(), scene.size(), factor, at) });
    };
    element?.addEventListener('wheel', handleWheel, { passive: false });
    return () => element?.removeEventListener('wheel', handleWheel);
  }, [scene, surface]);
}
