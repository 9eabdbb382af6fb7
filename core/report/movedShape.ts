import type { Shape } from '../drawing/types.ts';

/** Numbers an SVG command takes, and from which of them on they are points rather than radii and flags. */
const TAKES: Readonly<Record<string, { readonly count: number; readonly pointsFrom: number }>> = {
  M: { count: 2, pointsFrom: 0 },
  L: { count: 2, pointsFrom: 0 },
  C: { count: 6, pointsFrom: 0 },
  Q: { count: 4, pointsFrom: 0 },
  A: { count: 7, pointsFrom: 5 },
  Z: { count: 0, pointsFrom: 0 },
};

/** The shape shifted by (dx, dy) drawing units. */
export function movedShape(shape: Shape, dx: number, dy: number): Shape {
  if (shape.kind === 'path') return { ...shape, d: movedPath(shape.d, dx, dy) };
  return { ...shape, x: shape.x + dx, y: shape.y + dy };
}

/**
 * An absolute path of M, L, C, Q, A and Z shifted by (dx, dy).
 * @throws RangeError for any other command or a number too few
 */
export function movedPath(d: string, dx: number, dy: number): string {
  return [...d.matchAll(/([A-Za-z])([^A-Za-z]*)/g)]
    .map(([, command = '', rest = '']) => {
      const takes = TAKES[command];
      const numbers = [...rest.matchAll(/-?[\d.]+(?:e-?\d+)?/g)].map(([text]) => Number(text));
      if (!takes || (takes.count === 0 ? numbers.length > 0 : numbers.length % takes.count !== 0)) {
        throw new RangeError(`"${command}${rest}" is not part of a drawing's path.`);
      }
      const moved = numbers.map((value, index) => {
        const place = index % takes.count;
        if (place < takes.pointsFrom) return value;
        return Math.round((value + ((place - takes.pointsFrom) % 2 === 0 ? dx : dy)) * 1000) / 1000;
      });
      return `${command}${moved.join(' ')}`;
    })
    .join(' ');
}
