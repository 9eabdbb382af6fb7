import { useEffect } from 'react';
import type { MenuCommand } from '../../electron/contract.ts';
import { useHost } from '../host/context.ts';
import { useAppStore } from '../store/context.ts';
import { ACTIONS, actionById } from './actions.ts';
import { answersTo, chordOf, focusArea } from './keys.ts';

const MENU_ACTIONS: Readonly<Record<MenuCommand, string>> = {
  new: 'new-boat',
  open: 'open',
  save: 'save',
  saveAs: 'save-as',
  exportPdf: 'export-pdf',
  exportScheduleCsv: 'export-schedule',
  exportLossesCsv: 'export-losses',
  exportSvg: 'export-svg',
  undo: 'undo',
  redo: 'redo',
  fit: 'fit',
  help: 'help',
};

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
    const stopMenu = host.onMenu((command) => void actionById(MENU_ACTIONS[command]).perform(store, host));
    // Captured, so that the outline's own type-ahead does not take the letters first.
    window.addEventListener('keydown', handleKey, true);
    return () => {
      window.removeEventListener('keydown', handleKey, true);
      stopMenu();
    };
  }, [store, host]);
}
