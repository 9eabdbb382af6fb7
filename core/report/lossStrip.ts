import type { Drawing, Shape } from '../drawing/types.ts';
import type { PathBudget } from '../links/types.ts';
import { type SheetContext, show } from './context.ts';

const WIDTH_MM = 178;
const HEIGHT_MM = 15;
const BAR_TOP_MM = 1;
const BAR_HEIGHT_MM = 6.5;
const LABEL_MM = 2.5;
const LABEL_GAP_MM = 26;

/**
 * The power along a feeder as a band that narrows: its height is the share of the set's power that is left. Each step is
 * as long as its share of the whole loss, so the widest step is the one to mend.
 */
export function lossStrip(context: SheetContext, path: PathBudget): Drawing {
  const power = path.txPowerW ?? 0;
  const total = path.elements.reduce((sum, element) => sum + element.lossDb, 0);
  const left = 16;
  const span = WIDTH_MM - left - 22;
  const middle = BAR_TOP_MM + BAR_HEIGHT_MM / 2;
  const half = (watts: number): number => (power > 0 ? ((watts / power) * BAR_HEIGHT_MM) / 2 : 0);
  const shapes: Shape[] = [];
  let x = left;
  let lastLabelX = -LABEL_GAP_MM;
  for (const element of path.elements) {
    const length = total > 0 ? (element.lossDb / total) * span : span / path.elements.length;
    const before = half(element.wattsIn ?? 0);
    const after = half(element.wattsOut ?? 0);
    shapes.push({
      kind: 'path',
      layer: 'installation',
      subject: element.subject,
      d: `M${x} ${middle - before} L${x + length} ${middle - after} L${x + length} ${middle + after} L${x} ${middle + before} Z`,
      stroke: 'ink',
      fill: element.kind === 'cable' ? 'grid' : 'boat-faint',
      width: 0.2,
    });
    const centre = x + length / 2;
    if (length > span * 0.06 && centre - lastLabelX >= LABEL_GAP_MM) {
      shapes.push(label(centre, HEIGHT_MM - 2.5, element.label, 'middle'));
      shapes.push({
        kind: 'path',
        layer: 'labels',
        d: `M${centre} ${middle + (before + after) / 2} L${centre} ${HEIGHT_MM - 5.2}`,
        stroke: 'boat-faint',
        fill: 'none',
        width: 0.15,
      });
      lastLabelX = centre;
    }
    x += length;
  }
  shapes.push({ ...label(left - 1.5, middle + 1, show(context, power, 'W'), 'end'), bold: true });
  shapes.push({ ...label(x + 1.5, middle + 1, show(context, path.wattsAtAntenna ?? 0, 'W'), 'start'), bold: true });
  return { width: WIDTH_MM, height: HEIGHT_MM, projection: { originX: 0, originY: 0, scale: 1 }, shapes };
}

function label(
  x: number,
  y: number,
  text: string,
  anchor: 'start' | 'middle' | 'end',
): Extract<Shape, { kind: 'text' }> {
  return { kind: 'text', layer: 'labels', x, y, text, size: LABEL_MM, anchor, ink: 'ink' };
}
