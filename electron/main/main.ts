import { mkdtempSync, rmSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { app, BrowserWindow, dialog, ipcMain, Menu, nativeTheme, protocol, screen, session, shell } from 'electron';
import type { RecentFile } from '../contract.ts';
import { answered, DocumentTable, writeWhole } from '../node/documents.ts';
import { RecentFiles } from '../node/recent.ts';
import { RecoveryStore } from '../node/recovery/recovery.ts';
import { openDocument } from './fileWork.ts';
import { registerHandlers } from './handlers.ts';
import { fileLog } from './log.ts';
import { menuTemplate } from './menu.ts';
import type { HandlerParts } from './parts.ts';
import { readPlacement, writePlacement } from './placement.ts';
import { answerAppRequest } from './protocol.ts';
import { backgroundFor, confine, refuseNetwork, refusePermissions, windowOptions } from './window.ts';
import { filesIn, Windows } from './windows.ts';

// Only wiring here: everything that decides anything is in the files beside this one, where it runs under test.
const rendererDist = resolve(import.meta.dirname, '../renderer');
const preload = join(import.meta.dirname, 'preload.cjs');
const data = (name: string): string => join(app.getPath('userData'), name);
const logFile = join(app.getPath('logs'), 'backstay.log');

const log = fileLog(logFile, () => new Date());
const recovery = new RecoveryStore(data('recovery'));
const recentFiles = new RecentFiles(data('recent.json'));
const windows = new Windows({
  dialog,
  log,
  now: Date.now,
  create: (bounds) =>
    new BrowserWindow({
      ...windowOptions(preload, { isDark: nativeTheme.shouldUseDarkColors, isPackaged: app.isPackaged }),
      ...bounds,
    }),
  workAreas: () => screen.getAllDisplays().map(({ workArea }) => workArea),
  readPlacement: () => readPlacement(data('window.json')),
  writePlacement: (placement) => writePlacement(data('window.json'), placement),
  giveUp: async (id) => {
    await answered(() => recovery.drop(id));
  },
  quit: () => app.quit(),
});
let printFolder: string | null = null;

const parts: HandlerParts = {
  ipcMain,
  documents: new DocumentTable(),
  recovery,
  // The system's own list as well: the jump list of Windows, the dock of a Mac.
  recents: {
    list: () => recentFiles.list(),
    pathOf: (id) => recentFiles.pathOf(id),
    add: async (path) => {
      app.addRecentDocument(path);
      await recentFiles.add(path);
    },
    clear: forgetRecents,
  },
  about: {
    version: app.getVersion(),
    electron: process.versions.electron ?? '',
    chromium: process.versions.chrome ?? '',
  },
  callerOf: (event) => windows.callerOf(event),
  idsInUseBeside: (caller) => windows.idsInUseBeside(caller),
  writeWhole: async (path, bytes) => {
    await writeWhole(path, bytes);
  },
  showPdf: async ({ suggestedName, bytes }) => {
    printFolder ??= mkdtempSync(join(app.getPath('temp'), 'backstay-print-'));
    const path = join(printFolder, suggestedName);
    await writeFile(path, bytes);
    const problem = await shell.openPath(path);
    if (problem !== '') throw new Error('The system has no program to show a PDF with. Export the PDF and print that.');
    return { name: suggestedName };
  },
  openExternal: (url) => shell.openExternal(url),
  openWindow: () => void windows.open(),
  showLog: async () => {
    log('log-shown');
    shell.showItemInFolder(logFile);
  },
  log,
  recentsChanged: () => void showMenu(),
};

function setMenu(recents: readonly RecentFile[]): void {
  const template = menuTemplate({
    isMac: process.platform === 'darwin',
    recents,
    send: (command) => (windows.current ?? windows.open()).tell('menu', command),
    newWindow: () => void windows.open(),
    forgetRecents: () => void forgetRecents().then(showMenu),
  });
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}

async function forgetRecents(): Promise<void> {
  app.clearRecentDocuments();
  await recentFiles.clear();
}

const showMenu = async (): Promise<void> => setMenu(await recentFiles.list());

/** Opens a file the file manager, a second start or the command line has named. */
async function openFromOutside(path: string): Promise<void> {
  const window = windows.forFile();
  window.focus();
  const result = await answered(() => openDocument(parts, window, path));
  if (!result.ok) await window.sayProblem(result.message);
  else if (result.value) window.tell('opened', result.value);
}

function ready(): void {
  refusePermissions(session.defaultSession);
  refuseNetwork(session.defaultSession, app.isPackaged, () => log('network-refused'));
  session.defaultSession.setSpellCheckerEnabled(false);
  protocol.handle('app', (request) => answerAppRequest(rendererDist, request));
  registerHandlers(parts);
  nativeTheme.on('updated', () => {
    const background = backgroundFor(nativeTheme.shouldUseDarkColors);
    for (const { window } of windows.all) window.setBackgroundColor(background);
  });
  // At once, because a drive that is not there makes the list of recent files wait, and the system's own menu has more.
  setMenu([]);
  void showMenu();
  log('start', { version: app.getVersion(), platform: process.platform });
  windows.open();
}

// The dialog of a fault nobody foresaw names paths; the program goes on where it can, and recovery copies are kept.
process.on('uncaughtException', (error) => log('fault', { kind: error.name }));
process.on('unhandledRejection', (error) => log('fault', { kind: error instanceof Error ? error.name : 'unknown' }));

app.enableSandbox();
if (process.platform === 'win32') app.setAppUserModelId('desktop.backstay');
// No name is ever looked up, whatever part of the browser should ask.
app.commandLine.appendSwitch('host-resolver-rules', 'MAP * ~NOTFOUND');
protocol.registerSchemesAsPrivileged([
  { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
]);
app.on('web-contents-created', (_event, contents) => confine(contents));

if (!app.requestSingleInstanceLock()) {
  app.quit();
} else {
  const started = app.whenReady().then(ready);
  const open = (path: string): void => void started.then(() => openFromOutside(path));
  started.catch((error: unknown) => {
    log('start-failed', { kind: error instanceof Error ? error.name : 'unknown' });
    dialog.showErrorBox('Backstay', 'Backstay could not start. Install it again; your documents are as they were.');
    app.exit(1);
  });
  // A Mac names the file by an event, which may come before the program is ready.
  app.on('open-file', (event, path) => {
    event.preventDefault();
    open(path);
  });
  app.on('second-instance', (_event, argv, folder) => {
    const files = filesIn(argv);
    if (files.length === 0) void started.then(() => (windows.current ?? windows.open()).focus());
    for (const file of files) open(resolve(folder, file));
  });
  for (const file of filesIn(process.argv)) open(resolve(file));
  app.on('activate', () => void started.then(() => windows.all.size === 0 && windows.open()));
  app.on('before-quit', () => windows.quitting());
  app.on('window-all-closed', () => process.platform === 'darwin' || app.quit());
  app.on('will-quit', () => printFolder && rmSync(printFolder, { recursive: true, force: true }));
}
