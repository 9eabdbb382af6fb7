import type { MenuItemConstructorOptions } from 'electron';
import type { MenuCommand } from '../contract.ts';

/** The application menu. Entries of ours send a command to the page; the others are the system's own roles. */
export function menuTemplate(isMac: boolean, send: (command: MenuCommand) => void): MenuItemConstructorOptions[] {
  const entry = (label: string, command: MenuCommand, accelerator?: string): MenuItemConstructorOptions => ({
    label,
    click: () => send(command),
    ...(accelerator === undefined ? {} : { accelerator }),
  });
  return [
    ...(isMac ? [{ role: 'appMenu' as const }] : []),
    {
      label: '&File',
      submenu: [
        entry('New boat…', 'new', 'CmdOrCtrl+N'),
        entry('Open…', 'open', 'CmdOrCtrl+O'),
        { type: 'separator' },
        entry('Save', 'save', 'CmdOrCtrl+S'),
        entry('Save as…', 'saveAs', 'CmdOrCtrl+Shift+S'),
        { type: 'separator' },
        entry('Export install sheet (PDF)…', 'exportPdf', 'CmdOrCtrl+E'),
        entry('Export cable schedule (CSV)…', 'exportScheduleCsv'),
        entry('Export path losses (CSV)…', 'exportLossesCsv'),
        entry('Export drawing (SVG)…', 'exportSvg'),
        { type: 'separator' },
        isMac ? { role: 'close' } : { role: 'quit' },
      ],
    },
    {
      label: '&Edit',
      submenu: [
        // Undo and redo carry no accelerator here: the page decides whether the key belongs to a text field or the drawing.
        entry('Undo', 'undo'),
        entry('Redo', 'redo'),
        { type: 'separator' },
        { role: 'cut' },
        { role: 'copy' },
        { role: 'paste' },
      ],
    },
    { label: '&View', submenu: [entry('Fit boat', 'fit'), { role: 'togglefullscreen' }] },
    { label: '&Help', submenu: [entry('Keys and user guide', 'help', 'F1')] },
  ];
}
