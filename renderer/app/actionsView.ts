import { zoomed } from '../canvas/camera.ts';
import { PANELS } from '../store/store.ts';
import { type DialogId, REDUNDANCY_VIEWS } from '../store/view.ts';
import { type Action, always, type State } from './action.ts';

const ZOOM_STEP = 1.25;
const view = { group: 'View', where: 'anywhere', isEnabled: always } as const;

const opens =
  (dialog: DialogId): Action['perform'] =>
  (store) =>
    store.getState().setView({ dialog });

const zooms =
  (factor: number): Action['perform'] =>
  (store) => {
    const { sheet, setView } = store.getState();
    if (!sheet) return;
    const middle = { x: sheet.size.width / 2, y: sheet.size.height / 2 };
    setView({ camera: zoomed(sheet.projection, sheet.size, factor, middle) });
  };

const PANEL_ACTIONS: readonly Action[] = PANELS.map(({ id, name }, i) => ({
  ...view,
  id: `panel-${id}`,
  name: `Show ${name}`,
  keys: [`Alt+${i + 1}`],
  perform: (store) => store.getState().showPanel(id),
}));

const REDUNDANCY_ACTIONS: readonly Action[] = REDUNDANCY_VIEWS.map(({ id, name }) => ({
  ...view,
  id: `redundancy-${id}`,
  name: `Show Redundancy: ${name}`,
  keys: [],
  perform: (store) => {
    store.getState().showPanel('redundancy');
    store.getState().setView({ redundancyView: id });
  },
}));

export const VIEW_ACTIONS: readonly Action[] = [
  {
    ...view,
    id: 'fit',
    name: 'Fit the whole boat',
    keys: ['F', 'Mod+0'],
    where: 'drawing',
    perform: (store) => {
      const { setView, fitCount } = store.getState();
      setView({ camera: null, fitCount: fitCount + 1 });
    },
  },
  { ...view, id: 'zoom-in', name: 'Zoom in', keys: ['Plus'], where: 'drawing', perform: zooms(ZOOM_STEP) },
  { ...view, id: 'zoom-out', name: 'Zoom out', keys: ['Minus'], where: 'drawing', perform: zooms(1 / ZOOM_STEP) },
  {
    ...view,
    id: 'plan',
    name: 'Show or hide the plan view',
    keys: ['P'],
    where: 'drawing',
    perform: (store) => store.getState().setView({ isPlanShown: !store.getState().isPlanShown }),
  },
  {
    ...view,
    id: 'intact',
    name: 'Show the intact boat',
    keys: ['Escape'],
    isEnabled: (state: State) => state.eventId !== null,
    perform: (store) => {
      store.getState().showEvent(null);
      store.getState().say({ tone: 'plain', text: 'The drawing shows the intact boat again' });
    },
  },
  ...PANEL_ACTIONS,
  ...REDUNDANCY_ACTIONS,
  {
    ...view,
    id: 'parts-list',
    name: 'Go to the Parts list',
    keys: ['Alt+P'],
    perform: (store) => {
      store.getState().setView({ leftTab: 'parts' });
      focusSoon('.parts-list');
    },
  },
  {
    ...view,
    id: 'outline',
    name: 'Go to the Outline',
    keys: ['Alt+O'],
    perform: (store) => {
      store.getState().setView({ leftTab: 'outline' });
      focusSoon('.outline [role="treegrid"]');
    },
  },
  {
    ...view,
    id: 'drawing',
    name: 'Go to the drawing',
    keys: ['Alt+D'],
    perform: () => focusSoon('[data-area="drawing"]'),
  },
  { ...view, id: 'palette', name: 'Find a command…', keys: ['Mod+K'], perform: opens('palette') },
  { ...view, id: 'settings', name: 'Settings…', keys: ['Mod+,'], perform: opens('settings') },
];

/** Moves the focus once what is asked for has been drawn. */
function focusSoon(selector: string): void {
  requestAnimationFrame(() => document.querySelector<HTMLElement>(selector)?.focus());
}
