import { cell, type Row, readTable } from '../published/table.ts';
import type { Point, Series } from './chart.ts';

/** A picture of the method notes: its file under docs/pictures/methods and what draws it. */
export interface Figure {
  readonly file: string;
  readonly draw: () => string;
}

/** Rows of a table of the published-source tests whose columns have the values given. */
export function rowsWhere(table: string, values: Readonly<Record<string, string | number>>): Row[] {
  return readTable(table).filter((row) =>
    Object.entries(values).every(([column, value]) => row[column] === String(value)),
  );
}

export const points = (rows: readonly Row[], x: string, y: string): Point[] =>
  rows.filter((row) => row[y] !== '').map((row): Point => [cell(row, x), cell(row, y)]);

/** `count` numbers from one to another, evenly or by ratio. */
export function steps(from: number, to: number, count: number, isLog = false): number[] {
  const share = (i: number): number => i / (count - 1);
  return Array.from({ length: count }, (_, i) =>
    isLog ? from * (to / from) ** share(i) : from + (to - from) * share(i),
  );
}

export function line(
  label: string,
  colour: number,
  at: readonly number[],
  y: (x: number) => number,
  as: Series['as'] = 'solid',
): Series {
  return { label, colour, as, points: at.map((x): Point => [x, y(x)]) };
}

/** The largest difference between a line and points it is held against, as text. */
export function worstText(values: readonly (readonly [model: number, point: number])[], unit: string): string {
  const worst = Math.max(...values.map(([model, point]) => Math.abs(model - point)));
  return `${worst < 0.001 ? worst.toExponential(0).replace('-', '−') : Number(worst.toPrecision(2))} ${unit}`;
}
