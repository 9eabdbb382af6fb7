import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { AppActions, AppState, AppStore } from './store.ts';

export const StoreContext = createContext<AppStore | null>(null);

/** The store itself, for handlers that read without subscribing. */
export function useAppStore(): AppStore {
  const store = useContext(StoreContext);
  if (!store) throw new Error('StoreContext is missing above this component');
  return store;
}

/** A slice of the state; re-renders only when the slice changes. */
export function useApp<T>(selector: (state: AppState & AppActions) => T): T {
  return useStore(useAppStore(), selector);
}
