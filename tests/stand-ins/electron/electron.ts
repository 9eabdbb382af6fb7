// A stand-in for the module `electron`, as far as this program's main process uses it, with Debian's Chromium behind it.
// It runs the built main.js and preload.cjs unchanged. What it cannot show is listed in docs/security.md.

export { app, Menu, nativeTheme, protocol, screen, session } from './app.ts';
export { BrowserWindow } from './browserWindow.ts';
export { dialog, shell } from './dialog.ts';
export { ipcMain } from './ipc.ts';

import './control.ts';
