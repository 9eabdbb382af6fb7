import { serialiseProject } from '../../core/document/save.ts';
import type { Project } from '../../core/model/project.ts';
import type { Host, Response, Saved } from '../../electron/contract.ts';
import { ask } from '../store/questions.ts';
import type { AppStore } from '../store/store.ts';
import { told } from '../ui/told.ts';
import { fileStem } from './fileActions.ts';
import { openTheirs } from './openTheirs.ts';
import { refreshRecents } from './recents.ts';

/** Saves to the document's file, or asks for one. Returns whether the document is saved. */
export async function saveFile(store: AppStore, host: Host, overwrite = false): Promise<boolean> {
  const { file, project } = store.getState();
  if (!file?.handle) return saveFileAs(store, host);
  const answer = await host.save({ handle: file.handle, text: serialiseProject(project), overwrite });
  if (!answer.ok) return afterFailure(store, host, answer.message, () => saveFile(store, host, overwrite));
  if (answer.value.kind === 'changed-on-disk') return settleConflict(store, host, answer.value);
  return saved(store, host, project, answer.value);
}

/** Saves to a file the user chooses. Returns whether the document is saved. */
export async function saveFileAs(store: AppStore, host: Host): Promise<boolean> {
  const { file, project } = store.getState();
  const suggestedName = file?.name ?? `${fileStem(project)}.backstay`;
  const answer = await host.saveAs({ suggestedName, text: serialiseProject(project) });
  if (!answer.ok) return afterFailure(store, host, answer.message, () => saveFileAs(store, host));
  return answer.value !== null && saved(store, host, project, answer.value);
}

function saved(store: AppStore, host: Host, project: Project, { handle, name, notes = [] }: Saved): true {
  store.getState().markSaved(project, { handle, name, seenAt: new Date().toISOString() });
  store.getState().say({ tone: 'plain', text: told(`Saved ${name}`, notes) });
  void refreshRecents(store, host);
  return true;
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
  return choice === 'save-as' && saveFileAs(store, host);
}

type Changed = Extract<Extract<Response<'save'>, { ok: true }>['value'], { kind: 'changed-on-disk' }>;

async function settleConflict(store: AppStore, host: Host, { name, modifiedAt }: Changed): Promise<boolean> {
  store.getState().say({ tone: 'refusal', text: `Not saved: ${name} was changed by someone else.` });
  const seenAt = store.getState().file?.seenAt ?? '';
  const choice = await ask(store, { kind: 'changed-on-disk', name, modifiedAt, seenAt });
  if (choice === 'overwrite') return saveFile(store, host, true);
  if (choice === 'save-as') return saveFileAs(store, host);
  if (choice === 'theirs') await openTheirs(store, host, name);
  return false;
}
