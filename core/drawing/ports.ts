import { indexProject } from '../catalogue/lookup.ts';
import type { Position } from '../model/boat.ts';
import type { Endpoint, Item, Project } from '../model/project.ts';
import type { Box, Point } from './geometry.ts';
import { layoutSymbols, onSheet, symbolGlyph } from './symbols.ts';
import type { Projection } from './types.ts';

/**
 * Where a port is in the boat, for the route of a run: at its item, however its symbol is drawn.
 * @throws RangeError when the item does not exist.
 */
export function portPosition(project: Project, endpoint: Endpoint): Position {
  return itemOf(project, endpoint.itemId).position;
}

/** Offset of each port from where its item's symbol stands, drawing units at a text size of 11. */
export function portOffsets(project: Project, item: Item): ReadonlyMap<string, Point> {
  return symbolGlyph(project, item, { originX: 0, originY: 0, scale: 1 }, 1).ports;
}

/**
 * Where a port is on the drawing: on the edge of its symbol. Undefined for a port the part does not have.
 * @throws RangeError when the item does not exist.
 */
export function portPoint(
  project: Project,
  endpoint: Endpoint,
  projection: Projection,
  textSize = 11,
): Point | undefined {
  itemOf(project, endpoint.itemId);
  const symbol = layoutSymbols(project, projection, textSize).get(endpoint.itemId);
  const offset = symbol?.glyph.ports.get(endpoint.portId);
  return symbol && offset ? onSheet(symbol, offset) : undefined;
}

/**
 * Box an item's symbol fills on the drawing, for hit-testing.
 * @throws RangeError when the item is not in the project.
 */
export function symbolBounds(project: Project, item: Item, projection: Projection, textSize = 11): Box {
  const symbol = layoutSymbols(project, projection, textSize).get(item.id);
  if (!symbol) throw new RangeError(`There is no item ${item.id}.`);
  return symbol.box;
}

function itemOf(project: Project, itemId: string): Item {
  const item = indexProject(project).items.get(itemId);
  if (!item) throw new RangeError(`There is no item ${itemId}.`);
  return item;
}
