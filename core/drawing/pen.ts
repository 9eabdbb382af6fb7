import { type Curve, type Metre, straight } from './curve.ts';
import { type Point, round2 } from './geometry.ts';
import { toDrawing } from './projection.ts';
import { path } from './shapes.ts';
import type { Ink, Projection, Shape } from './types.ts';

/** Draws the boat's lines: knows the projection and the weight of a line at this size of text. */
export interface Pen {
  readonly projection: Projection;
  /** Drawing units of one screen pixel at normal size: textSize / 11. */
  readonly u: number;
  /** Opacity of what is drawn with it. */
  readonly opacity?: number;
  /** Draws everything broken, for what is no longer there. */
  readonly ghost?: boolean;
}

/** An outline of the boat: solid, filled with paper when it hides what is behind. */
export function outline(pen: Pen, curve: Curve, fill: Ink = 'none', weight = 1.1): Shape {
  return inked(pen, curve, { ink: 'boat', weight, fill, closed: fill !== 'none' });
}

/** A thin line: rigging, windows, treads. */
export function thin(pen: Pen, curve: Curve, weight = 0.7): Shape {
  return inked(pen, curve, { ink: 'boat-faint', weight, fill: 'none', closed: false });
}

/** A thin closed shape filled with paper. */
export function pane(pen: Pen, points: readonly Metre[], weight = 0.7, ink: Ink = 'boat-faint'): Shape {
  return inked(pen, straight(points), { ink, weight, fill: 'paper', closed: true });
}

/** A thin line through points. */
export function hairline(pen: Pen, points: readonly Metre[], weight = 0.7): Shape {
  return thin(pen, straight(points), weight);
}

/** Where a point of the boat lands. */
export const at = (pen: Pen, [xM, zM]: Metre): Point => toDrawing(pen.projection, { xM, zM });

export function inked(
  pen: Pen,
  curve: Curve,
  how: { readonly ink: Ink; readonly weight: number; readonly fill: Ink; readonly closed: boolean },
): Shape {
  return path(drawn(pen.projection, curve, how.closed), {
    layer: 'boat',
    stroke: how.ink,
    width: how.weight * pen.u,
    fill: pen.ghost ? 'none' : how.fill,
    opacity: pen.opacity,
    dash: pen.ghost ? [4 * pen.u, 3 * pen.u] : undefined,
  });
}

/** The SVG path of a curve on the drawing. */
export function drawn(projection: Projection, curve: Curve, closed = false): string {
  const at = ([xM, zM]: Metre): string => {
    const { x, y } = toDrawing(projection, { xM, zM });
    return `${round2(x)} ${round2(y)}`;
  };
  const steps = curve.pieces.map((piece) =>
    'first' in piece ? `C${at(piece.first)} ${at(piece.second)} ${at(piece.to)}` : `L${at(piece.to)}`,
  );
  return `M${at(curve.start)} ${steps.join(' ')}${closed ? ' Z' : ''}`;
}
