import type { Project } from '../model/project.ts';
import { type Box, boxAround } from './geometry.ts';
import { isOnSheet } from './installation.ts';
import type { Occupancy } from './occupancy.ts';
import type { ProfileOptions } from './options.ts';
import { text } from './shapes.ts';
import { inkOf, stateOf } from './state.ts';
import { onSheet, type PlacedSymbol, type SymbolLayout } from './symbols.ts';
import { textWidth } from './textWidth.ts';
import type { Shape } from './types.ts';

/** Longest tag written beside a symbol. */
const LONGEST = 12;

/** Tags of antennas, joints and whatever else has no words in its symbol, where there is room beside it. */
export function drawTags(
  project: Project,
  layout: SymbolLayout,
  taken: Occupancy,
  options: ProfileOptions,
): readonly Shape[] {
  if (!options.show.labels) return [];
  return project.items.flatMap((item) => {
    const symbol = layout.get(item.id);
    if (!symbol || symbol.glyph.words.some((word) => word.text === item.tag) || !isOnSheet(symbol, options)) return [];
    if (item.tag === '' || [...item.tag].length > LONGEST) return [];
    const box = roomFor(symbol, item.tag, taken);
    if (!box) return [];
    taken.addBox(box);
    const state = stateOf(options, 'item', item.id);
    const at = { x: box.left, y: box.bottom - 2 * symbol.u };
    return [
      text(item.tag, at, {
        layer: 'labels',
        size: 9 * symbol.u,
        ink: inkOf(state, 'ink'),
        halo: true,
        opacity: state.opacity,
        subject: { kind: 'item', id: item.id },
      }),
    ];
  });
}

/** Right, left, over or under the symbol's foot, whichever is clear and covers least line. */
function roomFor(symbol: PlacedSymbol, tag: string, taken: Occupancy): Box | null {
  const { at, u, item } = symbol;
  // A wire is named where its balloon's leader ends.
  const box = item.endPosition ? boxAround(onSheet(symbol, symbol.glyph.dot), 4 * u, 4 * u) : symbol.box;
  const width = textWidth(tag, 9 * u);
  const height = 9 * u;
  const middle = (box.left + box.right) / 2;
  const foot = item.endPosition ? box.bottom : Math.min(box.bottom, at.y + 6 * u);
  const places: readonly (readonly [left: number, top: number])[] = [
    [box.right + 2.5 * u, foot - height],
    [box.left - 2.5 * u - width, foot - height],
    [middle - width / 2, box.top - height - 2 * u],
    [middle - width / 2, box.bottom + 2 * u],
  ];
  let best: { readonly box: Box; readonly cost: number } | null = null;
  for (const [left, top] of places) {
    const candidate = { left, top, right: left + width, bottom: top + height };
    if (taken.hits(candidate)) continue;
    const cost = taken.lineCost(candidate);
    if (!best || cost < best.cost) best = { box: candidate, cost };
  }
  return best && best.cost < 26 * u ? best.box : null;
}
