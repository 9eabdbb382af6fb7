import type { Project } from '../model/project.ts';
import { flagShapes, flagSize, type Marks } from './findingMarks.ts';
import { type Box, boxAround, type Point } from './geometry.ts';
import { sheerZM } from './hullLines.ts';
import type { Occupancy } from './occupancy.ts';
import type { ProfileOptions } from './options.ts';
import { toDrawing } from './projection.ts';
import { line, polyline, text } from './shapes.ts';
import { textWidth } from './textWidth.ts';
import type { Shape } from './types.ts';

/** Named spots as small open diamonds; they lie under the symbols. */
export function drawPlaces(project: Project, options: ProfileOptions): readonly Shape[] {
  const r = 2.6 * (options.textSize / 11);
  return shownPlaces(project, options).map(({ place, x, y }) =>
    polyline(
      [
        { x, y: y - r },
        { x: x + r, y },
        { x, y: y + r },
        { x: x - r, y },
      ],
      {
        layer: 'installation',
        stroke: 'grid-text',
        fill: 'paper',
        width: 0.8 * (options.textSize / 11),
        subject: { kind: 'place', id: place.id },
      },
      true,
    ),
  );
}

/** Their names, where there is room. */
export function drawPlaceNames(project: Project, taken: Occupancy, options: ProfileOptions): readonly Shape[] {
  const u = options.textSize / 11;
  const size = 9 * u;
  return shownPlaces(project, options).flatMap(({ place, x, y }) => {
    const left = x + 5 * u;
    const box: Box = { left, right: left + textWidth(place.name, size), top: y - size * 0.6, bottom: y + size * 0.5 };
    if (taken.hits(box)) return [];
    taken.addBox(box);
    const subject = { kind: 'place', id: place.id } as const;
    const style = { layer: 'labels', size, ink: 'grid-text', halo: true, subject } as const;
    return [text(place.name, { x: left, y: y + size * 0.34 }, style)];
  });
}

function shownPlaces(project: Project, { show, projection, width, height }: ProfileOptions) {
  if (!show.places) return [];
  return project.places
    .map((place) => ({ place, ...toDrawing(projection, place.position) }))
    .filter(({ x, y }) => x >= 0 && y >= 0 && x <= width && y <= height);
}

/** Flags of remarks about places, structures, compartments, feeds and links: what has no balloon and no label. */
export function drawOtherMarks(
  project: Project,
  marks: Marks,
  middles: ReadonlyMap<string, Point>,
  taken: Occupancy,
  options: ProfileOptions,
): readonly Shape[] {
  const u = options.textSize / 11;
  const shapes: Shape[] = [];
  for (const [key, mark] of marks) {
    const spot = middles.get(key) ?? spotOf(project, key, options);
    if (!spot || spot.x < 0 || spot.y < 0 || spot.x > options.width || spot.y > options.height) continue;
    const [kind = '', id = ''] = splitKey(key);
    const subject = subjectOf(kind, id);
    if (!subject) continue;
    const { width, height } = flagSize(mark, u);
    const center = freeSpot(spot, width / 2, height / 2, taken, u);
    const box = boxAround(center, width / 2, height / 2);
    taken.addBox(box);
    shapes.push(
      line(spot, center, { layer: 'marks', stroke: 'finding', width: 0.7 * u }),
      ...flagShapes(mark, box, u, subject),
    );
  }
  return shapes;
}

function splitKey(key: string): readonly [string, string] {
  const colon = key.indexOf(':');
  return [key.slice(0, colon), key.slice(colon + 1)];
}

function subjectOf(kind: string, id: string) {
  switch (kind) {
    case 'place':
    case 'structure':
    case 'compartment':
    case 'feed':
    case 'link':
    case 'boat':
      return { kind, id } as const;
    default:
      return null;
  }
}

/** Where such a thing is on the drawing. */
function spotOf(project: Project, key: string, { projection }: ProfileOptions): Point | null {
  const { boat, places } = project;
  const [kind, id] = splitKey(key);
  if (kind === 'boat') return toDrawing(projection, { xM: 0.2 * boat.loaM, zM: 0.5 * sheerZM(boat, 0.2 * boat.loaM) });
  if (kind === 'place') {
    const place = places.find((candidate) => candidate.id === id);
    return place ? toDrawing(projection, place.position) : null;
  }
  if (kind === 'compartment') {
    const space = boat.compartments.find((candidate) => candidate.id === id);
    return space ? toDrawing(projection, { xM: (space.xForeM + space.xAftM) / 2, zM: space.soleZM }) : null;
  }
  const mast = boat.masts.find((candidate) => candidate.id === id);
  if (mast) return toDrawing(projection, { xM: mast.xM, zM: mast.footZM + 0.6 * (mast.truckZM - mast.footZM) });
  const fitting = boat.fittings.find((candidate) => candidate.id === id);
  return fitting ? toDrawing(projection, { xM: (fitting.xForeM + fitting.xAftM) / 2, zM: fitting.zTopM }) : null;
}

/** The nearest clear place for a flag around a spot. */
function freeSpot(spot: Point, halfWidth: number, halfHeight: number, taken: Occupancy, u: number): Point {
  for (let ring = 1; ring <= 10; ring++) {
    for (let step = 0; step < 12; step++) {
      const turn = -Math.PI / 4 + (Math.PI * step) / 6;
      const center = { x: spot.x + Math.cos(turn) * ring * 13 * u, y: spot.y + Math.sin(turn) * ring * 11 * u };
      if (!taken.hits(boxAround(center, halfWidth + u, halfHeight + u))) return center;
    }
  }
  return { x: spot.x + 13 * u, y: spot.y - 11 * u };
}
