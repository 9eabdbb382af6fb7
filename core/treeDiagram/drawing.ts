import { line, path, rectPath, text } from '../drawing/shapes.ts';
import type { Drawing, Ink, Shape } from '../drawing/types.ts';
import { EM, isBold, type LayoutOptions, layOutTree, type TreeLayout, type TreeRow } from './layout.ts';
import { moved } from './moved.ts';
import { eventSign, gateSign, handleSign, houseSign, type SignStyle, transferSign } from './signs.ts';
import type { ReadableTree } from './types.ts';

/** The whole diagram as shapes, in the drawing units of the options. */
export function treeDrawing(tree: ReadableTree, options: LayoutOptions): Drawing {
  return drawnTree(layOutTree(tree, options));
}

/** A laid out diagram as shapes. */
export function drawnTree(layout: TreeLayout): Drawing {
  return {
    width: layout.width,
    height: layout.height,
    projection: NOWHERE,
    shapes: shapesBetween(layout, 0, layout.height),
  };
}

/** A diagram is no picture of the boat: its projection is empty. */
const NOWHERE = { originX: 0, originY: 0, scale: 1 };

/**
 * A laid out diagram cut between rows into pieces no higher than a page; the lines run on from piece to piece. One row that is
 * higher than the page makes a piece of its own.
 * @param heightMost drawing units, > 0
 */
export function treePages(layout: TreeLayout, heightMost: number): readonly Drawing[] {
  const cuts = [0];
  const gap = EM.gap * layout.textSize;
  for (const row of layout.rows) {
    const start = cuts.at(-1) ?? 0;
    const bottom = row.gate?.box.bottom ?? row.box.bottom;
    if (bottom + gap - start > heightMost && row.box.top - gap / 2 > start) cuts.push(row.box.top - gap / 2);
  }
  return cuts.map((start, index) => {
    const end = cuts[index + 1] ?? layout.height;
    const shapes = shapesBetween(layout, start, end).map((shape) => moved(shape, 0, -start));
    return { width: layout.width, height: end - start, projection: NOWHERE, shapes };
  });
}

function shapesBetween(layout: TreeLayout, from: number, to: number): readonly Shape[] {
  const rows = layout.rows.filter(({ box }) => box.top >= from && box.top < to);
  return [...trunks(layout, from, to), ...rows.flatMap((row) => rowShapes(row, layout))];
}

/** From each gate down to its last input, and across to every input; what is down stands over what is not. */
function trunks({ rows, textSize: em }: TreeLayout, from: number, to: number): readonly Shape[] {
  const parents = new Map(rows.map((row) => [row.node.id, row]));
  const shapes: Shape[] = [];
  for (const isDown of [false, true]) {
    const lowest = new Map<TreeRow, number>();
    for (const row of rows) {
      const parent = row.parent === null ? undefined : parents.get(row.parent.id);
      if (!parent?.gate || (isDown && !(row.isDown && parent.isDown))) continue;
      const { y } = row.sign;
      lowest.set(parent, y);
      const { x } = parent.gate.top;
      if (y >= from && y < to) shapes.push(line({ x, y }, { x: row.box.left + 0.1 * em, y }, wire(isDown, em)));
    }
    for (const [{ gate }, bottom] of lowest) {
      if (!gate) continue;
      const top = Math.max(from, gate.top.y + EM.gateHeight * em * 0.85);
      const end = Math.min(to, bottom);
      const { x } = gate.top;
      if (end > top) shapes.push(line({ x, y: top }, { x, y: end }, wire(isDown, em)));
    }
  }
  return shapes;
}

const wire = (isDown: boolean, em: number) =>
  ({ layer: 'installation', stroke: isDown ? 'lost' : 'boat-faint', width: (isDown ? 0.13 : 0.09) * em }) as const;

function rowShapes(row: TreeRow, { textSize: em, hasHandles }: TreeLayout): readonly Shape[] {
  const { node, isDown, sign, box, gate, letterAt } = row;
  const ink: Ink = isDown ? 'lost' : 'ink';
  const how: SignStyle = { em, stroke: ink, width: (node.isAlone ? 0.2 : 0.1) * em, isDown };
  const thin = { ...how, width: 0.1 * em };
  const radius = EM.signRadius * em;
  const shapes: Shape[] = [];
  if (node.kind === 'gate') {
    const d = rectPath(box.left, box.top, box.right, box.bottom);
    shapes.push(path(d, { layer: 'marks', stroke: ink, width: how.width, fill: 'paper' }));
    if (hasHandles && node.children.length > 0) shapes.push(...handleSign(row.isOpen, sign, how));
  } else if (node.kind === 'reference') shapes.push(...transferSign(node.letter ?? '', referenceAt(row, em), em, how));
  else if (node.kind === 'certain') shapes.push(...houseSign(sign, radius, how));
  else shapes.push(...eventSign(node, sign, radius, how));
  if (letterAt) shapes.push(...transferSign(node.letter ?? '', letterAt, 0.85 * em, { ...thin, em: 0.95 * em }));
  if (gate) shapes.push(...gateSign(node, gate.top, EM.gateWidth * em, EM.gateHeight * em, thin));
  return [...shapes, ...words(row, ink)];
}

const referenceAt = ({ sign }: TreeRow, em: number) => ({ x: sign.x + 0.25 * em, y: sign.y - 0.02 * em });

function words({ node, lines }: TreeRow, ink: Ink): readonly Shape[] {
  const [subject] = node.subjects;
  return lines.map(({ text: content, at, size, role }) =>
    text(content, at, {
      layer: 'labels',
      size,
      ink: role === 'label' ? ink : ink === 'lost' && role === 'remark' ? 'lost' : 'grid-text',
      bold: role === 'label' && isBold(node),
      ...(subject && role === 'label' ? { subject } : {}),
    }),
  );
}
