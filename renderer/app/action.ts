import type { Host } from '../../electron/contract.ts';
import type { AppActions, AppState, AppStore } from '../store/store.ts';

export type State = AppState & AppActions;

/** One thing the user can do; the menu, the shortcut and the command palette all come from it. */
export interface Action {
  readonly id: string;
  readonly name: string;
  readonly group: 'File' | 'Edit' | 'Draw' | 'View' | 'Help';
  /** Chords such as `Mod+Shift+Z`, `C`, `ArrowLeft`; `Mod` is Ctrl, or Command on a Mac. The first is shown. */
  readonly keys: readonly string[];
  /** Bare-key actions work only while the drawing or the outline has the focus. */
  readonly where: 'anywhere' | 'drawing';
  /** Has no meaning in a browser, and is not offered there. */
  readonly isDesktopOnly?: true;
  isEnabled(state: State): boolean;
  perform(store: AppStore, host: Host): void | Promise<void>;
}

export const always = (): boolean => true;
export const hasSelection = (state: State): boolean => state.selection.length > 0;

/** Ids of the selected items, in selection order. */
export function selectedItemIds(state: State): string[] {
  return state.selection.filter(({ kind }) => kind === 'item').map(({ id }) => id);
}

/** Id of the one selected run, or null. */
export function selectedRunId(state: State): string | null {
  const runs = state.selection.filter(({ kind }) => kind === 'run');
  return runs.length === 1 ? (runs[0]?.id ?? null) : null;
}
