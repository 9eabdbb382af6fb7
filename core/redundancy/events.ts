import type { DeviceClass, EquipmentClass, PowerClass } from '../model/part.ts';
import type { Item } from '../model/project.ts';
import type { Build } from './build.ts';
import { abandonEvent, fireEvent, floodEvents, lightningEvent } from './commonCauses.ts';
import { findStructure, structureName } from './components.ts';
import { ownEvents } from './ownEvents.ts';
import { lostWith, type Placed, placedComponents } from './placed.ts';
import type { Component, FailureEvent } from './types.ts';

/** The failures a project is tried against, and those its user has left out. */
export interface Events {
  readonly tried: readonly FailureEvent[];
  readonly excluded: readonly FailureEvent[];
}

/**
 * The failures of a project in the order of the matrix: nothing, structures, supply, devices, common causes, the user's own.
 * That nothing has failed is always tried.
 */
export function failureEvents(build: Build): Events {
  const left = new Set(build.project.settings.redundancy.excludedEventIds);
  const events = possibleEvents(build);
  const isExcluded = ({ id, kind }: FailureEvent): boolean => kind !== 'none' && left.has(id);
  return { tried: events.filter((event) => !isExcluded(event)), excluded: events.filter(isExcluded) };
}

function possibleEvents(build: Build): readonly FailureEvent[] {
  const placed = placedComponents(build);
  return [
    {
      id: 'none',
      label: 'Nothing failed',
      kind: 'none',
      downIds: [],
      note: 'The installation as drawn, in good order.',
    },
    ...mastEvents(build, placed),
    ...structureEvents(build, placed),
    ...ofPower(build, placed, OPENS, 'breaker'),
    ...deviceEvents(build, placed),
    ...ofPower(build, placed, FLAT, 'bank'),
    ...floodEvents(build, placed),
    lightningEvent(build, placed),
    ...sourceEvents(build, placed),
    ...fireEvent(build, placed),
    ...ownEvents(build, placed),
    abandonEvent(build, placed),
  ];
}

function mastEvents(build: Build, placed: readonly Placed[]): readonly FailureEvent[] {
  const masts = [...build.project.boat.masts].sort((a, b) => b.truckZM - a.truckZM);
  const note = 'The mast goes over the side with all that stands on it, and with wires hung from it.';
  const events = masts.map((mast): FailureEvent => {
    const downIds = lostWith(placed, [mast.id]);
    return { id: `mast:${mast.id}`, label: `${mast.name} lost`, kind: 'mast', downIds, note };
  });
  if (masts.length < 2) return events;
  const downIds = lostWith(
    placed,
    masts.map((mast) => mast.id),
  );
  const label = masts.length === 2 ? 'Both masts lost' : 'All masts lost';
  return [...events, { id: 'all-masts', label, kind: 'all-masts', downIds, note: 'All masts go over the side.' }];
}

function structureEvents(build: Build, placed: readonly Placed[]): readonly FailureEvent[] {
  const carrying = new Set<string>();
  for (const { component, structures } of placed) {
    const serves = component.kind === 'antenna' || component.kind === 'radio' || component.kind === 'position-source';
    if (serves) for (const id of structures) carrying.add(id);
  }
  const note = 'It is carried away with all that stands on it.';
  const masts = new Set(build.project.boat.masts.map((mast) => mast.id));
  return [...carrying]
    .filter((id) => !masts.has(id) && findStructure(build.project, id) !== undefined)
    .map((id) => {
      const label = `${structureName(build.project, id)} lost`;
      return { id: `structure:${id}`, label, kind: 'structure', downIds: lostWith(placed, [id]), note };
    });
}

type Wording = readonly [label: (tag: string, name: string) => string, note: string];

const OPENS: Partial<Record<PowerClass, Wording>> = {
  breaker: [(tag) => `Breaker ${tag} opens`, 'Nothing behind it has supply.'],
  panel: [(tag) => `Panel ${tag} dead`, 'Nothing behind it has supply.'],
  'fuse-holder': [(tag) => `Fuse ${tag} blows`, 'Nothing behind it has supply.'],
};

const FLAT: Partial<Record<PowerClass, Wording>> = {
  'battery-bank': [(tag, name) => `${name || tag} flat`, 'The bank gives nothing; no charger is at work.'],
  'starter-battery': [(tag, name) => `${name || tag} flat`, 'The battery gives nothing; no charger is at work.'],
};

function ofPower(
  build: Build,
  placed: readonly Placed[],
  wordings: Partial<Record<PowerClass, Wording>>,
  kind: 'breaker' | 'bank',
): readonly FailureEvent[] {
  return placed.flatMap(({ component, item }) => {
    const part = build.index.effective.get(item.id);
    const wording = part?.kind === 'power' ? wordings[part.powerClass] : undefined;
    return wording ? [single(component, item, kind, wording)] : [];
  });
}

function single(component: Component, item: Item, kind: FailureEvent['kind'], [label, note]: Wording): FailureEvent {
  return { id: `${kind}:${item.id}`, label: label(item.tag, item.name), kind, downIds: [component.id], note };
}

const DEVICES: Partial<Record<DeviceClass, string>> = {
  'splitter-active': 'Splitter',
  'splitter-passive': 'Splitter',
  diplexer: 'Diplexer',
  switch: 'Antenna switch',
  tuner: 'Antenna tuner',
  amplifier: 'Amplifier',
};

const POWER_DEVICES: Partial<Record<PowerClass, string>> = { inverter: 'Inverter', converter: 'Converter' };

function deviceEvents(build: Build, placed: readonly Placed[]): readonly FailureEvent[] {
  return placed.flatMap(({ component, item }) => {
    const part = build.index.effective.get(item.id);
    const word =
      part?.kind === 'inline'
        ? DEVICES[part.deviceClass]
        : part?.kind === 'power'
          ? POWER_DEVICES[part.powerClass]
          : undefined;
    if (word === undefined) return [];
    return [single(component, item, 'device', [(tag) => `${word} ${tag} fails`, 'It lets nothing through.'])];
  });
}

const BUSES: Partial<Record<EquipmentClass, string>> = {
  'data-bus': 'Data bus',
  router: 'Router',
  display: 'Display',
};

function sourceEvents(build: Build, placed: readonly Placed[]): readonly FailureEvent[] {
  const sources: FailureEvent[] = [];
  const buses: FailureEvent[] = [];
  for (const { component, item } of placed) {
    const part = build.index.effective.get(item.id);
    const isReceiver = part?.kind === 'radio' && part.radioClass === 'gnss-receiver';
    if (part?.kind === 'position-source' || isReceiver) {
      const wording: Wording = [(tag) => `Position source ${tag} fails`, 'No position comes from it.'];
      sources.push(single(component, item, 'position-source', wording));
    }
    const word = part?.kind === 'equipment' ? BUSES[part.equipmentClass] : undefined;
    if (word === undefined) continue;
    buses.push(single(component, item, 'data-bus', [(tag) => `${word} ${tag} fails`, 'No data passes through it.']));
  }
  return [...sources, ...buses];
}
