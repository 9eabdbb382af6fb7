import type { StandaloneClass } from '../../model/part.ts';
import { cannotTell, itemSubjects, met, notMet, tagOf, tagsOf, verb } from '../answers.ts';
import { ids, radioSets, satelliteSets, standaloneSets, vhfSets } from '../sets.ts';
import type { Answer, PackInput } from '../types.ts';
import { onAntenna } from './functions.ts';

/** A handheld VHF of one of the classes, kept in the grab bag. */
export function handheld(input: PackInput, classes: readonly StandaloneClass[]): Answer {
  const sets = standaloneSets(input, ...classes);
  if (sets.length === 0) return notMet('No handheld VHF on the drawing.');
  const ready = sets.find(({ facts }) => facts.inGrabBag === true);
  const uncharged = ready?.facts.charged === false ? ' It was not found charged.' : '';
  if (ready) {
    return met(
      `${ready.tag} is in the grab bag; that it is watertight is on its label.${uncharged}`,
      itemSubjects([ready.id]),
    );
  }
  const subjects = itemSubjects(ids(sets));
  if (sets.every(({ facts }) => facts.inGrabBag === false)) {
    return notMet(`${tagsOf(input, ids(sets))} ${verb(sets, 'is', 'are')} not kept in the grab bag.`, subjects);
  }
  return cannotTell(
    `Where ${tagsOf(input, ids(sets))} ${verb(sets, 'is', 'are')} kept is not recorded: look in the grab bag.`,
    subjects,
  );
}

export function aisTransponder(input: PackInput): Answer {
  const sets = ids(radioSets(input, 'ais-class-a', 'ais-class-b-cs', 'ais-class-b-so'));
  if (sets.length === 0) {
    const receivers = ids(radioSets(input, 'ais-receiver'));
    if (receivers.length === 0) return notMet('No AIS set on the drawing.');
    return notMet(`${tagsOf(input, receivers)} only ${verb(receivers, 'listens', 'listen')}.`, itemSubjects(receivers));
  }
  const sending = sets.filter((id) =>
    input.redundancy.ways.some((way) => way.itemId === id && way.serviceId === 'ais-transmit'),
  );
  if (sending.length > 0) return met(`${tagsOf(input, sending)}.`, itemSubjects(sending));
  return notMet(`${tagsOf(input, sets)} ${verb(sets, 'does', 'do')} not send: ${whySilent(input)}`, itemSubjects(sets));
}

function whySilent({ redundancy }: PackInput): string {
  const at = redundancy.services.indexOf('ais-transmit');
  return redundancy.matrix[0]?.states[at]?.reason ?? 'no antenna, or no fix.';
}

/** A receiver for weather beside the main set. */
export function weatherReceiver(input: PackInput): Answer {
  const sets = onAntenna(input, ids(radioSets(input, 'navtex-receiver', 'broadcast-receiver')));
  const mains = ids([...vhfSets(input), ...radioSets(input, 'mf-hf')]);
  const apart = sets.filter((id) => sharedWith(input, id, mains).length === 0);
  if (apart.length > 0)
    return met(`${tagsOf(input, apart)}, on an antenna that no main set uses.`, itemSubjects(apart));
  const [first] = sets;
  if (first !== undefined) {
    const shared = sharedWith(input, first, mains);
    return cannotTell(
      `${tagOf(input, first)} shares ${tagsOf(input, shared)} with a main set: whether that is independent is for the scrutineer.`,
      itemSubjects([first, ...shared]),
    );
  }
  const others = ids([...satelliteSets(input), ...standaloneSets(input, 'handheld-vhf', 'handheld-vhf-dsc')]);
  if (others.length === 0) return notMet('Nothing beside the main set receives weather.');
  return cannotTell(
    `No receiver for it; ${tagsOf(input, others)} may serve, by what is broadcast or subscribed to.`,
    itemSubjects(others),
  );
}

/** Devices and antennas on the ways of both. */
function sharedWith({ paths }: PackInput, setId: string, others: readonly string[]): readonly string[] {
  const through = (chosen: readonly string[]): ReadonlySet<string> =>
    new Set(
      paths
        .filter(({ radioId, service }) => chosen.includes(radioId) && service !== 'gnss')
        .flatMap(({ deviceIds, antennaId }) => [...deviceIds, antennaId]),
    );
  const theirs = through(others.filter((id) => id !== setId));
  return [...through([setId])].filter((id) => theirs.has(id));
}

export function positionFix(input: PackInput): Answer {
  const ways = input.redundancy.ways.filter(({ serviceId }) => serviceId === 'position');
  const full = [...new Set(ways.filter(({ grade }) => grade === 'full').map(({ itemId }) => itemId))];
  if (full.length > 0) return met(`By ${tagsOf(input, full)}.`, itemSubjects(full));
  const reduced = [...new Set(ways.map(({ itemId }) => itemId))];
  const inside = ids(
    radioSets(input, 'ais-class-a', 'ais-class-b-cs', 'ais-class-b-so').filter(({ part }) => part.traits.internalGnss),
  );
  const others = [...reduced, ...inside];
  if (others.length === 0) return notMet('No position source on the drawing.');
  return cannotTell(
    `Only inside ${tagsOf(input, others)}: whether a position can be read off it is for the eye.`,
    itemSubjects(others),
  );
}
