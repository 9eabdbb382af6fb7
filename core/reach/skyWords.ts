import type { Overhead } from '../model/boat.ts';

const WORDS: Readonly<Record<Overhead, string>> = {
  open: 'the open sky',
  grp: 'GRP',
  wood: 'wood',
  fabric: 'cloth',
  metal: 'metal',
  carbon: 'carbon',
};

/** What is overhead, in a line of text: `under metal`. */
export function overheadWord(overhead: Overhead): string {
  return WORDS[overhead];
}
