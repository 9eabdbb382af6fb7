import type { Drawing, Shape } from '../drawing/types.ts';
import type { DistanceBand, RangeResult } from '../reach/types.ts';
import { KM_PER_NM } from '../units/constants.ts';
import { formatNumber } from '../units/format.ts';
import { distanceUnit, type SheetContext } from './context.ts';

const WIDTH_MM = 178;
const ROW_MM = 7;
const LEFT_MM = 46;
const RIGHT_MM = 6;
const HEAD_MM = 6;
const TEXT_MM = 2.6;

interface Bar {
  readonly label: string;
  readonly result: RangeResult;
}

/**
 * Ranges of one radio on one scale: dependable as a solid band, typical as an open band, the horizon as a tick. Bands
 * run from the low to the high end of the tolerance, the heavy tick is the nominal value.
 */
export function rangeChart(context: SheetContext, bars: readonly Bar[]): Drawing {
  const perUnit = context.preferences.distance === 'nm' ? KM_PER_NM : 1;
  const most = Math.max(...bars.map(({ result }) => Math.max(result.horizonKm, result.typical.highKm)), 1) / perUnit;
  const step = tickStep(most);
  const end = Math.ceil(most / step) * step;
  const xOf = (km: number): number => LEFT_MM + ((WIDTH_MM - LEFT_MM - RIGHT_MM) * km) / perUnit / end;
  const height = HEAD_MM + bars.length * ROW_MM + 5;
  const shapes: Shape[] = [];
  for (let value = 0; value <= end + step / 2; value += step) {
    const x = xOf(value * perUnit);
    shapes.push(line(`M${x} ${HEAD_MM - 1} L${x} ${height - 5}`, 'grid', 0.15));
    const unit = value + step > end + step / 2 ? ` ${distanceUnit(context)}` : '';
    shapes.push(text(x, HEAD_MM - 2, `${formatNumber(value, 0, context.preferences)}${unit}`, 'middle'));
  }
  bars.forEach((bar, index) => {
    shapes.push(...barShapes(bar, HEAD_MM + index * ROW_MM, xOf));
  });
  shapes.push(
    text(
      LEFT_MM,
      height - 1,
      'Solid band: dependable.  Open band: typical.  Short tick: nominal.  Dashed tick: horizon.',
      'start',
    ),
  );
  return { width: WIDTH_MM, height, projection: { originX: 0, originY: 0, scale: 1 }, shapes };
}

function barShapes(bar: Bar, top: number, xOf: (km: number) => number): Shape[] {
  const { typical, dependable, horizonKm } = bar.result;
  const horizon = xOf(horizonKm);
  return [
    text(LEFT_MM - 2, top + 4, bar.label, 'end'),
    line(`M${LEFT_MM} ${top + ROW_MM - 0.4} L${WIDTH_MM - RIGHT_MM} ${top + ROW_MM - 0.4}`, 'grid', 0.1),
    band(dependable, top + 0.8, xOf, 'ink'),
    upright(xOf(dependable.nominalKm), top + 0.4, top + 3.5, 'paper', 0.5),
    band(typical, top + 3.5, xOf, 'paper'),
    upright(xOf(typical.nominalKm), top + 3.5, top + 5.8, 'ink', 0.5),
    { ...upright(horizon, top + 0.2, top + 6.4, 'ink', 0.35), dash: [0.9, 0.6] },
  ];
}

/** From the low to the high end, and never too narrow to be seen. */
function band(range: DistanceBand, top: number, xOf: (km: number) => number, fill: 'ink' | 'paper'): Shape {
  const left = xOf(range.lowKm);
  const right = Math.max(xOf(range.highKm), left + 0.4);
  const d = `M${left} ${top} L${right} ${top} L${right} ${top + 2.3} L${left} ${top + 2.3} Z`;
  return { kind: 'path', layer: 'installation', d, stroke: 'ink', fill, width: 0.22 };
}

type PathShape = Extract<Shape, { kind: 'path' }>;

function upright(x: number, top: number, bottom: number, stroke: 'ink' | 'paper', width: number): PathShape {
  return { kind: 'path', layer: 'marks', d: `M${x} ${top} L${x} ${bottom}`, stroke, fill: 'none', width };
}

/** A round step that makes four to eight divisions. */
function tickStep(most: number): number {
  const raw = most / 6;
  const power = 10 ** Math.floor(Math.log10(raw));
  const factor = [1, 2, 5, 10].find((each) => each * power >= raw) ?? 10;
  return Math.max(1, factor * power);
}

function line(d: string, stroke: 'grid' | 'ink', width: number): Shape {
  return { kind: 'path', layer: 'labels', d, stroke, fill: 'none', width };
}

function text(x: number, y: number, content: string, anchor: 'start' | 'middle' | 'end'): Shape {
  return { kind: 'text', layer: 'labels', x, y, text: content, size: TEXT_MM, anchor, ink: 'ink' };
}
