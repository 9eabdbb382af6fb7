import type { BrowserWindowConstructorOptions, Session, WebContents } from 'electron';

export const APP_ORIGIN = 'app://backstay';

/** Options of the one window: sandboxed, isolated, no Node in the page. */
export function windowOptions(preload: string): BrowserWindowConstructorOptions {
  return {
    width: 1440,
    height: 900,
    minWidth: 1000,
    minHeight: 680,
    show: false,
    title: 'Backstay',
    webPreferences: {
      preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webviewTag: false,
      spellcheck: false,
    },
  };
}

/** Keeps the page where it is: no navigation, no new windows, no embedded pages. */
export function confine(contents: Pick<WebContents, 'on' | 'setWindowOpenHandler'>): void {
  contents.on('will-navigate', (event) => event.preventDefault());
  contents.on('will-redirect', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

/** The app asks for no permission, so every one is refused. */
export function refusePermissions(
  session: Pick<Session, 'setPermissionRequestHandler' | 'setPermissionCheckHandler'>,
): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
}
