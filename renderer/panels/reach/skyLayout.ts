import type { SkyObstacle } from '../../../core/siting/types.ts';

export interface PointPx {
  readonly x: number;
  readonly y: number;
}

/** The sky as a disc: bow up, starboard right, zenith in the middle, horizon at the rim. */
export interface Dome {
  readonly centre: PointPx;
  readonly radius: number;
}

/** A direction in the boat's own bearings: clockwise from the bow, and above the horizon, degrees. */
export interface Direction {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
}

/** An obstacle as drawn: its outline, the point its leader touches, and its numbered balloon outside the rim. */
export interface DrawnObstacle {
  readonly obstacle: SkyObstacle;
  readonly number: number;
  readonly path: string;
  readonly anchor: PointPx;
  readonly balloon: PointPx;
}

/** Elevations that have a ring of their own, degrees. */
export const RINGS_DEG = [10, 30, 60] as const;
export const BALLOON_PX = 9;
/** From the rim to the middle of a balloon, and the room beyond the rim for balloons and the words of the quarters, px. */
const BALLOON_OUT_PX = 17;
export const RIM_ROOM_PX = 44;
/** Steps along an outline are cut down to this, so that a line of one elevation runs round instead of straight across, degrees. */
const STEP_DEG = 3;

/** Straight in elevation: equal steps of elevation are equal steps on the paper. */
export function domePoint({ centre, radius }: Dome, { azimuthDeg, elevationDeg }: Direction): PointPx {
  const azimuth = (azimuthDeg * Math.PI) / 180;
  const r = ((90 - elevationDeg) / 90) * radius;
  return { x: centre.x + r * Math.sin(azimuth), y: centre.y - r * Math.cos(azimuth) };
}

/** The direction under a point of the drawing; null outside the rim. */
export function domeDirection({ centre, radius }: Dome, { x, y }: PointPx): Direction | null {
  const [right, up] = [x - centre.x, centre.y - y];
  const r = Math.hypot(right, up);
  if (r > radius) return null;
  const azimuthDeg = ((Math.atan2(right, up) * 180) / Math.PI + 360) % 360;
  return { azimuthDeg, elevationDeg: 90 * (1 - r / radius) };
}

/** All obstacles with numbers in the order given; balloons stand clear of each other round the rim. */
export function drawnObstacles(dome: Dome, obstacles: readonly SkyObstacle[]): readonly DrawnObstacle[] {
  const rings = obstacles.map(({ outline }) => outlinePoints(dome, outline));
  const anchors = rings.map((ring) => anchorOf(dome, ring));
  const angles = anchors.map(({ x, y }) => Math.atan2(x - dome.centre.x, dome.centre.y - y));
  const out = dome.radius + BALLOON_OUT_PX;
  const placed = spreadAngles(angles, (2 * BALLOON_PX + 5) / out);
  return obstacles.map((obstacle, index) => {
    const angle = placed[index] ?? 0;
    return {
      obstacle,
      number: index + 1,
      path: `M${(rings[index] ?? []).map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`,
      anchor: anchors[index] ?? dome.centre,
      balloon: { x: dome.centre.x + out * Math.sin(angle), y: dome.centre.y - out * Math.cos(angle) },
    };
  });
}

/**
 * An outline on the paper, its steps cut fine. The rim cuts off what is below the horizon. A ring round the zenith is closed
 * through it in the list; on the paper it closes by itself.
 */
export function outlinePoints(dome: Dome, outline: SkyObstacle['outline']): readonly PointPx[] {
  const below = outline.filter(({ elevationDeg }) => elevationDeg < 90);
  const ring = below.length < 2 ? outline : below;
  return ring.flatMap((from, index) => {
    const to = ring[(index + 1) % ring.length] ?? from;
    const turn =
      index === ring.length - 1 ? shortTurn(to.azimuthDeg - from.azimuthDeg) : to.azimuthDeg - from.azimuthDeg;
    const rise = to.elevationDeg - from.elevationDeg;
    const steps = Math.max(1, Math.ceil(Math.abs(turn) / STEP_DEG));
    return Array.from({ length: steps }, (_, step) =>
      domePoint(dome, {
        azimuthDeg: from.azimuthDeg + (turn * step) / steps,
        elevationDeg: from.elevationDeg + (rise * step) / steps,
      }),
    );
  });
}

const shortTurn = (deg: number): number => deg - 360 * Math.round(deg / 360);

const GRID = 28;

/** The point farthest inside an area, of a grid laid over it; for a sliver that no grid point meets, the middle of its corners. */
function anchorOf(dome: Dome, ring: readonly PointPx[]): PointPx {
  if (isAllRound(dome, ring)) return domePoint(dome, ALL_ROUND_ANCHOR);
  const [xs, ys] = [ring.map(({ x }) => x), ring.map(({ y }) => y)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  let best: PointPx | null = null;
  let bestInside = 0;
  for (let i = 1; i < GRID; i += 1) {
    for (let j = 1; j < GRID; j += 1) {
      const point = { x: left + ((right - left) * i) / GRID, y: top + ((bottom - top) * j) / GRID };
      const rim = dome.radius - Math.hypot(point.x - dome.centre.x, point.y - dome.centre.y);
      if (rim <= bestInside || !isInside(ring, point)) continue;
      const inside = Math.min(rim, edgeDistance(ring, point));
      if (inside > bestInside) [best, bestInside] = [point, inside];
    }
  }
  return best ?? withinRim(dome, { x: mean(xs), y: mean(ys) });
}

/** Where the leader of what lies overhead all round touches it: astern, where few masts stand. */
const ALL_ROUND_ANCHOR: Direction = { azimuthDeg: 215, elevationDeg: 5 };

const isAllRound = ({ centre, radius }: Dome, ring: readonly PointPx[]): boolean =>
  isInside(ring, centre) && ring.every(({ x, y }) => Math.hypot(x - centre.x, y - centre.y) > 0.95 * radius);

function withinRim({ centre, radius }: Dome, point: PointPx): PointPx {
  const r = Math.hypot(point.x - centre.x, point.y - centre.y);
  if (!(r > radius)) return Number.isFinite(r) ? point : centre;
  const share = (radius - 1) / r;
  return { x: centre.x + (point.x - centre.x) * share, y: centre.y + (point.y - centre.y) * share };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Even-odd rule. */
function isInside(ring: readonly PointPx[], { x, y }: PointPx): boolean {
  let inside = false;
  let before = ring.at(-1);
  for (const at of ring) {
    if (before && at.y > y !== before.y > y && x < ((before.x - at.x) * (y - at.y)) / (before.y - at.y) + at.x) {
      inside = !inside;
    }
    before = at;
  }
  return inside;
}

function edgeDistance(ring: readonly PointPx[], point: PointPx): number {
  let least = Number.POSITIVE_INFINITY;
  let before = ring.at(-1);
  for (const at of ring) {
    if (before) least = Math.min(least, segmentDistance(before, at, point));
    before = at;
  }
  return least;
}

function segmentDistance(a: PointPx, b: PointPx, { x, y }: PointPx): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / length));
  return Math.hypot(x - a.x - share * dx, y - a.y - share * dy);
}

/**
 * Angles moved apart until neighbours round the circle are at least a gap from each other, each as near to its own as the
 * others let it. Answers in the order given. When there is no room for all, they share the circle evenly.
 */
export function spreadAngles(angles: readonly number[], gap: number): readonly number[] {
  const turn = 2 * Math.PI;
  const count = angles.length;
  const order = angles.map((_, index) => index).sort((a, b) => wrapped(angles[a] ?? 0) - wrapped(angles[b] ?? 0));
  const least = Math.min(gap, turn / Math.max(1, count));
  const at = order.map((index) => wrapped(angles[index] ?? 0));
  for (let pass = 0; pass < 400; pass += 1) {
    let worst = 0;
    for (let i = 0; i < count && count > 1; i += 1) {
      const next = (i + 1) % count;
      const between = (at[next] ?? 0) + (next === 0 ? turn : 0) - (at[i] ?? 0);
      const short = least - between;
      if (short <= 1e-6) continue;
      worst = Math.max(worst, short);
      at[i] = (at[i] ?? 0) - short / 2;
      at[next] = (at[next] ?? 0) + short / 2;
    }
    if (worst < 1e-3) break;
  }
  const placed: number[] = angles.map(() => 0);
  for (const [i, index] of order.entries()) placed[index] = wrapped(at[i] ?? 0);
  return placed;
}

const wrapped = (angle: number): number => ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
