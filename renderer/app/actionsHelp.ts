import { PANEL_PAGES } from '../help/guide.ts';
import { type Action, always } from './action.ts';

const help = { group: 'Help', where: 'anywhere', keys: [], isEnabled: always } as const;

export const HELP_ACTIONS: readonly Action[] = [
  {
    ...help,
    id: 'help',
    name: 'Help',
    keys: ['F1'],
    perform: (store) => store.getState().setView({ dialog: 'help' }),
  },
  {
    ...help,
    id: 'help-page',
    name: 'Help on this page',
    keys: ['Shift+F1'],
    perform: (store) => {
      const { panel, setView } = store.getState();
      setView({ dialog: 'help', helpPage: PANEL_PAGES[panel] });
    },
  },
  {
    ...help,
    id: 'tour',
    name: 'Take the tour',
    perform: (store) => store.getState().setView({ tourStep: 0 }),
  },
  {
    ...help,
    id: 'show-log',
    name: 'Show the log file',
    isDesktopOnly: true,
    perform: async (store, host) => {
      const answer = await host.showLog();
      if (!answer.ok) store.getState().say({ tone: 'refusal', text: answer.message });
    },
  },
  {
    ...help,
    id: 'about',
    name: 'About Backstay',
    perform: (store) => store.getState().setView({ dialog: 'about' }),
  },
];
