import type { Host } from '../../electron/contract.ts';
import type { AppStore } from '../store/store.ts';

/** Asks the host anew which files were used before. A host that cannot say leaves the list as it was. */
export async function refreshRecents(store: AppStore, host: Host): Promise<void> {
  const answer = await host.recents();
  if (answer.ok) store.getState().setView({ recents: answer.value });
}

/** Empties the list of files used before; the files themselves are not touched. */
export async function clearRecents(store: AppStore, host: Host): Promise<void> {
  const answer = await host.forgetRecents();
  if (!answer.ok) store.getState().say({ tone: 'refusal', text: answer.message });
  else store.getState().say({ tone: 'plain', text: 'The list of recent files is empty' });
  await refreshRecents(store, host);
}
