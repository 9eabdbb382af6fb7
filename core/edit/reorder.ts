import type { Project } from '../model/project.ts';
import { type EntryOf, edited, entryOf, type ListKey } from './change.ts';

/** Moves one entry of a list to an index (kept inside the list): the order of balloons, schedules and the outline. */
export function reorder<K extends ListKey>(project: Project, key: K, id: string, toIndex: number): Project {
  const list: readonly EntryOf<K>[] = project[key];
  const from = list.indexOf(entryOf(project, key, id));
  const to = Math.min(Math.max(0, Math.round(toIndex)), list.length - 1);
  if (from === to || Number.isNaN(to)) return project;
  return edited(project, (draft) => {
    const entries = draft[key] as EntryOf<K>[];
    entries.splice(to, 0, ...entries.splice(from, 1));
  });
}
