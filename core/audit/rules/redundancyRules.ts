import type { Subject } from '../../model/project.ts';
import type { ServiceId } from '../../model/services.ts';
import type { Component, MatrixRow } from '../../redundancy/types.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { AuditInput, Remark, Rule } from '../rule.ts';
import { itemSubject, itemsOf, listInWords, tagOf } from '../rule.ts';

/** Services whose loss to one thing shared by several sets is a matter of safety. */
const CALLING: ReadonlySet<ServiceId> = new Set<ServiceId>([
  'voice-fixed',
  'digital-alert',
  'ais-transmit',
  'ais-receive',
]);

export const sharedSinglePoint: Rule = {
  id: 'shared-single-point',
  summary: 'One thing that several sets share takes away voice, alert or AIS of all of them.',
  severity: 'A',
  authority: AUTHORITIES.sharedFailure,
  check: (input) => {
    const groups = new Map<string, Shared>();
    for (const { componentId, serviceIds } of input.redundancy.singlePoints) {
      const taken = serviceIds.filter((id) => CALLING.has(id));
      const sets = setsHanging(input, componentId, taken);
      if (sets.length < 2) continue;
      const key = `${sets.join()}|${taken.join()}`;
      const group = groups.get(key) ?? { sets, taken, components: [] };
      const component = input.redundancy.components.find((each) => each.id === componentId);
      if (component) group.components.push(component);
      groups.set(key, group);
    }
    return [...groups.values()].map((group) => sharedRemark(input, group));
  },
};

interface Shared {
  readonly sets: readonly string[];
  readonly taken: readonly ServiceId[];
  readonly components: Component[];
}

/** Radios whose ways of some services hang on a component. */
function setsHanging(input: AuditInput, componentId: string, services: readonly ServiceId[]): readonly string[] {
  const sets = new Set<string>();
  for (const way of input.redundancy.ways) {
    if (!services.includes(way.serviceId) || !way.hangsOn.includes(componentId)) continue;
    for (const { kind, id } of way.subjects) {
      if (kind === 'item' && input.index.effective.get(id)?.kind === 'radio') sets.add(id);
    }
  }
  return [...sets].sort();
}

/** From aloft to the bilge, as one would follow the way of a signal and then of its supply. */
const KIND_ORDER: readonly Component['kind'][] = [
  'structure',
  'antenna',
  'cable',
  'joint',
  'device',
  'breaker',
  'bank',
  'feed',
];

function orderOf({ kind }: Component): number {
  const place = KIND_ORDER.indexOf(kind);
  return place < 0 ? KIND_ORDER.length : place;
}

function sharedRemark(input: AuditInput, { sets, taken, components }: Shared): Remark {
  const tags = listInWords(sets.map((id) => tagOf(input, id)));
  const sorted = [...components].sort((a, b) => orderOf(a) - orderOf(b));
  return {
    subjects: sorted.map((component) => component.subject),
    title: `${tags} fall together`,
    measured: [
      `${sorted.length > 1 ? 'Each of these alone' : 'One thing'} takes away ${servicesInWords(taken)}: ${listInWords(sorted.map((each) => each.label))}.`,
    ],
    limit: ['No single failure ends all of it; two means of calling are independent from antenna to battery.'],
    action: [sharedAction(sorted)],
  };
}

function sharedAction(components: readonly Component[]): string {
  const has = (...kinds: Component['kind'][]): boolean => components.some(({ kind }) => kinds.includes(kind));
  const signal = has('structure', 'antenna', 'cable', 'joint', 'device')
    ? ['an antenna and feeder of its own off this mast']
    : [];
  const supply = has('breaker', 'bank', 'feed')
    ? ['a supply of its own from another battery, by a qualified marine electrician']
    : [];
  return `Give one of the sets ${[...signal, ...supply].join(', and ')}; then look at the failure matrix again.`;
}

const IN_WORDS: Readonly<Record<ServiceId, string>> = {
  'voice-fixed': 'fixed VHF voice',
  'voice-handheld': 'handheld voice',
  'digital-alert': 'the digital alert',
  'ais-transmit': 'being seen on AIS',
  'ais-receive': 'seeing others on AIS',
  'safety-information': 'safety information',
  'long-range': 'long-range calling',
  beacon: 'the beacon',
  position: 'position',
  locating: 'the locating signal',
  'internet-near-shore': 'internet near shore',
  'person-overboard': 'locating a person overboard',
};

function servicesInWords(ids: readonly ServiceId[]): string {
  return listInWords(ids.map((id) => IN_WORDS[id]));
}

export interface FloodedBanks {
  readonly bankIds: readonly string[];
  readonly levelM: number;
  readonly compartmentSubjects: readonly Subject[];
  /** Two or more fixed VHF sets end with it, so that having two was no help. */
  readonly defeatsDuplicates: boolean;
  readonly row: MatrixRow;
}

/** The flood that takes every battery the sets hang on, if one does. */
export function floodedBanks(input: AuditInput): FloodedBanks | null {
  const banks = input.redundancy.components.filter((component) => component.kind === 'bank');
  for (const row of input.redundancy.matrix) {
    const { kind, downIds } = row.event;
    if (kind !== 'flood' || banks.length === 0 || !banks.every((bank) => downIds.includes(bank.id))) continue;
    const bankIds = banks.map((bank) => bank.subject.id);
    const items = bankIds.flatMap((id) => input.index.items.get(id) ?? []);
    const places = items.map((item) => input.index.places.get(item.placeId ?? '')?.compartmentId);
    const compartments = [...new Set(places.filter((id): id is string => typeof id === 'string'))];
    return {
      bankIds,
      levelM: Math.max(...items.map((item) => item.position.zM)),
      compartmentSubjects: compartments.map((id) => ({ kind: 'compartment', id })),
      defeatsDuplicates: voiceSets(input).length > 1 && isLost(row, 'voice-fixed'),
      row,
    };
  }
  return null;
}

function voiceSets(input: AuditInput): readonly string[] {
  const ways = input.redundancy.ways.filter((way) => way.serviceId === 'voice-fixed');
  return [...new Set(ways.flatMap((way) => way.subjects[0]?.id ?? []))];
}

function isLost(row: MatrixRow | undefined, serviceId: ServiceId): boolean {
  return row?.states.find((state) => state.serviceId === serviceId)?.grade === 'lost';
}

export const floodTakesAll: Rule = {
  id: 'flood-takes-all',
  summary: 'One flooded compartment ends every fixed VHF set of a boat that has two or more.',
  severity: 'A',
  authority: AUTHORITIES.batteryFlood,
  check: (input) => {
    const flooded = floodedBanks(input);
    if (!flooded?.defeatsDuplicates) return [];
    const [asDrawn] = input.redundancy.matrix;
    const lost = input.redundancy.services.filter((id) => isLost(flooded.row, id) && !isLost(asDrawn, id));
    return [
      {
        subjects: [...flooded.compartmentSubjects, ...flooded.bankIds.map(itemSubject)],
        title: 'One flooded compartment silences every fixed set',
        measured: [
          `${flooded.row.event.label}: lost are ${servicesInWords(lost)}, with ${listInWords(voiceSets(input).map((id) => tagOf(input, id)))} together.`,
        ],
        limit: ['A battery for the radio that flooding of one compartment does not reach.'],
        action: [
          'Fit a small battery high and dry in another compartment for one of the sets, with its own feed and fuse; work for a qualified marine electrician.',
        ],
      },
    ];
  },
};

const LONG_RANGE = /^(mf-hf|l-band|broadband)/;

export const longRangeOneSupply: Rule = {
  id: 'long-range-one-supply',
  summary: 'Two or more long-range sets are aboard, yet one bank, breaker or inverter ends all that works as fitted.',
  severity: 'B',
  authority: AUTHORITIES.sharedFailure,
  check: (input) => {
    const sets = itemsOf(input, 'radio')
      .filter(([, part]) => LONG_RANGE.test(part.radioClass))
      .map(([item]) => item);
    if (sets.length < 2) return [];
    const points = input.redundancy.singlePoints.filter(({ serviceIds }) => serviceIds.includes('long-range'));
    const supplies = points.flatMap(
      ({ componentId }) => input.redundancy.components.find((each) => each.id === componentId && isSupply(each)) ?? [],
    );
    if (supplies.length === 0) return [];
    return [
      {
        subjects: [...sets.map((item) => itemSubject(item.id)), ...supplies.map((component) => component.subject)],
        title: 'Long range hangs on one supply',
        measured: [
          `${listInWords(sets.map((item) => item.tag))}: as fitted, each of ${listInWords(supplies.map((each) => each.label))} alone ends it.`,
        ],
        limit: ['Long-range calling survives the loss of one supply.'],
        action: [
          'Feed one of the sets from another bank, or make its own battery good for it: antenna in the open, terminal charged and ready to carry.',
        ],
      },
    ];
  },
};

function isSupply({ kind }: Component): boolean {
  return kind === 'bank' || kind === 'breaker' || kind === 'power-device';
}

export const lightningMultihull: Rule = {
  id: 'lightning-multihull',
  summary: 'A multihull with a mast: lightning claims are about twice those of monohulls.',
  severity: 'C',
  authority: AUTHORITIES.lightning,
  check: (input) => {
    const { kind, masts } = input.project.boat;
    if (kind !== 'catamaran' || masts.length === 0) return [];
    const portable = input.project.items.filter((item) => isPortable(input, item.id));
    if (portable.length === 0) return [];
    return [
      {
        subjects: portable.map((item) => itemSubject(item.id)),
        title: 'Keep a set unplugged in storms',
        measured: ['A catamaran with a mast; a strike may take everything that is plugged in.'],
        limit: ['A US insurer counted about twice as many claims per boat as from monohulls.'],
        action: [
          `When lightning is about, ${listInWords(portable.map((item) => item.tag))} unplugged from antenna and supply. After a strike have compasses, electronics, bonding and the hull below water checked.`,
        ],
      },
    ];
  },
};

function isPortable(input: AuditInput, itemId: string): boolean {
  const part = input.index.effective.get(itemId);
  if (part?.kind === 'radio') return part.traits.portable;
  return part?.kind === 'standalone' && part.standaloneClass.startsWith('handheld');
}
