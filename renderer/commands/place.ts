import { insertIntoRun } from '../../core/edit/inline.ts';
import { addItem } from '../../core/edit/items.ts';
import type { Position } from '../../core/model/boat.ts';
import type { PlaceablePart } from '../../core/model/part.ts';
import type { Project } from '../../core/model/project.ts';
import type { AppStore } from '../store/store.ts';
import { whereWords } from './words.ts';

/** Whether a part can be put into a run: an inline device with at least two antenna sockets. */
export const goesIntoRun = (part: PlaceablePart): boolean =>
  part.kind === 'inline' && part.ports.filter(({ medium }) => medium === 'rf').length >= 2;

/** Adds a part as one undo step, selects it and says where it is. Returns the new item's id, or null when refused. */
export function addPart(
  store: AppStore,
  part: PlaceablePart,
  at: { readonly position?: Position; readonly placeId?: string | null },
): string | null {
  return addAndSelect(store, part, (project) => addItem(project, { partId: part.id, ...at }));
}

/** Puts a part into a run as one undo step. Returns the new item's id, or null when refused. */
export function insertPart(store: AppStore, part: PlaceablePart, runId: string, position?: Position): string | null {
  return addAndSelect(store, part, (project) => insertIntoRun(project, runId, part.id, position));
}

function addAndSelect(store: AppStore, part: PlaceablePart, change: (project: Project) => Project): string | null {
  const state = store.getState();
  if (!state.edit(`${part.name} added`, change)) return null;
  const { project, preferences } = store.getState();
  const item = project.items.at(-1);
  if (!item) return null;
  state.select([{ kind: 'item', id: item.id }]);
  state.say({ tone: 'plain', text: `${item.tag}, ${part.name}, added at ${whereWords(project, item, preferences)}` });
  return item.id;
}
