import { indexProject, type ProjectIndex } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import type { Project } from '../model/project.ts';
import { freeSpaceDistanceM, type StrongSignalReceiver, strongSignalDbm } from '../rf/overload.ts';
import { ownAntennaSignals } from './ownAntennas.ts';
import { limitsAt, type Receiving, receiverOf } from './strongLimits.ts';
import type { StrongSignal } from './types.ts';

/** The boat in the next berth or at the next anchor, as `fromId` or as `toPathId` and `toItemId`. */
export const LIKE_STATION_ID = 'like-station';
/** A half-wave whip at the end of no cable: the strongest neighbour that is usual. */
const LIKE_STATION = { voiceW: 25, aisW: 12.5, gainDbi: 2.15, voiceMhz: 156.8, aisMhz: 162 } as const;
/**
 * What is too strong for the VHF and AIS receivers aboard: a like station near by (and the own set for its receiver), as the
 * distance from which each limit is kept, and the strongest own transmitters at each receiver on another antenna, as a level. Sets on
 * one antenna behind a splitter or a switch are no pairs. Results are the same objects where nothing they depend on changed.
 * Validity: near stations in free space; own antennas upright, by `stackIsolation` over the sea, tuned alike. MF/HF, GNSS and
 * satellite antennas: no formula here holds for those, so nothing is said of them.
 */
export function findStrongSignals(project: Project, paths: readonly PathBudget[]): readonly StrongSignal[] {
  const index = indexProject(project);
  const receiving = paths.filter((path): path is Receiving => isReceiving(path));
  const near = receiving.flatMap((path) => nearSignalsOf(index, path));
  return [...near, ...ownAntennaSignals(index, receiving)];
}

const isReceiving = ({ service, switchIds }: PathBudget): boolean =>
  (service === 'vhf-voice' || service === 'ais') && switchIds.length === 0;

/** A budget is a new object whenever its antenna, its place or its parts change, so it is all that these depend on. */
const nearCache = new WeakMap<PathBudget, readonly StrongSignal[]>();

function nearSignalsOf(index: ProjectIndex, path: Receiving): readonly StrongSignal[] {
  const known = nearCache.get(path);
  if (known) return known;
  const signals = nearSignals(index, path);
  nearCache.set(path, signals);
  return signals;
}

/** A like station at this receiver, and this set at full and low power at a like receiver. */
function nearSignals(index: ProjectIndex, path: Receiving): readonly StrongSignal[] {
  const signals = [fromNear(path, 'voice')];
  if (path.service === 'ais') signals.push(fromNear(path, 'ais'));
  const part = index.effective.get(path.radioId);
  if (path.service === 'vhf-voice' && path.txPowerW !== null && part?.kind === 'radio') {
    signals.push(toNear(path, 'full', path.txPowerW));
    const low = part.figures.lowTxPowerW?.value ?? 0;
    if (low > 0 && low < path.txPowerW) signals.push(toNear(path, 'low', low));
  }
  return signals;
}

function fromNear(path: Receiving, service: 'voice' | 'ais'): StrongSignal {
  const [powerW, frequencyMhz] =
    service === 'ais'
      ? [LIKE_STATION.aisW, LIKE_STATION.aisMhz]
      : [LIKE_STATION.voiceW, path.service === 'ais' ? LIKE_STATION.voiceMhz : path.frequencyMhz];
  const way = { powerW, transmitterLossDb: 0, transmitterGainDbi: LIKE_STATION.gainDbi };
  const receiver = { receiverGainDbi: path.antennaGainDbi + path.reception.gainDb, receiverLossDb: 0 };
  const isOwnService = (path.service === 'ais') === (service === 'ais');
  return {
    id: `near:${service}>${path.id}`,
    kind: 'near-station',
    fromId: LIKE_STATION_ID,
    toPathId: path.id,
    toItemId: path.radioId,
    frequencyMhz,
    offsetMhz: isOwnService ? 0 : Math.abs(frequencyMhz - path.frequencyMhz),
    powerW,
    ...distances(receiverOf(path), isOwnService ? 0 : frequencyMhz - path.frequencyMhz, frequencyMhz, (lossDb) =>
      strongSignalDbm({ ...way, ...receiver, pathLossDb: lossDb }),
    ),
  };
}

/** This set at the receiver of a like station: why one turns the power down in an anchorage. */
function toNear(path: Receiving, setting: 'full' | 'low', powerW: number): StrongSignal {
  const way = { powerW, transmitterLossDb: path.lossDb, transmitterGainDbi: path.antennaGainDbi };
  const receiver = { receiverGainDbi: LIKE_STATION.gainDbi, receiverLossDb: 0 };
  return {
    id: `near:${path.id}:${setting}>${LIKE_STATION_ID}`,
    kind: 'near-station',
    fromId: path.id,
    toPathId: LIKE_STATION_ID,
    toItemId: LIKE_STATION_ID,
    frequencyMhz: path.frequencyMhz,
    offsetMhz: 0,
    powerW,
    ...distances('vhf', 0, path.frequencyMhz, (lossDb) => strongSignalDbm({ ...way, ...receiver, pathLossDb: lossDb })),
  };
}

/** Distances from which each limit is kept, in free space. */
function distances(
  receiver: StrongSignalReceiver,
  offsetMhz: number,
  frequencyMhz: number,
  levelAtLoss: (lossDb: number) => number,
): Pick<StrongSignal, 'isolationDb' | 'validity' | 'levelDbm' | 'limits'> {
  const withoutLossDbm = levelAtLoss(0);
  const limits = limitsAt(receiver, offsetMhz).map(({ key, label, limitDbm, source }) => ({
    key,
    label,
    limitDbm,
    marginDb: null,
    clearM: freeSpaceDistanceM(frequencyMhz, withoutLossDbm - limitDbm),
    source,
  }));
  return { isolationDb: null, validity: 'holds', levelDbm: null, limits };
}
