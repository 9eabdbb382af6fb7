import { type Action, always } from './action.ts';
import {
  DEMOS,
  exportLosses,
  exportPdf,
  exportSchedule,
  exportSvg,
  openDemo,
  openFile,
  saveFile,
  saveFileAs,
} from './fileActions.ts';

const file = { group: 'File', where: 'anywhere', isEnabled: always } as const;

/** The open-demo entries, in the order of the demo boats. */
export const DEMO_ACTIONS: readonly Action[] = DEMOS.map((demo) => ({
  ...file,
  id: `demo-${demo.id}`,
  name: `Open demo: ${demo.name}`,
  keys: [],
  perform: (store) => openDemo(store, demo.id),
}));

export const FILE_ACTIONS = [
  {
    ...file,
    id: 'new-boat',
    name: 'New boat…',
    keys: ['Mod+Alt+N'],
    perform: (store) => store.getState().setView({ dialog: 'new-boat' }),
  },
  { ...file, id: 'open', name: 'Open…', keys: ['Mod+O'], perform: openFile },
  { ...file, id: 'save', name: 'Save', keys: ['Mod+S'], perform: saveFile },
  { ...file, id: 'save-as', name: 'Save as…', keys: ['Mod+Shift+S'], perform: saveFileAs },
  { ...file, id: 'export-pdf', name: 'Install sheet, PDF', keys: ['Mod+P'], perform: exportPdf },
  { ...file, id: 'export-schedule', name: 'Cable schedule, CSV', keys: [], perform: exportSchedule },
  { ...file, id: 'export-losses', name: 'Path losses, CSV', keys: [], perform: exportLosses },
  { ...file, id: 'export-svg', name: 'Drawing, SVG', keys: [], perform: exportSvg },
] as const satisfies readonly Action[];
