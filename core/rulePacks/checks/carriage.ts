import type { StandaloneClass } from '../../model/part.ts';
import type { Item } from '../../model/project.ts';
import {
  adding,
  cannotTell,
  doesNotApply,
  itemSubjects,
  listInWords,
  met,
  notMet,
  tagOf,
  tagsOf,
  verb,
} from '../answers.ts';
import {
  hasDsc,
  hfOnAir,
  ids,
  isDistressTerminal,
  radioSets,
  satelliteSets,
  standaloneSets,
  vhfOnAir,
  vhfSets,
} from '../sets.ts';
import type { Answer, PackInput } from '../types.ts';
import { beaconDoubt } from './alertMeans.ts';
import { navtexSets, onAntenna } from './functions.ts';

export function fixedVhf(input: PackInput, { dsc }: { dsc: boolean }): Answer {
  const sets = vhfSets(input);
  const ready = vhfOnAir(input).filter((set) => !dsc || hasDsc(set));
  if (ready.length > 0) {
    return met(`${tagsOf(input, ids(ready))}, on ${antennaTags(input, ids(ready))}.`, itemSubjects(ids(ready)));
  }
  if (sets.length === 0) return notMet('No fixed VHF set on the drawing.');
  const onAir = ids(vhfOnAir(input));
  const named = tagsOf(input, ids(sets));
  return notMet(
    onAir.length > 0 ? `${named}: no selective calling.` : `${named}: no antenna to send into.`,
    itemSubjects(ids(sets)),
  );
}

function antennaTags(input: PackInput, setIds: readonly string[]): string {
  const antennas = input.paths
    .filter((path) => setIds.includes(path.radioId) && path.service === 'vhf-voice' && path.canTransmit)
    .map((path) => path.antennaId);
  return tagsOf(input, [...new Set(antennas)]);
}

/** A watch can only be kept with a set for it; whether it is kept, and by a receiver of its own, no drawing shows. */
export function watch(input: PackInput, kind: 'vhf' | 'mf'): Answer {
  const sets = ids((kind === 'vhf' ? vhfOnAir(input) : hfOnAir(input)).filter(hasDsc));
  const what = kind === 'vhf' ? 'channel 70' : '2187.5 kHz';
  if (sets.length === 0) return notMet(`No set with selective calling that could listen on ${what}.`);
  return cannotTell(
    `${tagsOf(input, sets)} could; whether a receiver of its own keeps the watch on ${what} is in the set’s papers.`,
    itemSubjects(sets),
  );
}

export function radarTransponder(input: PackInput, least: number): Answer {
  const radar = ids(standaloneSets(input, 'radar-sart'));
  if (radar.length >= least) return met(`${tagsOf(input, radar)}.`, itemSubjects(radar));
  const ais = ids(standaloneSets(input, 'ais-sart'));
  const all = [...radar, ...ais];
  if (all.length >= least) {
    return cannotTell(
      `${tagsOf(input, ais)} ${verb(ais, 'works', 'work')} by AIS: the text as read asks for 9 GHz, and that AIS may stand in is from memory. Ask the flag state.`,
      itemSubjects(all),
    );
  }
  if (all.length === 0) return notMet('No search transponder on the drawing.');
  return notMet(`Only ${tagsOf(input, all)}; ${least} are asked for.`, itemSubjects(all));
}

export function navtex(input: PackInput): Answer {
  const sets = navtexSets(input);
  const ready = onAntenna(input, sets);
  if (ready.length > 0) return met(`${tagsOf(input, ready)}.`, itemSubjects(ready));
  if (sets.length > 0)
    return notMet(`${tagsOf(input, sets)} ${verb(sets, 'is', 'are')} joined to no antenna.`, itemSubjects(sets));
  return notMet('No NAVTEX receiver on the drawing.');
}

/** Asked for only beyond NAVTEX cover, and where that ends for this boat no drawing shows. */
export function satelliteBroadcasts(input: PackInput): Answer {
  const sets = satelliteSets(input);
  const terminals = ids(sets.filter(isDistressTerminal));
  if (terminals.length > 0) return met(`${tagsOf(input, terminals)}.`, itemSubjects(terminals));
  const others =
    sets.length > 0 ? ` ${tagsOf(input, ids(sets))}: whether it takes the broadcasts is not recorded.` : '';
  return cannotTell(
    `Asked for only where NAVTEX does not reach: compare the waters with a list of NAVTEX stations.${others}`,
    itemSubjects(ids(sets)),
  );
}

/** A 406 MHz beacon that frees itself. */
export function floatFreeBeacon(input: PackInput): Answer {
  const beacons = standaloneSets(input, 'beacon-406');
  if (beacons.length === 0) return noBeacon(input);
  const free = beacons.find((item) => bracketOf(item) === 'float-free');
  if (free) return withRegistration(input, met(`${free.tag} floats free.`, itemSubjects([free.id])), free.id);
  const unknown = beacons.find((item) => bracketOf(item) === undefined);
  if (unknown)
    return cannotTell(`The bracket of ${unknown.tag} is not recorded: look at it.`, itemSubjects([unknown.id]));
  return notMet(
    `${tagsOf(input, ids(beacons))} ${verb(beacons, 'stands in a bracket', 'stand in brackets')} worked by hand.`,
    itemSubjects(ids(beacons)),
  );
}

/** A registered 406 MHz beacon of whatever bracket. */
export function registeredBeacon(input: PackInput): Answer {
  const beacons = standaloneSets(input, 'beacon-406');
  if (beacons.length === 0) return noBeacon(input);
  const own = beacons.find(({ facts }) => facts.registration === 'this-boat');
  if (own) return met(`${own.tag} is registered to this boat.`, itemSubjects([own.id]));
  const unknown = beacons.find(({ facts }) => facts.registration === undefined);
  const subjects = itemSubjects(ids(beacons));
  if (unknown) return cannotTell(`The registration of ${unknown.tag} is not recorded: look in the register.`, subjects);
  return notMet(`${listInWords(beacons.flatMap(({ id }) => beaconDoubt(input, id)))}.`, subjects);
}

function noBeacon(input: PackInput): Answer {
  const personal = ids(standaloneSets(input, 'personal-beacon'));
  if (personal.length === 0) return notMet('No 406 MHz beacon on the drawing.');
  return notMet(`Only ${tagsOf(input, personal)}, which is one person’s.`, itemSubjects(personal));
}

function withRegistration(input: PackInput, given: Answer, beaconId: string): Answer {
  const doubts = beaconDoubt(input, beaconId);
  return doubts.length === 0 ? given : adding(given, `Mind: ${listInWords(doubts)}.`);
}

const FLOAT_FREE_PART = 'beacon-406-float-free';

/** As found, else as its part of the catalogue is made. */
function bracketOf({ facts, partId }: Item): 'manual' | 'float-free' | undefined {
  return facts.bracket ?? (partId === FLOAT_FREE_PART ? 'float-free' : undefined);
}

/** Dates of a beacon are on its label and in its papers. */
export function beaconInterval(input: PackInput, months: number, what: string): Answer {
  const beacons = ids(standaloneSets(input, 'beacon-406', 'personal-beacon'));
  if (beacons.length === 0) return doesNotApply('No beacon on the drawing.');
  return cannotTell(
    `${tagsOf(input, beacons)}: no dates are kept here. Look for the date of the last ${what} on label and papers, ${months} months ago at most.`,
    itemSubjects(beacons),
  );
}

/** Hand-held VHF sets by number; the size of ship a number is for no drawing shows. */
export function survivalVhf(input: PackInput, smaller: number, larger: number): Answer {
  const sets = ids(standaloneSets(input, 'handheld-vhf', 'handheld-vhf-dsc'));
  const subjects = itemSubjects(sets);
  if (sets.length >= larger)
    return met(`${tagsOf(input, sets)}; that they are of the survival-craft kind is for the eye.`, subjects);
  if (sets.length >= smaller) {
    return cannotTell(`${tagsOf(input, sets)}: enough up to 500 GT, and her tonnage is not recorded.`, subjects);
  }
  return notMet(sets.length === 0 ? 'No handheld VHF on the drawing.' : `Only ${tagsOf(input, sets)}.`, subjects);
}

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

/** Any handheld VHF at all. */
export function twoWayVhf(input: PackInput): Answer {
  const sets = ids(standaloneSets(input, 'handheld-vhf', 'handheld-vhf-dsc'));
  if (sets.length === 0) return notMet('No handheld VHF on the drawing.');
  return met(`${tagsOf(input, sets)}; that it is of the survival-craft kind is for the eye.`, itemSubjects(sets));
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
