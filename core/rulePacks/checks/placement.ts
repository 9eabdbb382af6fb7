import { placeOf } from '../../catalogue/lookup.ts';
import type { Subject } from '../../model/project.ts';
import { positionGate } from '../../redundancy/fix.ts';
import { q, type RichText } from '../../units/quantity.ts';
import {
  adding,
  cannotTell,
  doesNotApply,
  itemSubject,
  itemSubjects,
  listInWords,
  met,
  notMet,
  tagOf,
  tagsOf,
  together,
} from '../answers.ts';
import { RULE_FIGURES } from '../figures.ts';
import { hasDsc, ids, radioSets, satelliteSets, vhfSets } from '../sets.ts';
import type { Answer, PackInput } from '../types.ts';
import { isRadioOnly, reserveApart } from './reserveApart.ts';
import { distressReserve, radioBatteries, reserveHours } from './reserveRules.ts';
import type { Battery } from './supply.ts';
import { loadsOf, sourcesOf } from './supply.ts';

/** Less than this above the waterline a battery is dry in a level boat only, m. Own rule, no source. */
const WELL_ABOVE_M = 0.3;

/** Batteries of the radio against the water that a flooded compartment holds. */
export function batteryDry(input: PackInput): Answer {
  const batteries = radioBatteries(input).map(({ item }) => item.id);
  const [top] = [...batteries].sort((a, b) => heightM(input, b) - heightM(input, a));
  if (top === undefined) return noBattery(input);
  const { matrix, excluded } = input.redundancy;
  const floods = [...matrix.map(({ event }) => event), ...excluded].filter(({ kind }) => kind === 'flood');
  const flood = floods.find(({ downIds }) => downIds.includes(`item:${top}`));
  const where: RichText = [`${tagOf(input, top)} stands at `, q(heightM(input, top), 'm', 2), ' from the waterline'];
  const subjects = itemSubjects(batteries);
  if (flood) return notMet([...where, `: ${flood.label}.`], subjects);
  if (heightM(input, top) < 0) return notMet([...where, '.'], subjects);
  if (heightM(input, top) >= WELL_ABOVE_M) return met([...where, '.'], subjects);
  return cannotTell([...where, ', little enough: whether higher is practicable is for the surveyor.'], subjects);
}

const noBattery = (input: PackInput): Answer =>
  cannotTell('No battery of a fixed VHF set is drawn: look where it stands.', itemSubjects(ids(vhfSets(input))));

const heightM = ({ index }: PackInput, id: string): number => index.items.get(id)?.position.zM ?? 0;

/** Battery in the upper part of the boat: read here as above the deck edge amidships, and not so below the waterline. */
function batteryHigh(input: PackInput, batteries = radioBatteries(input)): Answer {
  if (batteries.length === 0) return noBattery(input);
  const [top] = [...batteries].sort((a, b) => b.item.position.zM - a.item.position.zM);
  if (!top) return cannotTell('No battery is drawn.');
  const { zM } = top.item.position;
  const words: RichText = [
    `${top.item.tag} stands at `,
    q(zM, 'm', 2),
    ' from the waterline, the deck edge at ',
    q(input.project.boat.freeboardMidM, 'm', 2),
    '.',
  ];
  const subjects = [itemSubject(top.item.id)];
  if (zM < 0) return notMet(words, subjects);
  if (zM < input.project.boat.freeboardMidM)
    return cannotTell([...words, ' Whether that is the upper part is for the surveyor.'], subjects);
  return met(words, subjects);
}

/** The same for the rule that asks for head room too. */
export function batteryHighSecured(input: PackInput): Answer {
  const given = batteryHigh(input);
  if (given.verdict !== 'met') return given;
  return adding(given, [
    'That it is secured, with ',
    q(RULE_FIGURES.usBatteryHeadRoomM, 'm', 2),
    ' above it, is for the eye.',
  ]);
}

/** A reserve for the VHF sets that lasts, is apart from the main supply, and stands high. */
export function highReserve(input: PackInput, leastH: number): Answer {
  const { answer: apart, banks } = reserveApart(input);
  const counted = apart.verdict === 'met' ? banks : undefined;
  return together(
    reserveHours(input, leastH, [vhfSets(input)], { banks: counted }),
    apart,
    batteryHigh(input, counted),
  );
}

/** Voltage at the VHF set while it sends, measured where it was, else reckoned from a full battery. */
export function voltageAtSet(input: PackInput): Answer {
  const sets = vhfSets(input);
  if (sets.length === 0) return doesNotApply('No fixed VHF set on the drawing.');
  const found = sets.map((set) => voltageOf(input, set.item.id, set.part.figures.supplyVoltageV.value));
  const known = found.flatMap((each) => each ?? []);
  const [worst] = [...known].sort((a, b) => b.offPercent - a.offPercent);
  if (!worst)
    return cannotTell(
      `No feed of ${tagsOf(input, ids(sets))} is drawn and no voltage on transmit is recorded: measure it.`,
      itemSubjects(ids(sets)),
    );
  const limit = RULE_FIGURES.usVoltagePercent;
  const words: RichText = [
    ...worst.words,
    ': ',
    q(worst.offPercent, 'percent', 1),
    ' off; asked for: within ',
    q(limit, 'percent'),
    '.',
  ];
  return (worst.offPercent <= limit ? met : notMet)(words, worst.subjects);
}

interface AtSet {
  readonly offPercent: number;
  readonly words: RichText;
  readonly subjects: readonly Subject[];
}

function voltageOf(input: PackInput, itemId: string, ratedV: number): AtSet | null {
  const tag = tagOf(input, itemId);
  const measured = input.project.measurements.findLast(
    (each) => each.kind === 'supply-transmit-v' && each.subject.id === itemId,
  );
  if (measured && ratedV > 0) {
    const words: RichText = [
      `${tag} measured at `,
      q(measured.value, 'V', 1),
      ' on transmit, rated ',
      q(ratedV, 'V', 1),
    ];
    return { offPercent: (100 * Math.abs(ratedV - measured.value)) / ratedV, words, subjects: [itemSubject(itemId)] };
  }
  const feed = input.feeds.filter(({ loadId }) => loadId === itemId).sort((a, b) => a.totalDropV - b.totalDropV)[0];
  const [battery] = sourcesOf(input, itemId).batteries;
  if (!feed || !battery || ratedV <= 0) return null;
  const atSetV = battery.part.figures.voltageV.value - feed.totalDropV;
  return {
    offPercent: (100 * Math.abs(ratedV - atSetV)) / ratedV,
    words: [
      `${tag} reckoned at `,
      q(atSetV, 'V', 1),
      ` on transmit from a full ${battery.item.tag}, rated `,
      q(ratedV, 'V', 1),
    ],
    subjects: [itemSubject(itemId), { kind: 'feed', id: feed.feedId }],
  };
}

/** A position into every set that can alert. */
export function automaticPosition(input: PackInput): Answer {
  const dsc = [...vhfSets(input), ...radioSets(input, 'mf-hf')].filter(hasDsc).map(({ item }) => item);
  const satellite = satelliteSets(input).filter(({ id }) => input.index.effective.get(id)?.kind === 'radio');
  const sets = [...new Map([...dsc, ...satellite].map((item) => [item.id, item])).values()];
  if (sets.length === 0)
    return doesNotApply('No fixed set with selective calling and no fixed satellite set on the drawing.');
  const found = sets.map((item) => ({ item, gate: positionGate(input.build, item) }));
  const without = found.flatMap(({ item, gate }) => (gate.gate === null ? [{ item, reason: gate.reason }] : []));
  if (without.length === 0)
    return met(`${tagsOf(input, ids(sets))}: each has a position fed to it.`, itemSubjects(ids(sets)));
  const reasons = without.map(({ item, reason }) => (reason.includes(item.tag) ? reason : `${item.tag}: ${reason}`));
  const [first = '', ...more] = reasons;
  return notMet(
    `${listInWords([first.charAt(0).toUpperCase() + first.slice(1), ...more])}.`,
    itemSubjects(without.map(({ item }) => item.id)),
  );
}

const MACHINERY = /engine|machinery|motor/i;

/** Emergency power of a fishing vessel: apart from the main, outside the machinery space, for hours. */
export function fishingEmergencyPower(input: PackInput): Answer {
  const { answer: apart, banks } = reserveApart(input);
  if (apart.verdict !== 'met') return apart;
  const hours = distressReserve(input, RULE_FIGURES.usFishingReserveH, banks);
  if (hours.verdict !== 'met') return hours;
  const reckoned = banks.filter(({ item }) => hours.subjects.some(({ id }) => id === item.id));
  const placed = outsideMachinery(input, hours, reckoned);
  if (placed.verdict !== 'met') return placed;
  if (input.project.boat.loaM < RULE_FIGURES.usFishingShortM)
    return adding(placed, 'Under 11 m communications are enough where torches are carried.');
  const [forRadio] = reckoned.filter((battery) => isRadioOnly(input, battery));
  if (forRadio)
    return cannotTell(
      [
        ...placed.because,
        ` ${forRadio.item.tag} feeds radio only as drawn, and from 11 m every load that emergency power is for counts: see what feeds pumps and lights.`,
      ],
      placed.subjects,
    );
  const rest = reckoned.flatMap(({ item }) => loadsOf(input, item.id)).length;
  return adding(
    placed,
    `Counted: the ${rest} loads drawn on it; pumps and lights that are not drawn are not in the sum.`,
  );
}

/** Where the batteries stand, behind the hours they last. */
function outsideMachinery(input: PackInput, hours: Answer, batteries: readonly Battery[]): Answer {
  const place = batteries.map((battery) => ({ battery, where: whereIs(input, battery) }));
  const inside = place.find(({ where }) => where !== null && MACHINERY.test(where));
  if (inside)
    return notMet(
      [...hours.because, ` ${inside.battery.item.tag} stands in the ${inside.where ?? ''}.`],
      hours.subjects,
    );
  const unknown = place.find(({ where }) => where === null);
  if (unknown)
    return cannotTell(
      [...hours.because, ` In which space ${unknown.battery.item.tag} stands is not recorded.`],
      hours.subjects,
    );
  return met(
    [...hours.because, ` ${place.map(({ battery, where }) => `${battery.item.tag}: ${where ?? ''}`).join('; ')}.`],
    hours.subjects,
  );
}

function whereIs(input: PackInput, { item }: Battery): string | null {
  const place = placeOf(input.project, item);
  if (!place) return null;
  const compartment = input.project.boat.compartments.find(({ id }) => id === place.compartmentId);
  return compartment ? `${place.name}, ${compartment.name}` : place.name;
}
