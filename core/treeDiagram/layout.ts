import type { Box, Point } from '../drawing/geometry.ts';
import { textWidth } from '../drawing/textWidth.ts';
import { endsBelow, singlePointsBelow } from './state.ts';
import type { ReadableTree, TreeNode } from './types.ts';
import { wrapped } from './wrap.ts';

export interface LayoutOptions {
  /** Width to keep to, drawing units; a deep tree takes more where a line would else hold only a word. */
  readonly width: number;
  /** Height of the letters, drawing units; all else follows from it. */
  readonly textSize: number;
  /** Branches that are closed, by node id; none when left out. */
  readonly closed?: ReadonlySet<string>;
  /** Nodes that are down, by node id. */
  readonly down?: ReadonlySet<string>;
  /** Leave room for the sign that opens and closes a branch. */
  readonly hasHandles?: boolean;
}

export interface TextLine {
  readonly text: string;
  /** On the baseline. */
  readonly at: Point;
  readonly size: number;
  readonly role: 'label' | 'remark' | 'gate';
}

/** One node where it is drawn. */
export interface TreeRow {
  readonly node: TreeNode;
  /** 0 for the top. */
  readonly level: number;
  readonly parent: TreeNode | null;
  /** Place among its siblings, from 1, and how many they are. */
  readonly place: number;
  readonly siblings: number;
  readonly isOpen: boolean;
  readonly isDown: boolean;
  /** All that is drawn of it but its gate sign. */
  readonly box: Box;
  /** Middle of its own sign (circle, house, triangle) or of the handle of a branch. */
  readonly sign: Point;
  /** Middle of the triangle with the letter of a branch that is used elsewhere too. */
  readonly letterAt: Point | null;
  /** Gate sign and the words beside it; only for an open branch. */
  readonly gate: { readonly top: Point; readonly box: Box } | null;
  readonly lines: readonly TextLine[];
}

export interface TreeLayout {
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
  readonly hasHandles: boolean;
  readonly rows: readonly TreeRow[];
}

/** Measures in heights of letters. Own choice, by eye: at 13 px four levels fit a panel of 380 px. */
export const EM = {
  margin: 0.3,
  step: 1.95,
  signX: 0.62,
  signRadius: 0.55,
  leafText: 1.55,
  letterText: 1.9,
  frameText: 0.55,
  handleText: 1.5,
  frameEnd: 0.55,
  letterWidth: 1.9,
  line: 1.22,
  remark: 0.86,
  padding: 0.3,
  gap: 0.38,
  gateX: 0.95,
  gateWidth: 1.5,
  gateHeight: 1.35,
  gateRow: 1.6,
} as const;
/** A remark may be a whole sentence: why a service is lost as drawn. */
const REMARK_LINES = 8;
/** Least width of a line of text, heights of letters. */
const LEAST_LINE = 12;

const GATE_WORDS: Readonly<Record<TreeNode['op'], (count: number, k: number) => string>> = {
  and: (count) => (count === 2 ? 'both of these' : `all ${count} of these`),
  or: (count) => (count === 1 ? 'this' : 'any of these'),
  atleast: (count, k) => `at least ${k} of these ${count}`,
};

/** `any of these`: what a gate asks of what is under it. */
export const gateWords = ({ op, k, children }: TreeNode): string => GATE_WORDS[op](children.length, k);

/**
 * What is said of a node beside its name, as it is shown now. Of a branch right under the top, or under another that alone
 * takes the service away, the outline says enough.
 */
export function remarksOf(node: TreeNode, parent: TreeNode | null, isOpen: boolean, isDown: boolean): string {
  const { kind, isAlone, places, letter, remark, children } = node;
  const isPlain = parent === null || isBold(parent);
  const isSingle = kind === 'event' || kind === 'cause';
  const inside = isOpen || children.length === 0 ? 0 : endsBelow(node);
  return [
    isDown && kind !== 'certain' ? 'down' : '',
    isAlone && isSingle ? 'single point of failure' : '',
    isAlone && !isSingle && !isPlain ? 'alone takes the service away' : '',
    remark,
    kind === 'reference' ? `see ${letter ?? 'elsewhere'}` : '',
    kind === 'gate' && letter !== null ? `used in ${places} places` : '',
    isSingle && places > 1 ? `in ${places} places` : '',
    inside > 0 ? `${inside} inside${singlesWords(singlePointsBelow(node))}` : '',
  ]
    .filter((words) => words !== '')
    .join(' · ');
}

/**
 * Places a tree as an indented list from the top event down: each event over its gate sign, the gate's inputs under it, one
 * to a row. Rows never overlap; a label wraps to two lines and a remark to eight, and an ellipsis stands for what is left over.
 */
export function layOutTree(tree: ReadableTree, options: LayoutOptions): TreeLayout {
  const { textSize: em, closed, down, hasHandles = false } = options;
  const rows: TreeRow[] = [];
  let y = EM.margin * em;
  let right = 0;
  const place = (node: TreeNode, level: number, parent: TreeNode | null, nth: number, siblings: number): void => {
    const isOpen = node.children.length > 0 && !closed?.has(node.id);
    const state = { level, parent, place: nth, siblings, isOpen, isDown: down?.has(node.id) ?? false };
    const row = rowOf(node, state, y, { ...options, hasHandles });
    rows.push(row);
    right = Math.max(right, row.box.right, row.gate?.box.right ?? 0);
    y = (row.gate?.box.bottom ?? row.box.bottom) + EM.gap * em;
    if (!isOpen) return;
    for (const [i, child] of node.children.entries()) place(child, level + 1, node, i + 1, node.children.length);
  };
  place(tree.top, 0, null, 1, 1);
  const width = Math.max(options.width, right + EM.margin * em);
  return { width, height: y - EM.gap * em + EM.margin * em, textSize: em, hasHandles, rows };
}

type RowState = Pick<TreeRow, 'level' | 'parent' | 'place' | 'siblings' | 'isOpen' | 'isDown'>;
type RowOptions = LayoutOptions & { readonly hasHandles: boolean };

function rowOf(node: TreeNode, state: RowState, top: number, options: RowOptions): TreeRow {
  const { textSize: em, width, hasHandles } = options;
  const left = (EM.margin + state.level * EM.step) * em;
  const isBranch = node.kind === 'gate';
  const handle = hasHandles && node.children.length > 0;
  const textX = left + em * (isBranch ? (handle ? EM.handleText : EM.frameText) : leafText(node));
  const end = em * ((isBranch ? EM.frameEnd : 0) + (isBranch && node.letter !== null ? EM.letterWidth : 0));
  const room = Math.max(width - EM.margin * em - textX - end, LEAST_LINE * em);
  const { lines, textWide, high } = textOf(node, state, { x: textX, y: top + EM.padding * em }, room, em);
  const bottom = top + high + 2 * EM.padding * em;
  const box = { left, top, right: textX + textWide + end, bottom };
  const middleOfFirst = top + (EM.padding + EM.line / 2) * em;
  const letterAt = isBranch && node.letter !== null ? { x: box.right - 1.05 * em, y: (top + bottom) / 2 } : null;
  const gate = state.isOpen ? gateOf(node, left, bottom, em) : null;
  const sign = { x: left + (isBranch ? 0.85 : EM.signX) * em, y: middleOfFirst };
  return {
    node,
    ...state,
    box,
    sign,
    letterAt,
    gate: gate?.gate ?? null,
    lines: gate ? [...lines, gate.words] : lines,
  };
}

const leafText = ({ kind }: TreeNode): number => (kind === 'reference' ? EM.letterText : EM.leafText);

function gateOf(
  node: TreeNode,
  left: number,
  top: number,
  em: number,
): { readonly gate: NonNullable<TreeRow['gate']>; readonly words: TextLine } {
  const x = left + EM.gateX * em;
  const size = EM.remark * em;
  const text = gateWords(node);
  const at = { x: x + (EM.gateWidth / 2 + 0.4) * em, y: top + 1.1 * em };
  const box = { left, top, right: at.x + textWidth(text, size), bottom: top + EM.gateRow * em };
  return { gate: { top: { x, y: top }, box }, words: { text, at, size, role: 'gate' } };
}

const singlesWords = (count: number): string =>
  count === 0 ? '' : `, ${count} ${count === 1 ? 'single point' : 'single points'} of failure`;

interface PlacedText {
  readonly lines: readonly TextLine[];
  readonly textWide: number;
  readonly high: number;
}

/** The label on one or two lines; the remark beside it where there is room, else below. */
function textOf(node: TreeNode, state: RowState, at: Point, room: number, em: number): PlacedText {
  const bold = isBold(node);
  const labels = wrapped(node.label, em, room, bold);
  const size = EM.remark * em;
  const remark = remarksOf(node, state.parent, state.isOpen, state.isDown);
  const lines: TextLine[] = [];
  let y = at.y;
  let textWide = 0;
  const write = (text: string, of: number, role: TextLine['role'], x = at.x): void => {
    lines.push({ text, at: { x, y: y + 0.9 * em }, size: of, role });
    textWide = Math.max(textWide, x - at.x + textWidth(text, of, role === 'label' && bold));
  };
  for (const text of labels) {
    write(text, em, 'label');
    y += EM.line * em;
  }
  if (remark === '') return { lines, textWide, high: y - at.y };
  const beside = textWide + 0.7 * em;
  if (labels.length === 1 && beside + textWidth(remark, size) <= room) {
    y -= EM.line * em;
    write(remark, size, 'remark', at.x + beside);
    return { lines, textWide, high: y + EM.line * em - at.y };
  }
  for (const text of wrapped(remark, size, room, false, REMARK_LINES)) {
    write(text, size, 'remark');
    y += EM.line * EM.remark * em;
  }
  return { lines, textWide, high: y - at.y };
}

/** The top and what alone takes the service away are set bold; the outline says it too. */
export const isBold = ({ isAlone, id, modelId }: TreeNode): boolean => isAlone || id === modelId;
