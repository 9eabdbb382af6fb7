import type { BrowserWindowConstructorOptions, Session, WebContents } from 'electron';
import { SMALLEST } from './placement.ts';

export const APP_ORIGIN = 'app://backstay';

/** Options of every window: sandboxed, isolated, no Node in the page. */
export function windowOptions(
  preload: string,
  { isDark, isPackaged }: { readonly isDark: boolean; readonly isPackaged: boolean },
): BrowserWindowConstructorOptions {
  return {
    width: 1440,
    height: 900,
    minWidth: SMALLEST.width,
    minHeight: SMALLEST.height,
    show: false,
    title: 'Backstay',
    backgroundColor: backgroundFor(isDark),
    webPreferences: {
      preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webSecurity: true,
      webviewTag: false,
      spellcheck: false,
      // A file dropped beside the place for it must not replace the page.
      navigateOnDragDrop: false,
      // Recovery copies are made a second after a change whether or not the window is in front.
      backgroundThrottling: false,
      devTools: !isPackaged,
    },
  };
}

/** What is seen of a window before its page is drawn: the page's own paper, so that nothing flashes. */
export const backgroundFor = (isDark: boolean): string => (isDark ? '#242629' : '#f7f4ec');

/** Keeps a page where it is: no navigation, no new windows, no embedded pages. */
export function confine(
  contents: Pick<WebContents, 'on' | 'setWindowOpenHandler' | 'setWebRTCIPHandlingPolicy'>,
): void {
  contents.on('will-navigate', (event) => event.preventDefault());
  contents.on('will-frame-navigate', (event) => event.preventDefault());
  contents.on('will-redirect', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  // The one way to a network that neither the page's policy nor the session's filter of requests covers.
  contents.setWebRTCIPHandlingPolicy('disable_non_proxied_udp');
}

/** The app asks for no permission and no device, so every one is refused. */
export function refusePermissions(
  session: Pick<
    Session,
    | 'setPermissionRequestHandler'
    | 'setPermissionCheckHandler'
    | 'setDevicePermissionHandler'
    | 'setDisplayMediaRequestHandler'
  >,
): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler(null);
}

/** Schemes a page may load from: the app's own files, and what it has made itself. */
const OWN_SCHEMES: ReadonlySet<string> = new Set(['app:', 'blob:', 'data:']);

/** Whether a request may leave the page. The developer's tools load themselves, and are off in what is shipped. */
export function mayLoad(url: string, isPackaged: boolean): boolean {
  if (!URL.canParse(url)) return false;
  const { protocol } = new URL(url);
  return OWN_SCHEMES.has(protocol) || (!isPackaged && protocol === 'devtools:');
}

/** No network: whatever asks for anything else than the app's own is cancelled before it leaves. */
export function refuseNetwork(session: Pick<Session, 'webRequest'>, isPackaged: boolean, onRefused: () => void): void {
  session.webRequest.onBeforeRequest(({ url }, answer) => {
    const isOwn = mayLoad(url, isPackaged);
    if (!isOwn) onRefused();
    answer({ cancel: !isOwn });
  });
}
