import type { Boat } from '../model/boat.ts';
import type { Project } from '../model/project.ts';
import { wireAntennas } from './backdrop.ts';
import type { Box, Point } from './geometry.ts';
import { sheerZM } from './hullLines.ts';
import type { ProfileOptions } from './options.ts';
import { toDrawing } from './projection.ts';
import { stays } from './rig.ts';
import type { SymbolLayout } from './symbols.ts';

/** How far the boat with its gear reaches in each direction, read off in strips of the sheet. */
export interface Silhouette {
  /** Box of everything. */
  readonly box: Box;
  /** Least x of anything in the strip of sheet between two heights. */
  leftOf(top: number, bottom: number): number;
  rightOf(top: number, bottom: number): number;
  topOf(left: number, right: number): number;
  bottomOf(left: number, right: number): number;
}

/** The outer shape of boat, rig and symbols; built from the lines that make it up. */
export function silhouetteOf(project: Project, layout: SymbolLayout, options: ProfileOptions): Silhouette {
  const strip = 8 * (options.textSize / 11);
  const rows = new Map<number, { low: number; high: number }>();
  const columns = new Map<number, { low: number; high: number }>();
  let box: Box = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
  const add = ({ x, y }: Point, wire: boolean): void => {
    widen(rows, Math.floor(y / strip), x);
    if (!wire) widen(columns, Math.floor(x / strip), y);
    box = {
      left: Math.min(box.left, x),
      right: Math.max(box.right, x),
      top: Math.min(box.top, y),
      bottom: Math.max(box.bottom, y),
    };
  };
  for (const { a, b, wire } of outerLines(project, layout, options)) {
    const steps = Math.min(4000, Math.max(1, Math.ceil((1.5 * Math.hypot(b.x - a.x, b.y - a.y)) / strip)));
    for (let step = 0; step <= steps; step++) {
      add({ x: a.x + ((b.x - a.x) * step) / steps, y: a.y + ((b.y - a.y) * step) / steps }, wire);
    }
  }
  const read = (strips: typeof rows, from: number, to: number, side: 'low' | 'high', none: number): number => {
    let found: number | null = null;
    for (let index = Math.floor(from / strip); index <= Math.floor(to / strip); index++) {
      const value = strips.get(index)?.[side];
      if (value === undefined) continue;
      found = found === null ? value : side === 'low' ? Math.min(found, value) : Math.max(found, value);
    }
    return found ?? none;
  };
  return {
    box,
    leftOf: (top, bottom) => read(rows, top, bottom, 'low', (box.left + box.right) / 2),
    rightOf: (top, bottom) => read(rows, top, bottom, 'high', (box.left + box.right) / 2),
    topOf: (left, right) => read(columns, left, right, 'low', (box.top + box.bottom) / 2),
    bottomOf: (left, right) => read(columns, left, right, 'high', (box.top + box.bottom) / 2),
  };
}

function widen(strips: Map<number, { low: number; high: number }>, index: number, value: number): void {
  const known = strips.get(index);
  if (!known) strips.set(index, { low: value, high: value });
  else if (value < known.low) known.low = value;
  else if (value > known.high) known.high = value;
}

interface OuterLine {
  readonly a: Point;
  readonly b: Point;
  /** Masts, stays and rods: they bound the boat sideways, but balloons may stand over the deck between them. */
  readonly wire: boolean;
}

/** Lines that bound the boat: hull box below the sheer, houses, fittings, masts, stays, symbols. */
function outerLines(project: Project, layout: SymbolLayout, options: ProfileOptions): readonly OuterLine[] {
  const { boat } = project;
  const at = (xM: number, zM: number): Point => toDrawing(options.projection, { xM, zM });
  const lines: OuterLine[] = [];
  const chain = (points: readonly Point[], wire = false): void => {
    points.forEach((b, index) => {
      const a = points[index - 1];
      if (a) lines.push({ a, b, wire });
    });
  };
  chain(hullBox(boat, at));
  for (const house of boat.deckhouses) {
    chain([at(house.xForeM, 0), at(house.xForeM, house.zTopM), at(house.xAftM, house.zTopM), at(house.xAftM, 0)]);
  }
  for (const { xForeM, xAftM, zBaseM, zTopM } of boat.fittings) {
    chain([at(xForeM, zBaseM), at(xForeM, zTopM), at(xAftM, zTopM), at(xAftM, zBaseM)]);
  }
  for (const mast of boat.masts) {
    chain([at(mast.xM, mast.footZM), at(mast.xM, mast.truckZM)], true);
    if (mast.boomZM === null) continue;
    // With what lies flaked on it.
    const top = mast.boomZM + 0.06 * mast.boomLengthM;
    chain([at(mast.xM, top), at(mast.xM + mast.boomLengthM, top)]);
  }
  for (const stay of stays(boat, wireAntennas(project)))
    chain(
      stay.points.map(([xM, zM]) => at(xM, zM)),
      true,
    );
  for (const { box, item } of layout.values()) {
    if (item.endPosition) {
      chain([at(item.position.xM, item.position.zM), at(item.endPosition.xM, item.endPosition.zM)], true);
    } else chain(cornersOf(box), box.bottom - box.top > 2 * (box.right - box.left));
  }
  return lines;
}

function hullBox(boat: Boat, at: (xM: number, zM: number) => Point): readonly Point[] {
  const { loaM, draughtM } = boat;
  const deck = Array.from({ length: 9 }, (_, index) => at((loaM * index) / 8, sheerZM(boat, (loaM * index) / 8)));
  const below = [at(loaM, 0), at(0.95 * loaM, -0.8 * draughtM), at(0.86 * loaM, -draughtM), at(0.3 * loaM, -draughtM)];
  return [...deck, ...below, at(0.04 * loaM, 0), at(0, boat.freeboardForeM)];
}

const cornersOf = ({ left, top, right, bottom }: Box): readonly Point[] => [
  { x: left, y: top },
  { x: right, y: top },
  { x: right, y: bottom },
  { x: left, y: bottom },
  { x: left, y: top },
];
