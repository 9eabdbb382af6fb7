import type { PathBudget } from '../../../core/links/types.ts';
import type { HorizonRule, Project, Station, Subject } from '../../../core/model/project.ts';
import { type RangeResult, SEA_SERVICE_WORDS } from '../../../core/reach/types.ts';
import { itemTag } from '../../../core/report/words.ts';
import { q, type RichText } from '../../../core/units/quantity.ts';
import { megahertz } from '../pathLoss/figures.ts';

/** Ranges of one radio by one path: a row for each station. */
export interface RangeGroup {
  readonly id: string;
  readonly itemId: string;
  readonly path: PathBudget | null;
  readonly results: readonly RangeResult[];
}

/** Ranges put together by radio and path, in the order core gives them. */
export function rangeGroups(ranges: readonly RangeResult[], paths: readonly PathBudget[]): readonly RangeGroup[] {
  const byId = new Map<string, RangeResult[]>();
  for (const result of ranges) {
    const id = result.pathId ?? result.itemId;
    const group = byId.get(id);
    if (group) group.push(result);
    else byId.set(id, [result]);
  }
  return [...byId].flatMap(([id, results]) => {
    const [first] = results;
    return first
      ? [{ id, itemId: first.itemId, path: paths.find((path) => path.id === first.pathId) ?? null, results }]
      : [];
  });
}

/** `VHF-1 by A1, voice 156.8 MHz`. */
export function groupName(project: Project, { itemId, path, results }: RangeGroup): RichText {
  const by = path ? ` by ${itemTag(project, path.antennaId)}` : ', own antenna';
  const [first] = results;
  if (!first) return [itemTag(project, itemId)];
  return [`${itemTag(project, itemId)}${by}, ${SEA_SERVICE_WORDS[first.service]} `, megahertz(first.frequencyMhz)];
}

/** Groups that what is selected has to do with. */
export function groupsTouched(groups: readonly RangeGroup[], selection: readonly Subject[]): readonly RangeGroup[] {
  return groups.filter(({ itemId, path }) =>
    selection.some(({ kind, id }) => {
      if (kind === 'run') return path?.runIds.includes(id) ?? false;
      return kind === 'item' && (itemId === id || path?.antennaId === id || (path?.deviceIds.includes(id) ?? false));
    }),
  );
}

/** The main fixed VHF: the first voice set with a cabled antenna that needs no switch set; else whatever comes first. */
export function mainGroup(groups: readonly RangeGroup[]): RangeGroup | null {
  const fixed = groups.filter(({ path }) => path?.service === 'vhf-voice' && path.txPowerW !== null);
  return fixed.find(({ path }) => path?.switchIds.length === 0) ?? fixed[0] ?? groups[0] ?? null;
}

/** Which way gives out first, in words. */
export const LIMIT_WORDS: Readonly<Record<RangeResult['limitedBy'], string>> = {
  transmit: 'they lose you',
  receive: 'you lose them',
};

export const HORIZON_RULES: readonly { readonly id: HorizonRule; readonly name: string; readonly note: string }[] = [
  {
    id: 'four-thirds-earth',
    name: '4/3 earth',
    note: '2.226 (√h1 + √h2) NM, heights in m: standard refraction, ITU-R P.526',
  },
  { id: 'trade-2.25', name: 'trade 2.25', note: '2.25 (√h1 + √h2) NM, heights in m: common practice, no source' },
  { id: 'trade-2.2', name: 'trade 2.2', note: '2.2 (√h1 + √h2) NM, heights in m: common practice, no source' },
  { id: 'geometric', name: 'geometric', note: '1.927 (√h1 + √h2) NM, heights in m: no refraction, a straight ray' },
];

export const STATION_KINDS: readonly { readonly id: Station['kind']; readonly name: string }[] = [
  { id: 'yacht', name: 'Yacht' },
  { id: 'small-craft', name: 'Small craft' },
  { id: 'ship', name: 'Ship' },
  { id: 'coast', name: 'Coast station' },
  { id: 'raft', name: 'Raft' },
  { id: 'helicopter', name: 'Helicopter' },
  { id: 'mobile-mast', name: 'Mobile-network mast' },
  { id: 'access-point', name: 'Wi-Fi access point' },
];

/** A station to begin with: a ship's bridge, by the same common practice as the ones a project starts with. */
export function newStation(stations: readonly Station[]): Omit<Station, 'id'> {
  const names = new Set(stations.map(({ name }) => name));
  let number = stations.length + 1;
  while (names.has(`Station ${number}`)) number += 1;
  return {
    name: `Station ${number}`,
    kind: 'ship',
    antennaHeightM: 25,
    gainDbi: 2.15,
    feederLossDb: 2,
    voicePowerW: 25,
    aisPowerW: 12.5,
    cellularPowerW: 0,
    wifiPowerW: 0,
    sensitivityDbm: -107,
  };
}

/** `Like yacht: antenna 16.7 m, 25 W`: the power of the first service the station has. */
export function stationSummary(station: Station): RichText {
  const { voicePowerW, aisPowerW, cellularPowerW, wifiPowerW } = station;
  const powerW = [voicePowerW, aisPowerW, cellularPowerW, wifiPowerW].find((watts) => watts > 0) ?? 0;
  const digits = powerW % 1 === 0 ? 0 : powerW < 0.1 ? 2 : 1;
  return [`${station.name}: antenna `, q(station.antennaHeightM, 'm'), ', ', q(powerW, 'W', digits)];
}
