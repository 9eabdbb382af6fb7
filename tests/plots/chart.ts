import { scaleLinear, scaleLog } from 'd3-scale';

// Draws one chart of a method note as SVG text: the same text for the same figures, readable on white, without colour alone
// telling lines or marks apart.

export type Point = readonly [x: number, y: number];

export interface Axis {
  readonly label: string;
  /** The end at the left or at the bottom; above `to` where the axis runs the other way. */
  readonly from: number;
  readonly to: number;
  readonly isLog?: boolean;
  readonly ticks?: readonly number[];
}

export type Mark = 'circle' | 'square' | 'triangle' | 'cross';

export interface Series {
  readonly label: string;
  /** Number of its colour, from 0; a line and the points it is held against share one. */
  readonly colour: number;
  readonly points: readonly Point[];
  /** A line of a dash pattern, or marks. */
  readonly as: 'solid' | 'dashed' | 'dotted' | Mark;
}

export interface Chart {
  readonly title: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly series: readonly Series[];
  /** One or two lines below: what is held against what, and the worst error. */
  readonly caption: readonly string[];
}

const [WIDTH, HEIGHT] = [860, 470];
const [LEFT, RIGHT, TOP, BOTTOM] = [66, 610, 44, 376];
/** Colours that colour-blind readers tell apart (Okabe and Ito), dark enough for thin lines on white. */
const COLOURS = ['#0072b2', '#d55e00', '#007a5a', '#a0457e', '#6b5d00', '#444444'] as const;
/** Number of the colour that stands for no line in particular. */
const INK_COLOUR = 5;
const INK = '#222222';
const DASHES = { solid: '', dashed: '7 4', dotted: '1.5 3.5' } as const;

export function drawChart(chart: Chart): string {
  const [x, y] = [scaleOf(chart.x, LEFT, RIGHT), scaleOf(chart.y, BOTTOM, TOP)];
  const place = ([px, py]: Point): Point => [x.at(px), y.at(py)];
  const lines = chart.series.filter(({ as }) => as in DASHES);
  const marks = chart.series.filter(({ as }) => !(as in DASHES));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" font-family="Helvetica, Arial, sans-serif" font-size="13" fill="${INK}">`,
    `<title>${escaped(chart.title)}</title>`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="#ffffff"/>`,
    `<clipPath id="plot"><rect x="${LEFT}" y="${TOP}" width="${RIGHT - LEFT}" height="${BOTTOM - TOP}"/></clipPath>`,
    text(LEFT, 26, chart.title, 'font-size="16" font-weight="bold"'),
    ...x.ticks.map((tick) => gridLine(x.at(tick), TOP, x.at(tick), BOTTOM)),
    ...y.ticks.map((tick) => gridLine(LEFT, y.at(tick), RIGHT, y.at(tick))),
    `<rect x="${LEFT}" y="${TOP}" width="${RIGHT - LEFT}" height="${BOTTOM - TOP}" fill="none" stroke="${INK}"/>`,
    ...x.ticks.map((tick) => text(x.at(tick), BOTTOM + 18, tickText(tick), 'text-anchor="middle"')),
    ...y.ticks.map((tick) => text(LEFT - 8, y.at(tick) + 4.5, tickText(tick), 'text-anchor="end"')),
    text((LEFT + RIGHT) / 2, BOTTOM + 38, chart.x.label, 'text-anchor="middle"'),
    `<g transform="translate(16 ${(TOP + BOTTOM) / 2}) rotate(-90)">${text(0, 0, chart.y.label, 'text-anchor="middle"')}</g>`,
    '<g clip-path="url(#plot)">',
    ...lines.map((series) => lineShape(series, series.points.map(place))),
    '</g>',
    ...marks.flatMap((series) => series.points.filter(isInside(chart)).map((point) => markShape(series, place(point)))),
    ...legend(chart.series),
    ...chart.caption.map((line, i) => text(LEFT, BOTTOM + 64 + 18 * i, line, 'font-size="12.5"')),
    '</svg>',
    '',
  ].join('\n');
}

const within = (value: number, { from, to }: Axis): boolean =>
  value >= Math.min(from, to) && value <= Math.max(from, to);

/** Whether a mark lies in the plot; one on its edge is drawn whole. */
const isInside =
  ({ x, y }: Chart) =>
  ([px, py]: Point): boolean =>
    within(px, x) && within(py, y);

interface Scale {
  readonly at: (value: number) => number;
  readonly ticks: readonly number[];
}

function scaleOf(axis: Axis, start: number, end: number): Scale {
  const scale = (axis.isLog ? scaleLog() : scaleLinear()).domain([axis.from, axis.to]).range([start, end]);
  return { at: (value) => scale(value), ticks: axis.ticks ?? scale.ticks(6) };
}

/** One row for each line, and one for marks of one shape and name, in ink where several lines have them. */
function legend(series: readonly Series[]): string[] {
  const rows: Series[] = [];
  for (const one of series.filter(({ label }) => label !== '')) {
    const same = rows.findIndex(({ label, as }) => label === one.label && as === one.as);
    const known = rows[same];
    if (!known) rows.push(one);
    else if (known.colour !== one.colour) rows[same] = { ...known, colour: INK_COLOUR };
  }
  return rows.flatMap((one, i) => {
    const y = TOP + 12 + 22 * i;
    const sample: readonly Point[] = [
      [RIGHT + 16, y],
      [RIGHT + 46, y],
    ];
    const shape = one.as in DASHES ? lineShape(one, sample) : markShape(one, [RIGHT + 31, y]);
    return [shape, text(RIGHT + 54, y + 4.5, one.label, '')];
  });
}

function lineShape({ colour, as }: Series, points: readonly Point[]): string {
  const dash = as === 'dashed' || as === 'dotted' ? ` stroke-dasharray="${DASHES[as]}"` : '';
  const path = points.map((point, i) => `${i === 0 ? 'M' : 'L'}${pair(point)}`).join('');
  return `<path d="${path}" fill="none" stroke="${colourOf(colour)}" stroke-width="1.8"${dash}/>`;
}

function markShape({ colour, as }: Series, [x, y]: Point): string {
  const paint = `fill="#ffffff" stroke="${colourOf(colour)}" stroke-width="1.6"`;
  const size = 4;
  if (as === 'circle') return `<circle cx="${short(x)}" cy="${short(y)}" r="${size}" ${paint}/>`;
  if (as === 'square')
    return `<rect x="${short(x - size)}" y="${short(y - size)}" width="${2 * size}" height="${2 * size}" ${paint}/>`;
  if (as === 'triangle') {
    const corners: readonly Point[] = [
      [x, y - 5],
      [x + 5, y + 4],
      [x - 5, y + 4],
    ];
    return `<path d="M${corners.map(pair).join('L')}Z" ${paint}/>`;
  }
  const cross = `M${pair([x - size, y - size])}L${pair([x + size, y + size])}M${pair([x - size, y + size])}L${pair([x + size, y - size])}`;
  return `<path d="${cross}" ${paint}/>`;
}

function gridLine(x1: number, y1: number, x2: number, y2: number): string {
  return `<path d="M${pair([x1, y1])}L${pair([x2, y2])}" stroke="#dddddd"/>`;
}

function text(x: number, y: number, content: string, attributes: string): string {
  return `<text x="${short(x)}" y="${short(y)}"${attributes && ` ${attributes}`}>${escaped(content)}</text>`;
}

const colourOf = (number: number): string => COLOURS[number % COLOURS.length] ?? INK;
/** A tenth of a unit is finer than the eye, and coarser than what two machines differ by. */
const short = (value: number): string => String(Math.round(value * 10) / 10);
const pair = ([x, y]: Point): string => `${short(x)} ${short(y)}`;
const tickText = (tick: number): string => String(Number(tick.toPrecision(6))).replace('-', '−');
const escaped = (plain: string): string => plain.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
