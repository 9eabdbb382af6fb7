import { mkdirSync } from 'node:fs';
import { join } from 'node:path';

// Takes Electron's place while the packaged main process is started once in plain Node (startCheck.ts). It answers enough
// to let a window come up, asks the app's own protocol for the page and all that the page names, and prints what it saw.
// It shows that the archive holds what a start needs; how the program behaves is the end-to-end tests' business.

const seen = { sandbox: false, schemes: [], channels: [], menu: false, windows: [], answers: {} };
const handlers = new Map();
/** Time for whatever is registered after the window was asked for. */
const SETTLING_MS = 300;

/** Whatever is asked of it, it is: callable, constructible, every property one more like it, unless told otherwise. */
function anything(known = {}) {
  return new Proxy(() => {}, {
    get: (_target, key) => {
      if (Object.hasOwn(known, key)) return known[key];
      return typeof key === 'symbol' || key === 'then' ? undefined : anything();
    },
    set: () => true,
    apply: () => anything(),
    construct: () => anything(),
  });
}

async function answerOf(path) {
  const handler = handlers.get('app');
  if (handler === undefined) return { status: 0, text: '' };
  const response = await handler(new Request(new URL(path, seen.windows[0].url)));
  return { status: response.status, text: await response.text() };
}

async function report() {
  const page = await answerOf('/index.html');
  seen.answers['/index.html'] = page.status;
  const named = [...page.text.matchAll(/(?:src|href)="([^"]+)"/g)].map((match) => match[1]);
  for (const path of [...named, '/licences.json', '/..%2felectron%2fmain.js'])
    seen.answers[path] = (await answerOf(path)).status;
  process.stdout.write(`${JSON.stringify(seen)}\n`, () => process.exit(0));
}

const folder = (name) => {
  const path = join(process.env.BACKSTAY_START_FOLDER, name);
  mkdirSync(path, { recursive: true });
  return path;
};

const handle = (scheme, handler) => handlers.set(scheme, handler);

export const app = anything({
  enableSandbox: () => {
    seen.sandbox = true;
  },
  requestSingleInstanceLock: () => true,
  whenReady: () => Promise.resolve(),
  isReady: () => true,
  isPackaged: true,
  getPath: folder,
  getVersion: () => '0.0.0',
  getName: () => 'Backstay',
  getLocale: () => 'en-GB',
  quit: () => process.exit(3),
});

export const protocol = anything({
  registerSchemesAsPrivileged: (schemes) => seen.schemes.push(...schemes.map(({ scheme }) => scheme)),
  handle,
});
export const session = anything({ defaultSession: anything({ protocol: anything({ handle }) }) });
export const ipcMain = anything({ handle: (channel) => seen.channels.push(channel) });
export const Menu = anything({
  setApplicationMenu: () => {
    seen.menu = true;
  },
});

class Window {
  static getAllWindows() {
    return [];
  }
  static getFocusedWindow() {
    return null;
  }
  static fromWebContents() {
    return null;
  }
  constructor({ webPreferences }) {
    const { preload, sandbox, contextIsolation, nodeIntegration } = webPreferences;
    const shown = { preload, sandbox, contextIsolation, nodeIntegration, url: null };
    seen.windows.push(shown);
    const loadURL = async (url) => {
      shown.url = url;
      setTimeout(report, SETTLING_MS);
    };
    const bounds = { x: 0, y: 0, width: 1280, height: 800 };
    // biome-ignore lint/correctness/noConstructorReturn: the instance answers to whatever else is asked of a window.
    return anything({ loadURL, isDestroyed: () => false, getBounds: () => bounds, getNormalBounds: () => bounds });
  }
}
export const BrowserWindow = Window;

const display = {
  workArea: { x: 0, y: 0, width: 1280, height: 800 },
  bounds: { x: 0, y: 0, width: 1280, height: 800 },
};
export const screen = anything({
  getAllDisplays: () => [display],
  getPrimaryDisplay: () => display,
  getDisplayMatching: () => display,
});
export const nativeTheme = anything({ shouldUseDarkColors: false });
export const [
  clipboard,
  crashReporter,
  dialog,
  MenuItem,
  nativeImage,
  net,
  powerMonitor,
  shell,
  systemPreferences,
  webContents,
] = Array.from({ length: 10 }, () => anything());
