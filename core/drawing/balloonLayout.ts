import type { Project } from '../model/project.ts';
import { arrange, type Place, type Side, type Wish } from './balloonRows.ts';
import { balloonNumber } from './balloons.ts';
import { flagSize, type Marks } from './findingMarks.ts';
import { type Box, boxAround, contains, crosses, distanceToSegment, grown, type Point, union } from './geometry.ts';
import { Occupancy } from './occupancy.ts';
import type { ProfileOptions } from './options.ts';
import type { Silhouette } from './silhouette.ts';
import { onSheet, type PlacedSymbol } from './symbols.ts';

/** A numbered balloon and the leader from it to its item. */
export interface PlacedBalloon {
  readonly itemId: string;
  readonly number: number;
  readonly side: Side;
  readonly center: Point;
  readonly radius: number;
  /** Where the leader ends on the item. */
  readonly dot: Point;
  readonly mark: string | null;
  readonly flag: Box | null;
}

/** Radius of a balloon, units of a screen pixel. */
export const BALLOON_RADIUS = 11;

/**
 * Balloons around the boat (ISO 6433: outside the outline, in rows and columns, leaders not crossing). Each item's
 * balloon goes to the side its item is nearest to; on each side balloons keep the order of their items and are spread as
 * little as needed, so that a small move of an item makes a small move of its balloon; leaders that still cross swap
 * balloons. Then each steps aside from words and symbols it would cover.
 */
export function placeBalloons(
  project: Project,
  symbols: readonly PlacedSymbol[],
  around: { readonly silhouette: Silhouette; readonly marks: Marks; readonly keepClear: readonly Box[] },
  options: ProfileOptions,
): readonly PlacedBalloon[] {
  const u = options.textSize / 11;
  const groups = new Map<Side, Wish[]>();
  for (const symbol of symbols) {
    const wish = { symbol, dot: dotOf(symbol), mark: around.marks.get(`item:${symbol.item.id}`) ?? null };
    const side = sideOf(wish, around.silhouette, u);
    const group = groups.get(side);
    if (group) group.push(wish);
    else groups.set(side, [wish]);
  }
  const rough = [...groups].flatMap(([side, wishes]) => arrange(side, wishes, around.silhouette, options));
  const untangled = uncrossed(rough);
  const taken = new Occupancy(30 * u);
  for (const box of around.keepClear) taken.addBox(box);
  for (const { box, item } of symbols) if (!item.endPosition) taken.addBox(box);
  return settled(untangled, taken, options).map((place) => balloonOf(project, place, u));
}

const dotOf = (symbol: PlacedSymbol): Point => onSheet(symbol, symbol.glyph.dot);

/** The side whose edge is nearest, below first for what is inside the hull, above last and never for a rod or wire. */
function sideOf({ dot, symbol }: Wish, silhouette: Silhouette, u: number): Side {
  const reach = 14 * u;
  const { box } = silhouette;
  const tall =
    symbol.box.bottom - symbol.box.top > 2 * (symbol.box.right - symbol.box.left) || symbol.item.endPosition !== null;
  const costs: readonly (readonly [Side, number])[] = [
    ['bottom', 0.72 * (box.bottom - dot.y) + 14 * u],
    ['right', silhouette.rightOf(dot.y - reach, dot.y + reach) - dot.x + 30 * u],
    ['left', dot.x - silhouette.leftOf(dot.y - reach, dot.y + reach) + 30 * u],
    ['top', tall ? Infinity : dot.y - silhouette.topOf(dot.x - reach, dot.x + reach) + 52 * u],
  ];
  return costs.reduce((best, next) => (next[1] < best[1] ? next : best))[0];
}

/** Most balloons whose leaders are all compared with each other; above it only neighbours are. */
const SMALL = 90;

/**
 * Swaps the balloons of leaders that cross. Each swap makes the leaders shorter in sum, so it ends; the count only guards
 * against rounding.
 */
function uncrossed(places: readonly Place[]): readonly Place[] {
  const result = [...places];
  const window = result.length <= SMALL ? result.length : 8;
  for (let round = 0; round < 12; round++) {
    let swaps = 0;
    for (let i = 0; i < result.length; i++) {
      for (let j = i + 1; j < Math.min(result.length, i + 1 + window); j++) {
        const [a, b] = [result[i], result[j]];
        if (!a || !b || !leadersCross(leaderOf(a), leaderOf(b))) continue;
        result[i] = { ...a, center: b.center, side: b.side };
        result[j] = { ...b, center: a.center, side: a.side };
        swaps++;
      }
    }
    if (swaps === 0) break;
  }
  return result;
}

/** Steps aside and outward, units of a screen pixel, nearest first; outward counts more, to keep rows and columns. */
const STEPS_ASIDE: readonly (readonly [aside: number, outward: number])[] = stepsAside();

function stepsAside(): readonly (readonly [number, number])[] {
  const steps: (readonly [number, number])[] = [];
  for (let aside = -26; aside <= 26; aside++) for (let out = -2; out <= 14; out++) steps.push([aside * 6, out * 6]);
  const far = ([aside, out]: readonly [number, number]): number =>
    Math.abs(aside) + (out < 0 ? -3 * out : 1.6 * out) + (aside < 0 ? 0.5 : 0);
  return steps.sort((a, b) => far(a) - far(b));
}

/** Above so many balloons a sheet is too full for all to stand clear; then only wide steps are tried, to save time. */
const CROWD = 150;
const WIDE_STEPS = STEPS_ASIDE.filter(([aside, out]) => aside % 24 === 0 && out % 24 === 0);

/** Places one after the other: each the nearest where it covers nothing and its leader crosses none drawn so far. */
function settled(places: readonly Place[], taken: Occupancy, options: ProfileOptions): readonly Place[] {
  const done: Place[] = [];
  const drawn: Leader[] = [];
  const steps = places.length > CROWD ? WIDE_STEPS : STEPS_ASIDE;
  for (const place of places) {
    const leaders = places.length <= SMALL ? drawn : drawn.slice(-8);
    const found = settle(place, leaders, { taken, steps }, options);
    taken.addBox(extentOf(found, options.textSize / 11));
    done.push(found);
    drawn.push(leaderOf(found));
  }
  return done;
}

function settle(
  place: Place,
  leaders: readonly Leader[],
  around: { readonly taken: Occupancy; readonly steps: typeof STEPS_ASIDE },
  options: ProfileOptions,
): Place {
  const u = options.textSize / 11;
  const sheet: Box = { left: u, top: u, right: options.width - u, bottom: options.height - u };
  const row = place.side === 'top' || place.side === 'bottom';
  const out = place.side === 'left' || place.side === 'top' ? -u : u;
  const base = grown(extentOf(place, u), u);
  let crossing: Place | null = null;
  for (const [aside, outward] of around.steps) {
    const dx = row ? aside * u : outward * out;
    const dy = row ? outward * out : aside * u;
    const box = { left: base.left + dx, right: base.right + dx, top: base.top + dy, bottom: base.bottom + dy };
    if (!contains(sheet, box) || around.taken.hits(box)) continue;
    const moved = { ...place, center: { x: place.center.x + dx, y: place.center.y + dy } };
    const leader = leaderOf(moved);
    if (!leaders.some((other) => tangled(leader, other, u))) return moved;
    crossing ??= moved;
  }
  return crossing ?? place;
}

/** Box of the balloon with its flag. */
function extentOf(place: Place, u: number): Box {
  const round = boxAround(place.center, BALLOON_RADIUS * u, BALLOON_RADIUS * u);
  const flag = flagOf(place, u);
  return flag ? union(round, flag) : round;
}

/** The flag flies on the side away from the leader. */
function flagOf({ wish, side, center }: Place, u: number): Box | null {
  if (wish.mark === null) return null;
  const { width, height } = flagSize(wish.mark, u);
  const near = 8 * u;
  switch (side) {
    case 'left':
      return {
        left: center.x - near - width,
        right: center.x - near,
        top: center.y - 15 * u,
        bottom: center.y - 15 * u + height,
      };
    case 'right':
      return {
        left: center.x + near,
        right: center.x + near + width,
        top: center.y - 15 * u,
        bottom: center.y - 15 * u + height,
      };
    case 'bottom':
      return {
        left: center.x - width / 2,
        right: center.x + width / 2,
        top: center.y + 9.5 * u,
        bottom: center.y + 9.5 * u + height,
      };
    case 'top':
      return {
        left: center.x - width / 2,
        right: center.x + width / 2,
        top: center.y - 9.5 * u - height,
        bottom: center.y - 9.5 * u,
      };
  }
}

function balloonOf(project: Project, place: Place, u: number): PlacedBalloon {
  const { wish, side, center } = place;
  return {
    itemId: wish.symbol.item.id,
    number: balloonNumber(project, wish.symbol.item.id),
    side,
    center,
    radius: BALLOON_RADIUS * u,
    dot: endOnSymbol(wish, center),
    mark: wish.mark,
    flag: flagOf(place, u),
  };
}

/** A leader as drawn: from where it meets its symbol to the middle of its balloon, with the room the two span. */
interface Leader {
  readonly start: Point;
  readonly center: Point;
  readonly span: Box;
}

function leaderOf({ wish, center }: Place): Leader {
  const start = endOnSymbol(wish, center);
  const span = {
    left: Math.min(start.x, center.x),
    right: Math.max(start.x, center.x),
    top: Math.min(start.y, center.y),
    bottom: Math.max(start.y, center.y),
  };
  return { start, center, span };
}

const leadersCross = (a: Leader, b: Leader): boolean => crosses(a.start, a.center, b.start, b.center);

/** Whether two leaders cross, or one runs under the balloon of the other. */
function tangled(a: Leader, b: Leader, u: number): boolean {
  const clear = (BALLOON_RADIUS + 1.5) * u;
  const isApart =
    a.span.right + clear < b.span.left ||
    b.span.right + clear < a.span.left ||
    a.span.bottom + clear < b.span.top ||
    b.span.bottom + clear < a.span.top;
  return (
    !isApart &&
    (leadersCross(a, b) ||
      distanceToSegment(a.center, b.start, b.center) < clear ||
      distanceToSegment(b.center, a.start, a.center) < clear)
  );
}

/** A box is met on the edge that faces the balloon; anything else at its own point. */
function endOnSymbol({ symbol, dot }: Wish, center: Point): Point {
  if (symbol.glyph.fixed) return dot;
  const body = symbol.glyph.body ?? symbol.glyph.box;
  const { x: left, y: top } = onSheet(symbol, { x: body.left, y: body.top });
  const { x: right, y: bottom } = onSheet(symbol, { x: body.right, y: body.bottom });
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const dx = center.x - middle.x;
  const dy = center.y - middle.y;
  const share = Math.min(
    dx === 0 ? Infinity : (right - left) / 2 / Math.abs(dx),
    dy === 0 ? Infinity : (bottom - top) / 2 / Math.abs(dy),
    1,
  );
  return { x: middle.x + dx * share, y: middle.y + dy * share };
}
