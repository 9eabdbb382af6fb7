import type { Project } from '../model/project.ts';
import { M_PER_FT } from '../units/constants.ts';
import { formatNumber } from '../units/format.ts';
import type { Box } from './geometry.ts';
import type { ProfileOptions } from './options.ts';
import { bareExtent, type Extent, toDrawing } from './projection.ts';
import { line, path, polyline, rectPath, text } from './shapes.ts';
import { textWidth } from './textWidth.ts';
import type { Shape } from './types.ts';

/** Station grid, height marks, waterline and scale bar; and the boxes of their words, which labels keep clear of. */
export interface Grid {
  readonly shapes: readonly Shape[];
  readonly boxes: readonly Box[];
}

interface Ruler {
  readonly unitM: number;
  readonly symbol: string;
  readonly u: number;
  readonly size: number;
  readonly extent: Extent;
  readonly options: ProfileOptions;
}

/** The grid in the reader's unit of length, stations numbered aft from the stem. Numbers stay in sight when zoomed in. */
export function drawGrid(project: Project, options: ProfileOptions): Grid {
  const feet = options.preferences.length === 'ft';
  const ruler: Ruler = {
    unitM: feet ? M_PER_FT : 1,
    symbol: feet ? 'ft' : 'm',
    u: options.textSize / 11,
    size: (options.textSize / 11) * 9.5,
    extent: bareExtent(project.boat),
    options,
  };
  const parts = [stations(ruler), heights(ruler), waterline(ruler), scaleBar(ruler)];
  return { shapes: parts.flatMap((part) => part.shapes), boxes: parts.flatMap((part) => part.boxes) };
}

/** Parts of a unit are only ruled when they are this far apart. */
const PARTS_U = 110;
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200] as const;

/** Smallest round step, in the ruler's unit, that is at least so many drawing units apart. */
function stepOf(ruler: Ruler, leastU: number): number {
  const perUnit = ruler.unitM * ruler.options.projection.scale;
  return STEPS.find((step) => step * perUnit >= (step < 1 ? PARTS_U : leastU) * ruler.u) ?? 500;
}

/** A number of the ruler: decimals only where they say something. */
function ruledNumber(value: number, options: ProfileOptions): string {
  return formatNumber(value, Math.abs(value - Math.round(value)) < 1e-6 ? 0 : 1, options.preferences);
}

/** Where the grid stands on the sheet: round the boat, and never off the sheet. */
function frameOf({ extent, options, u }: Ruler): Box {
  const fore = toDrawing(options.projection, { xM: extent.xForeM, zM: extent.zLowM });
  const aft = toDrawing(options.projection, { xM: extent.xAftM, zM: extent.zHighM });
  return {
    left: Math.max(30 * u, aft.x - 44 * u),
    right: Math.min(options.width - 12 * u, fore.x + 44 * u),
    top: Math.max(8 * u, aft.y - 18 * u),
    // Above the scale bar.
    bottom: Math.min(options.height - 46 * u, fore.y + 62 * u),
  };
}

function stations(ruler: Ruler): Grid {
  const { unitM, u, size, options } = ruler;
  const frame = frameOf(ruler);
  const step = stepOf(ruler, 30);
  const shapes: Shape[] = [];
  const boxes: Box[] = [];
  const lastM = ruler.extent.xAftM;
  for (let index = 0; index * step * unitM <= lastM + 1e-9; index++) {
    const { x } = toDrawing(options.projection, { xM: index * step * unitM, zM: 0 });
    if (x < frame.left || x > frame.right) continue;
    const number = ruledNumber(index * step, options);
    shapes.push(
      line({ x, y: frame.top }, { x, y: frame.bottom }, { layer: 'backdrop', stroke: 'grid', width: 0.8 * u }),
      text(
        number,
        { x, y: frame.bottom + size * 1.15 },
        { layer: 'backdrop', size, ink: 'grid-text', anchor: 'middle' },
      ),
    );
    boxes.push(textBox(number, x, frame.bottom + size * 1.15, size, 'middle'));
  }
  return { shapes, boxes };
}

function heights(ruler: Ruler): Grid {
  const { unitM, u, size, options, extent, symbol } = ruler;
  const frame = frameOf(ruler);
  const step = stepOf(ruler, 40);
  const shapes: Shape[] = [];
  const boxes: Box[] = [];
  const first = Math.ceil(extent.zLowM / unitM / step);
  for (let index = first; index * step * unitM <= extent.zHighM + 0.5 * step * unitM; index++) {
    const { y } = toDrawing(options.projection, { xM: 0, zM: index * step * unitM });
    if (index === 0 || y < frame.top || y > frame.bottom) continue;
    const sign = index > 0 ? '+' : '';
    const mark = `${sign}${ruledNumber(index * step, options)} ${symbol}`;
    shapes.push(
      line(
        { x: frame.left, y },
        { x: frame.right, y },
        { layer: 'backdrop', stroke: 'grid', width: 0.8 * u, dash: [2 * u, 4 * u] },
      ),
      text(
        mark,
        { x: frame.left - 4 * u, y: y + size * 0.34 },
        { layer: 'backdrop', size, ink: 'grid-text', anchor: 'end' },
      ),
    );
    boxes.push(textBox(mark, frame.left - 4 * u, y + size * 0.34, size, 'end'));
  }
  return { shapes, boxes };
}

/** The designed waterline with the drawing-office mark for a water level. */
function waterline(ruler: Ruler): Grid {
  const { u, size, options } = ruler;
  const frame = frameOf(ruler);
  const { y } = toDrawing(options.projection, { xM: 0, zM: 0 });
  if (y < 0 || y > options.height) return { shapes: [], boxes: [] };
  const right = Math.min(options.width - 34 * u, frame.right + 8 * u);
  const left = frame.left - 8 * u;
  const style = { layer: 'backdrop', stroke: 'water', width: 1 * u } as const;
  const mark = right - 12 * u;
  const triangle = [
    { x: mark - 5 * u, y: y - 8 * u },
    { x: mark + 5 * u, y: y - 8 * u },
    { x: mark, y: y - 0.6 * u },
  ];
  const ripple = (share: number) =>
    line(
      { x: mark - (7 - share * 2.4) * u, y: y + (2 + share * 2.6) * u },
      { x: mark + (7 - share * 2.4) * u, y: y + (2 + share * 2.6) * u },
      { ...style, width: 0.7 * u },
    );
  return {
    shapes: [
      line({ x: left, y }, { x: right, y }, style),
      polyline(triangle, { ...style, width: 0.8 * u }, true),
      ripple(1),
      ripple(2),
      text('DWL', { x: right + 4 * u, y: y + size * 0.36 }, { layer: 'backdrop', size, ink: 'water' }),
    ],
    boxes: [
      textBox('DWL', right + 4 * u, y + size * 0.36, size, 'start'),
      { left: mark - 7 * u, right: mark + 7 * u, top: y - 9 * u, bottom: y + 8 * u },
    ],
  };
}

/** Where the scale bar ends, drawing units from the left: the key of lines follows it. */
export function scaleBarEnd(options: ProfileOptions): number {
  const u = options.textSize / 11;
  const unitM = options.preferences.length === 'ft' ? M_PER_FT : 1;
  return 22 * u + 5 * scaleField(unitM, options) * unitM * options.projection.scale + 26 * u;
}

/** Length of one field of the scale bar in the reader's unit: the bar as long as it can be and not too long. */
function scaleField(unitM: number, options: ProfileOptions): number {
  const most = (230 * options.textSize) / 11;
  const fits = (step: number): boolean => step * unitM * options.projection.scale * 5 <= most;
  return [...STEPS].reverse().find(fits) ?? STEPS[0];
}

/** Five alternate fields at the foot of the sheet. */
function scaleBar(ruler: Ruler): Grid {
  const { unitM, u, size, options, symbol } = ruler;
  const step = scaleField(unitM, options);
  const field = step * unitM * options.projection.scale;
  const left = 22 * u;
  const top = options.height - 16 * u;
  const bottom = top + 5 * u;
  const shapes: Shape[] = [];
  for (let index = 0; index <= 5; index++) {
    const x = left + index * field;
    const number = ruledNumber(index * step, options);
    if (index < 5) {
      shapes.push(
        path(rectPath(x, top, x + field, bottom), {
          layer: 'backdrop',
          stroke: 'boat',
          fill: index % 2 === 0 ? 'boat' : 'paper',
          width: 0.7 * u,
        }),
      );
    }
    shapes.push(text(number, { x, y: top - 3 * u }, { layer: 'backdrop', size, ink: 'grid-text', anchor: 'middle' }));
  }
  const end = left + 5 * field;
  shapes.push(text(symbol, { x: end + 8 * u, y: bottom }, { layer: 'backdrop', size, ink: 'grid-text' }));
  const box = { left: left - 8 * u, right: end + 24 * u, top: top - 14 * u, bottom: bottom + 2 * u };
  return { shapes, boxes: [box] };
}

/** The box a line of text fills. */
export function textBox(
  content: string,
  x: number,
  baseline: number,
  size: number,
  anchor: 'start' | 'middle' | 'end',
  bold = false,
): Box {
  const width = textWidth(content, size, bold);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, right: left + width, top: baseline - size * 0.78, bottom: baseline + size * 0.24 };
}
