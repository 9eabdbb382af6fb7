import type { ServiceId } from '../../model/services.ts';
import { SHORE_SERVICES } from '../../redundancy/independence.ts';
import { cannotTell, itemSubjects, met, notMet, tagsOf, verb } from '../answers.ts';
import { hfOnAir, ids, isDistressTerminal, radioSets, satelliteSets, standaloneSets, vhfOnAir } from '../sets.ts';
import type { Answer, PackInput, SeaArea } from '../types.ts';
import { anyMeans } from './alertMeans.ts';

const ASKED_FOR: Readonly<Record<SeaArea, string>> = {
  A1: 'VHF or MF/HF with selective calling, or a satellite set',
  A2: 'MF/HF with selective calling or a satellite set',
  A3: 'MF/HF with selective calling or a satellite set',
  A4: 'MF/HF with selective calling',
};

export function receiveShoreAlerts(input: PackInput): Answer {
  const { seaArea } = input;
  const missing = `In ${seaArea} that takes ${ASKED_FOR[seaArea]} on an antenna; none is on the drawing.`;
  return anyMeans(input, SHORE_SERVICES[seaArea], missing);
}

export const shipToShipAlerts = (input: PackInput): Answer =>
  anyMeans(input, ['vhf-dsc', 'mf-hf-dsc'], 'No set with selective calling is joined to an antenna it may send into.');

/** Voice with the rescue services, as far off as the sea area goes. */
export function rescueVoice(input: PackInput): Answer {
  const { seaArea } = input;
  const [vhf, hf, satellite] = [ids(vhfOnAir(input)), ids(hfOnAir(input)), ids(satelliteSets(input))];
  if (seaArea === 'A1' && vhf.length > 0) return met(`By VHF voice: ${tagsOf(input, vhf)}.`, itemSubjects(vhf));
  if (hf.length > 0) return met(`By MF/HF voice: ${tagsOf(input, hf)}.`, itemSubjects(hf));
  if (seaArea !== 'A4' && satellite.length > 0) {
    const named = tagsOf(input, satellite);
    return cannotTell(
      `Only ${named} by satellite; whether a rescue centre can be worked through the service is not recorded: ask the provider.`,
      itemSubjects(satellite),
    );
  }
  if (vhf.length > 0) return onlyNear(input, vhf);
  return notMet('No fixed set is joined to an antenna it may send into.');
}

const onlyNear = (input: PackInput, vhf: readonly string[]): Answer =>
  notMet(`${tagsOf(input, vhf)} on VHF ${verb(vhf, 'reaches', 'reach')} no farther than A1.`, itemSubjects(vhf));

/** Talk on the scene: near, so that a handheld will do. */
export function onScene(input: PackInput): Answer {
  const fixed = ids(vhfOnAir(input));
  if (fixed.length > 0) return met(`By VHF voice: ${tagsOf(input, fixed)}.`, itemSubjects(fixed));
  const handheld = ids(standaloneSets(input, 'handheld-vhf', 'handheld-vhf-dsc'));
  if (handheld.length > 0) return met(`By handheld: ${tagsOf(input, handheld)}.`, itemSubjects(handheld));
  return notMet('No VHF set is ready to send.');
}

export function locatingSignals(input: PackInput): Answer {
  const devices = ids(standaloneSets(input, 'radar-sart', 'ais-sart'));
  if (devices.length > 0) return met(`By ${tagsOf(input, devices)}.`, itemSubjects(devices));
  const beacons = ids(standaloneSets(input, 'beacon-406'));
  if (beacons.length === 0) return notMet('No search transponder and no beacon on the drawing.');
  return cannotTell(
    `No search transponder; ${tagsOf(input, beacons)} can be homed on, and whether that will do is not said in the text as seen.`,
    itemSubjects(beacons),
  );
}

/** NAVTEX receivers: the class also holds weather-fax sets, whose socket is for short wave. */
export const navtexSets = (input: PackInput): readonly string[] =>
  radioSets(input, 'navtex-receiver')
    .filter(({ part }) => part.ports.some((port) => port.medium === 'rf' && port.bands.includes('navtex')))
    .map(({ item }) => item.id);

export const onAntenna = (input: PackInput, itemIds: readonly string[]): readonly string[] =>
  itemIds.filter((id) => input.paths.some((path) => path.radioId === id));

export function safetyInformation(input: PackInput): Answer {
  const navtex = onAntenna(input, navtexSets(input));
  if (navtex.length > 0) return met(`By NAVTEX: ${tagsOf(input, navtex)}.`, itemSubjects(navtex));
  const terminals = ids(satelliteSets(input).filter(isDistressTerminal));
  if (terminals.length > 0) return met(`By satellite broadcast: ${tagsOf(input, terminals)}.`, itemSubjects(terminals));
  const vhf = ids(vhfOnAir(input));
  if (vhf.length > 0 && input.seaArea === 'A1') {
    return met(`Coast stations’ broadcasts on VHF: ${tagsOf(input, vhf)}.`, itemSubjects(vhf));
  }
  const others = setsOf(input, 'safety-information');
  if (others.length === 0) return notMet('Nothing on the drawing receives broadcasts of safety information.');
  return cannotTell(
    `No NAVTEX; ${tagsOf(input, others)} may hear some of it, by what is broadcast where she goes and what is subscribed to.`,
    itemSubjects(others),
  );
}

/** Ordinary traffic with the shore; by VHF only where a coast station is in its reach, which is what A1 is. */
export function generalTraffic(input: PackInput): Answer {
  const vhf = ids(vhfOnAir(input));
  const sets = [...new Set([...setsOf(input, 'long-range'), ...(input.seaArea === 'A1' ? vhf : [])])];
  if (sets.length === 0 && vhf.length > 0) return onlyNear(input, vhf);
  if (sets.length === 0) return notMet('No set that could reach the shore is ready to send.');
  return met(`By ${tagsOf(input, sets)}.`, itemSubjects(sets));
}

export function bridgeToBridge(input: PackInput): Answer {
  const fixed = ids(vhfOnAir(input));
  if (fixed.length > 0) return met(`By VHF voice: ${tagsOf(input, fixed)}.`, itemSubjects(fixed));
  const handheld = ids(standaloneSets(input, 'handheld-vhf', 'handheld-vhf-dsc'));
  if (handheld.length === 0) return notMet('No VHF set is ready to send.');
  return cannotTell(
    `Only by handheld: ${tagsOf(input, handheld)}. Whether it is at the helm and charged at all times is for the eye.`,
    itemSubjects(handheld),
  );
}

function setsOf(input: PackInput, serviceId: ServiceId): readonly string[] {
  const ways = input.redundancy.ways.filter((way) => way.serviceId === serviceId && !way.carried);
  return [...new Set(ways.map(({ itemId }) => itemId))];
}
