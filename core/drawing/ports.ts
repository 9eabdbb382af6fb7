import { indexProject } from '../catalogue/lookup.ts';
import type { Position } from '../model/boat.ts';
import type { Endpoint, Item, Project } from '../model/project.ts';
import { type Box, boxAround, type Point } from './geometry.ts';
import { toDrawing } from './projection.ts';
import type { Projection } from './types.ts';

/**
 * Where a port is in the boat: at its item, for the route of a run.
 * @throws RangeError when the item does not exist.
 */
export function portPosition(project: Project, endpoint: Endpoint): Position {
  const item = indexProject(project).items.get(endpoint.itemId);
  if (!item) throw new RangeError(`There is no item ${endpoint.itemId}.`);
  return item.position;
}

/** Offset of each port from the middle of its item's symbol, drawing units at a text size of 11. */
export function portOffsets(project: Project, item: Item): ReadonlyMap<string, Point> {
  const ports = indexProject(project).effective.get(item.id)?.ports ?? [];
  return new Map(ports.map((port, index) => [port.id, { x: (index - (ports.length - 1) / 2) * 8, y: -8 }]));
}

/** Box a symbol fills on the drawing, for hit-testing. */
export function symbolBounds(_project: Project, item: Item, projection: Projection, textSize = 11): Box {
  return boxAround(toDrawing(projection, item.position), textSize, textSize);
}
