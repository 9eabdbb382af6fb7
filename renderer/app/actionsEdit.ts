import { addedSubjects, copyItems } from '../../core/edit/copy.ts';
import { moveItems } from '../../core/edit/items.ts';
import { removeSubjects } from '../../core/edit/remove.ts';
import { removeBend } from '../../core/edit/route.ts';
import type { Project, Subject } from '../../core/model/project.ts';
import { movedWords } from '../commands/words.ts';
import { type AppStore, shownProject } from '../store/store.ts';
import { type Action, always, hasSelection, type State, selectedItemIds } from './action.ts';

const edit = { group: 'Edit', where: 'drawing' } as const;
const hasItems = (state: State): boolean => selectedItemIds(state).length > 0;

/** How far one press of an arrow key moves what is selected, m; with Shift five times that. */
const STEP_M = 0.1;
const LONG_STEPS = 5;

/** Copies items as one undo step and selects the copies. */
function copyAndSelect(store: AppStore, ids: readonly string[]): void {
  const before = store.getState().project;
  const known = ids.filter((id) => before.items.some((item) => item.id === id));
  if (known.length === 0) {
    store.getState().say({ tone: 'refusal', text: 'What was copied is no longer on the boat: copy again.' });
    return;
  }
  const label = known.length === 1 ? 'Item copied' : `${known.length} items copied`;
  if (!store.getState().edit(label, (project) => copyItems(project, known))) return;
  const copies = addedSubjects(before, store.getState().project).filter(({ kind }) => kind === 'item');
  store.getState().select(copies);
}

/** Deletes the pressed bend of a selected run, else everything selected. */
function remove(store: AppStore): void {
  const { selection, bend, project, edit: doEdit, setView } = store.getState();
  const run = bend && project.runs.find(({ id }) => id === bend.runId);
  const isShown = run && selection.some(({ kind, id }) => kind === 'run' && id === run.id);
  if (bend && run && isShown && run.via[bend.index]) {
    setView({ bend: null });
    doEdit(`Bend taken out of ${run.number}`, (before) => removeBend(before, bend.runId, bend.index));
    return;
  }
  doEdit(`${subjectWords(project, selection)} deleted`, (before) => removeSubjects(before, selection));
}

function subjectWords(project: Project, subjects: readonly Subject[]): string {
  const [only] = subjects;
  if (!only || subjects.length > 1) return `${subjects.length} things`;
  const item = project.items.find(({ id }) => id === only.id);
  const line = [...project.runs, ...project.feeds, ...project.dataLinks].find(({ id }) => id === only.id);
  const place = project.places.find(({ id }) => id === only.id);
  return item?.tag ?? line?.number ?? place?.name ?? 'Selection';
}

function nudge(name: string, key: string, dx: number, dz: number): readonly Action[] {
  return [1, LONG_STEPS].map((steps) => ({
    ...edit,
    id: `move-${name}-${steps}`,
    name: `Move ${name}${steps > 1 ? `, ${LONG_STEPS} steps` : ''}`,
    keys: steps > 1 ? [`Shift+${key}`, `Alt+Shift+${key}`] : [key, `Alt+${key}`],
    isEnabled: hasItems,
    perform: (store) => {
      const ids = selectedItemIds(store.getState());
      const by = { dxM: dx * STEP_M * steps, dyM: 0, dzM: dz * STEP_M * steps };
      store.getState().previewEdit((project) => moveItems(project, ids, by));
      const state = store.getState();
      state.commitPreview(movedWords(shownProject(state), ids, state.preferences), `nudge ${ids.join(' ')}`);
    },
  }));
}

export const EDIT_ACTIONS: readonly Action[] = [
  {
    ...edit,
    id: 'undo',
    name: 'Undo',
    keys: ['Mod+Z'],
    where: 'anywhere',
    isEnabled: (state) => state.history.past.length > 0,
    perform: (store) => store.getState().undo(),
  },
  {
    ...edit,
    id: 'redo',
    name: 'Redo',
    keys: ['Mod+Shift+Z', 'Mod+Y'],
    where: 'anywhere',
    isEnabled: (state) => state.history.future.length > 0,
    perform: (store) => store.getState().redo(),
  },
  {
    ...edit,
    id: 'copy',
    name: 'Copy',
    keys: ['Mod+C'],
    isEnabled: hasItems,
    perform: (store) => {
      const ids = selectedItemIds(store.getState());
      store.getState().setView({ clipboard: ids });
      const text =
        ids.length === 1 ? '1 item copied: paste it with Ctrl+V' : `${ids.length} items copied: paste with Ctrl+V`;
      store.getState().say({ tone: 'plain', text });
    },
  },
  {
    ...edit,
    id: 'paste',
    name: 'Paste',
    keys: ['Mod+V'],
    isEnabled: (state) => state.clipboard.length > 0,
    perform: (store) => copyAndSelect(store, store.getState().clipboard),
  },
  {
    ...edit,
    id: 'duplicate',
    name: 'Duplicate',
    keys: ['Mod+D'],
    isEnabled: hasItems,
    perform: (store) => copyAndSelect(store, selectedItemIds(store.getState())),
  },
  { ...edit, id: 'delete', name: 'Delete', keys: ['Delete', 'Backspace'], isEnabled: hasSelection, perform: remove },
  {
    ...edit,
    id: 'select-all',
    name: 'Select all items',
    keys: ['Mod+A'],
    isEnabled: always,
    perform: (store) => {
      const { project, select } = store.getState();
      select(project.items.map(({ id }) => ({ kind: 'item', id })));
    },
  },
  {
    ...edit,
    id: 'deselect',
    name: 'Select nothing',
    keys: ['Escape'],
    isEnabled: hasSelection,
    perform: (store) => store.getState().select([]),
  },
  ...nudge('towards the stern', 'ArrowLeft', 1, 0),
  ...nudge('towards the bow', 'ArrowRight', -1, 0),
  ...nudge('up', 'ArrowUp', 0, 1),
  ...nudge('down', 'ArrowDown', 0, -1),
];
