import { fitted, textWidth } from '../drawing/textWidth.ts';
import type { Drawing, Shape } from '../drawing/types.ts';
import type { PathBudget, PathElement } from '../links/types.ts';
import { type SheetContext, watts } from './context.ts';
import { subjectLabel } from './words.ts';

const WIDTH_MM = 178;
const HEIGHT_MM = 15;
const BAR_HEIGHT_MM = 6.5;
const MIDDLE_MM = 1 + BAR_HEIGHT_MM / 2;
const LEFT_MM = 16;
const SPAN_MM = WIDTH_MM - LEFT_MM - 22;
const LABEL_MM = 2.5;
const LABEL_GAP_MM = 26;

/**
 * The power along a feeder as a band that narrows: its height is the share of the set's power that is left. Each step is
 * as long as its share of the whole loss, so the widest step is the one to mend.
 */
export function lossStrip(context: SheetContext, path: PathBudget): Drawing {
  const total = path.elements.reduce((sum, element) => sum + element.lossDb, 0);
  const shapes: Shape[] = [];
  let x = LEFT_MM;
  let lastLabelX = -LABEL_GAP_MM;
  for (const element of path.elements) {
    const length = total > 0 ? (element.lossDb / total) * SPAN_MM : SPAN_MM / path.elements.length;
    const centre = x + length / 2;
    shapes.push(step(path, element, x, length));
    if (length > SPAN_MM * 0.06 && centre - lastLabelX >= LABEL_GAP_MM) {
      shapes.push(...callout(shortLabel(context, element), centre));
      lastLabelX = centre;
    }
    x += length;
  }
  const ends = [
    label(LEFT_MM - 1.5, MIDDLE_MM + 1, watts(context, path.txPowerW ?? 0), 'end'),
    label(x + 1.5, MIDDLE_MM + 1, watts(context, path.wattsAtAntenna ?? 0), 'start'),
  ];
  shapes.push(...ends.map((shape) => ({ ...shape, bold: true })));
  return { width: WIDTH_MM, height: HEIGHT_MM, projection: { originX: 0, originY: 0, scale: 1 }, shapes };
}

/** One element: as high at each end as its share of the set's power there. */
function step(path: PathBudget, element: PathElement, left: number, length: number): Shape {
  const power = path.txPowerW ?? 0;
  const half = (watts: number | null): number => (power > 0 ? (((watts ?? 0) / power) * BAR_HEIGHT_MM) / 2 : 0);
  const before = half(element.wattsIn);
  const after = half(element.wattsOut);
  const right = left + length;
  return {
    kind: 'path',
    layer: 'installation',
    subject: element.subject,
    d: `M${left} ${MIDDLE_MM - before} L${right} ${MIDDLE_MM - after} L${right} ${MIDDLE_MM + after} L${left} ${MIDDLE_MM + before} Z`,
    stroke: 'ink',
    fill: element.kind === 'cable' ? 'grid' : 'boat-faint',
    width: 0.2,
  };
}

/** The tag of a device, number and type of a cable: the table below says the rest. */
function shortLabel(context: SheetContext, element: PathElement): string {
  return element.kind === 'cable' ? element.label : subjectLabel(context.project, element.subject);
}

function callout(words: string, x: number): Shape[] {
  const text = fitted(words, LABEL_MM, 2 * LABEL_GAP_MM);
  const half = textWidth(text, LABEL_MM) / 2;
  const middle = Math.min(Math.max(x, half), WIDTH_MM - half);
  const foot = MIDDLE_MM + BAR_HEIGHT_MM / 2;
  return [
    label(middle, HEIGHT_MM - 2.5, text, 'middle'),
    {
      kind: 'path',
      layer: 'labels',
      d: `M${x} ${foot} L${x} ${HEIGHT_MM - 5.2}`,
      stroke: 'boat-faint',
      fill: 'none',
      width: 0.15,
    },
  ];
}

function label(
  x: number,
  y: number,
  text: string,
  anchor: 'start' | 'middle' | 'end',
): Extract<Shape, { kind: 'text' }> {
  return { kind: 'text', layer: 'labels', x, y, text, size: LABEL_MM, anchor, ink: 'ink' };
}
