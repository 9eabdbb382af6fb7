import { indexProject } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import type { Project, Station } from '../model/project.ts';
import type { ServiceId } from '../model/services.ts';
import type { Source } from '../reach/ownSide.ts';
import { type ReachTo, reachTo } from '../reach/ranges.ts';
import type { HfResult } from '../reach/types.ts';
import { q, type RichText } from '../units/quantity.ts';
import { riggedEmergency } from './emergencyPath.ts';
import type { MatrixRow, Redundancy, Way } from './types.ts';

/** A way that still serves in some failure, and how far. */
export interface MeansLeft {
  readonly way: Way;
  /** Over the sea, where the way has a range of its own; null where words say it. */
  readonly reach: ReachTo | null;
  /** Where distance is no matter of this station, or what the reach is reckoned with. */
  readonly note: RichText;
}

/** What the reach is read from. */
export interface ReachResults {
  readonly paths: readonly PathBudget[];
  readonly hf: readonly HfResult[];
  readonly redundancy: Redundancy;
}

/** Height of an antenna held by somebody sitting in a raft, m above the water. Common practice, no source. */
export const IN_THE_RAFT_M = 1;

/** The far end that reaches are quoted to unless another is asked for: a ship, the likeliest to hear a call at sea. */
export function usualFarEnd({ stations }: Project): Station | undefined {
  return stations.find(({ kind }) => kind === 'ship') ?? stations[0];
}

/** Which way of a link each service over the sea needs. */
const DIRECTION: Partial<Record<ServiceId, 'both' | 'transmit' | 'receive'>> = {
  'voice-fixed': 'both',
  'voice-handheld': 'both',
  'digital-alert': 'transmit',
  'ais-transmit': 'transmit',
  'ais-receive': 'receive',
  'safety-information': 'receive',
  beacon: 'transmit',
  locating: 'transmit',
  'person-overboard': 'transmit',
  'internet-near-shore': 'both',
};

/** What is left of each service in a row of the matrix. */
export type MeansFinder = (row: MatrixRow) => ReadonlyMap<ServiceId, readonly MeansLeft[]>;

/**
 * What is left of each service in a row of the matrix: every set and antenna that still serves, the best first, with its reach
 * to a station in that state: a handheld from where it lies, or from the raft; an emergency antenna as it would be rigged. A
 * reach is worked out once, however many rows it stands in.
 */
export function meansFinder(project: Project, results: ReachResults, station: Station | undefined): MeansFinder {
  const ways = new Map(results.redundancy.ways.map((way) => [way.id, way]));
  const known = new Map<string, MeansLeft>();
  const meansBy = (way: Way, inRaft: boolean): MeansLeft => {
    const key = `${inRaft} ${way.id}`;
    const found = known.get(key) ?? meansOf(project, results, way, inRaft, station);
    known.set(key, found);
    return found;
  };
  return ({ event, states }) => {
    const inRaft = event.kind === 'abandon';
    return new Map(
      states.map(({ serviceId, liveWayIds }) => {
        const live = liveWayIds.flatMap((id) => ways.get(id) ?? []);
        return [
          serviceId,
          bestOfEach(live)
            .map((way) => meansBy(way, inRaft))
            .sort(better),
        ];
      }),
    );
  };
}

/** One way for each set and antenna: with position before without, on ship's supply before on its own battery. */
function bestOfEach(ways: readonly Way[]): readonly Way[] {
  const best = new Map<string, Way>();
  for (const way of ways) {
    const key = `${way.itemId} ${way.pathId ?? way.emergencyAntennaId ?? ''}`;
    const known = best.get(key);
    if (!known || (known.grade === 'reduced' && way.grade === 'full')) best.set(key, way);
  }
  return [...best.values()];
}

function better(a: MeansLeft, b: MeansLeft): number {
  const rank = ({ way }: MeansLeft): number => (way.grade === 'full' ? 0 : 1);
  const km = ({ reach }: MeansLeft): number => reach?.dependable.nominalKm ?? -1;
  return rank(a) - rank(b) || km(b) - km(a);
}

function meansOf(
  project: Project,
  results: ReachResults,
  way: Way,
  inRaft: boolean,
  station: Station | undefined,
): MeansLeft {
  const direction = DIRECTION[way.serviceId];
  const rigged = way.emergencyAntennaId ? riggedEmergency(project, way.emergencyAntennaId, way.itemId) : null;
  const source = sourceOf(project, rigged?.path ?? results.paths.find(({ id }) => id === way.pathId), way, inRaft);
  const reach = source && station && direction ? reachTo(rigged?.project ?? project, source, station, direction) : null;
  return { way, reach, note: noteOf(results, way, reach, inRaft) };
}

function sourceOf(project: Project, path: PathBudget | undefined, way: Way, inRaft: boolean): Source | null {
  const index = indexProject(project);
  const item = index.items.get(way.itemId);
  const part = index.effective.get(way.itemId);
  if (!item) return null;
  if (part?.kind === 'standalone') {
    const zM = inRaft ? IN_THE_RAFT_M : item.position.zM;
    return { kind: 'standalone', item: { ...item, position: { ...item.position, zM } }, part };
  }
  return part?.kind === 'radio' && path ? { kind: 'path', path, item, part } : null;
}

function noteOf({ hf, paths }: ReachResults, way: Way, reach: ReachTo | null, inRaft: boolean): RichText {
  if (way.serviceId === 'beacon')
    return ['By satellite, anywhere.', ...(reach ? [' The distance is that of its homing signal.'] : [])];
  if (reach && way.emergencyAntennaId)
    return ['Antenna rigged by hand, ', q(reach.ownHeightM, 'm'), ' above the water.'];
  if (reach && inRaft) return ['Held by hand in the raft, ', q(reach.ownHeightM, 'm'), ' above the water.'];
  if (reach) return [];
  if (way.serviceId !== 'long-range' && way.serviceId !== 'digital-alert') return [];
  if (paths.find(({ id }) => id === way.pathId)?.service === 'mf-hf') {
    const found = hf.find(({ pathId }) => pathId === way.pathId);
    return found ? groundWaveNote(found) : [`Beyond the horizon ${BY_SKY_WAVE}.`];
  }
  // An alert by VHF that has no reach to this far end is not heard there; it goes by no satellite.
  return way.serviceId === 'long-range' ? ['By satellite, wherever its sky is clear.'] : [];
}

const BY_SKY_WAVE = 'by sky wave when a band is open: see the Range page';

/** The band whose ground wave is read farthest, by those who read it worst. */
function groundWaveNote({ bands }: HfResult): RichText {
  const reached = bands.flatMap(({ name, groundWave }) => {
    const nearest = [...groundWave].sort((a, b) => a.reach.nominalKm - b.reach.nominalKm)[0];
    return nearest ? [{ name, nearest }] : [];
  });
  const [best] = reached.sort((a, b) => b.nearest.reach.nominalKm - a.nearest.reach.nominalKm);
  if (!best) return [`Beyond the horizon ${BY_SKY_WAVE}.`];
  const { name, nearest } = best;
  return [
    `Ground wave on ${name} by day to a ${nearest.name.toLowerCase()} `,
    q(nearest.reach.nominalKm, 'km', 0),
    `, farther ${BY_SKY_WAVE}.`,
  ];
}
