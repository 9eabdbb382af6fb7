import { type Action, always } from './action.ts';
import { DEMOS } from './demos.ts';
import { exportLosses, exportPdf, exportSchedule, exportSvg, printSheet } from './fileActions.ts';
import { openDemo, openFile } from './openActions.ts';
import { showRecoveries } from './recoveries.ts';
import { saveFile, saveFileAs } from './saveActions.ts';

const file = { group: 'File', where: 'anywhere', isEnabled: always } as const;

/** The open-demo entries, in the order of the demo boats. */
export const DEMO_ACTIONS: readonly Action[] = DEMOS.map((demo) => ({
  ...file,
  id: `demo-${demo.id}`,
  name: `Open demo: ${demo.name}`,
  keys: [],
  perform: (store, host) => openDemo(store, host, demo.id),
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
  {
    ...file,
    id: 'new-window',
    name: 'New window',
    keys: ['Mod+Shift+N'],
    perform: async (store, host) => {
      const answer = await host.newWindow();
      if (!answer.ok) store.getState().say({ tone: 'refusal', text: answer.message });
    },
  },
  {
    ...file,
    id: 'save',
    name: 'Save',
    keys: ['Mod+S'],
    perform: async (store, host) => void (await saveFile(store, host)),
  },
  {
    ...file,
    id: 'save-as',
    name: 'Save as…',
    keys: ['Mod+Shift+S'],
    perform: async (store, host) => void (await saveFileAs(store, host)),
  },
  { ...file, id: 'recoveries', name: 'Recovered work…', keys: [], perform: showRecoveries },
  { ...file, id: 'print', name: 'Print the install sheet…', keys: ['Mod+P'], perform: printSheet },
  { ...file, id: 'export-pdf', name: 'Install sheet, PDF', keys: ['Mod+E'], perform: exportPdf },
  { ...file, id: 'export-schedule', name: 'Cable schedule, CSV', keys: [], perform: exportSchedule },
  { ...file, id: 'export-losses', name: 'Path losses, CSV', keys: [], perform: exportLosses },
  { ...file, id: 'export-svg', name: 'Drawing, SVG', keys: [], perform: exportSvg },
] as const satisfies readonly Action[];
