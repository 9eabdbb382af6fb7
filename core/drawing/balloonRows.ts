import { flagSize } from './findingMarks.ts';
import { clamp, type Point } from './geometry.ts';
import type { ProfileOptions } from './options.ts';
import type { Silhouette } from './silhouette.ts';
import { spread } from './spread.ts';
import type { PlacedSymbol } from './symbols.ts';

export type Side = 'left' | 'right' | 'top' | 'bottom';

/** An item that wants a balloon. */
export interface Wish {
  readonly symbol: PlacedSymbol;
  readonly dot: Point;
  readonly mark: string | null;
}

/** A balloon's place before it is numbered. */
export interface Place {
  readonly wish: Wish;
  readonly side: Side;
  readonly center: Point;
}

/** Least distance between the middles of two balloons, units of a screen pixel. */
const PITCH = 25;

/** First places for the balloons of one side, in the order of their items. */
export function arrange(
  side: Side,
  wishes: readonly Wish[],
  silhouette: Silhouette,
  options: ProfileOptions,
): readonly Place[] {
  return side === 'top' || side === 'bottom'
    ? arrangeRow(side, wishes, silhouette, options)
    : arrangeColumn(side, wishes, silhouette, options);
}

/** A row under (or over) the boat; several when one is too short for all. */
function arrangeRow(
  side: 'top' | 'bottom',
  wishes: readonly Wish[],
  silhouette: Silhouette,
  options: ProfileOptions,
): readonly Place[] {
  const u = options.textSize / 11;
  const sorted = [...wishes].sort((a, b) => a.dot.x - b.dot.x || a.dot.y - b.dot.y || order(a, b));
  const low = 18 * u;
  const high = options.width - 18 * u;
  const rows = Math.max(1, Math.ceil((sorted.length * PITCH * u) / (high - low)));
  const gaps = sorted.map((wish, index) => rowGap(wish, sorted[index + 1], u) / rows);
  const xs = spread(
    sorted.map(({ dot }) => dot.x),
    gaps,
    low,
    high,
  );
  const places = sorted.map((wish, index) => {
    const x = xs[index] ?? wish.dot.x;
    const rowOut = (index % rows) * PITCH * u;
    return {
      wish,
      side,
      center: { x, y: rowY(side, x, wish, silhouette, options) + (side === 'bottom' ? rowOut : -rowOut) },
    };
  });
  return side === 'top' ? level(places, u) : places;
}

function rowY(side: 'top' | 'bottom', x: number, wish: Wish, silhouette: Silhouette, options: ProfileOptions): number {
  const u = options.textSize / 11;
  if (side === 'bottom') return Math.min(silhouette.box.bottom + 26 * u, options.height - 74 * u);
  const reach = 16 * u;
  return Math.max(Math.min(silhouette.topOf(x - reach, x + reach), wish.dot.y - 24 * u) - 26 * u, 32 * u);
}

/** Neighbours over the deck are brought to one height. */
function level(places: readonly Place[], u: number): readonly Place[] {
  const result = [...places];
  for (let start = 0; start < result.length; ) {
    let end = start + 1;
    let y = result[start]?.center.y ?? 0;
    for (; end < result.length; end++) {
      const [last, next] = [result[end - 1], result[end]];
      if (!last || !next || next.center.x - last.center.x > 46 * u || Math.abs(next.center.y - y) > 70 * u) break;
      y = Math.min(y, next.center.y);
    }
    for (let index = start; index < end; index++) {
      const place = result[index];
      if (place) result[index] = { ...place, center: { x: place.center.x, y } };
    }
    start = end;
  }
  return result;
}

/** Wide enough for the flags that hang under (or stand over) the balloons. */
function rowGap(wish: Wish, next: Wish | undefined, u: number): number {
  const half = ({ mark }: Wish): number =>
    Math.max((PITCH * u) / 2, mark === null ? 0 : flagSize(mark, u).width / 2 + 2 * u);
  return next ? half(wish) + half(next) : 0;
}

/** A column beside the boat that follows its outline. */
function arrangeColumn(
  side: 'left' | 'right',
  wishes: readonly Wish[],
  silhouette: Silhouette,
  options: ProfileOptions,
): readonly Place[] {
  const u = options.textSize / 11;
  const sorted = [...wishes].sort((a, b) => a.dot.y - b.dot.y || a.dot.x - b.dot.x || order(a, b));
  const ys = spread(
    sorted.map(({ dot }) => dot.y - 10 * u),
    sorted.map(() => PITCH * u),
    26 * u,
    options.height - 58 * u,
  );
  return sorted.map((wish, index) => {
    const y = ys[index] ?? wish.dot.y;
    const reach = 20 * u;
    const [top, bottom] = [Math.min(y, wish.dot.y) - reach, Math.max(y, wish.dot.y) + reach];
    const room = 36 * u;
    const edge = side === 'left' ? silhouette.leftOf(top, bottom) - room : silhouette.rightOf(top, bottom) + room;
    // Zoomed in, the edge may be far off: a leader is never longer than it helps.
    const longest = 260 * u;
    const x = clamp(clamp(edge, wish.dot.x - longest, wish.dot.x + longest), 34 * u, options.width - 34 * u);
    return { wish, side, center: { x, y } };
  });
}

const order = (a: Wish, b: Wish): number => (a.symbol.item.id < b.symbol.item.id ? -1 : 1);
