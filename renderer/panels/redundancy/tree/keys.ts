import type { TreeRow } from '../../../../core/treeDiagram/layout.ts';

/** What a key does in the tree: take the focus to a node, open or close one, or choose it. */
export type KeyDeed =
  | { readonly does: 'focus' | 'toggle' | 'choose'; readonly id: string }
  /** The key is the tree's, but there is nothing to do. */
  | { readonly does: 'nothing' };

/**
 * The usual keys of a tree: up and down through what is shown, right opens or goes in, left closes or goes out, Home and End,
 * Enter and Space choose. Null for a key that is not the tree's.
 */
export function treeKey(rows: readonly TreeRow[], id: string, key: string): KeyDeed | null {
  const index = rows.findIndex(({ node }) => node.id === id);
  const row = rows[index];
  if (!row) return null;
  const focus = (at: TreeRow | undefined): KeyDeed => (at ? { does: 'focus', id: at.node.id } : { does: 'nothing' });
  switch (key) {
    case 'ArrowDown':
      return focus(rows[index + 1]);
    case 'ArrowUp':
      return focus(rows[index - 1]);
    case 'Home':
      return focus(rows[0]);
    case 'End':
      return focus(rows.at(-1));
    case 'ArrowRight':
      if (row.node.children.length === 0) return { does: 'nothing' };
      return row.isOpen ? focus(rows[index + 1]) : { does: 'toggle', id };
    case 'ArrowLeft':
      if (row.isOpen) return { does: 'toggle', id };
      return focus(rows.find(({ node }) => node.id === row.parent?.id));
    case 'Enter':
    case ' ':
      return { does: 'choose', id };
    default:
      return null;
  }
}

/** Ids of the nodes a node is inside of, the nearest first: what has to be open for it to be seen. */
export function nodesAround(
  rows: Iterable<{ readonly id: string; readonly children: readonly { readonly id: string }[] }>,
  id: string,
) {
  const parentOf = new Map<string, string>();
  for (const node of rows) for (const child of node.children) parentOf.set(child.id, node.id);
  const around: string[] = [];
  for (let at = parentOf.get(id); at !== undefined; at = parentOf.get(at)) around.push(at);
  return around;
}
