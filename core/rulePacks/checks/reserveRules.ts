import type { RichText } from '../../units/quantity.ts';
import { q } from '../../units/quantity.ts';
import {
  adding,
  cannotTell,
  doesNotApply,
  itemSubject,
  itemSubjects,
  listInWords,
  met,
  notMet,
  tagsOf,
  verb,
} from '../answers.ts';
import { RULE_FIGURES } from '../figures.ts';
import { ids, type RadioSet, radioSets, vhfSets } from '../sets.ts';
import type { Answer, PackInput } from '../types.ts';
import { distressSets, type LoadRule, type ReserveSum, reserveOf } from './reserve.ts';
import { type Battery, loadsOf, sourcesOf } from './supply.ts';

/** SOLAS IV/13 guidance: half of transmit, receive, and all else. */
export const SOLAS_LOAD: LoadRule = {
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

/** Hours on battery of the sets asked for, against the hours of a rule. */
export function reserveHours(
  input: PackInput,
  leastH: number,
  kinds: readonly (readonly RadioSet[])[],
  load = SOLAS_LOAD,
): Answer {
  const reserve = reserveOf(input, kinds, load);
  if (!reserve.found) return reserve.answer;
  const { sum, hours } = reserve.found;
  const words: RichText = [...sum, ' Asked for: ', q(leastH, 'hour', 0), '.'];
  return (hours >= leastH ? met : notMet)(words, subjectsOf(reserve.found));
}

/** The same for the sets that the sea area asks for; says so where nothing for farther than A1 is in the sum. */
export function distressReserve(input: PackInput, leastH: number): Answer {
  const kinds = distressSets(input);
  const given = reserveHours(input, leastH, kinds);
  const lacksFar = input.seaArea !== 'A1' && kinds[1]?.length === 0;
  return lacksFar && given.verdict !== 'cannot-tell'
    ? adding(given, 'No set for farther than A1 is on the drawing, and so none is in the sum.')
    : given;
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
  const hours = reserveHours(input, ukFishingReserveH, [vhf, hf], FISHING_LOAD);
  if (hours.verdict !== 'met') return hours;
  const apart = independentReserve(input);
  return apart.verdict === 'met' ? hours : { ...apart, because: [...hours.because, ' ', ...apart.because] };
}

/** Whether another house battery is drawn, that the rest of the boat can hang on. */
const hasOtherBank = ({ project, index }: PackInput, own: Battery): boolean =>
  project.items.some(({ id, status }) => {
    const part = index.effective.get(id);
    return id !== own.item.id && status !== 'remove' && part?.kind === 'power' && part.powerClass === 'battery-bank';
  });

const onlyBank = ({ item }: RadioSet, own: Battery): Answer =>
  cannotTell(
    `As drawn ${own.item.tag} feeds radio only, but it is the only house battery drawn: see what else hangs on it.`,
    itemSubjects([item.id, own.item.id]),
  );

const RADIO_KINDS: ReadonlySet<string> = new Set(['radio', 'inline', 'position-source', 'antenna']);

/** A source of the distress sets that neither starts the engine nor carries the rest of the boat. */
export function independentReserve(input: PackInput): Answer {
  const sets = vhfSets(input);
  if (sets.length === 0) return notMet('No fixed VHF set on the drawing.');
  const found = sets.map((set) => ({ set, sources: sourcesOf(input, set.item.id) }));
  const banks = (batteries: readonly Battery[]): readonly Battery[] => batteries.filter(({ isStarter }) => !isStarter);
  for (const { set, sources } of found) {
    const house = banks(sources.batteries);
    const own = house.find((battery) => isRadioOnly(input, battery));
    if (own && !hasOtherBank(input, own)) return onlyBank(set, own);
    if (own)
      return met(
        `${set.item.tag} hangs on ${own.item.tag}, which feeds radio only.`,
        itemSubjects([set.item.id, own.item.id]),
      );
    if (house.length > 1) {
      const tags = tagsOf(
        input,
        house.map(({ item }) => item.id),
      );
      return met(
        `${set.item.tag} can be fed from ${tags}, each without the other.`,
        itemSubjects([set.item.id, ...house.map(({ item }) => item.id)]),
      );
    }
  }
  const subjects = itemSubjects(ids(sets));
  if (found.every(({ sources }) => sources.isUndrawn)) {
    return cannotTell(`No supply is drawn to ${tagsOf(input, ids(sets))}: follow the cables aboard.`, subjects);
  }
  const all = [...new Set(found.flatMap(({ sources }) => sources.batteries.map(({ item }) => item.id)))];
  if (all.length === 0)
    return cannotTell(`The supply of ${tagsOf(input, ids(sets))} leads to no battery on the drawing.`, subjects);
  const others = all.flatMap((id) => loadsOf(input, id)).filter((item) => !isRadio(input, item.id));
  const rest =
    others.length === 0
      ? ''
      : `, with ${listInWords([...new Set(others.map(({ tag }) => tag))].slice(0, 4))} on the same`;
  return notMet(`${tagsOf(input, ids(sets))} ${verb(sets, 'hangs', 'hang')} on ${tagsOf(input, all)} alone${rest}.`, [
    ...subjects,
    ...itemSubjects(all),
  ]);
}

const isRadio = ({ index }: PackInput, id: string): boolean => {
  const part = index.effective.get(id);
  if (part?.kind === 'equipment') return part.equipmentClass === 'data-bus';
  return part !== undefined && RADIO_KINDS.has(part.kind);
};

const isRadioOnly = (input: PackInput, { item }: Battery): boolean =>
  loadsOf(input, item.id).every((load) => isRadio(input, load.id));

/** House batteries that feed a fixed VHF set, without repeats. */
export function radioBatteries(input: PackInput): readonly Battery[] {
  const all = vhfSets(input).flatMap(({ item }) => sourcesOf(input, item.id).batteries);
  return [...new Map(all.map((battery) => [battery.item.id, battery])).values()];
}
