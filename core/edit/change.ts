import { type Draft, produce } from 'immer';
import type { z } from 'zod';
import type { Project } from '../model/project.ts';
import { RefusedEdit, requireValid } from './refused.ts';

/** A change to an entity: given keys replace, a key given as undefined is taken out, others stay. */
export type Change<T> = { readonly [K in keyof T]?: T[K] | undefined };

/** The lists of a project whose entries have an id. */
export type ListKey =
  | 'items'
  | 'runs'
  | 'feeds'
  | 'dataLinks'
  | 'places'
  | 'parts'
  | 'stations'
  | 'measurements'
  | 'alternatives';
export type EntryOf<K extends ListKey> = Project[K][number];

const LIST_WORDS: Readonly<Record<ListKey, string>> = {
  items: 'item',
  runs: 'cable run',
  feeds: 'DC feed',
  dataLinks: 'data link',
  places: 'place',
  parts: 'part of your own',
  stations: 'station',
  measurements: 'measurement',
  alternatives: 'alternative',
};

/** The project after a recipe on a draft; entries the recipe does not touch keep their identity. */
export function edited(project: Project, recipe: (draft: Draft<Project>) => void): Project {
  return produce(project, (draft) => {
    recipe(draft);
  });
}

/** An entry by id. @throws RefusedEdit when it is not there (any more) */
export function entryOf<K extends ListKey>(project: Project, key: K, id: string): EntryOf<K> {
  const list: readonly EntryOf<K>[] = project[key];
  const found = list.find((entry) => entry.id === id);
  if (found === undefined) throw new RefusedEdit(`There is no ${LIST_WORDS[key]} "${id}" in this project.`);
  return found;
}

/** The project with one entry in place of the one with the same id; the project itself when it is the same object. */
export function withEntry<K extends ListKey>(project: Project, key: K, entry: EntryOf<K>): Project {
  const list: readonly EntryOf<K>[] = project[key];
  const index = list.findIndex((known) => known.id === entry.id);
  if (index < 0) throw new RefusedEdit(`There is no ${LIST_WORDS[key]} "${entry.id}" in this project.`);
  if (list[index] === entry) return project;
  return edited(project, (draft) => {
    (draft[key] as EntryOf<K>[])[index] = entry;
  });
}

/** The project with one more entry at the end of a list. */
export function withNewEntry<K extends ListKey>(project: Project, key: K, entry: EntryOf<K>): Project {
  return edited(project, (draft) => {
    (draft[key] as EntryOf<K>[]).push(entry);
  });
}

/** The project without the entries of a list whose ids are given. */
export function withoutEntries<K extends ListKey>(project: Project, key: K, ids: ReadonlySet<string>): Project {
  const list: readonly EntryOf<K>[] = project[key];
  if (!list.some((entry) => ids.has(entry.id))) return project;
  return edited(project, (draft) => {
    (draft[key] as EntryOf<K>[]) = list.filter((entry) => !ids.has(entry.id));
  });
}

/**
 * An entity with a change merged in, checked by its schema. Returns the entity itself when nothing differs.
 * @throws RefusedEdit naming `label` when the result is not valid
 */
export function changed<T extends object>(entity: T, change: Change<T>, schema: z.ZodType, label: string): T {
  const result = mergedInto(entity, change);
  if (result !== entity) requireValid(schema, result, label);
  return result;
}

/** The merge alone. A value equal to what is there keeps the old object, so that nothing seems edited. */
export function mergedInto<T extends object>(entity: T, change: Change<T>): T {
  const result = { ...entity } as Record<string, unknown>;
  let isDifferent = false;
  for (const [key, value] of Object.entries(change)) {
    if (isSame(result[key], value)) continue;
    isDifferent = true;
    if (value === undefined) delete result[key];
    else result[key] = value;
  }
  return isDifferent ? (result as T) : entity;
}

/** Deep equality of plain JSON values. */
export function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [keysA, keysB] = [Object.keys(a), Object.keys(b)];
  if (keysA.length !== keysB.length) return false;
  return keysA.every(
    (key) => Object.hasOwn(b, key) && isSame((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  );
}
