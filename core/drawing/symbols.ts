import { indexProject } from '../catalogue/lookup.ts';
import type { Item, Project } from '../model/project.ts';
import { type Box, boxAround, grown, type Point, round2 } from './geometry.ts';
import type { Glyph } from './glyph.ts';
import { antennaGlyph, wireGlyph } from './glyphAntennas.ts';
import { inlineGlyph, powerGlyph } from './glyphDevices.ts';
import { equipmentGlyph } from './glyphEquipment.ts';
import { boxLabel, positionSourceGlyph, radioGlyph, standaloneGlyph, unknownGlyph } from './glyphSets.ts';
import { Occupancy } from './occupancy.ts';
import { isUpright, toDrawing } from './projection.ts';
import type { Projection } from './types.ts';

/** An item's symbol where it stands on the drawing. */
export interface PlacedSymbol {
  readonly item: Item;
  readonly glyph: Glyph;
  /** Where the item really is. */
  readonly spot: Point;
  /** Where its symbol stands: the spot, or a little aside when symbols crowd. */
  readonly at: Point;
  readonly box: Box;
  readonly u: number;
}

export type SymbolLayout = ReadonlyMap<string, PlacedSymbol>;

interface Known {
  readonly projection: Projection;
  readonly textSize: number;
  readonly layout: SymbolLayout;
}
const cache = new WeakMap<Project, Known>();

/**
 * Where every symbol stands, in document order. Antennas and other things whose height or station matters stand exactly
 * where they are; boxes that would cover each other are moved aside by the smallest step that clears them, first come
 * first served, so that a drawing of a packed chart table can still be read. Zooming in sets them back on their spots.
 */
export function layoutSymbols(project: Project, projection: Projection, textSize: number): SymbolLayout {
  const known = cache.get(project);
  if (known && known.textSize === textSize && sameProjection(known.projection, projection)) return known.layout;
  const u = textSize / 11;
  const taken = new Occupancy(24 * u);
  const spots = new Occupancy(24 * u);
  const placed = new Map<string, PlacedSymbol>();
  const steps = project.items.length > CROWD ? WIDE_STEPS : STEPS_ASIDE;
  const glyphs = project.items.map((item) => ({ item, glyph: symbolGlyph(project, item, projection, u) }));
  for (const { item, glyph } of glyphs) {
    if (!glyph.fixed) continue;
    const symbol = besideTwin(placedAt(item, glyph, toDrawing(projection, item.position), u), spots);
    placed.set(item.id, symbol);
    if (!item.endPosition) taken.addBox(symbol.box);
  }
  for (const { item, glyph } of glyphs) {
    if (glyph.fixed) continue;
    const symbol = movedClear(placedAt(item, glyph, toDrawing(projection, item.position), u), taken, steps);
    placed.set(item.id, symbol);
    taken.addBox(symbol.box);
  }
  cache.set(project, { projection, textSize, layout: placed });
  return placed;
}

const sameProjection = (a: Projection, b: Projection): boolean =>
  a.originX === b.originX && a.originY === b.originY && a.scale === b.scale;

function placedAt(item: Item, glyph: Glyph, at: Point, u: number, spot = at): PlacedSymbol {
  const { left, right, top, bottom } = glyph.box;
  const box = { left: at.x + left * u, right: at.x + right * u, top: at.y + top * u, bottom: at.y + bottom * u };
  return { item, glyph, spot, at, box, u };
}

/** Of two antennas at one station and height (one to port, one to starboard) the second is drawn beside the first. */
function besideTwin(symbol: PlacedSymbol, spots: Occupancy): PlacedSymbol {
  const { item, glyph, spot, u } = symbol;
  for (let step = 0; step < 8; step++) {
    const at = { x: spot.x + step * 8 * u, y: spot.y };
    const around = boxAround(at, 2.5 * u, 2.5 * u);
    if (spots.hits(around)) continue;
    spots.addBox(around);
    return placedAt(item, glyph, at, u, spot);
  }
  return symbol;
}

/** Steps aside in units of the symbol, nearest first, sideways before up and down. */
const STEPS_ASIDE: readonly Point[] = stepsAside(11, 4);

/** Above so many items only wide steps are tried, to save time: zooming in is then the way to see them apart. */
const CROWD = 150;
const WIDE_STEPS: readonly Point[] = stepsAside(4, 12);

function stepsAside(reach: number, step: number): readonly Point[] {
  const steps: Point[] = [];
  for (let x = -reach; x <= reach; x++) for (let y = -reach; y <= reach; y++) steps.push({ x: x * step, y: y * step });
  const far = ({ x, y }: Point): number => Math.hypot(x, y * 1.35) + (x < 0 ? 0.01 : 0) + (y < 0 ? 0.02 : 0);
  return steps.sort((a, b) => far(a) - far(b));
}

function movedClear(symbol: PlacedSymbol, taken: Occupancy, steps: readonly Point[]): PlacedSymbol {
  const { item, glyph, spot, u } = symbol;
  const base = grown(symbol.box, 1.5 * u);
  for (const step of steps) {
    const [dx, dy] = [step.x * u, step.y * u];
    const box = { left: base.left + dx, right: base.right + dx, top: base.top + dy, bottom: base.bottom + dy };
    if (!taken.hits(box)) return placedAt(item, glyph, { x: spot.x + dx, y: spot.y + dy }, u, spot);
  }
  return symbol;
}

/** The symbol of an item, by what its part is. */
export function symbolGlyph(project: Project, item: Item, projection: Projection, u: number): Glyph {
  const part = indexProject(project).effective.get(item.id);
  if (!part) return unknownGlyph(item.tag);
  switch (part.kind) {
    case 'antenna': {
      if (item.endPosition) {
        const from = toDrawing(projection, item.position);
        const to = toDrawing(projection, item.endPosition);
        return wireGlyph(part.ports, { x: (to.x - from.x) / u, y: (to.y - from.y) / u });
      }
      const lengthM = isUpright(part.antennaClass) ? Math.max(0, part.figures.lengthM.value) : 0;
      return antennaGlyph(part, (lengthM * projection.scale) / u);
    }
    case 'radio':
      return radioGlyph(part, item.tag);
    case 'inline':
      return inlineGlyph(part, boxLabel(item.tag, 'ATU'));
    case 'position-source':
      return positionSourceGlyph(part, item.tag);
    case 'power':
      return powerGlyph(part, boxLabel(item.tag, 'DC'));
    case 'standalone':
      return standaloneGlyph(part, item.tag);
    case 'equipment':
      return equipmentGlyph(part, item.tag);
    default:
      return unknownGlyph(item.tag);
  }
}

/** Where a point of the symbol's own units lands. */
export const onSheet = ({ at, u }: PlacedSymbol, point: Point): Point => ({
  x: at.x + point.x * u,
  y: at.y + point.y * u,
});

/** A path in the symbol's own units, moved and scaled onto the sheet. */
export function placedPath(d: string, at: Point, u: number): string {
  return d.replace(/([MLQCAZ])([^MLQCAZ]*)/g, (_, step: string, rest: string) => {
    const numbers = rest.match(/-?[\d.]+/g)?.map(Number) ?? [];
    const moved = numbers.map((value, index) => movedNumber(step, index, value, at, u));
    return moved.length === 0 ? step : `${step}${moved.join(' ')} `;
  });
}

function movedNumber(step: string, index: number, value: number, at: Point, u: number): number {
  if (step !== 'A') return round2((index % 2 === 0 ? at.x : at.y) + value * u);
  const place = index % 7;
  if (place < 2) return round2(value * u);
  if (place < 5) return value;
  return round2((place === 5 ? at.x : at.y) + value * u);
}
