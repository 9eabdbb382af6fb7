import { type RefObject, useEffect } from 'react';
import { toDrawing } from '../../core/drawing/projection.ts';
import type { Endpoint, Subject } from '../../core/model/project.ts';
import type { PointPx } from '../store/view.ts';
import type { Scene } from './gestures/gesture.ts';
import { itemPoint, portPoint } from './handles.ts';

/** What end-to-end tests need and cannot see in the page: where things of the canvas are in the window. */
export interface TestHook {
  screenPointOf(subject: Subject): PointPx | null;
  screenPointOfPort(endpoint: Endpoint): PointPx | null;
  screenPointAt(position: { readonly xM: number; readonly zM: number }): PointPx | null;
  projectJson(): string;
}

/** Puts the hook on the window when the address asks for it with `?test=1`; nothing else in the program uses it. */
export function useTestHook(scene: Scene, surface: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    if (new URLSearchParams(window.location.search).get('test') !== '1') return;
    const toScreen = (at: PointPx | null): PointPx | null => {
      const box = surface.current?.getBoundingClientRect();
      return at && box ? { x: box.left + at.x, y: box.top + at.y } : null;
    };
    const project = () => scene.store.getState().project;
    const hook: TestHook = {
      screenPointOf: ({ kind, id }) => {
        const item = kind === 'item' ? project().items.find((known) => known.id === id) : undefined;
        if (item) return toScreen(itemPoint(project(), item, scene.projection()));
        const place = kind === 'place' ? project().places.find((known) => known.id === id) : undefined;
        if (place) return toScreen(toDrawing(scene.projection(), place.position));
        const run = kind === 'run' ? project().runs.find((known) => known.id === id) : undefined;
        const bend = run?.via[Math.floor(run.via.length / 2)];
        return bend ? toScreen(toDrawing(scene.projection(), bend.position)) : null;
      },
      screenPointOfPort: (endpoint) => toScreen(portPoint(project(), endpoint, scene.projection())),
      screenPointAt: (position) => toScreen(toDrawing(scene.projection(), position)),
      projectJson: () => JSON.stringify(project()),
    };
    Object.assign(window, { __backstayTest: hook });
  }, [scene, surface]);
}
