import type { MenuItemConstructorOptions } from 'electron';
import { type MenuCommand, RECENT_COMMAND, type RecentFile } from '../contract.ts';
import * as entries from './menuEntries.ts';

export interface MenuParts {
  readonly isMac: boolean;
  readonly recents: readonly RecentFile[];
  send(command: MenuCommand): void;
  newWindow(): void;
  forgetRecents(): void;
}

type Template = MenuItemConstructorOptions[];
const SEPARATOR: MenuItemConstructorOptions = { type: 'separator' };

/** The application menu: every action of the page with its key, and the system's own roles. */
export function menuTemplate(parts: MenuParts): Template {
  const { isMac } = parts;
  const items = (list: readonly entries.MenuEntry[]): Template => list.map((entry) => item(parts, entry));
  return [
    ...(isMac ? [macMenu(items)] : []),
    { label: '&File', submenu: fileMenu(parts, items) },
    { label: '&Edit', submenu: editMenu(parts, items) },
    { label: '&Draw', submenu: items(entries.DRAW) },
    { label: '&View', submenu: viewMenu(items) },
    ...(isMac ? [{ role: 'windowMenu' as const }] : []),
    { label: '&Help', role: 'help', submenu: helpMenu(isMac, items) },
  ];
}

type Items = (list: readonly entries.MenuEntry[]) => Template;

/** The menu a Mac has under the program's name. */
const macMenu = (items: Items): MenuItemConstructorOptions => ({
  role: 'appMenu',
  submenu: [
    ...items(entries.ABOUT),
    SEPARATOR,
    ...items(entries.SETTINGS),
    SEPARATOR,
    { role: 'services' },
    SEPARATOR,
    { role: 'hide' },
    { role: 'hideOthers' },
    { role: 'unhide' },
    SEPARATOR,
    { role: 'quit' },
  ],
});

function fileMenu(parts: MenuParts, items: Items): Template {
  return [
    ...items(entries.NEW_AND_OPEN),
    { label: 'Open recent', submenu: recentMenu(parts) },
    { label: 'Demo boats', submenu: items(entries.DEMOS) },
    { ...item(parts, entries.NEW_WINDOW), click: () => parts.newWindow() },
    SEPARATOR,
    ...items(entries.SAVE),
    ...items(entries.RECOVERIES),
    SEPARATOR,
    { label: 'Export', submenu: items(entries.EXPORTS) },
    ...items(entries.PRINT),
    SEPARATOR,
    ...(parts.isMac ? [] : [...items(entries.SETTINGS), SEPARATOR]),
    { role: 'close' },
    ...(parts.isMac ? [] : [{ role: 'quit' as const }]),
  ];
}

function recentMenu({ recents, send, forgetRecents }: MenuParts): Template {
  if (recents.length === 0) return [{ label: 'None yet', enabled: false }];
  const files = recents.map(({ id, name, folder, missing }) => ({
    id: `${RECENT_COMMAND}${id}`,
    // An ampersand would mark a letter of the name as its key.
    label: `${name} — ${folder}${missing ? ' (not there now)' : ''}`.replaceAll('&', '&&'),
    click: () => send(`${RECENT_COMMAND}${id}`),
  }));
  return [...files, SEPARATOR, { label: 'Forget these files', click: () => forgetRecents() }];
}

function editMenu(parts: MenuParts, items: Items): Template {
  return [
    ...items(entries.UNDO),
    SEPARATOR,
    // Only text can be cut; what the others do depends on whether a text field has the focus, and the page decides.
    { role: 'cut' },
    ...items(entries.COPY),
    SEPARATOR,
    ...items(entries.SELECT),
    SEPARATOR,
    { label: 'Move', submenu: items(entries.MOVES) },
    ...(parts.isMac ? [SEPARATOR, { role: 'startSpeaking' as const, label: 'Speak the selected text' }] : []),
  ];
}

const viewMenu = (items: Items): Template => [
  ...items(entries.DRAWING),
  SEPARATOR,
  ...items(entries.PANELS),
  { label: 'Redundancy', submenu: items(entries.REDUNDANCY_VIEWS) },
  SEPARATOR,
  ...items(entries.AREAS),
  ...items(entries.FIND),
  SEPARATOR,
  // Ctrl+0 fits the boat, so the usual size has Shift with it.
  { role: 'zoomIn', label: 'Everything larger', accelerator: 'CmdOrCtrl+Plus' },
  { role: 'zoomOut', label: 'Everything smaller', accelerator: 'CmdOrCtrl+-' },
  { role: 'resetZoom', label: 'Everything at its usual size', accelerator: 'CmdOrCtrl+Shift+0' },
  SEPARATOR,
  { role: 'togglefullscreen' },
];

const helpMenu = (isMac: boolean, items: Items): Template => [
  ...items(entries.HELP),
  SEPARATOR,
  ...items(entries.LOG),
  ...(isMac ? [] : items(entries.ABOUT)),
];

/**
 * An entry of ours. The page answers to its keys before any menu does, and knows whether a letter is meant for a text
 * field; so the menu shows keys and does not register them. A Mac registers whatever is shown: there, keys without
 * Command, Control or Alt stand in the entry's name.
 */
function item({ isMac, send }: MenuParts, { command, label, chord }: entries.MenuEntry): MenuItemConstructorOptions {
  const base = { id: command, label: label.replaceAll('&', '&&'), click: () => send(command) };
  if (chord === undefined) return base;
  if (isMac && !/^(Mod|Alt|F\d|Shift\+F\d)/.test(chord)) return { ...base, label: `${base.label} (${bareKey(chord)})` };
  return { ...base, accelerator: acceleratorOf(chord), registerAccelerator: isMac };
}

const ACCELERATOR_KEYS: Readonly<Record<string, string>> = {
  Mod: 'CmdOrCtrl',
  ArrowLeft: 'Left',
  ArrowRight: 'Right',
  ArrowUp: 'Up',
  ArrowDown: 'Down',
  Minus: '-',
  Escape: 'Esc',
};
const SIGNS: Readonly<Record<string, string>> = { Left: '←', Right: '→', Up: '↑', Down: '↓', Plus: '+', '-': '−' };

/** A chord of the page's in Electron's notation. */
export const acceleratorOf = (chord: string): string =>
  chord
    .split('+')
    .map((key) => ACCELERATOR_KEYS[key] ?? key)
    .join('+');

const bareKey = (chord: string): string =>
  acceleratorOf(chord)
    .split('+')
    .map((key) => SIGNS[key] ?? key)
    .join('+');
