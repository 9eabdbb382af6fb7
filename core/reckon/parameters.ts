import type { Parameter } from './types.ts';

/** A number that a sum takes, with its unit and the span it must lie in. */
export const number = (
  key: string,
  label: string,
  unit: string,
  min: number,
  max: number,
  example: string,
): Parameter => ({ key, label, unit, kind: 'number', min, max, example });
