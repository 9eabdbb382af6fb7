import { join, resolve } from 'node:path';
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } from 'electron';
import { answered, DocumentTable } from '../node/documents.ts';
import { registerHandlers } from './handlers.ts';
import { menuTemplate } from './menu.ts';
import { answerAppRequest } from './protocol.ts';
import { APP_ORIGIN, confine, refusePermissions, windowOptions } from './window.ts';

// Only wiring here: everything that decides anything is in the files beside this one, where it runs under test.
const rendererDist = resolve(import.meta.dirname, '../renderer');
const documents = new DocumentTable();
let window: BrowserWindow | null = null;
let hasUnsavedWork = false;

app.enableSandbox();
protocol.registerSchemesAsPrivileged([
  { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
]);

function openWindow(): void {
  const opened = new BrowserWindow(windowOptions(join(import.meta.dirname, 'preload.cjs')));
  window = opened;
  confine(opened.webContents);
  opened.once('ready-to-show', () => opened.show());
  opened.on('close', (event) => {
    if (!hasUnsavedWork) return;
    const choice = dialog.showMessageBoxSync(opened, {
      type: 'question',
      message: 'Close without saving?',
      detail: 'The changes since the last save would be lost.',
      buttons: ['Keep open', 'Close without saving'],
      defaultId: 0,
      cancelId: 0,
    });
    if (choice === 0) event.preventDefault();
  });
  opened.on('closed', () => {
    window = null;
  });
  opened.loadURL(`${APP_ORIGIN}/index.html`);
}

/** Opens the documents named on the command line or by a second start. */
async function openFromArguments(argv: readonly string[]): Promise<void> {
  const path = argv.slice(1).find((argument) => argument.endsWith('.backstay'));
  if (path === undefined || !window) return;
  const result = await answered(() => documents.open(resolve(path)));
  if (result.ok) window.webContents.send('opened', result.value);
  else dialog.showErrorBox('Backstay', result.message);
}

if (!app.requestSingleInstanceLock()) {
  app.quit();
} else {
  app.on('second-instance', (_event, argv) => {
    window?.show();
    window?.focus();
    openFromArguments(argv);
  });
  app.on('window-all-closed', () => app.quit());
  app.whenReady().then(() => {
    refusePermissions(session.defaultSession);
    protocol.handle('app', (request) => answerAppRequest(rendererDist, request));
    registerHandlers({
      ipcMain,
      documents,
      showOpenDialog: (options) => (window ? dialog.showOpenDialog(window, options) : dialog.showOpenDialog(options)),
      showSaveDialog: (options) => (window ? dialog.showSaveDialog(window, options) : dialog.showSaveDialog(options)),
      setUnsaved: (unsaved, title) => {
        hasUnsavedWork = unsaved;
        window?.setTitle(`${unsaved ? '• ' : ''}${title} — Backstay`);
        window?.setDocumentEdited(unsaved);
      },
      isOwnPage: ({ senderFrame, sender }) =>
        senderFrame !== null && senderFrame === sender.mainFrame && senderFrame.origin === APP_ORIGIN,
    });
    Menu.setApplicationMenu(
      Menu.buildFromTemplate(
        menuTemplate(process.platform === 'darwin', (command) => window?.webContents.send('menu', command)),
      ),
    );
    openWindow();
    window?.webContents.once('did-finish-load', () => openFromArguments(process.argv));
  });
}
