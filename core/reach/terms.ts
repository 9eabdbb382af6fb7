import type { SumLine } from './types.ts';

/** What a line says beside its number. */
export type TermText = Pick<SumLine, 'label' | 'subject' | 'basis' | 'formula' | 'source'>;

/**
 * One term of a link's sum: the number that every range is reckoned with, and the words of its line, made only when somebody
 * asks why.
 */
export interface Term extends Pick<SumLine, 'key' | 'value' | 'unit' | 'toleranceDb'> {
  readonly text: () => TermText;
}

/** A loss as a term; 0 stays 0, never minus 0. */
export function lossTerm(key: string, lossDb: number, toleranceDb: number, text: () => TermText): Term {
  return { key, value: 0 - lossDb, unit: 'dB', toleranceDb, text };
}

export const sumOf = (terms: readonly Term[]): number => terms.reduce((sum, { value }) => sum + value, 0);

export const linesOf = (terms: readonly Term[]): readonly SumLine[] =>
  terms.map(({ text, ...numbers }) => ({ ...numbers, ...text() }));
