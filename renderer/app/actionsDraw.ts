import type { DialogId } from '../store/view.ts';
import { type Action, always, type State, selectedItemIds, selectedRunId } from './action.ts';

const draw = { group: 'Draw', where: 'drawing' } as const;
const hasRun = (state: State): boolean => selectedRunId(state) !== null;

const opens =
  (dialog: DialogId): Action['perform'] =>
  (store) =>
    store.getState().setView({ dialog });

export const DRAW_ACTIONS: readonly Action[] = [
  {
    ...draw,
    id: 'add-part',
    name: 'Add a part…',
    keys: ['A'],
    isEnabled: always,
    perform: (store) => store.getState().setView({ dialog: 'add-part', partId: null }),
  },
  {
    ...draw,
    id: 'connect',
    name: 'Connect…',
    keys: ['C'],
    isEnabled: (state) => selectedItemIds(state).length > 0,
    perform: opens('connect'),
  },
  { ...draw, id: 'insert', name: 'Insert into run…', keys: ['I'], isEnabled: hasRun, perform: opens('insert') },
  { ...draw, id: 'route', name: 'Edit route…', keys: ['R'], isEnabled: hasRun, perform: opens('route') },
  {
    ...draw,
    id: 'own-part',
    name: 'Add your own part…',
    keys: [],
    where: 'anywhere',
    isEnabled: always,
    perform: opens('own-part'),
  },
  {
    ...draw,
    id: 'keep-copy',
    name: 'Keep a copy of this layout as…',
    keys: [],
    where: 'anywhere',
    isEnabled: always,
    perform: opens('keep-copy'),
  },
];
