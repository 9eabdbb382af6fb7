import { z } from 'zod';

/**
 * How a number is known; shown beside every value on screen and on the sheet. `measured` is measured on this boat,
 * `published-test` somebody's published measurement of such a thing.
 */
export const basisSchema = z.enum(['data-sheet', 'standard', 'published-test', 'measured', 'computed', 'assumed']);
export type Basis = z.infer<typeof basisSchema>;

/**
 * A number with what it is worth: the nominal value, its tolerance (plus or minus, same unit, >= 0), how it is known and
 * where it was found. The unit is in the key that holds the figure (`gainDbi`, `lengthM`).
 */
export const figureSchema = z.strictObject({
  value: z.number(),
  tolerance: z.number().nonnegative().default(0),
  basis: basisSchema,
  source: z.string(),
});
export type Figure = z.infer<typeof figureSchema>;

export const figuresSchema = z.record(z.string(), figureSchema);

/** Makes a figure; the short form for catalogue tables. */
export function figure(value: number, tolerance: number, basis: Basis, source: string): Figure {
  return { value, tolerance, basis, source };
}
