/** A point of the profile in boat metres: x aft of the stem, z above the waterline. */
export type Metre = readonly [xM: number, zM: number];

/** One piece of a boat's line, from wherever the last one ended. */
export type Piece = { readonly to: Metre } | { readonly to: Metre; readonly first: Metre; readonly second: Metre };

/** A line of the boat: where it starts and its pieces. */
export interface Curve {
  readonly start: Metre;
  readonly pieces: readonly Piece[];
}

/**
 * Points written in a frame of their own, `x z, x z, ...`, with the frame's origin and units in boat metres: a shape is
 * then one short line of numbers.
 */
export function frame(originXM: number, originZM: number, unitXM: number, unitZM: number): (points: string) => Metre[] {
  return (points) =>
    points.split(',').map((pair) => {
      const [x = 0, z = 0] = pair.trim().split(' ').map(Number);
      return [originXM + x * unitXM, originZM + z * unitZM];
    });
}

/** Straight lines through points. */
export function straight(points: readonly Metre[]): Curve {
  const [start, ...rest] = points;
  if (!start) throw new RangeError('A line needs at least one point.');
  return { start, pieces: rest.map((to) => ({ to })) };
}

/**
 * A fair curve through points, as a batten would lie: centripetal Catmull-Rom turned into cubic Béziers (Catmull and Rom
 * 1974; Yuksel, Schaefer and Keyser 2011 for the centripetal knots, which give no loops). From memory.
 */
export function fair(points: readonly Metre[]): Curve {
  const [start] = points;
  if (!start) throw new RangeError('A line needs at least one point.');
  const knots = [0];
  for (let index = 1; index < points.length; index++) {
    knots.push((knots[index - 1] ?? 0) + Math.max(1e-6, Math.sqrt(gap(points[index - 1], points[index]))));
  }
  const slope = (index: number, axis: 0 | 1): number => {
    const before = Math.max(0, index - 1);
    const after = Math.min(points.length - 1, index + 1);
    const span = (knots[after] ?? 0) - (knots[before] ?? 0);
    return span === 0 ? 0 : ((points[after]?.[axis] ?? 0) - (points[before]?.[axis] ?? 0)) / span;
  };
  const pieces: Piece[] = [];
  for (let index = 1; index < points.length; index++) {
    const from = points[index - 1] ?? start;
    const to = points[index] ?? start;
    const third = ((knots[index] ?? 0) - (knots[index - 1] ?? 0)) / 3;
    pieces.push({
      to,
      first: [from[0] + slope(index - 1, 0) * third, from[1] + slope(index - 1, 1) * third],
      second: [to[0] - slope(index, 0) * third, to[1] - slope(index, 1) * third],
    });
  }
  return { start, pieces };
}

/** Curves joined end to start; a gap between them becomes a straight line. */
export function joined(...curves: readonly Curve[]): Curve {
  const [first, ...rest] = curves;
  if (!first) throw new RangeError('Nothing to join.');
  return { start: first.start, pieces: [...first.pieces, ...rest.flatMap((c) => [{ to: c.start }, ...c.pieces])] };
}

/** A fair curve through a function of x, sampled between two stations. */
export function sampled(zOf: (xM: number) => number, fromXM: number, toXM: number, steps = 10): Curve {
  return fair(
    Array.from({ length: steps + 1 }, (_, index) => {
      const xM = fromXM + ((toXM - fromXM) * index) / steps;
      return [xM, zOf(xM)] as const;
    }),
  );
}

function gap(a: Metre | undefined, b: Metre | undefined): number {
  return a && b ? Math.hypot(b[0] - a[0], b[1] - a[1]) : 0;
}
