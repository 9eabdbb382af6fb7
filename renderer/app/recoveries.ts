import type { Host } from '../../electron/contract.ts';
import type { AppStore } from '../store/store.ts';

/** Asks the host what unsaved work there is. The document that is open here is not lost, so its copy is left out. */
async function refreshRecoveries(store: AppStore, host: Host): Promise<void> {
  const answer = await host.recoveries();
  if (!answer.ok) store.getState().say({ tone: 'refusal', text: answer.message });
  const { documentId } = store.getState();
  const recoveries = answer.ok ? answer.value.filter(({ id }) => id !== documentId) : [];
  store.getState().setView({ recoveries });
}

/** Shows the recovery copies there are, even when there is none: it was asked for. */
export async function showRecoveries(store: AppStore, host: Host): Promise<void> {
  await refreshRecoveries(store, host);
  store.getState().setView({ dialog: 'recoveries' });
}

/** At the start: shows them only when there are some, and never over a dialog that is already there. */
export async function offerRecoveries(store: AppStore, host: Host): Promise<void> {
  await refreshRecoveries(store, host);
  const { recoveries, dialog, say, setView } = store.getState();
  if (recoveries.length === 0) return;
  if (dialog === null) setView({ dialog: 'recoveries' });
  else say({ tone: 'plain', text: 'There is unsaved work to recover: File, Recovered work' });
}

/** Throws one copy away for good, on the user's word. */
export async function discardRecovery(store: AppStore, host: Host, id: string): Promise<void> {
  const answer = await host.discardRecovery({ id });
  if (!answer.ok) store.getState().say({ tone: 'refusal', text: answer.message });
  await refreshRecoveries(store, host);
}
