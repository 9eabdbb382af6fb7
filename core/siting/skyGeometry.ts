import type { Position } from '../model/boat.ts';

/** From the antenna, m: towards the bow, to starboard, up. */
export type Vector = readonly [forward: number, starboard: number, up: number];

/** A direction in the boat's own axes: azimuth from the bow clockwise, elevation above the horizon, degrees. */
export interface Direction {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
}

/** A convex body as the antenna sees it. */
export interface Body {
  /** Points whose hull it is. */
  readonly points: readonly Vector[];
  /** A direction all of it lies ahead of, as long as the distance to it. */
  readonly towards: Vector;
}

/** Nearer than this an antenna stands in a thing or on it, m; a drawing does not say on which side of it. */
const TOUCHING_M = 0.002;
/** Corners of a round section. */
const ROUND = 24;
const LONGEST_STEP_DEG = 2;
const WIDEST_STEP_DEG = 4;
const SHORTEST_STEP_DEG = 0.05;

/** Where a point of the boat lies from the antenna. */
export function seenFrom(eye: Position, point: Position): Vector {
  return [eye.xM - point.xM, eye.yM - point.yM, point.zM - eye.zM];
}

/**
 * An upright round post from foot to top; null where the antenna stands in it. Its sides are its true tangents, so it takes
 * up exactly 2 asin(r/d) of the horizon.
 */
export function post(eye: Position, foot: Position, topZM: number, radiusM: number): Body | null {
  const [forward, starboard, low] = seenFrom(eye, foot);
  const high = topZM - eye.zM;
  const axisM = Math.hypot(forward, starboard);
  const up = Math.max(low, Math.min(high, 0));
  const sideM = Math.max(0, axisM - radiusM);
  if (!(high > low && radiusM > 0) || Math.hypot(sideM, up) < TOUCHING_M) return null;
  const share = axisM > 0 ? sideM / axisM : 0;
  const bearing = Math.atan2(-starboard, -forward);
  const tangent = axisM > radiusM ? Math.acos(radiusM / axisM) : 0;
  const turns = Array.from({ length: ROUND }, (_, index) => (2 * Math.PI * index) / ROUND);
  const points = [tangent, -tangent, ...turns].flatMap((turn): Vector[] => {
    const f = forward + radiusM * Math.cos(bearing + turn);
    const s = starboard + radiusM * Math.sin(bearing + turn);
    return [
      [f, s, low],
      [f, s, high],
    ];
  });
  return { points, towards: [forward * share, starboard * share, up] };
}

/** A block with its sides upright, laid aft from a point and swung to starboard about it. */
export interface Block {
  readonly origin: Position;
  readonly swungDeg: number;
  /** From the origin aft, to starboard and up, m. */
  readonly from: Vector;
  readonly to: Vector;
}

/** A block; null where the antenna stands in it or it has no size. */
export function block(eye: Position, { origin, swungDeg, from, to }: Block): Body | null {
  const [sine, cosine] = [Math.sin(radians(swungDeg)), Math.cos(radians(swungDeg))];
  const [f, s, u] = seenFrom(eye, origin);
  const place = ([aft, side, up]: Vector): Vector => [
    f - aft * cosine + side * sine,
    s + aft * sine + side * cosine,
    u + up,
  ];
  const own: Vector = [f * cosine - s * sine, -(f * sine + s * cosine), -u];
  const nearest: Vector = [clamp(own[0], from[0], to[0]), clamp(own[1], from[1], to[1]), clamp(own[2], from[2], to[2])];
  const towards = place(nearest);
  if (length(towards) < TOUCHING_M || !(to[0] > from[0] && to[1] > from[1] && to[2] > from[2])) return null;
  const points = [from[0], to[0]].flatMap((aft) =>
    [from[1], to[1]].flatMap((side) => [from[2], to[2]].map((up) => place([aft, side, up]))),
  );
  return { points, towards };
}

/** A flat three-cornered sail; null where the antenna sees it edge-on. */
export function sail(eye: Position, corners: readonly [Position, Position, Position]): Body | null {
  const [a, b, c] = [seenFrom(eye, corners[0]), seenFrom(eye, corners[1]), seenFrom(eye, corners[2])];
  const normal = unit(cross(minus(b, a), minus(c, a)));
  const distanceM = dot(a, normal);
  if (!(Math.abs(distanceM) >= TOUCHING_M)) return null;
  return { points: [a, b, c], towards: scaled(normal, distanceM) };
}

/**
 * Outline of a body above the horizon with the boat heeled, above 0 to starboard; null where nothing of it is above. The
 * last point joins the first. Azimuths run on without a jump, so they may lie below 0 or beyond 360; a body overhead is
 * closed through the zenith.
 */
export function outline(body: Body, heelDeg: number): readonly Direction[] | null {
  const towards = unit(heeled(body.towards, heelDeg));
  const [right, over] = across(towards);
  const flat = body.points.map((point): Flat => {
    const turned = heeled(point, heelDeg);
    const ahead = dot(turned, towards);
    return [dot(turned, right) / ahead, dot(turned, over) / ahead];
  });
  const corners = hull(flat).map(([a, b]) => plus(towards, plus(scaled(right, a), scaled(over, b))));
  const above = aboveHorizon(corners).map(unit);
  return above.length < 3
    ? null
    : closed(above.flatMap((from, index) => steps(from, above[(index + 1) % above.length])));
}

/** Heel to starboard takes what is above the antenna to starboard. */
function heeled([forward, starboard, up]: Vector, heelDeg: number): Vector {
  const [sine, cosine] = [Math.sin(radians(heelDeg)), Math.cos(radians(heelDeg))];
  return [forward, starboard * cosine + up * sine, up * cosine - starboard * sine];
}

type Flat = readonly [number, number];

/** Convex hull, corners in order. */
function hull(points: readonly Flat[]): readonly Flat[] {
  const sorted = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (list: readonly Flat[]): Flat[] => {
    const kept: Flat[] = [];
    for (const point of list) {
      while (kept.length >= 2 && turn(kept.at(-2), kept.at(-1), point) <= 0) kept.pop();
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.toReversed())];
}

function turn(a: Flat | undefined, b: Flat | undefined, c: Flat): number {
  return a && b ? (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) : 0;
}

function aboveHorizon(corners: readonly Vector[]): readonly Vector[] {
  return corners.flatMap((from, index) => {
    const to = corners[(index + 1) % corners.length] ?? from;
    const kept = from[2] >= 0 ? [from] : [];
    if (from[2] >= 0 === to[2] >= 0) return kept;
    const share = from[2] / (from[2] - to[2]);
    const crossing = plus(from, scaled(minus(to, from), share));
    return [...kept, [crossing[0], crossing[1], 0] as const];
  });
}

/** Directions along a great circle, its end left out, close enough for straight lines over azimuth and elevation. */
function steps(from: Vector, to: Vector | undefined): readonly Direction[] {
  if (!to) return [];
  const [a, b] = [direction(from), direction(to)];
  const arcDeg = degrees(Math.atan2(length(cross(from, to)), dot(from, to)));
  const turnDeg = Math.abs(around(b.azimuthDeg - a.azimuthDeg));
  const isFine = arcDeg <= LONGEST_STEP_DEG && turnDeg <= WIDEST_STEP_DEG;
  if (isFine || arcDeg <= SHORTEST_STEP_DEG) return [a];
  const middle = unit(plus(from, to));
  return [...steps(from, middle), ...steps(middle, to)];
}

/** Azimuths run on, and through the zenith where the ring goes round it. */
function closed(ring: readonly Direction[]): readonly Direction[] {
  const points: Direction[] = [];
  let azimuthDeg = ring[0]?.azimuthDeg ?? 0;
  for (const point of [...ring, ...ring.slice(0, 1)]) {
    azimuthDeg += around(point.azimuthDeg - azimuthDeg);
    points.push({ azimuthDeg, elevationDeg: point.elevationDeg });
  }
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || Math.abs(last.azimuthDeg - first.azimuthDeg) < 180) return nearBow(points.slice(0, -1));
  return nearBow([...points, { ...last, elevationDeg: 90 }, { ...first, elevationDeg: 90 }]);
}

/** The middle of a ring brought between -180 and 180. */
function nearBow(ring: readonly Direction[]): readonly Direction[] {
  const [least, most] = ring.reduce(
    ([low, high], { azimuthDeg }) => [Math.min(low, azimuthDeg), Math.max(high, azimuthDeg)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY] as readonly [number, number],
  );
  const turnDeg = 360 * Math.round((least + most) / 720);
  return ring.map((point) => ({ ...point, azimuthDeg: point.azimuthDeg - turnDeg }));
}

function direction([forward, starboard, up]: Vector): Direction {
  const azimuthDeg = degrees(Math.atan2(starboard, forward));
  return {
    azimuthDeg: azimuthDeg < 0 ? azimuthDeg + 360 : azimuthDeg,
    elevationDeg: degrees(Math.atan2(up, Math.hypot(forward, starboard))),
  };
}

/** An angle brought between -180 and 180. */
const around = (angleDeg: number): number => angleDeg - 360 * Math.round(angleDeg / 360);

/** Two directions square to a direction and to each other. */
function across(towards: Vector): readonly [Vector, Vector] {
  const helper: Vector = Math.abs(towards[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const right = unit(cross(towards, helper));
  return [right, cross(right, towards)];
}

const radians = (angleDeg: number): number => (angleDeg * Math.PI) / 180;
const degrees = (angle: number): number => (angle * 180) / Math.PI;
const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const scaled = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
/** Length of a vector. */
export const length = (a: Vector): number => Math.hypot(a[0], a[1], a[2]);
const unit = (a: Vector): Vector => scaled(a, 1 / length(a));
