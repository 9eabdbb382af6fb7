import BOAT from '../../assets/demo/brannoch-tern.backstay?raw';
import { Random } from './random.ts';

const NOTES = /"notes": "/;

/** The document of the n-th change: a demo boat whose notes carry the number and grow and shrink by up to 300 kB. */
export function textOf(n: number): string {
  const length = new Random(n).below(10) === 0 ? new Random(n + 1).below(300_000) : new Random(n + 2).below(2000);
  return BOAT.replace(NOTES, `"notes": "Change ${n}. ${'x'.repeat(length)} `);
}

/** Which change a text is of, if it is that to the last letter; null when it is none, or not whole. */
export function changeIn(text: string): number | null {
  const n = Number(/"notes": "Change (\d+)\. /.exec(text)?.[1] ?? Number.NaN);
  return Number.isInteger(n) && text === textOf(n) ? n : null;
}

/** Whether the user saves after the n-th change: two times of three. */
export const isSavedAt = (n: number): boolean => new Random(n + 3).below(3) > 0;
