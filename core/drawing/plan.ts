import type { Boat } from '../model/boat.ts';
import type { Project } from '../model/project.ts';
import { balloonNumber } from './balloons.ts';
import { boxAround, type Point, round2 } from './geometry.ts';
import { hullForm } from './hullLines.ts';
import { Occupancy } from './occupancy.ts';
import { circle, line, path, polyline, text } from './shapes.ts';
import type { Drawing, Projection, Shape } from './types.ts';

/** Size of a plan view, drawing units. */
export interface PlanOptions {
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
}

/**
 * The deck seen from above, bow to the right, port side up: outline from length and beam, masts, and every item as a dot
 * with its number. Its projection carries x as in a profile; y metres to port go up from `originY`.
 * @throws RangeError when the sheet has no size.
 */
export function drawPlan(project: Project, options: PlanOptions): Drawing {
  const { width, height, textSize } = options;
  if (!(width > 0 && height > 0)) throw new RangeError(`A plan needs a width and a height above zero.`);
  const u = textSize / 11;
  const { boat } = project;
  const scale = Math.max(0.001, Math.min((width - 60 * u) / boat.loaM, (height - 44 * u) / boat.beamM));
  const projection: Projection = { originX: width / 2 + (boat.loaM / 2) * scale, originY: height / 2, scale };
  const at = (xM: number, yM: number): Point => ({
    x: projection.originX - xM * scale,
    y: projection.originY - yM * scale,
  });
  const faint = { layer: 'boat', stroke: 'boat-faint', width: 0.7 * u } as const;
  const shapes: Shape[] = [
    line(at(boat.loaM + 0.4, 0), at(-0.4, 0), {
      ...faint,
      layer: 'backdrop',
      stroke: 'grid',
      dash: [8 * u, 3 * u, 2 * u, 3 * u],
    }),
    ...outlines(boat).map((points) =>
      path(smooth(points.map(([x, y]) => at(x, y))), { ...faint, stroke: 'boat', width: 1.1 * u }),
    ),
    ...boat.deckhouses.map(({ xForeM, xAftM }) => {
      const [fore, aft] = [0.28 * boat.beamM, 0.33 * boat.beamM];
      return polyline([at(xForeM, -fore), at(xAftM, -aft), at(xAftM, aft), at(xForeM, fore)], faint, true);
    }),
    ...boat.masts.map((mast) =>
      circle(at(mast.xM, 0), Math.max(2 * u, (mast.sectionMm / 2000) * scale), {
        ...faint,
        stroke: 'boat',
        fill: 'paper',
        width: u,
      }),
    ),
    text('PORT', { x: 6 * u, y: 13 * u }, { layer: 'backdrop', size: 8.5 * u, ink: 'grid-text' }),
    text('STBD', { x: 6 * u, y: height - 6 * u }, { layer: 'backdrop', size: 8.5 * u, ink: 'grid-text' }),
    ...itemShapes(project, at, options),
  ];
  return { width, height, projection, shapes };
}

/** Deck edges, from aft starboard round the bow to aft port; a catamaran has two and its bridge deck. */
function outlines(boat: Boat): readonly (readonly (readonly [number, number])[])[] {
  const { loaM, beamM } = boat;
  const half = beamM / 2;
  if (hullForm(boat) !== 'catamaran') {
    const full =
      hullForm(boat) === 'planing' || hullForm(boat) === 'displacement' ? 0.9 : hullForm(boat) === 'open' ? 0.86 : 0.66;
    return [hullOutline(loaM, 0, half, full)];
  }
  const hullHalf = 0.13 * beamM;
  const bridge: readonly (readonly [number, number])[] = [
    [0.86 * loaM, -(half - 2 * hullHalf)],
    [0.28 * loaM, -(half - 2 * hullHalf)],
    [0.28 * loaM, half - 2 * hullHalf],
    [0.86 * loaM, half - 2 * hullHalf],
  ];
  return [hullOutline(loaM, half - hullHalf, hullHalf, 0.8), hullOutline(loaM, hullHalf - half, hullHalf, 0.8), bridge];
}

/** Half-breadths along the deck as shares of the half beam, fair on any sane boat; `stern` is that of the transom. */
function hullOutline(
  loaM: number,
  middleM: number,
  halfM: number,
  stern: number,
): readonly (readonly [number, number])[] {
  const side: readonly (readonly [number, number])[] = [
    [1, stern],
    [0.8, Math.min(1, stern + 0.19)],
    [0.55, 1],
    [0.32, 0.84],
    [0.14, 0.48],
    [0.04, 0.17],
  ];
  const starboard = side.map(([x, y]) => [x * loaM, middleM - y * halfM] as const);
  const port = [...side].reverse().map(([x, y]) => [x * loaM, middleM + y * halfM] as const);
  return [...starboard, [0, middleM], ...port];
}

/** A soft closed line: straight at the transom, rounded elsewhere through the middles of its sides. */
function smooth(points: readonly Point[]): string {
  const [first, ...rest] = points;
  const last = points.at(-1);
  if (!first || !last) return '';
  if (points.length <= 4)
    return `M${round2(first.x)} ${round2(first.y)} ${rest.map((p) => `L${round2(p.x)} ${round2(p.y)}`).join(' ')} Z`;
  let d = `M${round2(first.x)} ${round2(first.y)}`;
  for (let index = 1; index < points.length - 1; index++) {
    const [point, next] = [points[index], points[index + 1]];
    if (!point || !next) continue;
    const to = index === points.length - 2 ? next : { x: (point.x + next.x) / 2, y: (point.y + next.y) / 2 };
    d += ` Q${round2(point.x)} ${round2(point.y)} ${round2(to.x)} ${round2(to.y)}`;
  }
  return `${d} Z`;
}

function itemShapes(
  project: Project,
  at: (xM: number, yM: number) => Point,
  { textSize, width, height }: PlanOptions,
): readonly Shape[] {
  const u = textSize / 11;
  const radius = 7 * u;
  const taken = new Occupancy(16 * u);
  const shapes: Shape[] = [];
  for (const item of project.items) {
    const dot = at(item.position.xM, item.position.yM);
    const subject = { kind: 'item', id: item.id } as const;
    const center = freeSpot(dot, radius, taken, { width, height }, u);
    const number = String(balloonNumber(project, item.id));
    const size = (number.length < 3 ? 8.5 : 6.5) * u;
    shapes.push(
      line(dot, center, { layer: 'labels', stroke: 'ink', width: 0.6 * u }),
      circle(dot, 1.8 * u, { layer: 'installation', stroke: 'ink', fill: 'ink', width: 0, subject }),
      circle(center, radius, { layer: 'marks', stroke: 'ink', fill: 'paper', width: 0.9 * u, subject }),
      text(
        number,
        { x: center.x, y: center.y + size * 0.35 },
        { layer: 'marks', size, ink: 'ink', anchor: 'middle', bold: true, subject },
      ),
    );
    taken.addBox(boxAround(center, radius, radius));
  }
  return shapes;
}

/** Nearest clear place for a number around its dot; on a full sheet it stands on the dot. */
function freeSpot(
  dot: Point,
  radius: number,
  taken: Occupancy,
  sheet: { width: number; height: number },
  u: number,
): Point {
  for (let ring = 1; ring <= 14; ring++) {
    for (let step = 0; step < 12; step++) {
      const turn = -Math.PI / 3 + (Math.PI * step) / 6;
      const center = { x: dot.x + Math.cos(turn) * ring * 11 * u, y: dot.y + Math.sin(turn) * ring * 11 * u };
      const onSheet =
        center.x > radius && center.x < sheet.width - radius && center.y > radius && center.y < sheet.height - radius;
      if (onSheet && !taken.hits(boxAround(center, radius + 0.5 * u, radius + 0.5 * u))) return center;
    }
  }
  return dot;
}
