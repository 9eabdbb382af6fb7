import { type PictureFile, splitPictures } from '../../core/document/pictureFiles.ts';
import { serialiseProject } from '../../core/document/save.ts';
import type { Host, Response, Saved } from '../../electron/contract.ts';
import { ask } from '../store/questions.ts';
import type { AppState, AppStore } from '../store/store.ts';
import { told } from '../ui/told.ts';
import { fileStem } from './fileActions.ts';
import { openTheirs } from './openTheirs.ts';
import { refreshRecents } from './recents.ts';

/** Saves under way, by store: a second press of the key waits for the first instead of racing it to the file. */
const underWay = new WeakMap<AppStore, Promise<boolean>>();

function oneAtATime(store: AppStore, work: () => Promise<boolean>): Promise<boolean> {
  const running = underWay.get(store);
  if (running) return running;
  const started = work().finally(() => underWay.delete(store));
  underWay.set(store, started);
  return started;
}

/** Saves to the document's file, or asks for one. Returns whether the document is saved. */
export const saveFile = (store: AppStore, host: Host): Promise<boolean> =>
  oneAtATime(store, () => save(store, host, false));

/** Saves to a file the user chooses. Returns whether the document is saved. */
export const saveFileAs = (store: AppStore, host: Host): Promise<boolean> =>
  oneAtATime(store, () => saveAs(store, host));

async function save(store: AppStore, host: Host, overwrite: boolean): Promise<boolean> {
  const { file, project, documentId } = store.getState();
  if (!file?.handle) return saveAs(store, host);
  const { project: written, files } = splitPictures(project);
  // The pictures first, so that the document never speaks of one that is not there yet.
  const kept = await keepPictures(host, file.handle, files);
  if (!kept.ok) return afterFailure(store, host, kept.message, () => save(store, host, overwrite));
  const answer = await host.save({ handle: file.handle, text: serialiseProject(written), overwrite });
  if (!answer.ok) return afterFailure(store, host, answer.message, () => save(store, host, overwrite));
  if (answer.value.kind === 'changed-on-disk') return settleConflict(store, host, answer.value);
  return saved(store, host, { project, documentId }, answer.value);
}

async function saveAs(store: AppStore, host: Host): Promise<boolean> {
  const { file, project, documentId } = store.getState();
  const suggestedName = file?.name ?? `${fileStem(project)}.backstay`;
  const { project: written, files } = splitPictures(project);
  const answer = await host.saveAs({ suggestedName, text: serialiseProject(written) });
  if (!answer.ok) return afterFailure(store, host, answer.message, () => saveAs(store, host));
  if (answer.value === null) return false;
  return savedWithPictures(store, host, { project, documentId }, answer.value, files);
}

/** The end of a save to a file just chosen. Another try keeps the pictures only: the user has said where, and it is there. */
async function savedWithPictures(
  store: AppStore,
  host: Host,
  document: Pick<AppState, 'project' | 'documentId'>,
  written: Saved,
  files: readonly PictureFile[],
): Promise<boolean> {
  const kept = await keepPictures(host, written.handle, files);
  const again = (): Promise<boolean> => savedWithPictures(store, host, document, written, files);
  return kept.ok ? saved(store, host, document, written) : afterFailure(store, host, kept.message, again);
}

/** Keeps the pictures of a document whose pictures lie beside it; the first failure ends it. */
async function keepPictures(
  host: Host,
  handle: string,
  files: readonly PictureFile[],
): Promise<{ readonly ok: true } | { readonly ok: false; readonly message: string }> {
  for (const { fileName, bytes } of files) {
    const answer = await host.keepBeside({ handle, fileName, bytes: new Uint8Array(bytes) });
    if (!answer.ok) return answer;
  }
  return { ok: true };
}

function saved(
  store: AppStore,
  host: Host,
  { project, documentId }: Pick<AppState, 'project' | 'documentId'>,
  { handle, name, notes = [] }: Saved,
): boolean {
  // Another document may have come meanwhile, and must not be taken for this file's.
  const isStillOpen = store.getState().documentId === documentId;
  if (isStillOpen) store.getState().markSaved(project, { handle, name, seenAt: new Date().toISOString() });
  store.getState().say({ tone: 'plain', text: told(`Saved ${name}`, notes) });
  void refreshRecents(store, host);
  return isStillOpen;
}

/** Nothing is lost by a failed save: the work stays open and in its recovery copy, and the user decides how to go on. */
async function afterFailure(
  store: AppStore,
  host: Host,
  reason: string,
  again: () => Promise<boolean>,
): Promise<boolean> {
  store.getState().say({ tone: 'refusal', text: `Not saved. ${reason}` });
  const name = store.getState().file?.name ?? '';
  const choice = await ask(store, { kind: 'save-failed', name, reason });
  if (choice === 'again') return again();
  return choice === 'save-as' && saveAs(store, host);
}

type Changed = Extract<Extract<Response<'save'>, { ok: true }>['value'], { kind: 'changed-on-disk' }>;

async function settleConflict(store: AppStore, host: Host, { name, modifiedAt }: Changed): Promise<boolean> {
  store.getState().say({ tone: 'refusal', text: `Not saved: ${name} was changed by someone else.` });
  const seenAt = store.getState().file?.seenAt ?? '';
  const choice = await ask(store, { kind: 'changed-on-disk', name, modifiedAt, seenAt });
  if (choice === 'overwrite') return save(store, host, true);
  if (choice === 'save-as') return saveAs(store, host);
  if (choice === 'theirs') await openTheirs(store, host, name);
  return false;
}
