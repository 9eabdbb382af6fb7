import type { Overhead, Place } from '../model/boat.ts';
import type { Part, Port } from '../model/part.ts';
import type { DataLink, Endpoint, Feed, Item, Project, Run } from '../model/project.ts';
import { CATALOGUE } from './catalogue.ts';

/**
 * Everything about a project that is found by id, made once per (immutable) project. Maps keep document order.
 * `effective` is the item's part with the item's overrides applied; undefined for a part nobody knows.
 */
export interface ProjectIndex {
  readonly items: ReadonlyMap<string, Item>;
  readonly runs: ReadonlyMap<string, Run>;
  readonly places: ReadonlyMap<string, Place>;
  readonly parts: ReadonlyMap<string, Part>;
  readonly effective: ReadonlyMap<string, Part>;
  readonly runsAtItem: ReadonlyMap<string, readonly Run[]>;
  readonly feedsInto: ReadonlyMap<string, readonly Feed[]>;
  readonly feedsFrom: ReadonlyMap<string, readonly Feed[]>;
  readonly linksAtItem: ReadonlyMap<string, readonly DataLink[]>;
}

const catalogueById: ReadonlyMap<string, Part> = new Map(CATALOGUE.map((part) => [part.id, part]));
const cache = new WeakMap<Project, ProjectIndex>();
const effectiveCache = new WeakMap<Item, { part: Part; effective: Part }>();

/** The index of a project; cached by identity, so a project must never be changed in place. */
export function indexProject(project: Project): ProjectIndex {
  const known = cache.get(project);
  if (known) return known;
  const parts = new Map([...catalogueById, ...project.parts.map((part) => [part.id, part] as const)]);
  const effective = new Map<string, Part>();
  for (const item of project.items) {
    const part = parts.get(item.partId);
    if (part) effective.set(item.id, effectivePart(item, part));
  }
  const index: ProjectIndex = {
    items: new Map(project.items.map((item) => [item.id, item])),
    runs: new Map(project.runs.map((run) => [run.id, run])),
    places: new Map(project.places.map((place) => [place.id, place])),
    parts,
    effective,
    runsAtItem: groupByMany(project.runs, (run) => [run.from.itemId, run.to.itemId]),
    feedsInto: groupByMany(project.feeds, (feed) => [feed.to.itemId]),
    feedsFrom: groupByMany(project.feeds, (feed) => [feed.from.itemId]),
    linksAtItem: groupByMany(project.dataLinks, (link) => [link.from.itemId, link.to.itemId]),
  };
  cache.set(project, index);
  return index;
}

/** The part with this item's own figures and traits in place of the part's. */
export function effectivePart(item: Item, part: Part): Part {
  const { figures, traits } = item.overrides;
  if (Object.keys(figures).length === 0 && Object.keys(traits).length === 0) return part;
  const known = effectiveCache.get(item);
  if (known?.part === part) return known.effective;
  // The override keys were checked against the part's own schema when the document was loaded or edited.
  const effective = {
    ...part,
    figures: { ...part.figures, ...figures },
    traits: { ...part.traits, ...traits },
  } as Part;
  effectiveCache.set(item, { part, effective });
  return effective;
}

/** The port an end of a run, feed or link sits on, or undefined if the item or port does not exist. */
export function portOf(project: Project, endpoint: Endpoint): Port | undefined {
  return indexProject(project)
    .effective.get(endpoint.itemId)
    ?.ports.find((port) => port.id === endpoint.portId);
}

/** The place an item is at, or undefined when it stands free. */
export function placeOf(project: Project, item: Item): Place | undefined {
  return item.placeId === null ? undefined : indexProject(project).places.get(item.placeId);
}

/** What is over an item: its own fact, else its place's, else open sky. */
export function overheadOf(project: Project, item: Item): Overhead {
  return item.facts.overhead ?? placeOf(project, item)?.overhead ?? 'open';
}

function groupByMany<T>(entries: readonly T[], keysOf: (entry: T) => readonly string[]): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const entry of entries) {
    for (const key of new Set(keysOf(entry))) {
      const group = groups.get(key);
      if (group) group.push(entry);
      else groups.set(key, [entry]);
    }
  }
  return groups;
}
