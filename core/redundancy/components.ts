import type { ProjectIndex } from '../catalogue/lookup.ts';
import { placeOf } from '../catalogue/lookup.ts';
import type { Fitting, Mast } from '../model/boat.ts';
import type { Part } from '../model/part.ts';
import type { DataLink, Feed, Item, Project, Subject } from '../model/project.ts';
import type { Component } from './types.ts';

/** Where a component finds its name. */
export interface Names {
  readonly project: Project;
  readonly index: ProjectIndex;
  readonly feeds: ReadonlyMap<string, Feed>;
  readonly links: ReadonlyMap<string, DataLink>;
}

/** The component that stands for one physical thing of the project. */
export function componentFor(names: Names, subject: Subject): Component {
  return { id: `${subject.kind}:${subject.id}`, ...nameAndKind(names, subject), subject };
}

function nameAndKind(names: Names, { kind, id }: Subject): Pick<Component, 'kind' | 'label'> {
  const { project, index } = names;
  if (kind === 'run') return { kind: 'cable', label: index.runs.get(id)?.number ?? id };
  if (kind === 'feed') return { kind: 'feed', label: feedLabel(names, id) };
  if (kind === 'link') return { kind: 'data-link', label: names.links.get(id)?.number ?? id };
  if (kind === 'structure') return { kind: 'structure', label: structureName(project, id) };
  const part = index.effective.get(id);
  return { kind: part ? kindOfPart(part) : 'equipment', label: index.items.get(id)?.tag ?? id };
}

function feedLabel({ index, feeds }: Names, id: string): string {
  const feed = feeds.get(id);
  if (!feed) return id;
  return `${feed.number} (supply to ${index.items.get(feed.to.itemId)?.tag ?? feed.to.itemId})`;
}

function kindOfPart(part: Part): Component['kind'] {
  switch (part.kind) {
    case 'radio':
    case 'antenna':
    case 'standalone':
    case 'position-source':
    case 'equipment':
      return part.kind;
    case 'inline':
      return part.deviceClass === 'joint' || part.deviceClass === 'adapter' ? 'joint' : 'device';
    case 'power':
      return kindOfPower(part.powerClass);
    default:
      return 'equipment';
  }
}

function kindOfPower(powerClass: Extract<Part, { kind: 'power' }>['powerClass']): Component['kind'] {
  if (powerClass === 'battery-bank' || powerClass === 'starter-battery') return 'bank';
  if (powerClass === 'breaker' || powerClass === 'panel' || powerClass === 'fuse-holder') return 'breaker';
  return 'power-device';
}

/** Name of a mast or fitting. */
export function structureName(project: Project, id: string): string {
  return findStructure(project, id)?.name ?? id;
}

/** The mast or fitting of an id. */
export function findStructure(project: Project, id: string): Mast | Fitting | undefined {
  return project.boat.masts.find((mast) => mast.id === id) ?? project.boat.fittings.find((each) => each.id === id);
}

/** Fittings that can be lost at sea while the boat goes on; a wheelhouse, hardtop or flybridge is part of the house. */
const CAN_BE_LOST: ReadonlySet<Fitting['kind']> = new Set([
  'arch',
  'radar-pole',
  'pole',
  'pulpit',
  'pushpit',
  'bowsprit',
]);

/** How far from a mast's centre line a part may stand and still count as standing on it, m. Own rule, no source. */
const ON_MAST_M = 0.4;
/** How far, fore and aft, the upper end of a wire may be from the mast it is hung from, m. Own rule, no source. */
const WIRE_TO_MAST_M = 3;

/**
 * The masts and fittings an item is lost with: the structure of its place or, for a part placed free, the mast it stands
 * on; and the mast that holds the upper end of a wire antenna.
 */
export function structuresUnder(project: Project, item: Item): readonly string[] {
  const found: string[] = [];
  const own = placeOf(project, item)?.structureId ?? mastAt(project, item);
  if (own !== undefined && own !== null && canBeLost(project, own)) found.push(own);
  const upper = item.endPosition === null ? undefined : mastHolding(project, item.endPosition);
  if (upper !== undefined && !found.includes(upper)) found.push(upper);
  return found;
}

function canBeLost(project: Project, id: string): boolean {
  const structure = findStructure(project, id);
  return structure !== undefined && (!('kind' in structure) || CAN_BE_LOST.has(structure.kind));
}

function mastAt(project: Project, item: Item): string | undefined {
  if (item.placeId !== null) return undefined;
  const { xM, yM, zM } = item.position;
  const onIt = (mast: Mast): boolean => Math.hypot(xM - mast.xM, yM) <= ON_MAST_M && zM > mast.footZM;
  return project.boat.masts.find(onIt)?.id;
}

function mastHolding(project: Project, end: { readonly xM: number; readonly zM: number }): string | undefined {
  let best: Mast | undefined;
  for (const mast of project.boat.masts) {
    if (end.zM <= mast.footZM + 1 || Math.abs(end.xM - mast.xM) > WIRE_TO_MAST_M) continue;
    if (!best || Math.abs(end.xM - mast.xM) < Math.abs(end.xM - best.xM)) best = mast;
  }
  return best?.id;
}
