import type { RichText } from '../../units/quantity.ts';
import { q } from '../../units/quantity.ts';
import { adding, cannotTell, doesNotApply, itemSubject, itemSubjects, met, notMet } from '../answers.ts';
import { RULE_FIGURES } from '../figures.ts';
import { ids, type RadioSet, radioSets, vhfSets } from '../sets.ts';
import type { Answer, PackInput } from '../types.ts';
import { distressSets, type LoadRule, type ReserveSum, reserveOf } from './reserve.ts';
import { reserveApart } from './reserveApart.ts';
import { type Battery, sourcesOf } from './supply.ts';

/** SOLAS IV/13 guidance: half of transmit, receive, and all else. */
const SOLAS_LOAD: LoadRule = {
  vhfShare: RULE_FIGURES.solasTransmitShare,
  farShare: RULE_FIGURES.solasTransmitShare,
  others: true,
  words: ['half', 'half'],
};

/** SI 1999/3210: a fifth of VHF transmit, a third of MF/HF transmit, and receive; nothing else. */
const FISHING_LOAD: LoadRule = {
  vhfShare: RULE_FIGURES.ukFishingVhfTransmitShare,
  farShare: RULE_FIGURES.ukFishingHfTransmitShare,
  others: false,
  words: ['a fifth', 'a third'],
};

const subjectsOf = ({ battery, sets }: ReserveSum) => [itemSubject(battery.item.id), ...itemSubjects(ids(sets))];

/** How a rule narrows the sum. */
interface ReserveTerms {
  readonly load?: LoadRule;
  /** Only these batteries count; all that do not start the engine where none are given. */
  readonly banks?: readonly Battery[] | undefined;
}

/** Hours on battery of the sets asked for, against the hours of a rule. */
export function reserveHours(
  input: PackInput,
  leastH: number,
  kinds: readonly (readonly RadioSet[])[],
  { load = SOLAS_LOAD, banks }: ReserveTerms = {},
): Answer {
  const reserve = reserveOf(input, kinds, load, banks);
  if (!reserve.found) return reserve.answer;
  const { sum, hours } = reserve.found;
  const words: RichText = [...sum, ' Asked for: ', q(leastH, 'hour', 0), '.'];
  return (hours >= leastH ? met : notMet)(words, subjectsOf(reserve.found));
}

/** The same for the sets that the sea area asks for; says so where nothing for farther than A1 is in the sum. */
export function distressReserve(input: PackInput, leastH: number, banks?: readonly Battery[]): Answer {
  const kinds = distressSets(input);
  const given = reserveHours(input, leastH, kinds, { banks });
  const lacksFar = input.seaArea !== 'A1' && kinds[1]?.length === 0;
  return lacksFar && given.verdict !== 'cannot-tell'
    ? adding(given, 'No set for farther than A1 is on the drawing, and so none is in the sum.')
    : given;
}

/** Charge that carries the distress sets on one battery for so many hours, Ah; null where no load can be reckoned. */
export function leastCapacityAh(input: PackInput, battery: Battery, forH: number): number | null {
  const onIt = distressSets(input).map((sets) =>
    sets.filter(({ item }) => sourcesOf(input, item.id).batteries.some((each) => each.item.id === battery.item.id)),
  );
  const { found } = reserveOf(input, onIt, SOLAS_LOAD, [battery]);
  const capacityAh = battery.part.figures.capacityAh?.value ?? 0;
  return found && capacityAh > 0 ? (capacityAh / found.hours) * forH : null;
}

/** With an emergency source less is enough, and whether there is one no drawing of this kind records. */
export function reserveWithoutSource(input: PackInput): Answer {
  const { solasReserveH, solasReserveWithSourceH } = RULE_FIGURES;
  const long = distressReserve(input, solasReserveH);
  if (long.verdict !== 'not-met') return long;
  const short = distressReserve(input, solasReserveWithSourceH);
  if (short.verdict !== 'met') return long;
  return cannotTell(
    [
      ...long.because,
      ' Enough only with an emergency source of its own kind, ',
      q(solasReserveWithSourceH, 'hour', 0),
      ' then; whether one is fitted is not recorded.',
    ],
    long.subjects,
  );
}

/** Lengths and load of the rule for fishing vessels. */
export function fishingReserve(input: PackInput): Answer {
  const { loaM } = input.project.boat;
  const { ukFishingShortestM, ukFishingLongestM, ukFishingReserveH } = RULE_FIGURES;
  if (loaM < ukFishingShortestM || loaM >= ukFishingLongestM) {
    return doesNotApply([
      'For ',
      q(ukFishingShortestM, 'm', 0),
      ' to ',
      q(ukFishingLongestM, 'm', 0),
      '; she is ',
      q(loaM, 'm'),
      '.',
    ]);
  }
  const vhf = vhfSets(input);
  const hf = radioSets(input, 'mf-hf').filter((set) => !vhf.includes(set));
  const { answer: apart, banks } = reserveApart(input);
  const isApart = apart.verdict === 'met';
  // The hours have to be those of the reserve itself: a great bank that is not apart does not lend it its own.
  const terms = { load: FISHING_LOAD, banks: isApart ? banks : undefined };
  const hours = reserveHours(input, ukFishingReserveH, [vhf, hf], terms);
  if (hours.verdict !== 'met' || isApart) return hours;
  return { ...apart, because: [...hours.because, ' ', ...apart.because] };
}

/** House batteries that feed a fixed VHF set, without repeats. */
export function radioBatteries(input: PackInput): readonly Battery[] {
  const all = vhfSets(input).flatMap(({ item }) => sourcesOf(input, item.id).batteries);
  return [...new Map(all.map((battery) => [battery.item.id, battery])).values()];
}
