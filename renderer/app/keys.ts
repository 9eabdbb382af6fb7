import type { Action } from './action.ts';

const isMac = typeof navigator !== 'undefined' && /Mac/.test(navigator.platform);
const NAMES: Readonly<Record<string, string>> = {
  Mod: isMac ? '⌘' : 'Ctrl',
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowUp: '↑',
  ArrowDown: '↓',
  Plus: '+',
  Minus: '−',
  Escape: 'Esc',
};

/** A chord as it is printed in menus, e.g. `Ctrl+Shift+Z`. */
export function shownChord(chord: string): string {
  return chord
    .split('+')
    .map((key) => NAMES[key] ?? key)
    .join('+');
}

/** The chord of a key event, in the same notation as `Action.keys`. */
export function chordOf(event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>): string {
  const key = keyName(event.key);
  const isSign = key === 'Plus' || key === 'Minus';
  return [
    ...(event.ctrlKey || event.metaKey ? ['Mod'] : []),
    ...(event.altKey ? ['Alt'] : []),
    // On many keyboards plus itself needs Shift.
    ...(event.shiftKey && !isSign ? ['Shift'] : []),
    key,
  ].join('+');
}

function keyName(key: string): string {
  if (key === '+' || key === '=') return 'Plus';
  if (key === '-' || key === '−') return 'Minus';
  return key.length === 1 ? key.toUpperCase() : key;
}

/** Chords that belong to a text field while one has the focus. */
const TEXT_CHORDS = new Set(['Mod+Z', 'Mod+Shift+Z', 'Mod+Y', 'Mod+C', 'Mod+V', 'Mod+X', 'Mod+A', 'Mod+D']);

export type FocusArea = 'drawing' | 'outline' | 'text' | 'overlay' | 'elsewhere';

/** Where the keyboard focus is, as far as shortcuts care. */
export function focusArea(target: EventTarget | null): FocusArea {
  if (!(target instanceof Element)) return 'elsewhere';
  if (target.closest('[role="dialog"], [role="alertdialog"], [role="menu"], .react-aria-Popover')) return 'overlay';
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
