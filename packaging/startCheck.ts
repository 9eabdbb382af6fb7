import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { extractAll } from '@electron/asar';
import { CHANNELS } from '../electron/contract.ts';

const LIMIT_MS = 30_000;

interface Seen {
  readonly sandbox: boolean;
  readonly schemes: readonly string[];
  readonly channels: readonly string[];
  readonly menu: boolean;
  readonly windows: readonly {
    readonly preload?: string;
    readonly sandbox?: boolean;
    readonly contextIsolation?: boolean;
    readonly nodeIntegration?: boolean;
    readonly url: string | null;
  }[];
  /** Status of each of the page's own addresses. */
  readonly answers: Readonly<Record<string, number>>;
}

/**
 * Starts the main process of a packed archive once, in plain Node with a fake of the `electron` module, far from the
 * checkout, so that whatever is missing in the archive shows.
 * @returns what went wrong, as sentences; none when a window came up and its page and every file it names were answered
 */
export function startFaults(asar: string): string[] {
  const folder = mkdtempSync(join(tmpdir(), 'backstay-start-'));
  try {
    extractAll(asar, folder);
    const module = join(folder, 'node_modules/electron');
    mkdirSync(module, { recursive: true });
    copyFileSync(resolve(import.meta.dirname, 'fakeElectron.mjs'), join(module, 'index.mjs'));
    writeFileSync(join(module, 'package.json'), '{"name":"electron","exports":"./index.mjs"}');
    const { status, stdout, stderr } = spawnSync(process.execPath, [join(folder, 'dist/electron/main.js')], {
      cwd: folder,
      env: { PATH: process.env.PATH, BACKSTAY_START_FOLDER: join(folder, 'profile') },
      encoding: 'utf8',
      timeout: LIMIT_MS,
    });
    const seen = stdout.split('\n').find((line) => line.startsWith('{"sandbox"'));
    if (status !== 0 || seen === undefined)
      return [`The main process did not bring up a window (status ${status}): ${stderr.trim() || stdout.trim()}`];
    return faultsOf(JSON.parse(seen) as Seen, folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function faultsOf(seen: Seen, folder: string): string[] {
  const [window] = seen.windows;
  const missing = Object.keys(CHANNELS).filter((channel) => !seen.channels.includes(channel));
  const checks: [boolean, string][] = [
    [seen.sandbox, 'The sandbox was not asked for.'],
    [seen.schemes.includes('app'), 'The app:// scheme was not registered.'],
    [seen.menu, 'No menu was set.'],
    [missing.length === 0, `No handler for: ${missing.join(', ')}.`],
    [window?.url?.startsWith('app://') === true, `The window loads ${window?.url}, not the app's own page.`],
    [window?.sandbox === true && window.contextIsolation === true, 'The window is not confined.'],
    [window?.nodeIntegration === false, 'The page is given Node.'],
    [window?.preload === join(folder, 'dist/electron/preload.cjs'), `The preload is ${window?.preload}.`],
  ];
  const wrong = checks.filter(([fine]) => !fine).map(([, sentence]) => sentence);
  return [...wrong, ...answerFaults(seen.answers)];
}

/** The page's own files must come; the main process, one folder up, must not. */
const answerFaults = (answers: Seen['answers']): string[] =>
  Object.entries(answers)
    .filter(([path, status]) => (path.includes('..%2f') ? status === 200 : status !== 200))
    .map(([path, status]) => `${path} was answered with ${status}.`);
