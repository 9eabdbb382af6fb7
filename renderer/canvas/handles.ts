import { indexProject } from '../../core/catalogue/lookup.ts';
import { portPoint as drawnPortPoint, symbolBounds } from '../../core/drawing/ports.ts';
import type { Projection } from '../../core/drawing/types.ts';
import type { Port } from '../../core/model/part.ts';
import type { Endpoint, Item, Project } from '../../core/model/project.ts';
import type { PointPx } from '../store/view.ts';
import type { RectPx } from './geometry.ts';

/** Size of the drawing's labels on screen, px. */
export const TEXT_SIZE_PX = 12;

export interface PortHandle {
  readonly endpoint: Endpoint;
  readonly port: Port;
  readonly at: PointPx;
}

/** The port handles of an item, px of the sheet; none for an item or part that is unknown. */
export function portHandles(project: Project, itemId: string, projection: Projection): readonly PortHandle[] {
  const { items, effective } = indexProject(project);
  if (!items.has(itemId)) return [];
  return (effective.get(itemId)?.ports ?? []).flatMap((port) => {
    const endpoint = { itemId, portId: port.id };
    const at = drawnPortPoint(project, endpoint, projection, TEXT_SIZE_PX);
    return at ? [{ endpoint, port, at }] : [];
  });
}

/** Where one port's handle is, or null for a port that does not exist. */
export function portPoint(project: Project, endpoint: Endpoint, projection: Projection): PointPx | null {
  const { items } = indexProject(project);
  return items.has(endpoint.itemId) ? (drawnPortPoint(project, endpoint, projection, TEXT_SIZE_PX) ?? null) : null;
}

/** The rectangle an item's symbol fills, px of the sheet. */
export function itemBounds(project: Project, item: Item, projection: Projection): RectPx {
  const { left, top, right, bottom } = symbolBounds(project, item, projection, TEXT_SIZE_PX);
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** Where an item is seen: the middle of its symbol, which may stand aside of others at the same spot. */
export function itemPoint(project: Project, item: Item, projection: Projection): PointPx {
  const { x, y, width, height } = itemBounds(project, item, projection);
  return { x: x + width / 2, y: y + height / 2 };
}
