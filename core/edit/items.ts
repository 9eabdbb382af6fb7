import { indexProject } from '../catalogue/lookup.ts';
import { type Place, type Position, positionSchema } from '../model/boat.ts';
import { nextId } from '../model/ids.ts';
import { fieldWords } from '../model/issues.ts';
import type { PlaceablePart } from '../model/part.ts';
import { isPlaceable } from '../model/placeable.ts';
import { type Item, type ItemFacts, itemSchema, type Project } from '../model/project.ts';
import { type Change, changed, edited, entryOf, isSame, mergedInto, withEntry, withNewEntry } from './change.ts';
import { keptPlaceId, moved, nearestPlace, type Offset, offsetBetween, tidy } from './geometry.ts';
import { RefusedEdit, requireSound, requireValid } from './refused.ts';
import { freeTag, tagsOf } from './tags.ts';

/** How near a place a newly dropped part jumps onto it, m. */
const DROP_SNAP_M = 0.3;
/** How far apart parts are set that would stand on the very same spot, m. */
const SIDE_BY_SIDE_M = 0.25;

export interface AddItem {
  readonly partId: string;
  /** Where it is dropped; left out, it goes to `placeId` or to the usual place for such a part. */
  readonly position?: Position;
  /** The place it stands at; left out, the nearest within 0.3 m of the position; null for none. */
  readonly placeId?: string | null;
}

/** Puts a part aboard as a new item with the next free tag. */
export function addItem(project: Project, { partId, position, placeId }: AddItem): Project {
  const part = placeablePart(project, partId);
  const place = placeFor(project, part, position, placeId);
  const spot = tidy(place?.position ?? position ?? { xM: 0, yM: 0, zM: 0 });
  const item: Item = {
    id: nextId(project, 'item'),
    tag: freeTag(part, tagsOf(project)),
    partId,
    name: '',
    position: freeSpot(project, spot),
    endPosition: null,
    placeId: place?.id ?? null,
    status: 'new',
    overrides: { figures: {}, traits: {} },
    facts: {},
    notes: '',
  };
  requireValid(itemSchema, item, item.tag);
  return withNewEntry(project, 'items', item);
}

/** Moves items together, wire ends included. An item that goes away from its place stands free. Runs follow their items. */
export function moveItems(project: Project, ids: readonly string[], by: Offset): Project {
  const after = new Map<string, Item>();
  for (const id of ids) {
    const item = entryOf(project, 'items', id);
    after.set(id, placedAt(project, item, moved(item.position, by)));
  }
  return withItems(project, after);
}

/** Sets an item down at a position; a wire's upper end moves with it. */
export function setItemPosition(project: Project, itemId: string, position: Position): Project {
  return withEntry(project, 'items', placedAt(project, entryOf(project, 'items', itemId), tidy(position)));
}

/** Sets the upper end of a wire antenna, or takes it away with null. */
export function setItemEndPosition(project: Project, itemId: string, endPosition: Position | null): Project {
  return setItem(project, itemId, { endPosition: endPosition && tidy(endPosition) });
}

/** Puts an item on a place and attaches it there. */
export function snapToPlace(project: Project, itemId: string, placeId: string): Project {
  const item = entryOf(project, 'items', itemId);
  const place = entryOf(project, 'places', placeId);
  const there = placedAt(project, item, place.position);
  return withEntry(project, 'items', changed(there, { placeId }, itemSchema, item.tag));
}

export type ItemChange = Omit<Change<Item>, 'id' | 'facts' | 'overrides' | 'position'> & {
  /** Facts to set; a fact given as undefined is forgotten. */
  readonly facts?: Change<ItemFacts>;
};

/**
 * Changes an item's particulars: tag, name, status, notes, place, part, facts.
 * @throws RefusedEdit for an empty or taken tag, an unknown place, or a value out of range
 */
export function setItem(project: Project, itemId: string, change: ItemChange): Project {
  const item = entryOf(project, 'items', itemId);
  const { facts, ...rest } = change;
  if (rest.tag !== undefined) requireFreeTag(project, item, rest.tag);
  if (typeof rest.placeId === 'string') entryOf(project, 'places', rest.placeId);
  if (rest.partId !== undefined && rest.partId !== item.partId) requireSamePorts(project, item, rest.partId);
  const withFacts = facts ? { ...rest, facts: mergedInto(item.facts, facts) } : rest;
  const after = withEntry(project, 'items', changed(item, withFacts, itemSchema, item.tag));
  return rest.partId === undefined ? after : requireSound(after, item.tag);
}

/** Gives an item another tag. @throws RefusedEdit when it is empty or taken */
export function renameItem(project: Project, itemId: string, tag: string): Project {
  return setItem(project, itemId, { tag });
}

/** The item at another position, its wire end moved along, attached to its place only while it stays near. */
function placedAt(project: Project, item: Item, position: Position): Item {
  if (isSame(position, item.position)) return item;
  requireValid(positionSchema, position, `${item.tag} would leave the drawing`);
  const by = offsetBetween(item.position, position);
  const endPosition = item.endPosition && moved(item.endPosition, by);
  const placeId = keptPlaceId(project, item.placeId, position);
  return changed(item, { position, endPosition, placeId }, itemSchema, item.tag);
}

/** All replacements in one go: a drag of many items is one step. */
function withItems(project: Project, after: ReadonlyMap<string, Item>): Project {
  const changes = project.items.flatMap((item, index) => {
    const next = after.get(item.id);
    return next && next !== item ? [{ index, next }] : [];
  });
  if (changes.length === 0) return project;
  return edited(project, (draft) => {
    for (const { index, next } of changes) draft.items[index] = next;
  });
}

function placeablePart(project: Project, partId: string): PlaceablePart {
  const part = indexProject(project).parts.get(partId);
  if (!part) throw new RefusedEdit(`There is no part "${partId}": choose one from the list of parts.`);
  if (!isPlaceable(part)) {
    const use = part.kind === 'conductor' ? 'Choose it for a DC feed' : 'Choose it for a cable run';
    throw new RefusedEdit(`${part.name} is not placed on its own. ${use} instead.`);
  }
  return part;
}

function placeFor(
  project: Project,
  part: PlaceablePart,
  position: Position | undefined,
  placeId: string | null | undefined,
): Place | undefined {
  if (typeof placeId === 'string') return entryOf(project, 'places', placeId);
  if (placeId === null) return undefined;
  return position ? nearestPlace(project, position, DROP_SNAP_M) : usualPlace(project, part);
}

/** Antennas go to the highest place, batteries low down, everything else to the first place under cover. */
function usualPlace(project: Project, part: PlaceablePart): Place | undefined {
  const byHeight = [...project.places].sort((a, b) => b.position.zM - a.position.zM);
  if (part.kind === 'antenna') return byHeight.find((place) => place.outdoors) ?? byHeight[0];
  const indoors = byHeight.filter((place) => !place.outdoors);
  const isBattery =
    part.kind === 'power' && (part.powerClass === 'battery-bank' || part.powerClass === 'starter-battery');
  if (isBattery) return indoors.at(-1) ?? byHeight.at(-1);
  return project.places.find((place) => !place.outdoors) ?? project.places[0];
}

/** The spot itself, or beside it (further aft) while others stand exactly there. */
function freeSpot(project: Project, spot: Position): Position {
  let free = spot;
  while (project.items.some((item) => isSame(item.position, free))) {
    free = moved(free, { dxM: SIDE_BY_SIDE_M, dyM: 0, dzM: 0 });
  }
  return free;
}

function requireFreeTag(project: Project, item: Item, tag: string): void {
  if (tag === item.tag) return;
  if (tag.trim() === '') throw new RefusedEdit(`${item.tag} needs a tag: it stands on the drawing and the labels.`);
  const other = project.items.find((candidate) => candidate.id !== item.id && candidate.tag === tag);
  if (other)
    throw new RefusedEdit(`The tag ${tag} is taken${other.name === '' ? '' : ` by ${other.name}`}: choose another.`);
}

/** Another part may take the place of one only if everything connected still has its port. */
function requireSamePorts(project: Project, item: Item, partId: string): void {
  const part = placeablePart(project, partId);
  const lines = [...project.runs, ...project.feeds, ...project.dataLinks];
  const old = indexProject(project).effective.get(item.id);
  for (const line of lines) {
    for (const end of [line.from, line.to]) {
      if (end.itemId !== item.id) continue;
      const medium = old?.ports.find((port) => port.id === end.portId)?.medium;
      const port = part.ports.find((candidate) => candidate.id === end.portId);
      if (port && (medium === undefined || port.medium === medium)) continue;
      throw new RefusedEdit(
        `${part.name} has no port "${end.portId}", where ${line.number} is connected to ${item.tag}: take ${line.number} off first.`,
      );
    }
  }
  const own = [...Object.keys(item.overrides.figures), ...Object.keys(item.overrides.traits)];
  if (own.length > 0) {
    const list = own.map((key) => fieldWords(key).words).join(', ');
    throw new RefusedEdit(`${item.tag} has figures of its own (${list}): reset them before choosing another part.`);
  }
}
