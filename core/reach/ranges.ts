import { indexProject } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import { marginDb } from '../model/margin.ts';
import type { Project, Settings, Station } from '../model/project.ts';
import { horizonKm } from '../propagation/horizon.ts';
import { reachSolver } from '../propagation/reach.ts';
import { frequencyOf, type OwnSide, ownSide, type Source, seaServiceOf } from './ownSide.ts';
import { AT_REST, type DistanceBand, type RangeResult, type TrialState } from './types.ts';
import { limitingWay, type Way, type Ways, waysTo, withoutFeederDb } from './ways.ts';

/** Span of carriers the sea model is meant for, MHz. Outside it no range is reckoned, and a finding says so. */
export const SEA_MODEL_MHZ = [100, 3000] as const;

/**
 * How far each path of voice, AIS, mobile data and Wi-Fi, each set complete with its own antenna and each homing signal
 * reaches each station that has the service. Where both ways must work the weaker one decides; a set that only hears, or only
 * sends, is judged by that. A measured feeder loss counts before the computed one. Upright, full power, the median. Results are
 * the same objects as before where nothing they depend on changed.
 */
export function solveRanges(project: Project, paths: readonly PathBudget[]): readonly RangeResult[] {
  const index = indexProject(project);
  const results: RangeResult[] = [];
  for (const path of paths) {
    const item = index.items.get(path.radioId);
    const part = index.effective.get(path.radioId);
    if (item && part?.kind === 'radio') {
      const inputs = [item, part, index.items.get(path.antennaId), index.effective.get(path.antennaId)];
      results.push(...toStations(project, path, inputs, { kind: 'path', path, item, part }));
    }
  }
  for (const item of project.items) {
    const part = index.effective.get(item.id);
    if (item.status !== 'remove' && part?.kind === 'standalone') {
      results.push(...toStations(project, item, [part], { kind: 'standalone', item, part }));
    }
  }
  return results;
}

/** A range with all it comes from. */
export interface SolvedRange {
  readonly own: OwnSide;
  readonly station: Station;
  readonly ways: Ways;
  readonly limiting: Way;
  readonly bandOf: (way: Way) => Pick<RangeResult, 'typical' | 'dependable'>;
  readonly range: RangeResult;
}

/**
 * The range of a result of `solveRanges` again, in another state.
 * @throws RangeError for a range that does not belong to this project
 */
export function solveAgain(
  project: Project,
  paths: readonly PathBudget[],
  range: RangeResult,
  state: TrialState,
): SolvedRange {
  const source = sourceOf(project, paths, range);
  const station = project.stations.find(({ id }) => id === range.stationId);
  const own = source && ownSide(project, source, range.service, state);
  const solved = own && station && rangeTo(own, station, project.settings, state.timePercent);
  if (!solved) throw new RangeError('This range does not belong to this project.');
  return solved;
}

/** How far one source reaches one station, at rest. */
export interface ReachTo extends Pick<RangeResult, 'ownHeightM' | 'typical' | 'dependable'> {
  readonly station: Station;
}

/**
 * How far a source reaches a station by one direction alone, or by the weaker of both; null where there is no such link. For
 * what the drawing does not hold as it stands: an antenna rigged by hand, a set taken along into the raft, an alert nobody
 * needs to answer.
 */
export function reachTo(
  project: Project,
  source: Source,
  station: Station,
  direction: 'both' | RangeResult['limitedBy'],
): ReachTo | null {
  const service = seaServiceOf(source);
  if (service === null || !isInSeaModel(frequencyOf(source, service))) return null;
  const own = ownSide(project, source, service, AT_REST);
  const solved = rangeTo(own, station, project.settings, AT_REST.timePercent);
  if (!solved) return null;
  const { limiting, ways, range, bandOf } = solved;
  const way = direction === 'both' ? limiting : ways[direction];
  if (!way) return null;
  const { typical, dependable } = way === limiting ? range : bandOf(way);
  return { station, ownHeightM: own.heightM, typical, dependable };
}

function sourceOf(project: Project, paths: readonly PathBudget[], range: RangeResult): Source | null {
  const index = indexProject(project);
  const item = index.items.get(range.itemId);
  const part = index.effective.get(range.itemId);
  if (item && range.pathId === null && part?.kind === 'standalone') return { kind: 'standalone', item, part };
  const path = paths.find(({ id }) => id === range.pathId);
  return item && path && part?.kind === 'radio' ? { kind: 'path', path, item, part } : null;
}

interface Known {
  readonly inputs: readonly unknown[];
  readonly results: readonly RangeResult[];
}
const cache = new WeakMap<object, Known>();

/** Ranges of one source to all stations, remembered by the object it comes from and everything else it depends on. */
function toStations(project: Project, key: object, extra: readonly unknown[], source: Source): readonly RangeResult[] {
  const { stations, settings } = project;
  const inputs = [...extra, stations, settings.margin, settings.horizonRule];
  const old = cache.get(key);
  if (old?.inputs.length === inputs.length && old.inputs.every((input, i) => input === inputs[i])) return old.results;
  const results = solveAll(project, source);
  cache.set(key, { inputs, results });
  return results;
}

function solveAll(project: Project, source: Source): readonly RangeResult[] {
  const service = seaServiceOf(source);
  if (service === null || !isInSeaModel(frequencyOf(source, service))) return [];
  const own = ownSide(project, source, service, AT_REST);
  return project.stations.flatMap(
    (station) => rangeTo(own, station, project.settings, AT_REST.timePercent)?.range ?? [],
  );
}

/** Whether a range is reckoned at a frequency. */
export const isInSeaModel = (mhz: number): boolean => mhz >= SEA_MODEL_MHZ[0] && mhz <= SEA_MODEL_MHZ[1];

/** The one way a range is reckoned, at rest and in any other state. */
function rangeTo(
  own: OwnSide,
  station: Station,
  settings: Settings,
  timePercent: TrialState['timePercent'],
): SolvedRange | null {
  const ways = waysTo(own, station);
  if (!ways) return null;
  const limiting = limitingWay(ways);
  const margin = marginDb(settings.margin);
  const { frequencyMhz, heightM } = own;
  const reach = reachSolver({ frequencyMhz, h1M: heightM, h2M: station.antennaHeightM, timePercent });
  const band = (maxLossDb: number, bandDb: number): DistanceBand => ({
    nominalKm: reach(maxLossDb),
    lowKm: reach(maxLossDb - bandDb),
    highKm: reach(maxLossDb + bandDb),
  });
  const bandOf: SolvedRange['bandOf'] = ({ maxLossDb, bandDb }) => ({
    typical: band(maxLossDb, bandDb),
    dependable: band(maxLossDb - margin, bandDb),
  });
  const { typical, dependable } = bandOf(limiting);
  const freeDb = withoutFeederDb(ways);
  const costKm = (maxLossDb: number, withFeederKm: number): number =>
    freeDb <= limiting.maxLossDb ? 0 : Math.max(0, reach(maxLossDb) - withFeederKm);
  const range: RangeResult = {
    id: `${own.id}~${station.id}`,
    pathId: own.pathId,
    itemId: own.item.id,
    stationId: station.id,
    service: own.service,
    frequencyMhz,
    ownHeightM: heightM,
    horizonKm: horizonKm(settings.horizonRule, heightM, station.antennaHeightM),
    typical,
    dependable,
    limitedBy: limiting.direction,
    feederCostTypicalKm: costKm(freeDb, typical.nominalKm),
    feederCostDependableKm: costKm(freeDb - margin, dependable.nominalKm),
    maxLossTypicalDb: limiting.maxLossDb,
    marginDb: margin,
  };
  return { own, station, ways, limiting, bandOf, range };
}
