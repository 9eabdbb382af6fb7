import { useEffect } from 'react';
import { type Host, type MenuCommand, RECENT_COMMAND } from '../../electron/contract.ts';
import { useHost } from '../host/context.ts';
import { useAppStore } from '../store/context.ts';
import type { AppStore } from '../store/store.ts';
import { ACTIONS } from './actions.ts';
import { answersTo, chordOf, focusArea } from './keys.ts';
import { openRecent } from './openActions.ts';

/** Keyboard shortcuts and the desktop shell's menu, both served by the same actions. */
export function useShortcuts(): void {
  const store = useAppStore();
  const host = useHost();
  useEffect(() => {
    const handleKey = (event: KeyboardEvent): void => {
      if (event.defaultPrevented) return;
      const chord = chordOf(event);
      const area = focusArea(event.target);
      const state = store.getState();
      const action = ACTIONS.find((known) => answersTo(known, chord, area) && known.isEnabled(state));
      if (!action) return;
      event.preventDefault();
      event.stopPropagation();
      void action.perform(store, host);
    };
    const stopMenu = host.onMenu((command) => performCommand(store, host, command));
    // Captured, so that the outline's own type-ahead does not take the letters first.
    window.addEventListener('keydown', handleKey, true);
    return () => {
      window.removeEventListener('keydown', handleKey, true);
      stopMenu();
    };
  }, [store, host]);
}

/** What the desktop's menu asks for. While a question is open it comes first: nothing else may be begun. */
function performCommand(store: AppStore, host: Host, command: MenuCommand): void {
  const state = store.getState();
  if (state.question !== null) return;
  if (command.startsWith(RECENT_COMMAND)) void openRecent(store, host, command.slice(RECENT_COMMAND.length));
  const action = ACTIONS.find(({ id }) => id === command);
  if (action?.isEnabled(state)) void action.perform(store, host);
}
