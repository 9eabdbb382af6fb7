import type { Project } from '../../core/model/project.ts';
import type { Drop, Host, Opened, Response } from '../../electron/contract.ts';
import { ask } from '../store/questions.ts';
import { type AppStore, type DocumentFile, isUnsaved, type Opening } from '../store/store.ts';
import { told } from '../ui/told.ts';
import { type DemoId, demoProject } from './demos.ts';
import { fileOf, openingOf, readOpened } from './readOpened.ts';
import { withPicturesBeside } from './readPictures.ts';
import { refreshRecents } from './recents.ts';
import { saveFile } from './saveActions.ts';

/** Asks before unsaved work is replaced; saves it where that is wished. Returns whether the way is free. */
async function mayReplace(store: AppStore, host: Host): Promise<boolean> {
  const state = store.getState();
  if (!isUnsaved(state)) return true;
  const choice = await ask(store, { kind: 'unsaved', title: state.project.title });
  // What was changed while the save ran is not in it, and must be asked about too.
  return choice === 'save' ? (await saveFile(store, host)) && mayReplace(store, host) : choice === 'discard';
}

/** Another document takes the place of the one that is open, whose recovery copy is no longer needed. */
async function replace(
  store: AppStore,
  host: Host,
  project: Project,
  file: DocumentFile | null,
  opening: Opening = {},
): Promise<boolean> {
  if (!(await mayReplace(store, host))) return false;
  const { documentId } = store.getState();
  store.getState().openProject(project, file, opening);
  if (documentId !== store.getState().documentId) void host.dropRecovery({ documentId });
  return true;
}

/** A boat from the New boat dialog becomes the document. Returns whether it did. */
export const newBoat = (store: AppStore, host: Host, project: Project): Promise<boolean> =>
  replace(store, host, project, null);

export async function openDemo(store: AppStore, host: Host, id: DemoId): Promise<void> {
  await replace(store, host, demoProject(id), null);
}

/** Shows a document that was opened; a bad one leaves everything as it was and says what is wrong, where, and the mend. */
export async function showOpened(store: AppStore, host: Host, opened: Opened): Promise<void> {
  const read = readOpened(store, opened);
  if (!read) return;
  const { project, notes } = await withPicturesBeside(host, opened.handle, read.project);
  if (!(await replace(store, host, project, fileOf(opened), openingOf(opened)))) return;
  store
    .getState()
    .say({ tone: 'plain', text: told(`Opened ${opened.name}`, [...opened.notes, ...read.notes, ...notes]) });
}

/** Runs an opening and shows what came of it. */
async function show(store: AppStore, host: Host, opening: Promise<Response<'open'>>): Promise<void> {
  const answer = await opening;
  store.getState().setView({ openProgress: null });
  if (!answer.ok) store.getState().say({ tone: 'refusal', text: answer.message });
  else if (answer.value) await showOpened(store, host, answer.value);
  void refreshRecents(store, host);
}

export async function openFile(store: AppStore, host: Host): Promise<void> {
  await show(store, host, host.open());
}

/** Opens a file that was dropped on the window; its kind was looked at before. */
export async function openDropped(store: AppStore, host: Host, drop: Drop): Promise<void> {
  await show(store, host, host.openDropped(drop));
}

/** Opens a file from the list of those used before. */
export async function openRecent(store: AppStore, host: Host, id: string): Promise<void> {
  await show(store, host, host.openRecent({ id }));
}

/** Opens a recovery copy as unsaved work on the file it belongs to. Returns whether it is open. */
export async function openRecovered(store: AppStore, host: Host, id: string): Promise<boolean> {
  const answer = await host.openRecovery({ id });
  if (!answer.ok) {
    store.getState().say({ tone: 'refusal', text: answer.message });
    return false;
  }
  const { text, title, name, handle } = answer.value;
  const read = readOpened(store, { text, name: name || title, handle: handle ?? '' });
  const file = name === '' ? null : fileOf({ handle: handle ?? '', name });
  if (!read || !(await replace(store, host, read.project, file, { documentId: id, isUnsaved: true }))) return false;
  store.getState().say({ tone: 'plain', text: `Recovered ${title}. It is not saved yet.` });
  return true;
}
