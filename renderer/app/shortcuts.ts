import { useEffect } from 'react';
import type { MenuCommand } from '../../electron/contract.ts';
import { useHost } from '../host/context.ts';
import { useAppStore } from '../store/context.ts';
import { type Action, chordOf } from './action.ts';
import { ACTIONS, actionById } from './actions.ts';

/** Chords that belong to a text field while one has the focus. */
const TEXT_CHORDS = new Set(['Mod+Z', 'Mod+Shift+Z', 'Mod+Y', 'Mod+C', 'Mod+V', 'Mod+X', 'Mod+A', 'Mod+D']);

export type FocusArea = 'drawing' | 'outline' | 'text' | 'overlay' | 'elsewhere';

/** Where the keyboard focus is, as far as shortcuts care. */
export function focusArea(target: EventTarget | null): FocusArea {
  if (!(target instanceof Element)) return 'elsewhere';
  if (target.closest('[role="dialog"], [role="alertdialog"], [role="menu"], [role="listbox"]')) return 'overlay';
  if (target.closest('input, textarea, select, [contenteditable="true"]')) return 'text';
  if (target.closest('[data-area="drawing"]')) return 'drawing';
  if (target.closest('[data-area="outline"]')) return 'outline';
  return 'elsewhere';
}

/** Whether `action` answers to `chord` with the focus in `area`. */
export function answersTo(action: Action, chord: string, area: FocusArea): boolean {
  if (!action.keys.includes(chord) || area === 'overlay') return false;
  const isCommand = chord.startsWith('Mod+') || /^F\d/.test(chord);
  if (area === 'text') return action.where === 'anywhere' && isCommand && !TEXT_CHORDS.has(chord);
  if (action.where === 'anywhere' || isCommand) return true;
  // Plain arrows walk the outline; with Alt they move what is selected.
  if (area === 'outline') return !/^(Shift\+)?Arrow/.test(chord);
  return area === 'drawing';
}

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
