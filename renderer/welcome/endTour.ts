import type { AppStore } from '../store/store.ts';

/** Ends the tour, read or skipped: from now on it comes only when it is asked for. */
export function endTour(store: AppStore): void {
  store.getState().setView({ tourStep: null });
  store.getState().setPreferences({ tourSeen: true });
}
