import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, contains, overlaps } from '../../../core/drawing/geometry.ts';
import { textWidth } from '../../../core/drawing/textWidth.ts';
import type { Drawing } from '../../../core/drawing/types.ts';
import type { Project } from '../../../core/model/project.ts';
import { drawnTree, treePages } from '../../../core/treeDiagram/drawing.ts';
import { isBold, layOutTree, type TreeLayout } from '../../../core/treeDiagram/layout.ts';
import { closedAtFirst, nodesDown, nodesOf } from '../../../core/treeDiagram/state.ts';
import type { ReadableTree } from '../../../core/treeDiagram/types.ts';
import { wrapped } from '../../../core/treeDiagram/wrap.ts';
import { generatedVessel } from '../../support/generatedVessel.ts';
import { DEMOS, demo, treesOf } from './boats.ts';

// Panel widths at 1280 and 1920 px, the narrowest panel, and a page in mm; letters as large as there.
const SIZES = [
  { width: 330, textSize: 13 },
  { width: 423, textSize: 13 },
  { width: 587, textSize: 13 },
  { width: 180, textSize: 3 },
];

/** The same boat with tags as long as a file may hold. */
function withLongNames(project: Project): Project {
  const long = 'Very long name of a thing aboard that somebody wrote out in full, and then some more of it';
  const items = project.items.map((item) => ({ ...item, tag: `${item.tag} ${long}` }));
  return { ...project, items };
}

function states(tree: ReadableTree): readonly ReadonlySet<string>[] {
  const branches = [...nodesOf(tree.top)].filter(({ children }) => children.length > 0);
  return [new Set(), closedAtFirst(tree), new Set(branches.map(({ id }) => id))];
}

const boxesOf = ({ rows }: TreeLayout): readonly Box[] =>
  rows.flatMap(({ box, gate }) => (gate ? [box, gate.box] : [box]));

function checkLayout(layout: TreeLayout): void {
  const sheet = { left: 0, top: 0, right: layout.width, bottom: layout.height };
  const boxes = boxesOf(layout);
  expect(boxes.filter((box) => !contains(sheet, box))).toEqual([]);
  expect(boxes.filter((box, index) => boxes.slice(index + 1).some((other) => shrunk(box, other)))).toEqual([]);
  for (const { node, box, gate, lines } of layout.rows) {
    expect(lines.filter(({ role }) => role === 'label').length).toBeLessThanOrEqual(2);
    const outside = lines.filter(({ text, at, size, role }) => {
      const around = role === 'gate' && gate ? gate.box : box;
      const right = at.x + textWidth(text, size, role === 'label' && isBold(node));
      const isIn = at.x >= around.left && right <= around.right + 1e-9;
      return !isIn || at.y - 0.75 * size < around.top || at.y + 0.25 * size > around.bottom;
    });
    expect(outside).toEqual([]);
  }
}

/** A gate sign stands right under its event: boxes that only touch do not overlap. */
function shrunk(a: Box, b: Box): boolean {
  const e = 1e-6;
  return overlaps({ left: a.left + e, top: a.top + e, right: a.right - e, bottom: a.bottom - e }, b);
}

const BOATS: readonly (readonly [string, Project])[] = [
  ...DEMOS.map((name) => [name, demo(name)] as const),
  ['Vessarine with long names', withLongNames(demo('vessarine'))],
];

describe.each(BOATS)('%s', (_, project) => {
  const { trees, study } = treesOf(project);

  it('nothing overlaps and all is inside, whatever is open, at every width, whole or with everything down', () => {
    const everything = new Set([...study.model.events, ...study.model.causes.map(({ id }) => id)]);
    for (const tree of trees) {
      const down = nodesDown(tree, everything);
      for (const size of SIZES)
        for (const closed of states(tree))
          for (const hasHandles of [true, false])
            for (const state of [{}, { down }])
              checkLayout(layOutTree(tree, { ...size, closed, hasHandles, ...state }));
    }
  });

  it('keeps to the width it is given, but where lines would hold a word only', () => {
    for (const tree of trees) expect(layOutTree(tree, { width: 423, textSize: 13 }).width).toBeLessThanOrEqual(423);
  });

  it('says how many are inside a closed branch, and nothing of the kind of an open one', () => {
    for (const tree of trees) {
      const [, , all] = states(tree);
      const shut = layOutTree(tree, { width: 423, textSize: 13, ...(all ? { closed: all } : {}) });
      expect(shut.rows).toHaveLength(1);
      const words = shut.rows[0]?.lines.map(({ text }) => text).join(' ') ?? '';
      expect(/\d+ inside/.test(words)).toBe(tree.top.children.length > 0);
      const open = layOutTree(tree, { width: 423, textSize: 13 });
      expect(open.rows.some(({ lines }) => lines.some(({ text }) => /\d+ inside/.test(text)))).toBe(false);
    }
  });

  it('is cut into pages that hold every row whole and once', () => {
    for (const tree of trees) {
      const layout = layOutTree(tree, { width: 180, textSize: 3 });
      const pages = treePages(layout, 90);
      for (const page of pages) {
        expect(page.height).toBeLessThanOrEqual(90 + 1e-9);
        const outside = page.shapes.filter((shape) => heightsOf(shape).some((y) => y < -0.5 || y > page.height + 0.5));
        expect(outside).toEqual([]);
      }
      expect(pages.flatMap(textsOf)).toEqual(textsOf(drawnTree(layout)));
    }
  });
});

const textsOf = ({ shapes }: Drawing): readonly string[] =>
  shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));

/** Heights a shape touches; of a curve its handles, which lie outside it at the dome of an `and` gate only by a hair. */
function heightsOf(shape: Drawing['shapes'][number]): readonly number[] {
  if (shape.kind === 'circle') return [shape.y - shape.radius, shape.y + shape.radius];
  if (shape.kind === 'text') return [shape.y - 0.75 * shape.size, shape.y + 0.25 * shape.size];
  return (shape.d.match(/-?[\d.]+/g) ?? []).map(Number).filter((_, index) => index % 2 === 1);
}

describe('a boat of 500 items', () => {
  it('has trees that are laid out whole, without overlap', () => {
    const { trees } = treesOf(generatedVessel(500));
    const largest = trees.toSorted((a, b) => [...nodesOf(b.top)].length - [...nodesOf(a.top)].length)[0];
    if (!largest) throw new Error('The vessel has no trees.');
    const layout = layOutTree(largest, { width: 423, textSize: 13 });
    expect(layout.rows.length).toBeGreaterThan(50);
    const boxes = boxesOf(layout).toSorted((a, b) => a.top - b.top);
    for (const [index, box] of boxes.entries()) {
      const next = boxes[index + 1];
      if (next) expect(box.bottom).toBeLessThanOrEqual(next.top + 1e-6);
    }
  });
});

describe('wrapped', () => {
  it('never gives more than two lines nor one that is too wide, and cuts nothing that fits', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 120, unit: 'grapheme' }), fc.integer({ min: 60, max: 600 }), (text, width) => {
        const lines = wrapped(text, 13, width, false);
        expect(lines.length).toBeLessThanOrEqual(2);
        const plain = text
          .split(/\s+/)
          .filter((word) => word !== '')
          .join(' ');
        for (const line of lines) expect(textWidth(line, 13)).toBeLessThanOrEqual(width);
        if (textWidth(plain, 13) <= width) expect(lines).toEqual([plain]);
      }),
      { seed: 20_261, numRuns: 400 },
    );
  });
});
