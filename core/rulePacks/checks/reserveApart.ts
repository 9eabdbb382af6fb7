import { adding, cannotTell, itemSubjects, listInWords, met, notMet, tagsOf, verb } from '../answers.ts';
import { ids, type RadioSet, vhfSets } from '../sets.ts';
import type { Answer, PackInput } from '../types.ts';
import { type Battery, loadsOf, ownWayBatteries, type Sources, sourcesOf } from './supply.ts';

/** Whether a reserve stands apart from engine and boat, and which batteries are it: hours and place are for those alone. */
export interface ReserveApart {
  readonly answer: Answer;
  /** None unless the answer is met. */
  readonly banks: readonly Battery[];
}

/** A source of the distress sets that neither starts the engine nor carries the rest of the boat. */
export const independentReserve = (input: PackInput): Answer => reserveApart(input).answer;

/** The same with the batteries found, over every fixed VHF set. */
export function reserveApart(input: PackInput): ReserveApart {
  const sets = vhfSets(input);
  if (sets.length === 0) return open(notMet('No fixed VHF set on the drawing.'));
  const found = sets.map((set) => ({ set, sources: sourcesOf(input, set.item.id) }));
  const judged = found.flatMap(({ set, sources }) => ofSet(input, set, sources) ?? []);
  const apart = judged.filter(({ answer }) => answer.verdict === 'met');
  const [best] = apart;
  if (best) {
    const banks = new Map(apart.flatMap((each) => each.banks).map((battery) => [battery.item.id, battery]));
    return { answer: best.answer, banks: [...banks.values()] };
  }
  return judged[0] ?? open(noneApart(input, sets, found));
}

const open = (answer: Answer): ReserveApart => ({ answer, banks: [] });

/** What one set has; null where it hangs on one bank with other loads, or on none. */
function ofSet(input: PackInput, set: RadioSet, { batteries }: Sources): ReserveApart | null {
  const house = batteries.filter(({ isStarter }) => !isStarter);
  const own = house.filter((battery) => isRadioOnly(input, battery));
  const [first] = own;
  if (first && !hasOtherBank(input, first)) return open(onlyBank(set, first));
  const ownWay = ownWayBatteries(input, set.item.id).filter(({ isStarter }) => !isStarter);
  const tags = tagsOf(input, banksIds(house));
  if (first) {
    const isJoined = house.length > 1 && ownWay.length === 0;
    const mind = isJoined ? `Mind: ${tags} feed it by one way, and whether they can be parted is for the eye.` : '';
    return { answer: adding(radioOnly(input, set, own), mind), banks: own };
  }
  if (house.length < 2) return null;
  const subjects = itemSubjects([set.item.id, ...banksIds(house)]);
  if (ownWay.length > 0)
    return {
      answer: met(`${set.item.tag} can be fed from ${tags}, each without the other.`, subjects),
      banks: ownWay,
    };
  return open(
    cannotTell(
      `${set.item.tag} can be fed from ${tags}, but all by one way; what else hangs on both, and whether they can be parted, is for the eye.`,
      subjects,
    ),
  );
}

const banksIds = (batteries: readonly Battery[]): readonly string[] => batteries.map(({ item }) => item.id);

const radioOnly = (input: PackInput, { item }: RadioSet, own: readonly Battery[]): Answer =>
  met(
    `${item.tag} hangs on ${tagsOf(input, banksIds(own))}, which ${verb(own, 'feeds', 'feed')} radio only.`,
    itemSubjects([item.id, ...banksIds(own)]),
  );

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

interface Fed {
  readonly sources: Sources;
}

function noneApart(input: PackInput, sets: readonly RadioSet[], found: readonly Fed[]): Answer {
  const subjects = itemSubjects(ids(sets));
  const named = tagsOf(input, ids(sets));
  if (found.every(({ sources }) => sources.isUndrawn))
    return cannotTell(`No supply is drawn to ${named}: follow the cables aboard.`, subjects);
  const all = [...new Set(found.flatMap(({ sources }) => banksIds(sources.batteries)))];
  if (all.length === 0) return cannotTell(`The supply of ${named} leads to no battery on the drawing.`, subjects);
  const others = all.flatMap((id) => loadsOf(input, id)).filter((item) => !isRadio(input, item.id));
  const rest =
    others.length === 0
      ? ''
      : `, with ${listInWords([...new Set(others.map(({ tag }) => tag))].slice(0, 4))} on the same`;
  return notMet(`${named} ${verb(sets, 'hangs', 'hang')} on ${tagsOf(input, all)} alone${rest}.`, [
    ...subjects,
    ...itemSubjects(all),
  ]);
}

const RADIO_KINDS: ReadonlySet<string> = new Set(['radio', 'inline', 'position-source', 'antenna']);

const isRadio = ({ index }: PackInput, id: string): boolean => {
  const part = index.effective.get(id);
  if (part?.kind === 'equipment') return part.equipmentClass === 'data-bus';
  return part !== undefined && RADIO_KINDS.has(part.kind);
};

/** Whether nothing but radio is drawn on a battery. */
export const isRadioOnly = (input: PackInput, { item }: Battery): boolean =>
  loadsOf(input, item.id).every((load) => isRadio(input, load.id));
