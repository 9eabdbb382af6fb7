import { indexProject } from '../catalogue/lookup.ts';
import type { Boat } from '../model/boat.ts';
import type { Item, Project } from '../model/project.ts';
import { outboardM } from './hullLines.ts';
import type { Projection } from './types.ts';

/** Limits of what is drawn, boat metres: x aft of the stem, z above the waterline. */
export interface Extent {
  readonly xForeM: number;
  readonly xAftM: number;
  readonly zLowM: number;
  readonly zHighM: number;
}

/** Where a point of the boat lands on the drawing. y has no part in a profile. */
export function toDrawing(
  projection: Projection,
  position: { readonly xM: number; readonly zM: number },
): { x: number; y: number } {
  return {
    x: projection.originX - position.xM * projection.scale,
    y: projection.originY - position.zM * projection.scale,
  };
}

/** The point of the boat's centreline plane under a point of the drawing. */
export function fromDrawing(
  projection: Projection,
  point: { readonly x: number; readonly y: number },
): { xM: number; zM: number } {
  return {
    xM: (projection.originX - point.x) / projection.scale,
    zM: (projection.originY - point.y) / projection.scale,
  };
}

/**
 * The projection that puts the whole boat in the middle of a sheet: hull, keel, rig, antennas, and around them the room
 * that balloons, station numbers and height marks take.
 * @param width height drawing units, > 0
 * @param marginU kept free on all four sides, drawing units
 * @param textSize of the labels, drawing units; a usual size for such a sheet when left out
 * @throws RangeError when the sheet has no size.
 */
export function fitProjection(
  project: Project,
  width: number,
  height: number,
  marginU: number,
  textSize: number = Math.min(11, Math.max(width, height) / 110),
): Projection {
  if (!(width > 0 && height > 0 && Number.isFinite(width) && Number.isFinite(height))) {
    throw new RangeError(`A drawing needs a width and a height above zero; ${width} by ${height} is none.`);
  }
  const extent = boatExtent(project);
  const u = textSize / 11;
  const room = { side: marginU + 84 * u, top: marginU + 34 * u, bottom: marginU + 92 * u };
  const lengthM = extent.xAftM - extent.xForeM;
  const heightM = extent.zHighM - extent.zLowM;
  const scale = Math.max(
    0.001,
    Math.min(
      Math.max(width * 0.3, width - 2 * room.side) / lengthM,
      Math.max(height * 0.3, height - room.top - room.bottom) / heightM,
    ),
  );
  const middleXM = (extent.xForeM + extent.xAftM) / 2;
  const middleZM = (extent.zLowM + extent.zHighM) / 2;
  return {
    originX: width / 2 + middleXM * scale,
    originY: (height + room.top - room.bottom) / 2 + middleZM * scale,
    scale,
  };
}

/** What must fit: the boat, its rig and fittings, and every item with the length of its antenna. */
export function boatExtent(project: Project): Extent {
  const ends = project.items.flatMap((item) => [item.position, antennaTip(project, item)]);
  const { xForeM, xAftM, zLowM, zHighM } = bareExtent(project.boat);
  const xs = ends.map(({ xM }) => xM);
  const zs = ends.map(({ zM }) => zM);
  return {
    xForeM: least([xForeM, ...xs]),
    xAftM: most([xAftM, ...xs]),
    zLowM: least([zLowM, ...zs]),
    zHighM: most([zHighM, ...zs]),
  };
}

/** Limits of the boat without its items. */
export function bareExtent(boat: Boat): Extent {
  const xs = [0, boat.loaM + (boat.kind === 'open-boat' ? outboardM(boat) : 0)];
  const zs = [-boat.draughtM, boat.airDraughtM, boat.freeboardForeM, boat.freeboardMidM, boat.freeboardAftM];
  for (const mast of boat.masts) {
    xs.push(mast.xM, ...(mast.boomZM === null ? [] : [mast.xM + mast.boomLengthM]));
    zs.push(mast.footZM, mast.truckZM);
  }
  for (const house of boat.deckhouses) zs.push(house.zTopM);
  for (const fitting of boat.fittings) {
    xs.push(fitting.xForeM, fitting.xAftM);
    zs.push(fitting.zBaseM, fitting.zTopM);
  }
  return { xForeM: least(xs), xAftM: most(xs), zLowM: least(zs), zHighM: most(zs) };
}

/** Upper end of an antenna, boat metres; of anything else its own position. */
export function antennaTip(project: Project, item: Item): { readonly xM: number; readonly zM: number } {
  if (item.endPosition) return item.endPosition;
  const part = indexProject(project).effective.get(item.id);
  const lengthM = part?.kind === 'antenna' && isUpright(part.antennaClass) ? part.figures.lengthM.value : 0;
  return { xM: item.position.xM, zM: item.position.zM + Math.max(0, lengthM) };
}

/** Whether an antenna of this class is a rod standing up from its base, drawn to its length. */
export function isUpright(antennaClass: string): boolean {
  return ['vhf-whip', 'vhf-collinear', 'hf-whip', 'broadcast', 'cellular', 'wifi'].includes(antennaClass);
}

// Not Math.min(...values): a vessel of thousands of items would overflow the argument list.
const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b));
const most = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b));
