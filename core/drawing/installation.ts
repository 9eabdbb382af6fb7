import type { Project } from '../model/project.ts';
import { distance, grown, type Point } from './geometry.ts';
import type { ProfileOptions } from './options.ts';
import { circle, line, path, rectPath, text } from './shapes.ts';
import { inkOf, type State, stateOf } from './state.ts';
import { type PlacedSymbol, placedPath, type SymbolLayout } from './symbols.ts';
import type { Shape } from './types.ts';

/** The symbols of all items that are on the sheet. */
export function drawSymbols(project: Project, layout: SymbolLayout, options: ProfileOptions): readonly Shape[] {
  const shapes: Shape[] = [];
  for (const item of project.items) {
    const symbol = layout.get(item.id);
    if (symbol && isOnSheet(symbol, options)) shapes.push(...symbolShapes(symbol, stateOf(options, 'item', item.id)));
  }
  return shapes;
}

export function isOnSheet({ box }: PlacedSymbol, { width, height }: ProfileOptions): boolean {
  return box.right > 0 && box.left < width && box.bottom > 0 && box.top < height;
}

function symbolShapes(symbol: PlacedSymbol, state: State): readonly Shape[] {
  const { item, glyph, at, u } = symbol;
  const subject = { kind: 'item', id: item.id } as const;
  const { opacity } = state;
  const ink = inkOf(state, 'ink');
  const strokes = glyph.strokes.map(({ d, width, fill, dash }) =>
    path(placedPath(d, at, u), {
      layer: 'installation',
      stroke: ink,
      fill: fill === 'ink' ? ink : fill,
      width: width * u,
      dash: dash?.map((length) => length * u),
      opacity,
      subject,
    }),
  );
  const words = glyph.words.map((word) =>
    text(
      word.text,
      { x: at.x + word.x * u, y: at.y + word.y * u },
      {
        layer: 'installation',
        size: word.size * u,
        ink,
        anchor: word.x === 0 ? 'middle' : 'start',
        bold: true,
        opacity,
        subject,
      },
    ),
  );
  return [...tie(symbol, opacity), ...strokes, ...words, ...marks(symbol, state)];
}

/** From where the item really is to a symbol that had to stand aside. */
function tie({ spot, at, u, item }: PlacedSymbol, opacity: number | undefined): readonly Shape[] {
  if (distance(spot, at) < 2 * u) return [];
  const style = {
    layer: 'installation',
    stroke: 'ink',
    width: 0.6 * u,
    opacity,
    subject: { kind: 'item', id: item.id },
  } as const;
  return [line(spot, at, style), circle(spot, 1.2 * u, { ...style, fill: 'ink' })];
}

/** The frame of a chosen item, the cross over a lost one. */
function marks(symbol: PlacedSymbol, state: State): readonly Shape[] {
  const { box, u, item } = symbol;
  const shapes: Shape[] = [];
  if (state.selected && !item.endPosition) {
    const { left, top, right, bottom } = grown(box, 4 * u);
    shapes.push(
      path(rectPath(left, top, right, bottom, 2 * u), {
        layer: 'installation',
        stroke: 'run-selected',
        width: 1.1 * u,
        dash: [3 * u, 2 * u],
      }),
    );
  }
  if (state.fate === 'lost') shapes.push(cross(crossPoint(symbol), 7 * u, u));
  return shapes;
}

const crossPoint = ({ glyph, at, u, box }: PlacedSymbol): Point =>
  glyph.fixed
    ? { x: at.x + glyph.dot.x * u, y: at.y + glyph.dot.y * u }
    : { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };

/** The sign for taken away. */
export function cross(at: Point, reach: number, u: number): Shape {
  const { x, y } = at;
  const d = `M${x - reach} ${y - reach} L${x + reach} ${y + reach} M${x + reach} ${y - reach} L${x - reach} ${y + reach}`;
  return path(placedPath(d, { x: 0, y: 0 }, 1), { layer: 'installation', stroke: 'lost', width: 1.4 * u });
}
