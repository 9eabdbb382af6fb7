import type { Item } from '../../model/project.ts';
import { cannotTell, doesNotApply, itemSubjects, listInWords, met, notMet, tagsOf, verb } from '../answers.ts';
import { hasDsc, hfOnAir, ids, isDistressTerminal, satelliteSets, standaloneSets, vhfOnAir, vhfSets } from '../sets.ts';
import type { Answer, PackInput } from '../types.ts';
import { beaconDoubt, withBeaconDoubts } from './alertMeans.ts';
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
  if (free) return withBeaconDoubts(input, met(`${free.tag} floats free.`, itemSubjects([free.id])), [free.id]);
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

const FLOAT_FREE_PART = 'beacon-406-float-free';

/** As found, else as its part of the catalogue is made. */
function bracketOf({ facts, partId }: Item): 'manual' | 'float-free' | undefined {
  return facts.bracket ?? (partId === FLOAT_FREE_PART ? 'float-free' : undefined);
}

/** Dates of a beacon are on its label and in its papers. A personal beacon is one person’s, and not what the text speaks of. */
export function beaconInterval(input: PackInput, months: number, what: string): Answer {
  const beacons = ids(standaloneSets(input, 'beacon-406'));
  if (beacons.length === 0) return doesNotApply('No beacon of the boat’s own on the drawing.');
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

/** Any handheld VHF at all. */
export function twoWayVhf(input: PackInput): Answer {
  const sets = ids(standaloneSets(input, 'handheld-vhf', 'handheld-vhf-dsc'));
  if (sets.length === 0) return notMet('No handheld VHF on the drawing.');
  return met(`${tagsOf(input, sets)}; that it is of the survival-craft kind is for the eye.`, itemSubjects(sets));
}
