import { PANELS } from '../store/store.ts';
import { REDUNDANCY_VIEWS } from '../store/view.ts';
import { DEMO_ACTIONS } from './actionsFile.ts';

/** What stands in a menu: an action by its id, a line between groups, a menu within, or a list made while it is open. */
export type MenuEntry =
  | string
  | { readonly kind: 'line'; readonly id: string }
  | { readonly kind: 'menu'; readonly name: string; readonly entries: readonly MenuEntry[] }
  | { readonly kind: 'recents' }
  | { readonly kind: 'preferences' };

export interface MenuPlan {
  readonly name: string;
  readonly entries: readonly MenuEntry[];
}

const line = (id: string): MenuEntry => ({ kind: 'line', id });
const within = (name: string, entries: readonly string[]): MenuEntry => ({ kind: 'menu', name, entries });

const MOVES = ['towards the stern', 'towards the bow', 'up', 'down'].flatMap((way) => [
  `move-${way}-1`,
  `move-${way}-5`,
]);

/** The menus of the page; a test sees that every action is in one of them. */
export const MENUS: readonly MenuPlan[] = [
  {
    name: 'File',
    entries: [
      'new-boat',
      'open',
      { kind: 'recents' },
      within(
        'Open demo',
        DEMO_ACTIONS.map(({ id }) => id),
      ),
      'new-window',
      line('saving'),
      'save',
      'save-as',
      'recoveries',
      line('handing over'),
      'print',
      within('Export', ['export-pdf', 'export-schedule', 'export-losses', 'export-svg']),
    ],
  },
  {
    name: 'Edit',
    entries: [
      'undo',
      'redo',
      line('copying'),
      'copy',
      'paste',
      'duplicate',
      'delete',
      'select-all',
      'deselect',
      line('drawing'),
      'add-part',
      'own-part',
      'connect',
      'insert',
      'route',
      within('Move what is selected', MOVES),
      line('project'),
      'keep-copy',
      'settings',
    ],
  },
  {
    name: 'View',
    entries: [
      'fit',
      'zoom-in',
      'zoom-out',
      'plan',
      'intact',
      line('going'),
      within('Pages', [...PANELS.map(({ id }) => `panel-${id}`), 'parts-list', 'outline', 'drawing']),
      within(
        'Redundancy',
        REDUNDANCY_VIEWS.map(({ id }) => `redundancy-${id}`),
      ),
      line('reading'),
      { kind: 'preferences' },
    ],
  },
  {
    name: 'Help',
    entries: ['help', 'help-page', 'tour', 'palette', line('program'), 'show-log', 'about'],
  },
];

/** Every action id in a menu, menus within included. */
export function menuActionIds(entries: readonly MenuEntry[]): string[] {
  return entries.flatMap((entry) => {
    if (typeof entry === 'string') return [entry];
    return entry.kind === 'menu' ? menuActionIds(entry.entries) : [];
  });
}
