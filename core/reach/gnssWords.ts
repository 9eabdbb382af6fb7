import type { Overhead } from '../model/boat.ts';
import type { Item } from '../model/project.ts';
import { type GainWindow, windowVerdict } from '../rf/gnssChain.ts';
import { isShutUnder } from '../siting/skyView.ts';
import { q, type RichText } from '../units/quantity.ts';
import type { Judged } from './satelliteWords.ts';
import { overheadWord } from './skyWords.ts';

/** What a GNSS chain is judged by. */
export interface ChainFound {
  readonly antenna: Item;
  readonly over: Overhead;
  readonly netGainDb: number;
  readonly window: GainWindow | null;
  /** Tolerance of the net gain and of the least and the most asked for, dB. */
  readonly leastToleranceDb: number;
  readonly mostToleranceDb: number;
  /** Loss before the receiver beyond what a manual allows a passive antenna, dB; 0 with an amplifier. */
  readonly passiveOverDb: number;
}

/**
 * The verdict on a receiver with an outside antenna. A gain outside the window by no more than the tolerances is said, and is not held
 * against it.
 */
export function chainVerdict(found: ChainFound): Judged {
  const { antenna, over, window, netGainDb, passiveOverDb } = found;
  const gain = window ? gainVerdict(found, window) : passiveVerdict(passiveOverDb);
  if (isShutUnder(over)) {
    const words = `${antenna.tag} sees no sky under ${overheadWord(over)}: no fix, whatever the lead. `;
    return { verdict: [words, ...gain.verdict], isGood: false };
  }
  const dim: RichText = over === 'open' ? [] : [` It looks through ${overheadWord(over)}, which weakens all of it.`];
  const none: RichText = window
    ? []
    : ['The receiver states no gain it wants before it: ', q(netGainDb, 'dB', 1), '. '];
  return { verdict: [...none, ...gain.verdict, ...dim], isGood: gain.isGood };
}

function passiveVerdict(overDb: number): Judged {
  if (overDb <= 0) return { verdict: ['Its lead is short enough.'], isGood: true };
  const verdict = [
    'Without an amplifier its lead loses ',
    q(overDb, 'dB', 1),
    ' more than it may: put in an active antenna.',
  ];
  return { verdict, isGood: false };
}

function gainVerdict(found: ChainFound, window: GainWindow): Judged {
  const { netGainDb, leastToleranceDb, mostToleranceDb } = found;
  const { verdict, shortfallDb, attenuatorDb } = windowVerdict(netGainDb, window);
  const gain: RichText = [q(netGainDb, 'dB', 1), ' reaches the receiver'];
  if (verdict === 'inside') return { verdict: [...gain, ', inside what it asks for.'], isGood: true };
  const isLittle = verdict === 'too little';
  const isWithin = isLittle ? shortfallDb <= leastToleranceDb : attenuatorDb <= mostToleranceDb;
  const off: RichText = isLittle
    ? [': ', q(shortfallDb, 'dB', 1), ' too little']
    : [': ', q(attenuatorDb, 'dB', 1), ' too much'];
  if (isWithin) return { verdict: [...gain, ...off, ', within the tolerance of the figures.'], isGood: true };
  const mend = isLittle
    ? '. Use a shorter or thicker lead, or an antenna with more gain.'
    : '. Put in an attenuator of that, one that passes the supply.';
  return { verdict: [...gain, ...off, mend], isGood: false };
}

/** The verdict on a receiver whose antenna is inside it. */
export function builtInVerdict(item: Item, over: Overhead): Judged {
  if (isShutUnder(over))
    return { verdict: [`${item.tag} sees no sky under ${overheadWord(over)}: no fix.`], isGood: false };
  if (over === 'open') return { verdict: ['Stands in the open with its antenna inside.'], isGood: true };
  return {
    verdict: [`Its antenna is inside and looks through ${overheadWord(over)}: it works, with weaker signals.`],
    isGood: true,
  };
}
