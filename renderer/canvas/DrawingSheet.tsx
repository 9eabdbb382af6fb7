import type Konva from 'konva';
import { type RefObject, useEffect, useMemo, useRef } from 'react';
import { fitProjection } from '../../core/drawing/projection.ts';
import type { Projection } from '../../core/drawing/types.ts';
import { removeBend } from '../../core/edit/route.ts';
import type { Project } from '../../core/model/project.ts';
import { useApp, useAppStore } from '../store/context.ts';
import type { AppStore } from '../store/store.ts';
import type { Camera, PointPx } from '../store/view.ts';
import { projectionOf, type SizePx } from './camera.ts';
import type { Scene } from './gestures/gesture.ts';
import { bendAt } from './gestures/press.ts';
import { TEXT_SIZE_PX } from './handles.ts';
import { meantSubject } from './hit.ts';
import { ProfileStage } from './ProfileStage.tsx';
import { useSheetHandle } from './placing.tsx';
import { EventBanner, SheetExtras } from './SheetExtras.tsx';
import { useTestHook } from './testHook.ts';
import { useElementSize } from './useElementSize.ts';
import { usePointer } from './usePointer.ts';

const MARGIN_PX = 8;

/** The drawing: the profile on its sheet, everything done to it by pointer, and the small things that lie over it. */
export function DrawingSheet() {
  const frame = useRef<HTMLDivElement>(null);
  const size = useElementSize(frame);
  const project = useApp((state) => state.project);
  const camera = useApp((state) => state.camera);
  const fitCount = useApp((state) => state.fitCount);
  // biome-ignore lint/correctness/useExhaustiveDependencies: moving a part must not move the sheet under it
  const projection = useMemo(
    () => size && sheetProjection(project, camera, size),
    [project.boat, fitCount, camera, size],
  );
  return (
    <div className="sheet-column">
      <EventBanner />
      <div className="sheet" ref={frame}>
        {size && projection ? <Sheet size={size} projection={projection} /> : null}
      </div>
    </div>
  );
}

function sheetProjection(project: Project, camera: Camera | null, size: SizePx): Projection {
  if (camera) return projectionOf(camera, size);
  return fitProjection(project, size.width, size.height, MARGIN_PX, TEXT_SIZE_PX);
}

function Sheet({ size, projection }: { size: SizePx; projection: Projection }) {
  const store = useAppStore();
  const surface = useRef<HTMLDivElement>(null);
  const stage = useRef<Konva.Stage>(null);
  const scene = useScene(store, stage, size, projection);
  const { handlers, hover } = usePointer(scene, surface);
  useHandle(scene, surface);
  useTestHook(scene, surface);
  useEffect(() => store.getState().setView({ sheet: { projection, size } }), [store, projection, size]);
  const boatName = useApp((state) => state.project.boat.name);
  const handleDoubleClick = (event: { clientX: number; clientY: number }): void => {
    const at = pointIn(surface.current, { x: event.clientX, y: event.clientY });
    const bend = at && bendAt(scene, at);
    if (bend)
      store.getState().edit(`Bend taken out of ${bend.run.number}`, (p) => removeBend(p, bend.run.id, bend.index));
  };
  return (
    <>
      <div
        ref={surface}
        className="sheet-surface"
        role="application"
        aria-label={`Drawing of ${boatName}. The outline lists what is on it; arrow keys move what is selected.`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing takes arrow keys and letters for what is selected
        tabIndex={0}
        data-area="drawing"
        style={{ cursor: hover.cursor }}
        onDoubleClick={handleDoubleClick}
        {...handlers}
      >
        <ProfileStage stageRef={stage} size={size} projection={projection} hoveredId={hover.itemId} />
      </div>
      <SheetExtras hoveredPort={hover.port} />
    </>
  );
}

/** The scene for gestures; one object for the life of the sheet that always answers with the present view. */
function useScene(store: AppStore, stage: RefObject<Konva.Stage | null>, size: SizePx, projection: Projection): Scene {
  const view = useRef({ size, projection });
  view.current = { size, projection };
  return useMemo<Scene>(
    () => ({
      store,
      projection: () => view.current.projection,
      size: () => view.current.size,
      subjectAt: (at) => {
        const node = stage.current?.getIntersection(at);
        const subject = node?.getAttr('subject');
        if (!subject) return null;
        if (node?.getAttr('mark') === true) return { subject, isMark: true };
        const { project } = store.getState();
        return { subject: meantSubject(project, view.current.projection, at, subject), isMark: false };
      },
    }),
    [store, stage],
  );
}

function useHandle(scene: Scene, surface: RefObject<HTMLElement | null>): void {
  const sheet = useSheetHandle();
  useEffect(() => {
    sheet.current = {
      scene,
      pointOf: (client) => pointIn(surface.current, client),
      focus: () => surface.current?.focus(),
    };
    return () => {
      sheet.current = null;
    };
  }, [sheet, scene, surface]);
}

/** A point of the window as a point of the sheet, or null beside it. */
function pointIn(element: HTMLElement | null, client: PointPx): PointPx | null {
  const box = element?.getBoundingClientRect();
  if (!box) return null;
  const at = { x: client.x - box.left, y: client.y - box.top };
  return at.x >= 0 && at.y >= 0 && at.x <= box.width && at.y <= box.height ? at : null;
}
