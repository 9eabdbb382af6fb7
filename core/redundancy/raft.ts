import { indexProject, type ProjectIndex } from '../catalogue/lookup.ts';
import type { Item, Project } from '../model/project.ts';
import type { ServiceId } from '../model/services.ts';
import { stands } from './build.ts';
import type { MatrixRow, Redundancy } from './types.ts';

/** How a thing comes into the raft. */
export type Taken = 'grab-bag' | 'floats-free' | 'by-hand';

/** A set that serves in the raft. */
export interface RaftItem {
  readonly itemId: string;
  readonly taken: Taken;
  readonly serviceIds: readonly ServiceId[];
  /** What stands in the way of counting on it, as found: not charged, registered to somebody else. */
  readonly doubts: readonly string[];
}

export interface RaftList {
  readonly row: MatrixRow;
  readonly goes: readonly RaftItem[];
  /** Services nothing in the raft gives, though something aboard does. */
  readonly lost: readonly ServiceId[];
}

const ORDER: readonly Taken[] = ['grab-bag', 'floats-free', 'by-hand'];

/**
 * What goes along when the boat is left, read from the matrix's own row: what is ready to go first, and what each set is good
 * for there. Null where the user has left that event out.
 */
export function raftList(project: Project, redundancy: Redundancy): RaftList | null {
  const row = redundancy.matrix.find(({ event }) => event.kind === 'abandon');
  const [intact] = redundancy.matrix;
  if (!row || !intact) return null;
  const index = indexProject(project);
  const ways = new Map(redundancy.ways.map((way) => [way.id, way]));
  const services = new Map<string, Set<ServiceId>>();
  for (const { serviceId, liveWayIds } of row.states) {
    for (const id of liveWayIds) {
      const itemId = ways.get(id)?.itemId;
      if (itemId !== undefined) services.set(itemId, (services.get(itemId) ?? new Set()).add(serviceId));
    }
  }
  const goes = [...services].flatMap(([itemId, of]): RaftItem[] => {
    const item = index.items.get(itemId);
    if (!item || !stands(item)) return [];
    return [{ itemId, taken: takenAs(item), serviceIds: [...of], doubts: doubtsOf(index, item) }];
  });
  return {
    row,
    goes: goes.sort((a, b) => ORDER.indexOf(a.taken) - ORDER.indexOf(b.taken)),
    lost: row.states.flatMap(({ serviceId, grade }, at) =>
      grade === 'lost' && intact.states[at]?.grade !== 'lost' ? [serviceId] : [],
    ),
  };
}

function takenAs({ facts }: Item): Taken {
  if (facts.inGrabBag) return 'grab-bag';
  return facts.bracket === 'float-free' ? 'floats-free' : 'by-hand';
}

function doubtsOf(index: ProjectIndex, item: Item): readonly string[] {
  const { charged, registration } = item.facts;
  const part = index.effective.get(item.id);
  const isBeacon = part?.kind === 'standalone' && part.standaloneClass.endsWith('beacon-406');
  return [
    ...(charged === false ? ['not found charged'] : []),
    ...(registration === 'another-owner' ? ['registered to another owner'] : []),
    ...(registration === 'none' ? ['not registered'] : []),
    ...(isBeacon && registration === undefined ? ['registration not recorded'] : []),
  ];
}
