import { round2 } from '../drawing/geometry.ts';
import { circle, text } from '../drawing/shapes.ts';
import { textWidth } from '../drawing/textWidth.ts';
import type { Drawing, Shape } from '../drawing/types.ts';
import { EM } from './layout.ts';
import { eventSign, gateSign, houseSign, type SignStyle, transferSign } from './signs.ts';
import { nodesOf } from './state.ts';
import type { ReadableTree, TreeNode } from './types.ts';

interface Entry {
  readonly words: string;
  readonly isUsed: (node: TreeNode) => boolean;
  readonly sign: (x: number, y: number, em: number) => readonly Shape[];
}

const how = (em: number, heavy = false): SignStyle => ({
  em,
  stroke: 'ink',
  width: (heavy ? 0.2 : 0.1) * em,
  isDown: false,
});

/** A node only for its sign. */
const SAMPLE: TreeNode = {
  ...{ id: '', modelId: '', label: '', subjects: [], children: [], isAlone: false, remark: '' },
  ...{ kind: 'event', op: 'or', k: 0, mark: null, places: 1, letter: null, target: null },
};

const gate =
  (op: TreeNode['op']) =>
  (x: number, y: number, em: number): readonly Shape[] => {
    const node = { ...SAMPLE, op, k: 2, children: [SAMPLE, SAMPLE, SAMPLE] };
    return gateSign(node, { x, y: y - 0.68 * em }, EM.gateWidth * em, EM.gateHeight * em, how(em));
  };
const event =
  (node: Partial<TreeNode>) =>
  (x: number, y: number, em: number): readonly Shape[] =>
    eventSign({ ...SAMPLE, ...node }, { x, y }, EM.signRadius * em, how(em));

const ENTRIES: readonly Entry[] = [
  { words: 'and: all under it must be down', isUsed: hasGate('and'), sign: gate('and') },
  { words: 'or: any one under it is enough', isUsed: hasGate('or'), sign: gate('or') },
  { words: 'at least so many of those under it', isUsed: hasGate('atleast'), sign: gate('atleast') },
  { words: 'a part fails', isUsed: ({ kind }) => kind === 'event', sign: event({}) },
  {
    words: 'common cause: takes several parts at once',
    isUsed: ({ kind }) => kind === 'cause',
    sign: event({ kind: 'cause' }),
  },
  { words: 'same number: the same thing', isUsed: ({ mark }) => mark !== null, sign: event({ mark: 1 }) },
  {
    words: 'branch drawn once, at the box with this letter',
    isUsed: ({ kind }) => kind === 'reference',
    sign: (x, y, em) => transferSign('A', { x, y }, em, how(em)),
  },
  {
    words: 'gone as drawn',
    isUsed: ({ kind }) => kind === 'certain',
    sign: (x, y, em) => houseSign({ x, y }, EM.signRadius * em, how(em)),
  },
  {
    words: 'heavy: alone takes the service away',
    isUsed: (node) => node.isAlone,
    sign: (x, y, em) => [
      circle({ x, y }, EM.signRadius * em, { layer: 'marks', stroke: 'ink', width: 0.2 * em, fill: 'paper' }),
    ],
  },
];

function hasGate(op: TreeNode['op']): (node: TreeNode) => boolean {
  return (node) => node.kind === 'gate' && node.children.length > 0 && node.op === op;
}

/** The signs a tree uses and what they mean, in as many rows as the width asks for. Drawing units as in the tree's own drawing. */
export function treeLegend({ top }: ReadableTree, width: number, em: number): Drawing {
  const nodes = [...nodesOf(top)];
  const entries = ENTRIES.filter(({ isUsed }) => nodes.some(isUsed));
  const size = EM.remark * em;
  const shapes: Shape[] = [];
  const row = 1.95 * em;
  let x = 0;
  let y = row / 2;
  for (const { words, sign } of entries) {
    const wide = 2.1 * em + textWidth(words, size) + 1.2 * em;
    if (x > 0 && x + wide > width) {
      x = 0;
      y += row;
    }
    shapes.push(...sign(x + 0.95 * em, y, em));
    shapes.push(text(words, { x: x + 2.1 * em, y: y + 0.34 * size }, { layer: 'labels', size, ink: 'ink' }));
    x += wide;
  }
  const height = entries.length === 0 ? 0 : round2(y + row / 2);
  return { width, height, projection: { originX: 0, originY: 0, scale: 1 }, shapes };
}
