import { useMemo, useRef, useState } from 'react';
import { Button, ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { PALETTES } from '../../../../core/drawing/palette.ts';
import { drawnTree } from '../../../../core/treeDiagram/drawing.ts';
import { layOutTree } from '../../../../core/treeDiagram/layout.ts';
import { treeLegend } from '../../../../core/treeDiagram/legend.ts';
import { closedAtFirst, nodesOf } from '../../../../core/treeDiagram/state.ts';
import type { ReadableTree, TreeNode } from '../../../../core/treeDiagram/types.ts';
import { useThemeName } from '../../../app/useTheme.ts';
import { SvgDrawing } from '../../../canvas/SvgDrawing.tsx';
import { useAppStore } from '../../../store/context.ts';
import type { AppStore } from '../../../store/store.ts';
import { nodesAround } from './keys.ts';
import { type TreeDeeds, TreeItems } from './TreeItems.tsx';
import { useTreeSize } from './useTreeSize.ts';

/** Smallest share of actual size: the shape of the tree and its heavy places are still to be seen, names come up on pointing. */
const SMALLEST = 0.25;

/** The diagram of one service with its branches open or closed, as large as letters of the panel or small enough to see whole. */
export function TreeDiagram({ tree, down }: { tree: ReadableTree; down: ReadonlySet<string> }) {
  const store = useAppStore();
  const theme = useThemeName();
  const frame = useRef<HTMLDivElement>(null);
  const { width, em, seenHeight } = useTreeSize(frame);
  const [closed, setClosed] = useState(() => closedAtFirst(tree));
  const [isWhole, setWhole] = useState(false);
  const [focusId, setFocusId] = useState(tree.top.id);
  const [wanted, want] = useState<{ readonly id: string } | null>(null);
  const layout = useMemo(
    () => layOutTree(tree, { width, textSize: em, closed, down, hasHandles: true }),
    [tree, width, em, closed, down],
  );
  const drawing = useMemo(() => drawnTree(layout), [layout]);
  const legend = useMemo(() => treeLegend(tree, width, em), [tree, width, em]);
  const fit = Math.min(1, seenHeight / layout.height, width / layout.width);
  const scale = isWhole ? Math.max(SMALLEST, fit) : 1;
  const focused = layout.rows.some(({ node }) => node.id === focusId) ? focusId : tree.top.id;

  const focus = (id: string): void => {
    setFocusId(id);
    want({ id });
  };
  const toggle = (id: string): void => setClosed((before) => toggled(before, id));
  const choose = (id: string): void => {
    const node = [...nodesOf(tree.top)].find((each) => each.id === id);
    if (!node) return;
    if (node.target !== null) {
      const around = new Set([...nodesAround(nodesOf(tree.top), node.target), node.target]);
      setClosed((before) => new Set([...before].filter((each) => !around.has(each))));
      focus(node.target);
    } else if (!showOnDrawing(store, node) && node.children.length > 0) toggle(id);
  };
  const deeds: TreeDeeds = { focus, toggle, choose };
  return (
    <>
      {tree.top.children.length > 0 ? (
        <div className="fault-tree-tools">
          <Button className="button" onPress={() => setClosed(new Set())}>
            Open all
          </Button>
          <Button className="button" onPress={() => setClosed(branchesBelow(tree.top))}>
            Close all
          </Button>
          <Zoom isWhole={isWhole} onChange={setWhole} />
        </div>
      ) : null}
      <div ref={frame} className="fault-tree-frame">
        <div style={{ width: layout.width * scale, height: layout.height * scale }}>
          <div className="fault-tree-sheet" style={{ width: layout.width, scale }}>
            <div aria-hidden="true">
              <SvgDrawing drawing={drawing} palette={PALETTES[theme]} label="" />
            </div>
            <TreeItems
              layout={layout}
              hasTips={scale < 0.8}
              label={`What takes away: ${tree.serviceName}`}
              focusId={focused}
              wanted={wanted}
              deeds={deeds}
            />
          </div>
        </div>
      </div>
      <SvgDrawing drawing={legend} palette={PALETTES[theme]} label="Signs of the diagram" />
    </>
  );
}

function Zoom({ isWhole, onChange }: { isWhole: boolean; onChange: (isWhole: boolean) => void }) {
  return (
    <ToggleButtonGroup
      aria-label="Size of the diagram"
      className="row"
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[isWhole ? 'whole' : 'actual']}
      onSelectionChange={(keys) => onChange(keys.has('whole'))}
    >
      <ToggleButton id="actual">Actual size</ToggleButton>
      <ToggleButton id="whole">Whole tree</ToggleButton>
    </ToggleButtonGroup>
  );
}

/** Selects what a node is about, or shows a common cause; false for a node that is about nothing in particular. */
function showOnDrawing(store: AppStore, node: TreeNode): boolean {
  const { select, showEvent, eventId } = store.getState();
  if (node.kind === 'cause') {
    const id = node.modelId.replace(/^cause:/, '');
    showEvent(eventId === id ? null : id);
    return true;
  }
  if (node.subjects.length === 0) return false;
  select(node.subjects);
  return true;
}

function toggled(closed: ReadonlySet<string>, id: string): ReadonlySet<string> {
  const after = new Set(closed);
  if (!after.delete(id)) after.add(id);
  return after;
}

/** All branches but the top itself. */
function branchesBelow(top: TreeNode): ReadonlySet<string> {
  return new Set([...nodesOf(top)].filter((node) => node !== top && node.children.length > 0).map(({ id }) => id));
}
