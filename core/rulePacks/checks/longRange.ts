import { cannotTell, itemSubjects, listInWords, met, notMet, tagsOf, verb } from '../answers.ts';
import { hasDsc, hfOnAir, ids, isDistressTerminal, radioSets, satelliteSets, vhfOnAir } from '../sets.ts';
import type { Answer, PackInput } from '../types.ts';

/** A set for MF (or MF and HF) with selective calling, on an antenna. */
export function mfDsc(input: PackInput): Answer {
  const ready = hfOnAir(input);
  const dsc = ids(ready.filter(hasDsc));
  if (dsc.length > 0) return met(`${tagsOf(input, dsc)}.`, itemSubjects(dsc));
  if (ready.length > 0)
    return notMet(
      `${tagsOf(input, ids(ready))} ${verb(ready, 'has', 'have')} no selective calling.`,
      itemSubjects(ids(ready)),
    );
  return noHf(input);
}

/** A set for MF (or MF and HF) voice, on an antenna. */
export function mfVoice(input: PackInput): Answer {
  const ready = ids(hfOnAir(input));
  return ready.length > 0 ? met(`${tagsOf(input, ready)}.`, itemSubjects(ready)) : noHf(input);
}

function noHf(input: PackInput): Answer {
  const sets = ids(radioSets(input, 'mf-hf'));
  if (sets.length === 0) return notMet('No MF/HF set on the drawing.');
  return notMet(
    `${tagsOf(input, sets)} ${verb(sets, 'is', 'are')} joined to no antenna it may send into.`,
    itemSubjects(sets),
  );
}

/** HF or satellite, for beyond the reach of MF. */
export function farther(input: PackInput): Answer {
  const hf = ids(hfOnAir(input));
  if (hf.length > 0) return met(`By HF: ${tagsOf(input, hf)}.`, itemSubjects(hf));
  return bySatellite(input, 'No HF set ready to send and no satellite set with sky on the drawing.');
}

/** A satellite set, met only where the service is known to carry distress traffic. */
export function bySatellite(input: PackInput, missing: string): Answer {
  const sets = satelliteSets(input);
  const terminals = ids(sets.filter(isDistressTerminal));
  if (terminals.length > 0) return met(`By satellite: ${tagsOf(input, terminals)}.`, itemSubjects(terminals));
  if (sets.length === 0) return notMet(missing);
  return cannotTell(
    `${tagsOf(input, ids(sets))} ${verb(sets, 'works', 'work')} by satellite; whether the service carries distress traffic is not recorded: ask the provider.`,
    itemSubjects(ids(sets)),
  );
}

/** A satellite telephone or HF. */
export function telephoneOrHf(input: PackInput): Answer {
  const hf = ids(hfOnAir(input));
  if (hf.length > 0) return met(`By HF: ${tagsOf(input, hf)}.`, itemSubjects(hf));
  const voice = telephones(input);
  if (voice.length > 0) return met(`By satellite telephone: ${tagsOf(input, voice)}.`, itemSubjects(voice));
  const sets = satelliteSets(input);
  if (sets.length > 0)
    return notMet(
      `${tagsOf(input, ids(sets))} ${verb(sets, 'carries', 'carry')} text, not speech.`,
      itemSubjects(ids(sets)),
    );
  const broadband = ids(radioSets(input, 'broadband-terminal'));
  if (broadband.length === 0) return notMet('No HF set ready to send and no satellite telephone on the drawing.');
  return cannotTell(
    `${tagsOf(input, broadband)} may carry speech; whether it counts is for the organiser.`,
    itemSubjects(broadband),
  );
}

/** Satellite sets that carry speech. */
function telephones(input: PackInput): readonly string[] {
  return ids(satelliteSets(input)).filter((id) => {
    const part = input.index.effective.get(id);
    return part?.kind === 'radio' && part.radioClass === 'l-band-voice';
  });
}

/**
 * A second antenna for the telephone or HF set, or other means of keeping that communication: another of the same kind. Whether the
 * other kind keeps it, and whether a set carried on deck does, is not said in the text.
 */
export function longRangeSpare(input: PackInput): Answer {
  const main = telephoneOrHf(input);
  if (main.verdict !== 'met') return main;
  const kinds = [ids(hfOnAir(input)), telephones(input)].filter((sets) => sets.length > 0);
  const doubled = kinds.find((sets) => antennasOf(input, sets).length >= 2);
  if (doubled) {
    const named = antennasOf(input, doubled);
    return met(`${tagsOf(input, named)} for ${tagsOf(input, doubled)}.`, itemSubjects([...doubled, ...named]));
  }
  const all = kinds.flat();
  if (kinds.length > 1) {
    return cannotTell(
      `${tagsOf(input, all)} have one antenna for each kind: whether one keeps the communication of the other is for the organiser.`,
      itemSubjects(all),
    );
  }
  const portable = all.filter((id) => {
    const part = input.index.effective.get(id);
    return part?.kind === 'radio' && part.traits.portable;
  });
  if (portable.length > 0) {
    return cannotTell(
      `${tagsOf(input, portable)} can be carried on deck with its own antenna: whether that is enough is for the organiser.`,
      itemSubjects(portable),
    );
  }
  const antennas = antennasOf(input, all);
  return notMet(`One antenna only, ${tagsOf(input, antennas)}.`, itemSubjects([...antennas, ...all]));
}

/** Antennas that sets have for far talk, not for VHF or for a position; a set joined to none has its own. */
function antennasOf(input: PackInput, setIds: readonly string[]): readonly string[] {
  const antennas = setIds.flatMap((id) => {
    const paths = input.paths.filter(
      ({ radioId, service, canTransmit }) => radioId === id && FAR_SERVICES.has(service) && canTransmit,
    );
    return paths.length === 0 ? [id] : paths.map(({ antennaId }) => antennaId);
  });
  return [...new Set(antennas)];
}

const FAR_SERVICES: ReadonlySet<string> = new Set(['mf-hf', 'l-band']);

/** Duplication: a second VHF that alerts and, beyond A1, a second MF set or a satellite set. */
export function duplication(input: PackInput, { beyondA1 }: { beyondA1: boolean }): Answer {
  const vhf = ids(vhfOnAir(input).filter(hasDsc));
  if (vhf.length < 2) {
    return notMet(
      vhf.length === 0 ? 'No VHF set that can alert.' : `${tagsOf(input, vhf)} only: no second VHF that can alert.`,
      itemSubjects(vhf),
    );
  }
  const shared = sharedSupply(input, vhf);
  if (!beyondA1) return met(`${tagsOf(input, vhf)}.${shared}`, itemSubjects(vhf));
  const hf = ids(hfOnAir(input).filter(hasDsc));
  if (hf.length >= 2) return met(`${tagsOf(input, [...vhf, ...hf])}.${shared}`, itemSubjects([...vhf, ...hf]));
  const satellite = bySatellite(input, 'No second MF set and no satellite set with sky.');
  return {
    ...satellite,
    because: [`${tagsOf(input, vhf)}. `, ...satellite.because, shared],
    subjects: [...itemSubjects(vhf), ...satellite.subjects],
  };
}

/** What two sets both hang on, in a sentence; nothing where they share nothing. */
function sharedSupply(input: PackInput, setIds: readonly string[]): string {
  const { independence, labels } = input.study();
  const lists = independence.means.filter(({ itemId }) => setIds.includes(itemId)).map(({ hangsOn }) => hangsOn);
  const [first, ...rest] = lists;
  const shared = (first ?? []).filter((id) => rest.every((list) => list.includes(id)));
  if (lists.length < 2 || shared.length === 0) return '';
  return ` Mind: all of them hang on ${listInWords(shared.map((id) => labels.get(id)?.label ?? id))}.`;
}

/** How many of the three methods of keeping the radio working; contracts and skills are not on a drawing. */
export function availability(input: PackInput, least: number): Answer {
  const doubled = duplication(input, { beyondA1: input.seaArea !== 'A1' });
  const isDoubled = doubled.verdict === 'met';
  if (isDoubled && least === 1) return met(['By duplicated equipment: ', ...doubled.because], doubled.subjects);
  if (!isDoubled && least > 1) {
    return cannotTell(
      'Equipment is not duplicated as far as can be seen; that leaves upkeep both ashore and at sea: look for the contract, and for tools, spares and a trained hand aboard.',
      doubled.subjects,
    );
  }
  const have = isDoubled
    ? 'Duplicated equipment is one; the second would be'
    : 'Equipment is not duplicated as far as can be seen; that leaves';
  return cannotTell(
    `${have} upkeep ashore or at sea: look for the contract, or for tools, spares and a trained hand aboard.`,
    doubled.subjects,
  );
}
