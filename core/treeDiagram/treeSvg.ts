import { round2 } from '../drawing/geometry.ts';
import { PALETTES } from '../drawing/palette.ts';
import { text } from '../drawing/shapes.ts';
import { svgOf } from '../drawing/svg.ts';
import type { Shape } from '../drawing/types.ts';
import type { Project } from '../model/project.ts';
import { treeDrawing } from './drawing.ts';
import { treeLegend } from './legend.ts';
import { moved } from './moved.ts';
import { nodesDown, singlePointsBelow } from './state.ts';
import type { ReadableTree } from './types.ts';
import { wrapped } from './wrap.ts';

/** Width of the diagram on paper, mm: an upright A4 or Letter page with its margins taken off. */
const WIDTH_MM = 180;
const MARGIN_MM = 6;
/** Height of the letters, mm: the least that ISO 3098 allows is 2.5. */
const TEXT_MM = 3;

/** What the diagram speaks of, and what not. */
export const TREE_SCOPE =
  'Speaks of the layout as drawn, each part either working or down. Sets carried out on deck are not in it. ' +
  'It says nothing of how likely a failure is, nor whether the boat is fit to go anywhere.';

/** `3 single points of failure: each alone takes the service away.` */
export function singlePointSentence(tree: ReadableTree): string {
  if (nodesDown(tree, new Set()).has(tree.top.id)) return 'Lost as drawn: nothing more need fail.';
  const count = singlePointsBelow(tree.top);
  if (count === 0) return 'No single thing takes it away alone.';
  return count === 1
    ? 'One single point of failure: it alone takes the service away.'
    : `${count} single points of failure: each alone takes the service away.`;
}

/**
 * The whole diagram as one SVG document in mm, with the boat, the layout, the service, what it speaks of and what its signs
 * mean. As high as the tree needs. Everything is escaped.
 */
export function treeSvg(project: Project, tree: ReadableTree): string {
  const inner = WIDTH_MM;
  const title = `${tree.serviceName}: what takes it away`;
  const heads = [
    ...wrapped(title, 1.5 * TEXT_MM, inner, true).map((line) => ({ line, size: 1.5 * TEXT_MM, bold: true })),
    ...wrapped(
      `${project.boat.name} · layout “${project.layoutName}” · revision ${project.revision}`,
      TEXT_MM,
      inner,
      false,
    ).map(plainLine),
    ...wrapped(singlePointSentence(tree), TEXT_MM, inner, false).map(plainLine),
  ];
  const shapes: Shape[] = [];
  let y = MARGIN_MM;
  for (const { line, size, bold } of heads) {
    y += size * 1.3;
    shapes.push(text(line, { x: MARGIN_MM, y: y - size * 0.3 }, { layer: 'labels', size, ink: 'ink', bold }));
  }
  const diagram = treeDrawing(tree, { width: inner, textSize: TEXT_MM });
  y += TEXT_MM;
  shapes.push(...diagram.shapes.map((shape) => moved(shape, MARGIN_MM, y)));
  y += diagram.height + 1.5 * TEXT_MM;
  const legend = treeLegend(tree, inner, TEXT_MM);
  shapes.push(...legend.shapes.map((shape) => moved(shape, MARGIN_MM, y)));
  y += legend.height + 0.5 * TEXT_MM;
  for (const line of wrapped(TREE_SCOPE, 0.86 * TEXT_MM, inner, false)) {
    y += 1.2 * TEXT_MM;
    shapes.push(text(line, { x: MARGIN_MM, y }, { layer: 'labels', size: 0.86 * TEXT_MM, ink: 'grid-text' }));
  }
  const width = Math.max(inner, diagram.width) + 2 * MARGIN_MM;
  const height = round2(y + MARGIN_MM);
  const sheet = { width, height, projection: diagram.projection, shapes };
  const description = `Fault tree of ${project.boat.name}. ${singlePointSentence(tree)} ${TREE_SCOPE}`;
  return svgOf(sheet, PALETTES.print, { title: `${project.boat.name}: ${title}`, description, unit: 'mm' });
}

const plainLine = (line: string) => ({ line, size: TEXT_MM, bold: false });
