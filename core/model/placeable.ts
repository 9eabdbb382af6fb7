import type { Part, PlaceablePart } from './part.ts';

/** Whether a part is placed on the drawing; cables, connectors and conductors are chosen for a run or feed instead. */
export function isPlaceable(part: Part): part is PlaceablePart {
  return part.kind !== 'coax' && part.kind !== 'connector' && part.kind !== 'conductor';
}
