import type { Subject } from '../model/project.ts';
import { type Point, round2 } from './geometry.ts';
import type { Ink, Shape } from './types.ts';

/** How a line or area is inked. */
export interface Style {
  readonly layer: Shape['layer'];
  readonly stroke: Ink;
  readonly width: number;
  readonly fill?: Ink;
  readonly dash?: readonly number[] | undefined;
  readonly opacity?: number | undefined;
  readonly subject?: Subject | undefined;
}

/** How a line of text is set. */
export interface TextStyle {
  readonly layer: Shape['layer'];
  readonly size: number;
  readonly ink: Ink;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly halo?: boolean;
  readonly rotate?: number;
  readonly opacity?: number | undefined;
  readonly subject?: Subject | undefined;
}

/** An SVG path. */
export function path(d: string, style: Style): Shape {
  const { layer, stroke, width, fill = 'none', dash } = style;
  return { kind: 'path', d, stroke, fill, width, layer, ...(dash ? { dash } : {}), ...extras(style) };
}

/** A line through points; closed joins the last to the first. */
export function polyline(points: readonly Point[], style: Style, closed = false): Shape {
  return path(pathOf(points, closed), style);
}

export function line(a: Point, b: Point, style: Style): Shape {
  return polyline([a, b], style);
}

export function circle(center: Point, radius: number, style: Style): Shape {
  const { layer, stroke, width, fill = 'none' } = style;
  return {
    kind: 'circle',
    x: round2(center.x),
    y: round2(center.y),
    radius,
    stroke,
    fill,
    width,
    layer,
    ...extras(style),
  };
}

/** One line of text; `at` is on the baseline. */
export function text(content: string, at: Point, style: TextStyle): Shape {
  const { layer, size, ink, anchor = 'start', bold, halo, rotate } = style;
  return {
    kind: 'text',
    x: round2(at.x),
    y: round2(at.y),
    text: content,
    size,
    anchor,
    ink,
    layer,
    ...(bold ? { bold } : {}),
    ...(halo ? { halo } : {}),
    ...(rotate ? { rotate } : {}),
    ...extras(style),
  };
}

/** SVG path through points. */
export function pathOf(points: readonly Point[], closed = false): string {
  const steps = points.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${round2(x)} ${round2(y)}`);
  return `${steps.join(' ')}${closed ? ' Z' : ''}`;
}

/** Rectangle by its corners, with corners rounded by a radius. */
export function rectPath(left: number, top: number, right: number, bottom: number, radius = 0): string {
  if (radius <= 0) {
    return pathOf(
      [
        { x: left, y: top },
        { x: right, y: top },
        { x: right, y: bottom },
        { x: left, y: bottom },
      ],
      true,
    );
  }
  const [l, t, r, b] = [left, top, right, bottom].map(round2) as [number, number, number, number];
  const q = round2(Math.min(radius, (right - left) / 2, (bottom - top) / 2));
  return (
    `M${round2(l + q)} ${t} L${round2(r - q)} ${t} Q${r} ${t} ${r} ${round2(t + q)} L${r} ${round2(b - q)} ` +
    `Q${r} ${b} ${round2(r - q)} ${b} L${round2(l + q)} ${b} Q${l} ${b} ${l} ${round2(b - q)} L${l} ${round2(t + q)} ` +
    `Q${l} ${t} ${round2(l + q)} ${t} Z`
  );
}

function extras(style: { readonly opacity?: number | undefined; readonly subject?: Subject | undefined }) {
  return {
    ...(style.opacity === undefined || style.opacity === 1 ? {} : { opacity: style.opacity }),
    ...(style.subject === undefined ? {} : { subject: style.subject }),
  };
}
