import type { HfBand, HfDay, HfHour } from '../../../core/reach/types.ts';
import { tagWidth } from '../range/marks.ts';

/** Least room for the names of the bands on the left, px, and for the strip of the sun above. */
const LEFT_LEAST_PX = 46;
export const NAME_GAP_PX = 6;
const GRID_RIGHT = 4;
export const SUN_TOP = 18;
const SUN_HEIGHT = 8;
const PLOT_TOP = SUN_TOP + SUN_HEIGHT + 6;
/** Height of a cell that can be told apart, px, and the most a band's cell may take. */
const CELL_PX = 12;
const CELL_MAX_PX = 16;
const CELL_GAP_PX = 2;
const [PLOT_LEAST_PX, PLOT_MOST_PX] = [150, 330];
/** Highest frequency the axis follows a line to, MHz; above it the line leaves the picture. */
const AXIS_MOST_MHZ = 40;

/** One hour of one band, px. */
export interface GridCell {
  readonly cell: HfHour;
  readonly x: number;
  readonly y: number;
}

export interface GridRow {
  readonly band: HfBand;
  /** Middle of the row, px. */
  readonly y: number;
  readonly cells: readonly GridCell[];
}

/** Everything the band-by-hour view draws, px. Hours across, frequencies up on a logarithmic axis. */
export interface GridLayout {
  readonly rows: readonly GridRow[];
  readonly columnPx: number;
  readonly cellPx: number;
  readonly x: (hour: number) => number;
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly muf: string;
  readonly working: string;
  /** Hours of dark on the strip above, from and to, px. */
  readonly nights: readonly { readonly from: number; readonly to: number }[];
  readonly suns: readonly SunMark[];
  readonly height: number;
}

/** Where the sun rises or sets. */
export interface SunMark {
  readonly kind: 'sunrise' | 'sunset';
  /** Local solar time, 0 to below 24. */
  readonly hour: number;
  readonly x: number;
}

/** The sun is up when its upper rim shows: zenith angle of its centre, degrees, refraction in it. */
const RISE_ZENITH_DEG = 90.83;

/** Bands with anything to say over the hours, highest first; a band far below HF has no hop to show. */
export function shownBands(day: HfDay, bands: readonly HfBand[]): readonly HfBand[] {
  const known = new Set(day.cells.map(({ bandId }) => bandId));
  return bands.filter(({ id }) => known.has(id)).toSorted((a, b) => b.frequencyMhz - a.frequencyMhz);
}

/** @param width room for the whole view, px */
export function gridLayout(day: HfDay, bands: readonly HfBand[], width: number): GridLayout {
  const shown = shownBands(day, bands);
  const axis = frequencyAxis(day, shown);
  const names = shown.map(({ name }) => tagWidth(name) + NAME_GAP_PX);
  const [left, right, top, bottom] = [
    Math.max(LEFT_LEAST_PX, ...names),
    width - GRID_RIGHT,
    PLOT_TOP,
    PLOT_TOP + axis.heightPx,
  ];
  const columnPx = (right - left) / 24;
  const x = (hour: number): number => left + (hour + 0.5) * columnPx;
  const y = (mhz: number): number => bottom - axis.share(mhz) * axis.heightPx;
  const rows = shown.map((band): GridRow => {
    const rowY = y(band.frequencyMhz);
    const own = day.cells.filter(({ bandId }) => bandId === band.id);
    return { band, y: rowY, cells: own.map((cell) => ({ cell, x: x(cell.hour), y: rowY })) };
  });
  const line = (key: 'mufMhz' | 'workingMhz'): string =>
    `M${day.hours.map((each) => `${x(each.hour).toFixed(1)} ${y(each[key]).toFixed(1)}`).join('L')}`;
  const suns = sunMarks(day).map((mark) => ({ ...mark, x: x(mark.hour > 23.5 ? mark.hour - 24 : mark.hour) }));
  return {
    rows,
    columnPx,
    cellPx: axis.cellPx,
    x,
    plot: { left, right, top, bottom },
    muf: line('mufMhz'),
    working: line('workingMhz'),
    nights: nights(day, suns, left, right),
    suns,
    height: bottom + 34,
  };
}

/** Logarithmic, so that neighbouring bands keep apart; tall enough that each has a cell of its own. */
function frequencyAxis(day: HfDay, shown: readonly HfBand[]) {
  const carriers = shown.map(({ frequencyMhz }) => frequencyMhz);
  const [lowest, highest] = [Math.min(...carriers), Math.max(...carriers)];
  const lineTop = Math.min(AXIS_MOST_MHZ, Math.max(...day.hours.map(({ mufMhz }) => mufMhz)));
  const low = Math.log(lowest * 0.85);
  const high = Math.log(Math.max(highest * 1.12, lineTop * 1.05));
  const nearest = Math.min(
    ...carriers
      .slice(1)
      .map((mhz, index) => Math.log((carriers[index] ?? mhz) / mhz))
      .filter((gap) => gap > 0),
  );
  const wanted = Number.isFinite(nearest) ? ((CELL_PX + CELL_GAP_PX) * (high - low)) / nearest : PLOT_LEAST_PX;
  const heightPx = Math.min(PLOT_MOST_PX, Math.max(PLOT_LEAST_PX, wanted));
  const gapPx = Number.isFinite(nearest) ? (nearest / (high - low)) * heightPx : CELL_MAX_PX + CELL_GAP_PX;
  return {
    heightPx,
    cellPx: Math.min(CELL_MAX_PX, gapPx - CELL_GAP_PX),
    share: (mhz: number): number => (Math.log(mhz) - low) / (high - low),
  };
}

/** Sunrise and sunset between the hours the day is given at, by straight interpolation of the sun's height. */
export function sunMarks(day: HfDay): readonly Omit<SunMark, 'x'>[] {
  return day.hours.flatMap(({ hour, sunZenithDeg: from }, index) => {
    const to = (day.hours[index + 1] ?? day.hours[0])?.sunZenithDeg ?? from;
    if (from > RISE_ZENITH_DEG === to > RISE_ZENITH_DEG) return [];
    const at = (hour + (from - RISE_ZENITH_DEG) / (from - to)) % 24;
    return [{ kind: from > to ? ('sunrise' as const) : ('sunset' as const), hour: at }];
  });
}

function nights(day: HfDay, suns: readonly SunMark[], left: number, right: number): GridLayout['nights'] {
  const marks = suns.toSorted((a, b) => a.x - b.x);
  const [first] = marks;
  if (first === undefined) {
    const isDark = (day.hours[0]?.sunZenithDeg ?? 0) > RISE_ZENITH_DEG;
    return isDark ? [{ from: left, to: right }] : [];
  }
  const dark: { from: number; to: number }[] = [];
  let from: number | null = first.kind === 'sunrise' ? left : null;
  for (const mark of marks) {
    if (mark.kind === 'sunset') from = mark.x;
    else if (from !== null) {
      dark.push({ from, to: mark.x });
      from = null;
    }
  }
  return from === null ? dark : [...dark, { from, to: right }];
}

/** Where the focus goes from one cell by an arrow key, or null when the key moves nothing. Rows are highest band first. */
export function moved(
  at: { readonly row: number; readonly hour: number },
  key: string,
  rowCount: number,
): { readonly row: number; readonly hour: number } | null {
  const { row, hour } = at;
  switch (key) {
    case 'ArrowLeft':
      return { row, hour: (hour + 23) % 24 };
    case 'ArrowRight':
      return { row, hour: (hour + 1) % 24 };
    case 'ArrowUp':
      return { row: Math.max(0, row - 1), hour };
    case 'ArrowDown':
      return { row: Math.min(rowCount - 1, row + 1), hour };
    case 'Home':
      return { row, hour: 0 };
    case 'End':
      return { row, hour: 23 };
    default:
      return null;
  }
}
