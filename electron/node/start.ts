import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { buildWhatIsStale } from './build.ts';
import { RENDERER_DIST, ROOT } from './paths.ts';
import { freshToken, serveRenderer } from './serve.ts';

const ELECTRON = resolve(ROOT, 'node_modules/electron');
/** Electron's own installer downloads about 110 MB; a blocked network answers long before this. */
const INSTALL_TIMEOUT_MS = 10 * 60_000;

/** Always the same where it can be: a browser keeps recovery copies by address and port, and finds them only there. */
const USUAL_PORT = 47_810;

/** Why the desktop window cannot be had here, or null when it can. Tries to install the runtime where it is missing. */
function whyNoWindow(): string | null {
  if (process.argv.includes('--browser')) return 'The browser was asked for';
  if (process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY)
    return 'There is no display';
  if (!existsSync(ELECTRON)) return 'Electron is not installed';
  if (!existsSync(resolve(ELECTRON, 'path.txt'))) {
    console.log('Fetching the Electron runtime, once…');
    const install = spawnSync(process.execPath, [resolve(ELECTRON, 'install.js')], { timeout: INSTALL_TIMEOUT_MS });
    if (install.status !== 0)
      return 'The Electron runtime could not be downloaded (it needs a network and Node 22.12 or newer)';
  }
  return null;
}

/** Runs the desktop window until it closes; resolves to a reason when it could not start. */
function runElectron(): Promise<string | null> {
  const files = process.argv.slice(2).filter((argument) => !argument.startsWith('--'));
  const child = spawn(process.execPath, [resolve(ELECTRON, 'cli.js'), ROOT, ...files], { stdio: 'inherit' });
  return new Promise((done) => {
    child.once('error', (error) => done(`Electron could not start (${error.message})`));
    child.once('exit', (code) => done(code === 0 ? null : `Electron stopped with status ${code}`));
  });
}

async function serveInBrowser(reason: string): Promise<void> {
  const { address } = await serveOn(Number(process.env.BACKSTAY_PORT ?? USUAL_PORT));
  console.log(`${reason}, so Backstay is served for your browser at ${address} (Ctrl+C stops it).`);
  console.log('The address is new at each start, and a secret: whoever has it can open the program here.');
}

/** Serves on the port, or on any free one where that is taken. */
async function serveOn(port: number): ReturnType<typeof serveRenderer> {
  const token = process.env.BACKSTAY_TOKEN || freshToken();
  try {
    return await serveRenderer(RENDERER_DIST, port, token);
  } catch {
    return serveRenderer(RENDERER_DIST, 0, token);
  }
}

await buildWhatIsStale();
const reason = whyNoWindow() ?? (await runElectron());
if (reason !== null) await serveInBrowser(reason);
