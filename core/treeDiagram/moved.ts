import type { Shape } from '../drawing/types.ts';

/** A shape of a diagram, moved. Its paths use M, L, C, Q and Z only, so every second number is a height. */
export function moved(shape: Shape, dx: number, dy: number): Shape {
  if (shape.kind !== 'path') return { ...shape, x: shape.x + dx, y: shape.y + dy };
  let index = 0;
  const d = shape.d.replace(/-?[\d.]+/g, (number) => {
    index += 1;
    return String(Math.round((Number(number) + (index % 2 === 1 ? dx : dy)) * 100) / 100);
  });
  return { ...shape, d };
}
