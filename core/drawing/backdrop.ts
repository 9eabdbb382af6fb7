import { indexProject } from '../catalogue/lookup.ts';
import type { Item, Project } from '../model/project.ts';
import { drawFlood } from './flood.ts';
import { drawGrid } from './grid.ts';
import { hullLines } from './hulls.ts';
import type { ProfileOptions } from './options.ts';
import { outline, type Pen, thin } from './pen.ts';
import { deckGear } from './rails.ts';
import { fallenMast, isSailing, mastShapes, stayShapes, stays } from './rig.ts';
import { superstructure } from './superstructure.ts';
import type { Shape } from './types.ts';

/** Station grid, waterline and boat: what changes only with the boat, its wire antennas or the view. */
export function drawBackdrop(project: Project, options: ProfileOptions): readonly Shape[] {
  return [
    ...(options.show.grid ? drawGrid(project, options).shapes : []),
    ...(options.show.boat ? drawBoat(project, options) : []),
  ];
}

function drawBoat(project: Project, options: ProfileOptions): readonly Shape[] {
  const { boat } = project;
  const pen: Pen = { projection: options.projection, u: options.textSize / 11 };
  const down = (mastId: string): boolean => options.failure?.mastsDown?.has(mastId) ?? false;
  const gone: Pen = { ...pen, opacity: 0.45, ghost: true };
  const lines = hullLines(boat);
  const rigging = stays(boat, wireAntennas(project));
  return [
    ...rigging.flatMap((stay) => stayShapes(stay, stay.mastIds.some(down) ? gone : pen)),
    ...lines.appendages.map((curve) => outline(pen, curve, 'none', 0.9)),
    ...lines.details.map((curve) => thin(pen, curve)),
    outline(pen, lines.sheer, 'none', 1.2),
    outline(pen, lines.outline, 'none', 1.3),
    ...(isSailing(boat) ? [] : deckGear(boat, pen)),
    ...superstructure(boat, pen),
    ...(isSailing(boat) ? deckGear(boat, pen) : []),
    ...boat.masts.flatMap((mast) => mastShapes(boat, mast, down(mast.id) ? gone : pen)),
    ...boat.masts.filter((mast) => down(mast.id)).flatMap((mast) => fallenMast(mast, pen)),
    ...drawFlood(options, pen),
  ];
}

/**
 * Changes when an item changes what the backdrop shows: a wire antenna that takes the place of a stay. With the boat, the
 * places and the options it is all a caller that keeps a backdrop needs to watch.
 */
export function backdropKey(project: Project): string {
  return JSON.stringify(wireAntennas(project).map(({ position, endPosition }) => [position, endPosition]));
}

/** Items that are a wire in the rig. */
export function wireAntennas(project: Project): readonly Item[] {
  const { effective } = indexProject(project);
  return project.items.filter((item) => {
    const part = effective.get(item.id);
    return item.endPosition !== null && (part === undefined || part.kind === 'antenna');
  });
}
