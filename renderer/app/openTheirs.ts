import type { Host } from '../../electron/contract.ts';
import { recoveryEntry } from '../store/recovery.ts';
import type { AppStore } from '../store/store.ts';
import { fileOf, openingOf, readOpened } from './readOpened.ts';
import { withPicturesBeside } from './readPictures.ts';

/** Opens what someone else wrote over the open document's file. The work here goes into a recovery copy first. */
export async function openTheirs(store: AppStore, host: Host, name: string): Promise<void> {
  const kept = await host.keepRecovery(recoveryEntry(store.getState()));
  const say = (tone: 'plain' | 'refusal', text: string): void => store.getState().say({ tone, text });
  if (!kept.ok) return say('refusal', `Not opened, because your own work could not be set aside: ${kept.message}`);
  const recents = await host.recents();
  const named = recents.ok ? recents.value.filter((file) => file.name === name) : [];
  // With two files of one name only the user can say which.
  const [only] = named.length === 1 ? named : [];
  const answer = await (only ? host.openRecent({ id: only.id }) : host.open());
  store.getState().setView({ openProgress: null });
  if (!answer.ok) return say('refusal', answer.message);
  const read = answer.value && readOpened(store, answer.value);
  if (!answer.value || !read) return;
  const { project } = await withPicturesBeside(host, answer.value.handle, read.project);
  store.getState().openProject(project, fileOf(answer.value), openingOf(answer.value));
  say(
    'plain',
    `Opened ${name} as it is on the disk. Your own changes are in a recovery copy, offered at the next start.`,
  );
}
