import { behindFeed, loadCurrents } from '../../power/circuit.ts';
import { q, type RichText } from '../../units/quantity.ts';
import { cannotTell, itemSubject, itemSubjects, notMet, tagsOf, verb } from '../answers.ts';
import { hfOnAir, ids, type RadioSet, radioSets, satelliteSets, vhfSets } from '../sets.ts';
import type { Answer, PackInput } from '../types.ts';
import { type Battery, countedFrom, sourcesOf } from './supply.ts';

/** How a rule reckons the load of the distress sets. */
export interface LoadRule {
  /** Share of the transmit current of VHF and of MF/HF and satellite sets. */
  readonly vhfShare: number;
  readonly farShare: number;
  /** All else on the battery counts as well, at rest. */
  readonly others: boolean;
  /** The share in words, for the sum. */
  readonly words: readonly [vhf: string, far: string];
}

/** For how long one battery carries the sets that hang on it. */
export interface ReserveSum {
  readonly battery: Battery;
  readonly sets: readonly RadioSet[];
  readonly hours: number;
  /** The sum in words and figures. */
  readonly sum: RichText;
}

/** The sum, or why there is none. */
export type Reserve = { readonly found: ReserveSum } | { readonly found: null; readonly answer: Answer };

/**
 * Hours for which the best set of each kind asked for is carried, at the marked capacity of a full battery and the currents of the
 * parts; of several kinds on different batteries, the one that ends first.
 * @param banks the only batteries that count; all that do not start the engine where none are given
 */
export function reserveOf(
  input: PackInput,
  kinds: readonly (readonly RadioSet[])[],
  rule: LoadRule,
  banks?: readonly Battery[],
): Reserve {
  const asked = kinds.filter((sets) => sets.length > 0);
  if (asked.length === 0) return { found: null, answer: notMet('No set that alerts is on the drawing.') };
  const choices = asked.reduce<readonly (readonly RadioSet[])[]>(
    (known, sets) => known.flatMap((chosen) => sets.map((set) => [...chosen, set])),
    [[]],
  );
  const sums = choices.map((chosen) => shortest(input, chosen, rule, banks));
  const [best] = sums.flatMap((each) => each ?? []).sort((a, b) => b.hours - a.hours);
  if (best) return { found: best };
  return { found: null, answer: offBanks(input, asked, banks) ?? noSum(input, asked.flat()) };
}

/** Of the chosen sets, the one whose best battery ends first; null where for one of them no sum can be made. */
function shortest(
  input: PackInput,
  chosen: readonly RadioSet[],
  rule: LoadRule,
  banks?: readonly Battery[],
): ReserveSum | null {
  const sums = chosen.map((set) => {
    const ofSet = sourcesOf(input, set.item.id)
      .batteries.filter((battery) => !battery.isStarter && isAmong(battery, banks))
      .flatMap(
        (battery) =>
          sumOf(
            input,
            battery,
            chosen.filter((other) => hangsOn(input, other, battery)),
            rule,
          ) ?? [],
      );
    return ofSet.sort((a, b) => b.hours - a.hours)[0] ?? null;
  });
  if (sums.includes(null)) return null;
  return sums.flatMap((each) => each ?? []).sort((a, b) => a.hours - b.hours)[0] ?? null;
}

const isAmong = ({ item }: Battery, banks: readonly Battery[] | undefined): boolean =>
  banks === undefined || banks.some((bank) => bank.item.id === item.id);

/** A kind of set that is fed, but from none of the batteries that count; null where there is none such. */
function offBanks(
  input: PackInput,
  asked: readonly (readonly RadioSet[])[],
  banks: readonly Battery[] | undefined,
): Answer | null {
  const sourceLists = asked.map((sets) => ({ sets, sources: sets.map(({ item }) => sourcesOf(input, item.id)) }));
  const off = sourceLists.find(({ sources }) => {
    const batteries = sources.flatMap((each) => each.batteries);
    return batteries.length > 0 && !batteries.some((battery) => isAmong(battery, banks));
  });
  if (!off || !banks) return null;
  const bankIds = banks.map(({ item }) => item.id);
  return notMet(
    `${tagsOf(input, ids(off.sets))} ${verb(off.sets, 'does', 'do')} not hang on ${tagsOf(input, bankIds)}, the reserve that is apart.`,
    itemSubjects([...ids(off.sets), ...bankIds]),
  );
}

const hangsOn = (input: PackInput, { item }: RadioSet, battery: Battery): boolean =>
  sourcesOf(input, item.id).batteries.some((each) => each.item.id === battery.item.id);

function sumOf(input: PackInput, battery: Battery, sets: readonly RadioSet[], rule: LoadRule): ReserveSum | null {
  const capacityAh = battery.part.figures.capacityAh?.value ?? 0;
  if (capacityAh <= 0 || sets.length === 0) return null;
  const parts = sets.map((set) => {
    const isVhf = set.part.radioClass === 'vhf-fixed';
    const { peakA, restA } = loadCurrents(set.part);
    return { set, peakA, restA, share: isVhf ? rule.vhfShare : rule.farShare, words: rule.words[isVhf ? 0 : 1] };
  });
  const restA = countedFrom(input, battery.item.id)
    .map((feed) => behindFeed(input.index, feed, battery.part.figures.voltageV.value).restA)
    .reduce((sum, each) => sum + each, 0);
  const ownRestA = parts.reduce((sum, each) => sum + each.restA, 0);
  const othersA = rule.others ? Math.max(0, restA - ownRestA) : 0;
  const loadA = parts.reduce((sum, { share, peakA }) => sum + share * peakA, ownRestA + othersA);
  if (loadA <= 0) return null;
  const hours = capacityAh / loadA;
  const terms = parts.flatMap(
    ({ set, peakA, restA: setA, words }, at): RichText => [
      `${at > 0 ? ' + ' : ''}${set.item.tag}, ${words} of `,
      q(peakA, 'A'),
      ' + ',
      q(setA, 'A'),
    ],
  );
  const load: RichText = rule.others ? [...terms, ' + all else on it, ', q(othersA, 'A')] : terms;
  return {
    battery,
    sets,
    hours,
    sum: [
      `${battery.item.tag}, full and as marked, `,
      q(capacityAh, 'Ah'),
      ' ÷ (',
      ...load,
      ') = ',
      q(hours, 'hour'),
      '.',
    ],
  };
}

function noSum(input: PackInput, sets: readonly RadioSet[]): Answer {
  const subjects = itemSubjects(ids(sets));
  const named = tagsOf(input, ids(sets));
  const sources = sets.map(({ item }) => sourcesOf(input, item.id));
  if (sources.every(({ isUndrawn }) => isUndrawn)) {
    return cannotTell(`No supply is drawn to ${named}: draw the feeds, or time a run on battery.`, subjects);
  }
  const batteries = sources.flatMap((each) => each.batteries);
  const starters = batteries.filter(({ isStarter }) => isStarter);
  if (batteries.length > 0 && starters.length === batteries.length) {
    return notMet(
      `${named} ${verb(sets, 'hangs', 'hang')} on ${tagsOf(input, [...new Set(starters.map(({ item }) => item.id))])} alone, which starts the engine.`,
      [...subjects, ...starters.map(({ item }) => itemSubject(item.id))],
    );
  }
  if (batteries.length === 0 && sources.some(({ isConverted }) => isConverted)) {
    return cannotTell(`A converter stands between ${named} and the battery, so that no hours are reckoned.`, subjects);
  }
  if (batteries.length === 0) return cannotTell(`The supply of ${named} leads to no battery on the drawing.`, subjects);
  return cannotTell(`No capacity is recorded for a battery of ${named}, or the sets state no currents.`, subjects);
}

/** What has to be kept alive: VHF and, beyond A1, an MF/HF set ready to send or else a satellite set with sky. */
export function distressSets(input: PackInput): readonly (readonly RadioSet[])[] {
  const vhf = vhfSets(input);
  if (input.seaArea === 'A1') return [vhf];
  const hf = hfOnAir(input).filter((set) => !vhf.includes(set));
  if (hf.length > 0) return [vhf, hf];
  const withSky = new Set(ids(satelliteSets(input)));
  return [vhf, radioSets(input, 'l-band-messenger', 'l-band-voice').filter(({ item }) => withSky.has(item.id))];
}
