import { indexProject, type ProjectIndex } from '../catalogue/lookup.ts';
import type { Part, PartOf, RfPort, Through } from '../model/part.ts';
import type { Endpoint, Item, Project, Run } from '../model/project.ts';

/** A run as it is gone along, and which of its ends is nearer the radio. */
export interface RunHop {
  readonly kind: 'run';
  readonly run: Run;
  readonly fromRadioEnd: 'from' | 'to';
}

/** A device as it is gone through. */
export interface DeviceHop {
  readonly kind: 'device';
  readonly item: Item;
  readonly part: PartOf<'inline'>;
  readonly through: Through;
}

export type Hop = RunHop | DeviceHop;

/** One way from a radio's socket to an antenna, in order from the socket. */
export interface Walk {
  readonly hops: readonly Hop[];
  readonly antenna: Item;
  readonly antennaPart: PartOf<'antenna'>;
}

/**
 * Every way from one RF socket over runs and through devices to an antenna. Devices are gone through by their `throughs`,
 * in either direction; a switch either way, and `isSetFor` tells whether it stands so now. No item is visited twice, another set ends a way,
 * and whatever is to be removed is not there.
 */
export function walksFrom(project: Project, item: Item, port: RfPort): readonly Walk[] {
  const found: Walk[] = [];
  follow(indexProject(project), { itemId: item.id, portId: port.id }, [], new Set([item.id]), found);
  return found;
}

function follow(
  index: ProjectIndex,
  at: Endpoint,
  hops: readonly Hop[],
  visited: ReadonlySet<string>,
  found: Walk[],
): void {
  for (const run of index.runsAtItem.get(at.itemId) ?? []) {
    if (run.status === 'remove') continue;
    for (const [near, far, end] of [
      [run.from, run.to, 'from'],
      [run.to, run.from, 'to'],
    ] as const) {
      if (near.itemId !== at.itemId || near.portId !== at.portId || visited.has(far.itemId)) continue;
      arrive(index, far, [...hops, { kind: 'run', run, fromRadioEnd: end }], visited, found);
    }
  }
}

function arrive(
  index: ProjectIndex,
  at: Endpoint,
  hops: readonly Hop[],
  visited: ReadonlySet<string>,
  found: Walk[],
): void {
  const item = index.items.get(at.itemId);
  const part: Part | undefined = index.effective.get(at.itemId);
  if (!item || !part || item.status === 'remove') return;
  if (part.kind === 'antenna') found.push({ hops, antenna: item, antennaPart: part });
  if (part.kind !== 'inline') return;
  for (const through of part.throughs) {
    const other = otherSide(through, at.portId);
    if (other === null) continue;
    const hop: DeviceHop = { kind: 'device', item, part, through };
    follow(index, { itemId: item.id, portId: other }, [...hops, hop], new Set([...visited, item.id]), found);
  }
}

/** Whether a device passes this way as it stands: always, but for a switch only the way its position names (1 is the first). */
export function isSetFor({ part, through }: Pick<DeviceHop, 'part' | 'through'>): boolean {
  const { position } = part.traits;
  return part.deviceClass !== 'switch' || position === null || part.throughs[position - 1] === through;
}

function otherSide(through: Through, portId: string): string | null {
  if (through.fromPortId === portId) return through.toPortId;
  return through.toPortId === portId ? through.fromPortId : null;
}
