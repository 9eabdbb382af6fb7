import type { Column } from '../../../core/report/types.ts';

/** From so many columns on a table is wide: it then scrolls sideways in a narrow panel instead of breaking its words. */
const WIDE_FROM_COLUMNS = 6;
/** Width of one unit of column weight, rem: about one narrow letter, so that a weight of 9 holds a tag and its gap. */
const REM_PER_WEIGHT = 0.36;

const sumOf = (columns: readonly Pick<Column, 'weight'>[]): number =>
  columns.reduce((sum, { weight }) => sum + weight, 0);

/** The width under which a table would no longer be readable, rem; 0 for one that may be as narrow as it likes. */
export function leastWidthRem(columns: readonly Pick<Column, 'weight'>[]): number {
  return columns.length < WIDE_FROM_COLUMNS ? 0 : sumOf(columns) * REM_PER_WEIGHT;
}

/** Share of the width of each column, per cent, as on the printed sheet. */
export function columnShares(
  columns: readonly Pick<Column, 'header' | 'weight'>[],
): readonly { readonly header: string; readonly percent: number }[] {
  const sum = sumOf(columns);
  return columns.map(({ header, weight }) => ({ header, percent: (100 * weight) / sum }));
}
