import { isTrue } from './plain.ts';
import type { ReadableTree, TreeNode } from './types.ts';

/**
 * Ids of the nodes that are down when some parts and causes are.
 * @param down ids of events and causes of the failure model; what a cause takes is to be among them
 */
export function nodesDown({ top }: ReadableTree, down: ReadonlySet<string>): ReadonlySet<string> {
  const branches = new Map<string, TreeNode>();
  for (const node of nodesOf(top)) if (node.kind === 'gate') branches.set(node.id, node);
  const known = new Map<string, boolean>();
  const isDown = (node: TreeNode): boolean => {
    const before = known.get(node.id);
    if (before !== undefined) return before;
    const found = stateOf(node);
    known.set(node.id, found);
    return found;
  };
  const stateOf = (node: TreeNode): boolean => {
    if (node.kind === 'certain') return true;
    if (node.kind === 'event' || node.kind === 'cause') return down.has(node.modelId);
    if (node.kind === 'gate') {
      const count = node.children.filter(isDown).length;
      return isTrue(node.op, node.k, count, node.children.length);
    }
    const branch = node.target === null ? undefined : branches.get(node.target);
    return branch !== undefined && isDown(branch);
  };
  return new Set([...nodesOf(top)].filter(isDown).map(({ id }) => id));
}

/** A node and all below it, from the top down. */
export function* nodesOf(node: TreeNode): Generator<TreeNode> {
  yield node;
  for (const child of node.children) yield* nodesOf(child);
}

/** How many single things a branch holds as drawn, references counted as one. */
export function endsBelow(node: TreeNode): number {
  return node.children.length === 0 ? 1 : node.children.reduce((sum, child) => sum + endsBelow(child), 0);
}

/** A tree of so many places is read whole at once. */
const READ_WHOLE = 26;
/** Levels that are open at first in a larger one; the top is level 0. */
const OPEN_LEVELS = 3;

/** How many single things in a branch each take the service away alone, counted once each. */
export function singlePointsBelow(node: TreeNode): number {
  const alone = [...nodesOf(node)].filter(({ kind, isAlone }) => isAlone && (kind === 'event' || kind === 'cause'));
  return new Set(alone.map(({ modelId }) => modelId)).size;
}

/**
 * Branches that are closed when a tree is first looked at: in a large one, those that start below the third level, but none
 * that holds a single point of failure, for these are what one looks for.
 */
export function closedAtFirst({ top }: ReadableTree): ReadonlySet<string> {
  const closed = new Set<string>();
  if ([...nodesOf(top)].length <= READ_WHOLE) return closed;
  const walk = (node: TreeNode, level: number): void => {
    const isPlain = ![...nodesOf(node)].some(({ isAlone }) => isAlone);
    if (level >= OPEN_LEVELS && node.children.length > 0 && isPlain) closed.add(node.id);
    for (const child of node.children) walk(child, level + 1);
  };
  walk(top, 0);
  return closed;
}
