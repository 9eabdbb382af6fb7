import { type Point, round2 } from '../drawing/geometry.ts';
import { circle, line, path, type Style, text } from '../drawing/shapes.ts';
import type { Ink, Shape } from '../drawing/types.ts';
import type { TreeNode } from './types.ts';

/** How a sign is inked. */
export interface SignStyle {
  readonly em: number;
  readonly stroke: Ink;
  readonly width: number;
  readonly isDown: boolean;
}

const style = ({ stroke, width }: SignStyle, fill: Ink = 'paper'): Style => ({ layer: 'marks', stroke, width, fill });

// Signs of fault tree analysis as IEC 61025 has them (basic event a circle, house event, transfer triangle, and, or and vote
// gates in their drawn-out shapes). From memory of the standard, not read. The ring of a common cause is our own.

/**
 * Gate sign under an event: output at the top, inputs from below.
 * @param top middle of its upper edge
 */
export function gateSign(node: TreeNode, top: Point, wide: number, high: number, how: SignStyle): readonly Shape[] {
  const w = wide / 2;
  const at = (x: number, y: number): string => `${round2(top.x + x)} ${round2(top.y + y)}`;
  const fill = how.isDown ? how.stroke : 'paper';
  if (node.op === 'and') {
    const neck = high * 0.55;
    const d = `M${at(-w, high)} L${at(-w, neck)} C${at(-w, -neck * 0.33)} ${at(w, -neck * 0.33)} ${at(w, neck)} L${at(w, high)} Z`;
    return [path(d, style(how, fill))];
  }
  const d =
    `M${at(-w, high)} C${at(-w, high * 0.45)} ${at(-w * 0.45, high * 0.12)} ${at(0, 0)} ` +
    `C${at(w * 0.45, high * 0.12)} ${at(w, high * 0.45)} ${at(w, high)} Q${at(0, high * 0.68)} ${at(-w, high)} Z`;
  const shield = path(d, style(how, fill));
  if (node.op === 'or') return [shield];
  const size = 0.62 * how.em;
  const words = { layer: 'labels', size, ink: how.isDown ? 'paper' : 'ink', anchor: 'middle' } as const;
  return [shield, text(`${node.k}/${node.children.length}`, { x: top.x, y: top.y + high * 0.7 }, words)];
}

/** Basic event: a circle, with its number where the same event stands in several places. A common cause has a second ring. */
export function eventSign(node: TreeNode, at: Point, radius: number, how: SignStyle): readonly Shape[] {
  const isCause = node.kind === 'cause';
  const shapes: Shape[] = [circle(at, isCause ? radius * 1.12 : radius, style(how))];
  if (isCause) shapes.push(circle(at, radius * 0.7, style({ ...how, width: 0.07 * how.em }, 'none')));
  if (how.isDown) shapes.push(...cross(at, radius, how));
  else if (node.mark !== null) shapes.push(letters(String(node.mark), at, how));
  return shapes;
}

function cross(at: Point, radius: number, how: SignStyle): readonly Shape[] {
  const r = radius * 0.66;
  const stroke = { ...style({ ...how, width: 0.14 * how.em }), fill: 'none' } as const;
  return [
    line({ x: at.x - r, y: at.y - r }, { x: at.x + r, y: at.y + r }, stroke),
    line({ x: at.x - r, y: at.y + r }, { x: at.x + r, y: at.y - r }, stroke),
  ];
}

/** House: what is gone as drawn, nothing need fail. */
export function houseSign({ x, y }: Point, radius: number, how: SignStyle): readonly Shape[] {
  const r = round2(radius);
  const d = `M${round2(x - r)} ${round2(y + r)} L${round2(x - r)} ${round2(y - r * 0.2)} L${round2(x)} ${round2(y - r)} L${round2(x + r)} ${round2(y - r * 0.2)} L${round2(x + r)} ${round2(y + r)} Z`;
  return [path(d, style(how))];
}

/** Transfer triangle with the letter of a branch: beside the branch itself, and at each place that refers to it. */
export function transferSign(letter: string, { x, y }: Point, em: number, how: SignStyle): readonly Shape[] {
  const d = `M${round2(x)} ${round2(y - 0.75 * em)} L${round2(x + 0.85 * em)} ${round2(y + 0.6 * em)} L${round2(x - 0.85 * em)} ${round2(y + 0.6 * em)} Z`;
  return [path(d, style(how)), letters(letter, { x, y: y + 0.2 * em }, how)];
}

function letters(content: string, { x, y }: Point, { em, stroke }: SignStyle): Shape {
  const size = 0.68 * em;
  const ink = stroke === 'lost' ? 'lost' : 'ink';
  return text(content, { x, y: y + 0.36 * size }, { layer: 'labels', size, ink, anchor: 'middle', bold: true });
}

/** Handle of a branch: opens it when closed, closes it when open. */
export function handleSign(isOpen: boolean, { x, y }: Point, { em, stroke }: SignStyle): readonly Shape[] {
  const r = 0.36 * em;
  const points = isOpen
    ? [
        [x - r, y - r * 0.6],
        [x + r, y - r * 0.6],
        [x, y + r * 0.7],
      ]
    : [
        [x - r * 0.6, y - r],
        [x + r * 0.7, y],
        [x - r * 0.6, y + r],
      ];
  const d = `M${points.map(([px = 0, py = 0]) => `${round2(px)} ${round2(py)}`).join(' L')} Z`;
  return [path(d, { layer: 'marks', stroke: 'none', width: 0, fill: stroke })];
}
