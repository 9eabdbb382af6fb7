import { flagSize } from './findingMarks.ts';
import { along, type Box, clamp, distance, type Point, round2 } from './geometry.ts';
import type { Occupancy } from './occupancy.ts';
import type { ProfileOptions } from './options.ts';
import type { RunWords } from './runLabels.ts';
import type { RunLine } from './runLines.ts';
import { textWidth } from './textWidth.ts';

/** A run's words where they stand. */
export interface PlacedLabel {
  readonly runId: string;
  readonly lines: readonly string[];
  /** Box of words and flag. */
  readonly box: Box;
  /** Box of the words alone. */
  readonly words: Box;
  /** Edge that the words are set against, the one nearest the line. */
  readonly anchor: 'start' | 'middle' | 'end';
  readonly size: number;
  /** Point of the run that a hairline leads to, when the words do not stand at their line. */
  readonly tiedTo: Point | null;
  readonly mark: string | null;
}

interface Block {
  readonly lines: readonly string[];
  readonly size: number;
  readonly width: number;
  readonly height: number;
}

export const LINE_PITCH = 1.16;

/**
 * A place for every run's words: beside the longest stretch of its line that is in sight, clear of balloons, symbols and
 * other words, and off stays and leaders where it can be. When the full words find no room the short ones are tried,
 * then the bare number, then the number at the end of a hairline.
 */
export function placeLabels(
  lines: readonly RunLine[],
  words: ReadonlyMap<string, RunWords>,
  marks: ReadonlyMap<string, string>,
  taken: Occupancy,
  options: ProfileOptions,
): readonly PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const { run, points } of lines) {
    const text = words.get(run.id);
    if (!text) continue;
    const label = placeOne(run.id, points, text, marks.get(`run:${run.id}`) ?? null, taken, options);
    if (!label) continue;
    taken.addBox(label.box);
    placed.push(label);
  }
  return placed;
}

function placeOne(
  runId: string,
  points: readonly Point[],
  text: RunWords,
  mark: string | null,
  taken: Occupancy,
  options: ProfileOptions,
): PlacedLabel | null {
  const u = options.textSize / 11;
  const stretches = stretchesOf(points, options);
  if (stretches.length === 0) return null;
  const blocks = [block(text.lines, 10.5 * u), block([text.short], 9.5 * u), block([text.bare], 9.5 * u)];
  for (const [rank, candidate] of blocks.entries()) {
    const found = besideLine(runId, stretches, candidate, rank, mark, taken, u, options);
    if (found) return found;
  }
  const bare = blocks[1];
  return bare ? onHairline(runId, stretches, bare, mark, taken, options) : null;
}

function block(lines: readonly string[], size: number): Block {
  const width = Math.max(...lines.map((line, index) => textWidth(line, index === 0 ? size : size * 0.95, index === 0)));
  return { lines, size, width, height: size * (0.98 + LINE_PITCH * (lines.length - 1)) };
}

interface Stretch {
  /** Number of the stretch in its run, for the line it may cover: its own. */
  readonly index: number;
  readonly a: Point;
  readonly b: Point;
  readonly length: number;
}

/** Owner of one stretch of a run among the lines labels keep off. */
export const stretchOwner = (runId: string, index: number): string => `${runId} ${index}`;

/** The parts of the line on the sheet, longest first. */
function stretchesOf(points: readonly Point[], { width, height }: ProfileOptions): readonly Stretch[] {
  const stretches: Stretch[] = [];
  points.forEach((b, index) => {
    const a = points[index - 1];
    if (!a) return;
    const seen = clipped(a, b, width, height);
    if (seen && distance(...seen) > 1) stretches.push({ index, a: seen[0], b: seen[1], length: distance(...seen) });
  });
  // Whole units, so that a hair's difference does not send a label to the other end of the boat.
  return stretches.sort((p, q) => Math.round(q.length / 8) - Math.round(p.length / 8)).slice(0, 5);
}

function clipped(a: Point, b: Point, width: number, height: number): readonly [Point, Point] | null {
  let from = 0;
  let to = 1;
  for (const [start, delta, limit] of [
    [a.x, b.x - a.x, width],
    [a.y, b.y - a.y, height],
  ] as const) {
    if (delta === 0) {
      if (start < 0 || start > limit) return null;
      continue;
    }
    const [near, far] = [-start / delta, (limit - start) / delta].sort((p, q) => p - q) as [number, number];
    from = Math.max(from, near);
    to = Math.min(to, far);
  }
  return to > from ? [along(a, b, from), along(a, b, to)] : null;
}

const SHARES = [0.5, 0.38, 0.62, 0.27, 0.73, 0.16, 0.84] as const;
/** What a place may cost in lines covered before the next shorter words are tried; the bare number takes any. */
const MOST_COST = [60, 34, 60] as const;

function besideLine(
  runId: string,
  stretches: readonly Stretch[],
  candidate: Block,
  rank: number,
  mark: string | null,
  taken: Occupancy,
  u: number,
  options: ProfileOptions,
): PlacedLabel | null {
  let best: { label: PlacedLabel; cost: number } | null = null;
  for (const [index, stretch] of stretches.entries()) {
    for (const share of SHARES) {
      for (const label of aroundPoint(runId, along(stretch.a, stretch.b, share), stretch, candidate, mark, u)) {
        if (taken.hits(label.box) || !onPaper(label.box, options)) continue;
        const cost =
          taken.lineCost(label.box, stretchOwner(runId, stretch.index)) / u +
          24 * Math.abs(share - 0.5) +
          10 * index +
          (stretch.length < candidate.width * 0.4 ? 14 : 0);
        if (!best || cost < best.cost) best = { label, cost };
      }
    }
  }
  return best && best.cost <= (MOST_COST[rank] ?? 60) ? best.label : null;
}

function onPaper({ left, top, right, bottom }: Box, { width, height }: ProfileOptions): boolean {
  return left > 2 && top > 2 && right < width - 2 && bottom < height - 2;
}

/** To the right and left of an upright line, over and under a level one. */
function aroundPoint(
  runId: string,
  point: Point,
  { a, b }: Stretch,
  { lines, size, width, height }: Block,
  mark: string | null,
  u: number,
): readonly PlacedLabel[] {
  const flag = mark === null ? 0 : flagSize(mark, u).width + 3 * u;
  const upright = Math.abs(b.y - a.y) > 0.8 * Math.abs(b.x - a.x);
  const make = (left: number, top: number, anchor: PlacedLabel['anchor']): PlacedLabel => {
    const words = { left: anchor === 'end' ? left + flag : left, top, right: 0, bottom: top + height };
    const placedWords = { ...words, right: words.left + width };
    return {
      runId,
      lines,
      size,
      anchor,
      mark,
      tiedTo: null,
      words: placedWords,
      box: { left, top: mark === null ? top : top - 1.5 * u, right: left + width + flag, bottom: top + height },
    };
  };
  const slant = upright ? Math.min(12 * u, (Math.abs(b.x - a.x) / Math.max(1, Math.abs(b.y - a.y))) * (height / 2)) : 0;
  const gap = 7 * u + slant;
  if (upright) {
    return [
      make(point.x + gap, point.y - height / 2, 'start'),
      make(point.x - gap - width - flag, point.y - height / 2, 'end'),
    ];
  }
  const rise = Math.min(10 * u, (Math.abs(b.y - a.y) / Math.max(1, Math.abs(b.x - a.x))) * (width / 2));
  const left = point.x - (width + flag) / 2;
  return [make(left, point.y - 4 * u - rise - height, 'middle'), make(left, point.y + 4 * u + rise, 'middle')];
}

/** Anywhere near, tied to the line by a hairline: rings of places around the middle of the longest stretch. */
function onHairline(
  runId: string,
  stretches: readonly Stretch[],
  candidate: Block,
  mark: string | null,
  taken: Occupancy,
  options: ProfileOptions,
): PlacedLabel | null {
  const u = options.textSize / 11;
  const [stretch] = stretches;
  if (!stretch) return null;
  const middle = along(stretch.a, stretch.b, 0.5);
  for (let ring = 2; ring <= 12; ring++) {
    for (let step = 0; step < 16; step++) {
      const turn = (Math.PI * step) / 8;
      const spot = { x: middle.x + Math.cos(turn) * ring * 15 * u, y: middle.y + Math.sin(turn) * ring * 11 * u };
      const [label] = aroundPoint(
        runId,
        spot,
        { index: 0, a: spot, b: { x: spot.x + 1, y: spot.y }, length: 1 },
        candidate,
        mark,
        u,
      );
      if (!label || taken.hits(label.box) || !onPaper(label.box, options)) continue;
      return { ...label, tiedTo: { x: round2(middle.x), y: round2(middle.y) } };
    }
  }
  return null;
}

/** Where a hairline meets a box of words: the nearest point of its outline. */
export function nearestOn({ left, top, right, bottom }: Box, point: Point): Point {
  return { x: clamp(point.x, left, right), y: clamp(point.y, top, bottom) };
}
