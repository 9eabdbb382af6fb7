import type { Subject } from '../../model/project.ts';
import { alertsShore } from '../../redundancy/independence.ts';
import type { AlertMeans } from '../../redundancy/types.ts';
import {
  adding,
  cannotTell,
  itemSubject,
  itemSubjects,
  listInWords,
  met,
  notMet,
  tagOf,
  tagsOf,
  verb,
} from '../answers.ts';
import { isDistressTerminal } from '../sets.ts';
import type { Answer, PackInput } from '../types.ts';

/** A means of alerting the shore, and what the document leaves open about it. */
export interface JudgedMeans {
  readonly means: AlertMeans;
  /** Empty where nothing is open. */
  readonly doubt: string;
  /** Wired into the boat, not carried. */
  readonly isFixed: boolean;
}

export type RadioService = AlertMeans['radioService'];

/** How the trade calls each radio service. */
const SERVICE_WORDS: Readonly<Record<RadioService, string>> = {
  'vhf-dsc': 'VHF',
  'mf-hf-dsc': 'MF/HF',
  satellite: 'satellite',
  'beacon-406': '406 MHz',
};

/** Every means the failure study finds, those nothing is open about first. */
export function judgedMeans(input: PackInput): readonly JudgedMeans[] {
  const judged = input.study().independence.means.map((means): JudgedMeans => {
    const item = input.index.items.get(means.itemId);
    const isFixed = input.index.effective.get(means.itemId)?.kind !== 'standalone';
    if (means.radioService === 'satellite' && !(item && isDistressTerminal(item))) {
      return { means, isFixed, doubt: `whether ${means.label} passes distress alerts by its service is not recorded` };
    }
    if (means.radioService === 'vhf-dsc' && !isFixed) {
      return {
        means,
        isFixed,
        doubt: `${means.label} is a handheld, and whether a coast station is in its reach is not recorded`,
      };
    }
    return { means, isFixed, doubt: '' };
  });
  return [...judged.filter(({ doubt }) => doubt === ''), ...judged.filter(({ doubt }) => doubt !== '')];
}

interface Pair {
  readonly first: JudgedMeans;
  readonly second: JudgedMeans;
  /** What both hang on or are lost by. */
  readonly shared: readonly string[];
}

export interface PairDemand {
  /** Each of another radio service. */
  readonly differs: boolean;
  /** One of them a set that is wired into the boat. */
  readonly fixed: boolean;
  /** Only means by which the shore is reached from the boat's sea area. */
  readonly bySeaArea: boolean;
}

function pairsOf(all: readonly JudgedMeans[], { differs, fixed }: PairDemand): readonly Pair[] {
  return all.flatMap((first, at) =>
    all.slice(at + 1).flatMap((second): Pair[] => {
      if (differs && first.means.radioService === second.means.radioService) return [];
      if (fixed && !first.isFixed && !second.isFixed) return [];
      const [one, other] = [lossesOf(first.means), new Set(lossesOf(second.means))];
      return [{ first, second, shared: one.filter((id) => other.has(id)) }];
    }),
  );
}

const lossesOf = ({ hangsOn, causes }: AlertMeans): readonly string[] => [...hangsOn, ...causes];

/** Whether two means of alert share nothing; the best pair is named with what it shares. */
export function twoMeans(input: PackInput, demand: PairDemand): Answer {
  const every = judgedMeans(input);
  if (!demand.bySeaArea) return bestOf(input, every, demand);
  const { seaArea } = input;
  const counts = ({ means: { radioService } }: JudgedMeans): boolean => alertsShore(radioService, seaArea);
  const given = bestOf(input, every.filter(counts), demand);
  const short = every.filter((each) => !counts(each)).map(({ means }) => means.itemId);
  if (short.length === 0 || given.verdict === 'met') return given;
  return adding(
    given,
    `${tagsOf(input, short)} ${verb(short, 'does', 'do')} not count: by that service the shore is not reached from ${seaArea}.`,
    itemSubjects(short),
  );
}

function bestOf(input: PackInput, all: readonly JudgedMeans[], demand: PairDemand): Answer {
  const pairs = pairsOf(all, demand);
  const good = pairs.filter(({ shared }) => shared.length === 0);
  const sure = good.find(({ first, second }) => first.doubt === '' && second.doubt === '');
  if (sure)
    return withBeaconDoubts(input, met(...inWords(sure, 'share nothing, and no one event takes both.')), pairIds(sure));
  const [open] = good;
  if (open) {
    const doubts = [open.first.doubt, open.second.doubt].filter((doubt) => doubt !== '');
    return cannotTell(...inWords(open, `share nothing, but ${listInWords(doubts)}: ask those who run the service.`));
  }
  const [best] = [...pairs].sort((a, b) => a.shared.length - b.shared.length);
  return best ? sharing(input, best) : tooFew(all, demand);
}

function inWords({ first, second }: Pair, rest: string): [string, readonly Subject[]] {
  const named = [first, second].map(({ means }) => `${means.label} (${SERVICE_WORDS[means.radioService]})`);
  return [`${listInWords(named)} ${rest}`, itemSubjects([first.means.itemId, second.means.itemId])];
}

function sharing(input: PackInput, best: Pair): Answer {
  const { labels } = input.study();
  const isCause = (id: string): boolean => labels.get(id)?.subject === null;
  const label = (id: string): string => labels.get(id)?.label ?? id;
  const things = best.shared.filter((id) => !isCause(id));
  const causes = best.shared.filter(isCause);
  const words = [
    ...(things.length > 0 ? [`both hang on ${listInWords(things.map(label))}`] : []),
    ...(causes.length > 0 ? [`are both lost by: ${causes.map(label).join('; ')}`] : []),
  ];
  const subjects = things.flatMap((id) => labels.get(id)?.subject ?? []);
  const [because, sets] = inWords(best, `are the best pair, but ${words.join(' and ')}.`);
  return notMet(because, [...sets, ...subjects]);
}

function tooFew(all: readonly JudgedMeans[], { differs }: PairDemand): Answer {
  if (all.length === 0) return notMet('Nothing on the drawing can send a distress alert ashore from there.');
  const subjects = itemSubjects(all.map(({ means }) => means.itemId));
  const named = listInWords(all.map(({ means }) => means.label));
  if (all.length === 1) return notMet(`${named} is the only means on the drawing.`, subjects);
  return notMet(
    differs
      ? `${named} are of one radio service only.`
      : `${named} can alert, but none of them is wired into the boat.`,
    subjects,
  );
}

const pairIds = ({ first, second }: Pair): readonly string[] => [first.means.itemId, second.means.itemId];

/** Says beside the answer what is known against a beacon that it counts. */
export function withBeaconDoubts(input: PackInput, given: Answer, itemIds: readonly string[]): Answer {
  const doubts = itemIds.flatMap((id) => beaconDoubt(input, id));
  return doubts.length === 0 ? given : adding(given, `Mind: ${listInWords(doubts)}.`);
}

export function beaconDoubt(input: PackInput, itemId: string): readonly string[] {
  const registration = input.index.items.get(itemId)?.facts.registration;
  if (registration === 'another-owner') return [`${tagOf(input, itemId)} is registered to another owner`];
  return registration === 'none' ? [`${tagOf(input, itemId)} is not registered`] : [];
}

/** Met by a means of one of these services, its doubts told; what is missing otherwise. */
export function anyMeans(input: PackInput, services: readonly RadioService[], missing: string): Answer {
  const fitting = judgedMeans(input).filter(({ means }) => services.includes(means.radioService));
  const [best] = fitting;
  if (!best) return notMet(missing);
  const subjects = [itemSubject(best.means.itemId)];
  if (best.doubt !== '') return cannotTell(`Only ${best.means.label} could, and ${best.doubt}.`, subjects);
  const given = met(`By ${best.means.label} (${SERVICE_WORDS[best.means.radioService]}).`, subjects);
  return withBeaconDoubts(input, given, [best.means.itemId]);
}
