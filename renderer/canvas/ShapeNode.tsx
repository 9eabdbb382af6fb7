import type Konva from 'konva';
import { memo } from 'react';
import { Circle, Shape as KonvaShape, Path } from 'react-konva';
import { textWidth } from '../../core/drawing/textWidth.ts';
import type { Ink, Shape } from '../../core/drawing/types.ts';
import { HIT_REACH_PX } from './hit.ts';

/** Colours of one theme by ink. */
export type Palette = Readonly<Record<Ink, string>>;
type TextShape = Extract<Shape, { kind: 'text' }>;

export const DRAWING_FONT = 'Barlow Semi Condensed';

/** One vector shape of core/drawing as one canvas node; the shape's subject travels along for hit-testing. */
export const ShapeNode = memo(
  function ShapeNode({ shape, palette }: { shape: Shape; palette: Palette }) {
    const common = {
      listening: shape.subject !== undefined,
      perfectDrawEnabled: false,
      opacity: shape.opacity ?? 1,
      subject: shape.subject,
      mark: isFindingFlag(shape),
    };
    if (shape.kind === 'text') return <KonvaShape {...common} {...textDrawing(shape, palette)} />;
    const paint = {
      ...(shape.stroke === 'none' ? {} : { stroke: palette[shape.stroke], strokeWidth: shape.width }),
      ...(shape.fill === 'none' ? {} : { fill: palette[shape.fill] }),
      hitStrokeWidth: Math.max(shape.width, 2 * HIT_REACH_PX),
    };
    if (shape.kind === 'circle') {
      return <Circle {...common} {...paint} x={shape.x} y={shape.y} radius={shape.radius} />;
    }
    const dash = shape.dash ? { dash: [...shape.dash] } : {};
    return <Path {...common} {...paint} {...dash} data={shape.d} lineJoin="round" lineCap="butt" />;
  },
  (before, after) => before.palette === after.palette && isSameShape(before.shape, after.shape),
);

/** Whether a shape belongs to the flag of a finding (core/drawing/findingMarks), which opens the findings when clicked. */
function isFindingFlag(shape: Shape): boolean {
  if (shape.layer !== 'marks') return false;
  return shape.kind === 'text' ? shape.ink === 'paper' : shape.fill === 'finding';
}

/** Text drawn from its baseline and anchor as SVG and PDF do; Konva's own text node has neither. */
function textDrawing(shape: TextShape, palette: Palette) {
  const sceneFunc = (context: Konva.Context): void => {
    const paper = context._context;
    paper.font = `${shape.bold ? 600 : 400} ${shape.size}px "${DRAWING_FONT}"`;
    paper.textAlign = shape.anchor === 'middle' ? 'center' : shape.anchor;
    paper.textBaseline = 'alphabetic';
    if (shape.halo) {
      paper.lineJoin = 'round';
      paper.lineWidth = Math.max(3, shape.size * 0.3);
      paper.strokeStyle = palette.paper;
      paper.strokeText(shape.text, 0, 0);
    }
    paper.fillStyle = palette[shape.ink];
    paper.fillText(shape.text, 0, 0);
  };
  const hitFunc = (context: Konva.Context, node: Konva.Shape): void => {
    const width = textWidth(shape.text, shape.size, shape.bold);
    const left = shape.anchor === 'start' ? 0 : shape.anchor === 'end' ? -width : -width / 2;
    context.beginPath();
    context.rect(left, -shape.size, width, shape.size * 1.25);
    context.closePath();
    context.fillStrokeShape(node);
  };
  return { x: shape.x, y: shape.y, rotation: shape.rotate ?? 0, sceneFunc, hitFunc, fill: palette[shape.ink] };
}

function isSameShape(a: Shape, b: Shape): boolean {
  if (a === b) return true;
  const before: Record<string, unknown> = { ...a };
  const after: Record<string, unknown> = { ...b };
  const keys = Object.keys(before);
  return keys.length === Object.keys(after).length && keys.every((key) => isSameValue(before[key], after[key]));
}

function isSameValue(a: unknown, b: unknown): boolean {
  return a === b || (typeof a === 'object' && JSON.stringify(a) === JSON.stringify(b));
}
