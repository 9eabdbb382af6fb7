import type { Overhead } from '../model/boat.ts';
import type { Item } from '../model/project.ts';
import type { MarginChange } from '../propagation/satellite.ts';
import { isShutUnder } from '../siting/skyView.ts';
import { q, type RichText } from '../units/quantity.ts';
import { overheadWord } from './skyWords.ts';

/** An outside antenna weighed against the terminal's own. */
export interface Weighed {
  readonly change: MarginChange;
  /** Where the own antenna is taken to be: where the set stands, or carried on deck because no sky reaches it there. */
  readonly ownIs: 'where it stands' | 'carried on deck';
  /** How uncertain the change is, dB. */
  readonly toleranceDb: number;
}

/** What a maker allows between terminal and outside antenna, dB. */
export interface LineLimit {
  readonly cableDb: number;
  readonly allDb: number;
}

/** What a line is judged by. */
export interface LineFound {
  readonly antenna: Item;
  readonly overhead: Overhead;
  readonly cableDb: number;
  readonly allDb: number;
  readonly limit: LineLimit | null;
  readonly weighed: Weighed | null;
}

export interface Judged {
  readonly verdict: RichText;
  readonly isGood: boolean;
}

/** Loss through what is overhead from which a set is not left there, dB. */
const THROUGH_LIMIT_DB = 3;

/** The verdict on a terminal with an outside antenna. What both directions gain is shown; the worse one decides. */
export function lineVerdict(found: LineFound): Judged {
  const { antenna, overhead, cableDb, allDb, limit, weighed } = found;
  const isOver = limit !== null && (allDb > limit.allDb || cableDb > limit.cableDb);
  const line = lineWords(allDb, limit, isOver);
  if (isShutUnder(overhead)) {
    const sky = `${antenna.tag} sees no sky under ${overheadWord(overhead)}: no cable mends that. `;
    return { verdict: [sky, ...line], isGood: false };
  }
  if (!weighed) return { verdict: line, isGood: !isOver };
  const worth = worthOf(weighed);
  return { verdict: [...worth.verdict, ...weighedWords(weighed), ...line], isGood: worth.isGood && !isOver };
}

/** Better or no better than none; what lies within the tolerance of the figures is said and not held against the antenna. */
function worthOf({ change, toleranceDb }: Weighed): Judged {
  const worse = Math.min(change.transmitDb, change.receiveDb);
  if (worse > 0) return { verdict: [], isGood: true };
  return worse <= -toleranceDb
    ? { verdict: ['With this cable the outside antenna is no better than none. '], isGood: false }
    : { verdict: ['By these figures the outside antenna is about as good as none, and no better. '], isGood: true };
}

function weighedWords({ change, ownIs }: Weighed): RichText {
  const { transmitDb, receiveDb, breakEvenLossDb } = change;
  const than =
    ownIs === 'where it stands' ? "the terminal's own where that stands" : "the terminal's own carried on deck";
  const even: RichText =
    breakEvenLossDb > 0
      ? ['Sending is even with ', q(breakEvenLossDb, 'dB', 1), ' of line. ']
      : ['No cable is short enough to make it send better. '];
  return ['It sends ', ...compared(transmitDb), ' and hears ', ...compared(receiveDb), ` than ${than}. `, ...even];
}

const compared = (changeDb: number): RichText => [q(Math.abs(changeDb), 'dB', 1), changeDb < 0 ? ' worse' : ' better'];

function lineWords(allDb: number, limit: LineLimit | null, isOver: boolean): RichText {
  const line: RichText = ['The line loses ', q(allDb, 'dB', 1)];
  if (!limit) return [...line, '.'];
  const allowed: RichText = [q(limit.allDb, 'dB', 1), ' in all and ', q(limit.cableDb, 'dB', 1), ' in the cable'];
  return isOver
    ? [...line, ': more than the ', ...allowed, ' a module of the class allows.']
    : [...line, ', within the ', ...allowed, ' a module of the class allows.'];
}

/** The verdict on a set that works by the antenna built into it, from where it stands. */
export function ownVerdict(item: Item, overhead: Overhead, throughDb: number, isPortable: boolean): Judged {
  const carried = isPortable ? ' Carried on deck it can work.' : '';
  if (isShutUnder(overhead)) {
    return { verdict: [`${item.tag} sees no sky under ${overheadWord(overhead)}.${carried}`], isGood: false };
  }
  if (throughDb === 0) return { verdict: ['Stands in the open with the antenna built into it.'], isGood: true };
  const verdict = [`Works through ${overheadWord(overhead)}, which takes about `, q(throughDb, 'dB', 1), `.${carried}`];
  return { verdict, isGood: throughDb <= THROUGH_LIMIT_DB };
}

/** The verdict on a set that is used in the hand. */
export function handVerdict(overhead: Overhead): Judged {
  const kept = isShutUnder(overhead) ? ` Where it is kept there is none, under ${overheadWord(overhead)}.` : '';
  return { verdict: [`Works in the open, held up, with a clear sky.${kept}`], isGood: true };
}

/** The verdict on a distress beacon: it is used in the open, and a float-free one must be able to leave its bracket. */
export function beaconVerdict(item: Item, overhead: Overhead): Judged {
  if (item.facts.bracket === 'float-free' && isShutUnder(overhead)) {
    const verdict = [`${item.tag} is to float free, and ${overheadWord(overhead)} is over it: it cannot come up.`];
    return { verdict, isGood: false };
  }
  const kept = isShutUnder(overhead) ? ` Where it is kept, under ${overheadWord(overhead)}, it is not heard.` : '';
  return {
    verdict: [`Sends to satellites when it stands or floats in the open.${kept} Test it by its own self-test only.`],
    isGood: true,
  };
}
