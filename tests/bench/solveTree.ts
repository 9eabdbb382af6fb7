import { closeSync, openSync, readFileSync, writeSync } from 'node:fs';
import { solverOf } from '../../core/faultTree/solver.ts';
import { readTree, type WrittenTree } from '../support/faultTrees.ts';

// `node solveTree.js TREE.json ORDER [SETS.txt]`: one tree from its file to its answer, as a whole process. Writes every set up
// to the order to a file, one a line, because the analyser it is held against writes them too; prints the answer as JSON.

const [treeFile = '', order = '', setsFile] = process.argv.slice(2);
const { tree, probabilityOf } = readTree(JSON.parse(readFileSync(treeFile, 'utf8')) as WrittenTree);
const solver = solverOf(tree);
const sets = solver.cutSets(tree.top, Number(order));
const { lowest, isExact } = solver.unavailability(tree.top)(probabilityOf);
if (setsFile !== undefined) {
  const file = openSync(setsFile, 'w');
  for (let n = 1; n <= sets.countByOrder.length; n += 1) {
    const lines = sets.ofOrder(n).map((set) => `${set.join(' ')}\n`);
    writeSync(file, lines.join(''));
  }
  closeSync(file);
}
console.log(JSON.stringify({ countByOrder: sets.countByOrder, probability: lowest, isExact }));
