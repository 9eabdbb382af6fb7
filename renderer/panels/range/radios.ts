import { indexProject } from '../../../core/catalogue/lookup.ts';
import type { PathBudget } from '../../../core/links/types.ts';
import { DEFAULT_STATIONS } from '../../../core/model/defaults.ts';
import type { Project, Station, Subject } from '../../../core/model/project.ts';
import { seaServiceOf } from '../../../core/reach/ownSide.ts';
import { isInSeaModel } from '../../../core/reach/ranges.ts';
import type { GnssResult, HfResult, RangeResult, SatelliteResult, SeaService } from '../../../core/reach/types.ts';
import { itemTag } from '../../../core/report/words.ts';
import { q, type RichText } from '../../../core/units/quantity.ts';
import { groupName, mainGroup, type RangeGroup, rangeGroups } from './groups.ts';

/** Everything that says how far a radio reaches. */
export interface Reaches {
  readonly paths: readonly PathBudget[];
  readonly ranges: readonly RangeResult[];
  readonly hf: readonly HfResult[];
  readonly satellites: readonly SatelliteResult[];
  readonly gnss: readonly GnssResult[];
}

/** One entry of the page's chooser: a radio by one path, and what there is to say of it. */
export type RadioChoice = { readonly id: string; readonly path: PathBudget | null } & (
  | { readonly kind: 'sea'; readonly group: RangeGroup }
  | { readonly kind: 'hf'; readonly result: HfResult }
  | { readonly kind: 'satellite'; readonly result: SatelliteResult }
  | { readonly kind: 'gnss'; readonly result: GnssResult }
);

const SEA_ORDER: readonly SeaService[] = ['voice', 'ais', 'cellular', 'wifi', 'homing'];

/** All radios: over the sea by service, voice first, then HF, satellites and receivers of positions. */
export function radioChoices({ paths, ranges, hf, satellites, gnss }: Reaches): readonly RadioChoice[] {
  const pathOf = (id: string | null): PathBudget | null => paths.find((path) => path.id === id) ?? null;
  const order = (group: RangeGroup): number => SEA_ORDER.indexOf(group.results[0]?.service ?? 'voice');
  const groups = [...rangeGroups(ranges, paths)].sort((a, b) => order(a) - order(b));
  return [
    ...groups.map((group) => ({ kind: 'sea' as const, id: group.id, path: group.path, group })),
    ...hf.map((result) => ({ kind: 'hf' as const, id: `hf ${result.id}`, path: pathOf(result.pathId), result })),
    ...satellites.map((result) => ({
      kind: 'satellite' as const,
      id: `satellite ${result.id}`,
      path: pathOf(result.pathId),
      result,
    })),
    ...gnss.map((result) => ({ kind: 'gnss' as const, id: `gnss ${result.id}`, path: pathOf(result.pathId), result })),
  ];
}

/** A service aboard that no station answers, with the sets that have it and a far end to begin with. */
export interface Unanswered {
  readonly service: SeaService;
  readonly tags: readonly string[];
  readonly station: Omit<Station, 'id'>;
}

const USUAL_STATION: Readonly<Record<SeaService, string>> = {
  voice: 'ship-bridge',
  ais: 'ship-bridge',
  cellular: 'mobile-mast',
  wifi: 'harbour-wifi',
  homing: 'rescue-helicopter',
};

/** Sets over the sea that have no range because no station has their service. */
export function unanswered(
  project: Project,
  paths: readonly PathBudget[],
  ranges: readonly RangeResult[],
): readonly Unanswered[] {
  const { items, effective } = indexProject(project);
  const ranged = new Set(ranges.map(({ pathId }) => pathId));
  const tags = new Map<SeaService, Set<string>>();
  for (const path of paths) {
    const [item, part] = [items.get(path.radioId), effective.get(path.radioId)];
    if (ranged.has(path.id) || !item || part?.kind !== 'radio' || !isInSeaModel(path.frequencyMhz)) continue;
    const service = seaServiceOf({ kind: 'path', path, item, part });
    if (service !== null) tags.set(service, (tags.get(service) ?? new Set()).add(item.tag));
  }
  return [...tags].flatMap(([service, found]) => {
    const usual = DEFAULT_STATIONS.find(({ id }) => id === USUAL_STATION[service]);
    if (!usual) return [];
    const { id: _fresh, ...station } = usual;
    return [{ service, tags: [...found], station }];
  });
}

/** `VHF-1 by A1, voice 156.8 MHz`, `HF-1 by A2, medium and short wave`. */
export function radioName(project: Project, choice: RadioChoice): RichText {
  if (choice.kind === 'sea') return groupName(project, choice.group);
  const { itemId, antennaId, pathId } = choice.result;
  const by = pathId === null ? 'own antenna' : `by ${itemTag(project, antennaId)}`;
  const start = `${itemTag(project, itemId)}${pathId === null ? ',' : ''} ${by}, `;
  if (choice.kind === 'hf') return [start, choice.result.canTransmit ? 'MF/HF' : 'MF/HF reception'];
  if (choice.kind === 'gnss') return [start, 'position'];
  return [start, 'satellite ', q(choice.result.frequencyMhz, 'MHz', 0)];
}

/** Radios that what is selected has to do with. */
export function radiosTouched(choices: readonly RadioChoice[], selection: readonly Subject[]): readonly RadioChoice[] {
  return choices.filter((choice) => {
    const { path } = choice;
    const ids = choice.kind === 'sea' ? [choice.group.itemId] : [choice.result.itemId, choice.result.antennaId];
    const items = [...ids, ...(path ? [path.antennaId, ...path.deviceIds] : [])];
    return selection.some(({ kind, id }) =>
      kind === 'run' ? (path?.runIds.includes(id) ?? false) : kind === 'item' && items.includes(id),
    );
  });
}

/** The main fixed VHF; without one the first radio there is. */
export function mainRadio(choices: readonly RadioChoice[]): RadioChoice | null {
  const groups = choices.flatMap((choice) => (choice.kind === 'sea' ? [choice.group] : []));
  const main = mainGroup(groups);
  return choices.find(({ id }) => id === main?.id) ?? choices[0] ?? null;
}
