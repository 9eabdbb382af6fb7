import { type KeyboardEvent, type MouseEvent, useEffect, useRef } from 'react';
import type { Subject } from '../../../../core/model/project.ts';
import { gateWords, remarksOf, type TreeLayout, type TreeRow } from '../../../../core/treeDiagram/layout.ts';
import { useApp } from '../../../store/context.ts';
import { treeKey } from './keys.ts';

/** What can be done to the tree from its nodes. */
export interface TreeDeeds {
  readonly focus: (id: string) => void;
  readonly toggle: (id: string) => void;
  readonly choose: (id: string) => void;
}

/**
 * The nodes as a tree for keys, pointers and screen readers, each lying over its place in the drawing, which stays mute.
 * @param hasTips say each node's words on pointing, for a diagram too small to read
 * @param focusId the node the Tab key comes to
 * @param wanted a node that is to have the focus now, wherever it was
 */
export function TreeItems({
  layout,
  label,
  hasTips,
  focusId,
  wanted,
  deeds,
}: {
  layout: TreeLayout;
  label: string;
  hasTips: boolean;
  focusId: string;
  wanted: { readonly id: string } | null;
  deeds: TreeDeeds;
}) {
  const list = useRef<HTMLDivElement>(null);
  const selection = useApp((state) => state.selection);
  useEffect(() => {
    if (wanted) list.current?.querySelector<HTMLElement>(`[data-node="${CSS.escape(wanted.id)}"]`)?.focus();
  }, [wanted]);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const deed = treeKey(layout.rows, nodeIdAt(event.target) ?? focusId, event.key);
    if (!deed) return;
    event.preventDefault();
    event.stopPropagation();
    if (deed.does !== 'nothing') deeds[deed.does](deed.id);
  };
  return (
    <div ref={list} role="tree" aria-label={label} className="fault-tree-items" onKeyDown={onKeyDown}>
      {layout.rows.map((row) => (
        <TreeItem
          key={row.node.id}
          row={row}
          layout={layout}
          hasTip={hasTips}
          hasFocus={row.node.id === focusId}
          isSelected={isAllSelected(row.node.subjects, selection)}
          deeds={deeds}
        />
      ))}
    </div>
  );
}

const nodeIdAt = (target: EventTarget): string | undefined =>
  target instanceof HTMLElement ? target.closest<HTMLElement>('[data-node]')?.dataset.node : undefined;

function isAllSelected(subjects: readonly Subject[], selection: readonly Subject[]): boolean {
  if (subjects.length === 0 || subjects.length !== selection.length) return false;
  return subjects.every((subject) => selection.some(({ kind, id }) => kind === subject.kind && id === subject.id));
}

function TreeItem({
  row,
  layout: { textSize, hasHandles },
  hasTip,
  hasFocus,
  isSelected,
  deeds,
}: {
  row: TreeRow;
  layout: TreeLayout;
  hasTip: boolean;
  hasFocus: boolean;
  isSelected: boolean;
  deeds: TreeDeeds;
}) {
  const { node, box, level, place, siblings, isOpen } = row;
  const isBranch = node.children.length > 0;
  const onClick = ({ clientX, currentTarget }: MouseEvent<HTMLElement>): void => {
    const { left, width } = currentTarget.getBoundingClientRect();
    const scale = width / (box.right - box.left);
    const isOnHandle = isBranch && hasHandles && clientX - left <= 1.5 * textSize * scale;
    deeds.focus(node.id);
    if (isOnHandle) deeds.toggle(node.id);
    else deeds.choose(node.id);
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the tree around the items handles the keys for all of them
    <div
      role="treeitem"
      className={`fault-tree-item${isSelected ? ' is-selected' : ''}`}
      data-node={node.id}
      tabIndex={hasFocus ? 0 : -1}
      aria-level={level + 1}
      aria-posinset={place}
      aria-setsize={siblings}
      aria-expanded={isBranch ? isOpen : undefined}
      aria-selected={isSelected}
      aria-label={spoken(row)}
      title={hasTip ? spoken(row) : undefined}
      onClick={onClick}
      style={{ left: box.left, top: box.top, width: box.right - box.left, height: box.bottom - box.top }}
    />
  );
}

/** A node as it is read out: its name, what its gate asks for, and what is said beside it. */
function spoken({ node, parent, isOpen, isDown }: TreeRow): string {
  const gate =
    node.children.length > 0 ? `when ${gateWords(node)} ${node.children.length === 1 ? 'is' : 'are'} down` : '';
  const cause = node.kind === 'cause' ? 'common cause' : '';
  const remarks = remarksOf(node, parent, isOpen, isDown).replaceAll(' · ', ', ');
  return [node.label, cause, gate, remarks].filter((words) => words !== '').join(', ');
}
