import { indexProject } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import type { Figure } from '../model/figure.ts';
import { marginDb } from '../model/margin.ts';
import type { Part, PartOf } from '../model/part.ts';
import type { Item, Project, Settings, Station } from '../model/project.ts';
import { horizonKm } from '../propagation/horizon.ts';
import { reachSolver } from '../propagation/reach.ts';
import { LEAST_HEIGHT_M } from '../propagation/sphericalEarth.ts';
import { combineTolerances, powerToleranceDb, wattsToDbm } from '../rf/decibels.ts';
import type { DistanceBand, RangeResult } from './types.ts';

/** Tolerance of the sea model at VHF against full-wave theory and measured medians, dB (docs/methods.md, "Smooth sea"). */
export const MODEL_TOLERANCE_DB = 4;
/** Span of carriers the sea model is meant for, MHz. */
const MIN_FREQUENCY_MHZ = 100;
const MAX_FREQUENCY_MHZ = 3000;

/** What a range needs to know of the own side. */
interface OwnSide {
  readonly id: string;
  readonly pathId: string | null;
  readonly item: Item;
  readonly service: RangeResult['service'];
  readonly frequencyMhz: number;
  readonly heightM: number;
  readonly gainDbi: number;
  readonly lossDb: number;
  /** 0 where the set does not transmit. */
  readonly txPowerW: number;
  readonly sensitivityDbm: number;
  /** Combined tolerance of everything on the own side, dB. */
  readonly toleranceDb: number;
}

/**
 * How far each VHF voice and AIS path, and each hand-held with its own antenna, reaches each station that has the service.
 * Both ways must work, so the weaker one decides; a set that cannot transmit is judged by what it receives. A measured
 * feeder loss counts before the computed one. Results are the same objects as before where nothing they depend on changed.
 */
export function solveRanges(project: Project, paths: readonly PathBudget[]): readonly RangeResult[] {
  const index = indexProject(project);
  const results: RangeResult[] = [];
  for (const path of paths) {
    const item = index.items.get(path.radioId);
    const part = index.effective.get(path.radioId);
    const antennaPart = index.effective.get(path.antennaId);
    if (item && part?.kind === 'radio' && isRanged(path)) {
      const inputs = [item.id, part, antennaPart];
      results.push(...toStations(project, path, inputs, () => sideOfPath(path, item, part, antennaPart)));
    }
  }
  for (const item of project.items) {
    const part = index.effective.get(item.id);
    if (item.status !== 'remove' && part?.kind === 'standalone' && isHandheld(part)) {
      results.push(...toStations(project, item, [part], () => sideOfHandheld(item, part)));
    }
  }
  return results;
}

const isRanged = (path: PathBudget): boolean =>
  (path.service === 'vhf-voice' || path.service === 'ais') && isInModel(path.frequencyMhz);
const isHandheld = (part: PartOf<'standalone'>): boolean =>
  part.standaloneClass.startsWith('handheld-vhf') && isInModel(part.figures.frequencyMhz.value);
const isInModel = (mhz: number): boolean => mhz >= MIN_FREQUENCY_MHZ && mhz <= MAX_FREQUENCY_MHZ;

/** Loss a range is reckoned with, dB: the feeder as measured, where it was, plus what the antenna throws back. */
export function countedLossDb(path: PathBudget): number {
  if (path.measuredLossDb === null) return path.lossDb;
  const mismatch = path.elements.filter((element) => element.kind === 'mismatch');
  return mismatch.reduce((sum, element) => sum + element.lossDb, path.measuredLossDb);
}

function sideOfPath(path: PathBudget, item: Item, part: PartOf<'radio'>, antennaPart: Part | undefined): OwnSide {
  const gainToleranceDb = antennaPart?.kind === 'antenna' ? antennaPart.figures.gainDbi.tolerance : 0;
  const { txPowerW, rxSensitivityDbm } = part.figures;
  return {
    id: path.id,
    pathId: path.id,
    item,
    service: path.service === 'ais' ? 'ais' : 'voice',
    frequencyMhz: path.frequencyMhz,
    heightM: Math.max(LEAST_HEIGHT_M, path.antennaHeightM),
    gainDbi: path.antennaGainDbi,
    lossDb: countedLossDb(path),
    txPowerW: path.txPowerW ?? 0,
    sensitivityDbm: rxSensitivityDbm.value,
    toleranceDb: combineTolerances([path.toleranceDb, gainToleranceDb, setToleranceDb(txPowerW, rxSensitivityDbm)]),
  };
}

function sideOfHandheld(item: Item, part: PartOf<'standalone'>): OwnSide {
  const { txPowerW, frequencyMhz, rxSensitivityDbm, gainDbi } = part.figures;
  return {
    id: item.id,
    pathId: null,
    item,
    service: 'voice',
    frequencyMhz: frequencyMhz.value,
    heightM: Math.max(LEAST_HEIGHT_M, item.position.zM),
    gainDbi: gainDbi.value,
    lossDb: 0,
    txPowerW: txPowerW.value,
    sensitivityDbm: rxSensitivityDbm.value,
    toleranceDb: combineTolerances([gainDbi.tolerance, setToleranceDb(txPowerW, rxSensitivityDbm)]),
  };
}

/** Only one direction limits, so of the set's two tolerances the larger is carried. */
function setToleranceDb(txPowerW: Figure, sensitivity: Figure): number {
  const powerDb = txPowerW.value > 0 ? powerToleranceDb(txPowerW.value, txPowerW.tolerance) : 0;
  return Math.max(powerDb, sensitivity.tolerance);
}

interface Known {
  readonly inputs: readonly unknown[];
  readonly results: readonly RangeResult[];
}
const cache = new WeakMap<object, Known>();

/** Ranges of one side to all stations, remembered by the object it comes from and everything else it depends on. */
function toStations(
  project: Project,
  key: object,
  extra: readonly unknown[],
  side: () => OwnSide,
): readonly RangeResult[] {
  const { stations, settings } = project;
  const inputs = [...extra, stations, settings.margin, settings.horizonRule];
  const old = cache.get(key);
  if (old?.inputs.length === inputs.length && old.inputs.every((input, i) => input === inputs[i])) return old.results;
  const own = side();
  const results = stations.flatMap((station) => rangeTo(own, station, settings) ?? []);
  cache.set(key, { inputs, results });
  return results;
}

function rangeTo(own: OwnSide, station: Station, settings: Settings): RangeResult | null {
  const stationPowerW = own.service === 'ais' ? station.aisPowerW : station.voicePowerW;
  if (stationPowerW <= 0) return null;
  const budget = weakerWay(own, station, stationPowerW);
  const margin = marginDb(settings.margin);
  const reach = reachSolver({ frequencyMhz: own.frequencyMhz, h1M: own.heightM, h2M: station.antennaHeightM });
  const bandDb = combineTolerances([own.toleranceDb, MODEL_TOLERANCE_DB]);
  const band = (maxLossDb: number): DistanceBand => ({
    nominalKm: reach(maxLossDb),
    lowKm: reach(maxLossDb - bandDb),
    highKm: reach(maxLossDb + bandDb),
  });
  const typical = band(budget.maxLossDb);
  const dependable = band(budget.maxLossDb - margin);
  const withoutFeederDb = budget.maxLossDb + own.lossDb;
  return {
    id: `${own.id}~${station.id}`,
    pathId: own.pathId,
    itemId: own.item.id,
    stationId: station.id,
    service: own.service,
    frequencyMhz: own.frequencyMhz,
    ownHeightM: own.heightM,
    horizonKm: horizonKm(settings.horizonRule, own.heightM, station.antennaHeightM),
    typical,
    dependable,
    limitedBy: budget.limitedBy,
    feederCostTypicalKm: costKm(reach, withoutFeederDb, own.lossDb, typical.nominalKm),
    feederCostDependableKm: costKm(reach, withoutFeederDb - margin, own.lossDb, dependable.nominalKm),
    maxLossTypicalDb: budget.maxLossDb,
    marginDb: margin,
  };
}

/** Loss that may lie between the two antennas, dB, by the way that gives out first. */
function weakerWay(
  own: OwnSide,
  station: Station,
  stationPowerW: number,
): { maxLossDb: number; limitedBy: RangeResult['limitedBy'] } {
  const bothEndsDb = own.gainDbi - own.lossDb + station.gainDbi - station.feederLossDb;
  const receiveDb = wattsToDbm(stationPowerW) + bothEndsDb - own.sensitivityDbm;
  if (own.txPowerW <= 0) return { maxLossDb: receiveDb, limitedBy: 'receive' };
  const transmitDb = wattsToDbm(own.txPowerW) + bothEndsDb - station.sensitivityDbm;
  return transmitDb <= receiveDb
    ? { maxLossDb: transmitDb, limitedBy: 'transmit' }
    : { maxLossDb: receiveDb, limitedBy: 'receive' };
}

function costKm(
  reach: (maxLossDb: number) => number,
  withoutFeederDb: number,
  feederLossDb: number,
  withFeederKm: number,
): number {
  return feederLossDb === 0 ? 0 : Math.max(0, reach(withoutFeederDb) - withFeederKm);
}
