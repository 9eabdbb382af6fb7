import { indexProject } from '../../core/catalogue/lookup.ts';
import { portOffsets, symbolBounds } from '../../core/drawing/ports.ts';
import { toDrawing } from '../../core/drawing/projection.ts';
import type { Projection } from '../../core/drawing/types.ts';
import type { Port } from '../../core/model/part.ts';
import type { Endpoint, Item, Project } from '../../core/model/project.ts';
import type { PointPx } from '../store/view.ts';
import type { RectPx } from './geometry.ts';

/** Size of the drawing's labels on screen, px. */
export const TEXT_SIZE_PX = 12;
/** `portOffsets` speaks for a text size of 11. */
const OFFSET_SCALE = TEXT_SIZE_PX / 11;

export interface PortHandle {
  readonly endpoint: Endpoint;
  readonly port: Port;
  readonly at: PointPx;
}

/** The port handles of an item, px of the sheet; none for an item or part that is unknown. */
export function portHandles(project: Project, itemId: string, projection: Projection): readonly PortHandle[] {
  const { items, effective } = indexProject(project);
  const item = items.get(itemId);
  if (!item) return [];
  const centre = toDrawing(projection, item.position);
  const offsets = portOffsets(project, item);
  return (effective.get(itemId)?.ports ?? []).map((port) => {
    const offset = offsets.get(port.id) ?? { x: 0, y: 0 };
    const at = { x: centre.x + offset.x * OFFSET_SCALE, y: centre.y + offset.y * OFFSET_SCALE };
    return { endpoint: { itemId, portId: port.id }, port, at };
  });
}

/** Where one port's handle is, or null for a port that does not exist. */
export function portPoint(project: Project, endpoint: Endpoint, projection: Projection): PointPx | null {
  return (
    portHandles(project, endpoint.itemId, projection).find((handle) => handle.endpoint.portId === endpoint.portId)
      ?.at ?? null
  );
}

/** The rectangle an item's symbol fills, px of the sheet. */
export function itemBounds(project: Project, item: Item, projection: Projection): RectPx {
  const { left, top, right, bottom } = symbolBounds(project, item, projection, TEXT_SIZE_PX);
  return { x: left, y: top, width: right - left, height: bottom - top };
}
