import { describe, expect, it } from 'vitest';
import { layOutTree } from '../../../core/treeDiagram/layout.ts';
import { nodesOf } from '../../../core/treeDiagram/state.ts';
import { nodesAround, treeKey } from '../../../renderer/panels/redundancy/tree/keys.ts';
import { demo, treesOf } from './boats.ts';

// Keys as the WAI-ARIA authoring practices have them for a tree (from memory, not read).

const tree = treesOf(demo('vessarine')).trees[0];
if (!tree) throw new Error('The demo boat has services.');
const way = [...nodesOf(tree.top)].find(({ label }) => label === 'VHF-1 on A1 is gone');
if (!way) throw new Error('The demo boat has a way over A1.');
const open = layOutTree(tree, { width: 423, textSize: 13 }).rows;
const shut = layOutTree(tree, { width: 423, textSize: 13, closed: new Set([way.id]) }).rows;

describe('treeKey', () => {
  it('right goes into an open branch and opens a closed one; left closes it, then goes out', () => {
    const first = open[open.findIndex(({ node }) => node.id === way.id) + 1]?.node.id;
    expect(treeKey(open, way.id, 'ArrowRight')).toEqual({ does: 'focus', id: first });
    expect(treeKey(shut, way.id, 'ArrowRight')).toEqual({ does: 'toggle', id: way.id });
    expect(treeKey(open, way.id, 'ArrowLeft')).toEqual({ does: 'toggle', id: way.id });
    const [around] = nodesAround(nodesOf(tree.top), way.id);
    expect(treeKey(shut, way.id, 'ArrowLeft')).toEqual({ does: 'focus', id: around });
  });

  it('down from every row meets all that is shown, up comes back, and the ends hold', () => {
    for (const rows of [open, shut]) {
      const met = [rows[0]?.node.id];
      for (let deed = treeKey(rows, tree.top.id, 'ArrowDown'); deed?.does === 'focus'; ) {
        met.push(deed.id);
        deed = treeKey(rows, deed.id, 'ArrowDown');
      }
      expect(met).toEqual(rows.map(({ node }) => node.id));
      expect(treeKey(rows, tree.top.id, 'End')).toEqual({ does: 'focus', id: met.at(-1) });
      expect(treeKey(rows, met.at(-1) ?? '', 'ArrowUp')).toEqual({ does: 'focus', id: met.at(-2) });
      expect(treeKey(rows, tree.top.id, 'ArrowUp')).toEqual({ does: 'nothing' });
    }
  });

  it('leaves all other keys to the page', () => {
    for (const key of ['Tab', 'Escape', 'Delete', 'a']) expect(treeKey(open, way.id, key)).toBeNull();
  });

  it('knows what has to be open for a branch to be seen', () => {
    for (const node of nodesOf(tree.top)) {
      if (node.target === null) continue;
      const around = nodesAround(nodesOf(tree.top), node.target);
      expect(around.at(-1)).toBe(tree.top.id);
      for (const id of around) expect(node.target.startsWith(id)).toBe(true);
    }
  });
});
