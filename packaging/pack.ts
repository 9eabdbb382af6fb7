import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { Arch, Platform } from 'electron-builder';
import { ROOT } from '../electron/node/paths.ts';
import { makePackage, packageFaults, type Unpacked } from './package.ts';
import { SYSTEMS, writeStandInDistribution } from './standIn/distributions.ts';

// `npm run dist`: the installers of the system it runs on. `npm run pack`: the folders that installers would be made of, for
// every system, over a stand-in for the Electron runtime. Both read back what was made and fail on any fault.

const USAGE =
  'npm run dist -- [--dir] [--signed] [--electron FOLDER_OR_ZIP] [--out FOLDER]   or   npm run pack -- [--out FOLDER]';

const readArguments = () =>
  parseArgs({
    options: {
      dir: { type: 'boolean', default: false },
      signed: { type: 'boolean', default: false },
      electron: { type: 'string' },
      'stand-in': { type: 'boolean', default: false },
      out: { type: 'string', default: resolve(ROOT, 'out') },
      help: { type: 'boolean', default: false },
    },
  }).values;

/** What was asked for; an option nobody knows ends the command with a sentence. */
function askedFor(): ReturnType<typeof readArguments> {
  try {
    return readArguments();
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : error}\n${USAGE}`);
    process.exit(2);
  }
}

const asked = askedFor();

/** Where electron-builder leaves the packed program, on any system. */
function unpackedIn(out: string): Unpacked[] {
  const folders = readdirSync(out, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  return folders.flatMap(({ name }) => {
    const bundle = join(out, name, 'Backstay.app');
    if (existsSync(bundle)) return [{ asar: join(bundle, 'Contents/Resources/app.asar'), executable: bundle }];
    const asar = join(out, name, 'resources/app.asar');
    if (!existsSync(asar)) return [];
    const executable = ['backstay', 'Backstay.exe'].map((file) => join(out, name, file)).find(existsSync);
    return executable === undefined ? [] : [{ asar, executable }];
  });
}

/** Installers carry the time of the commit, not of the build, so that the same commit gives the same bytes. */
function setBuildTime(): void {
  if (process.env.SOURCE_DATE_EPOCH !== undefined) return;
  try {
    const time = execFileSync('git', ['log', '-1', '--format=%ct'], { cwd: ROOT, encoding: 'utf8', stdio: 'pipe' });
    process.env.SOURCE_DATE_EPOCH = time.trim();
  } catch {
    console.log('No commit to take the time from: installers will carry the time of this build.');
  }
}

function packForThisSystem(out: string): Promise<string[]> {
  const atHand = asked.electron === undefined ? null : resolve(asked.electron);
  return makePackage({
    out,
    targets: Platform.current().createTarget(asked.dir ? 'dir' : undefined),
    signed: asked.signed,
    ...(atHand === null ? {} : { electronDist: () => atHand }),
  });
}

async function packOverStandIns(out: string): Promise<string[]> {
  const standIn = (system: string): string => join(`${out}-stand-in-electron`, system);
  for (const system of SYSTEMS) await writeStandInDistribution(system, standIn(system));
  const targets = new Map([
    ...Platform.LINUX.createTarget('dir', Arch.x64),
    ...Platform.WINDOWS.createTarget('dir', Arch.x64),
    ...Platform.MAC.createTarget('dir', Arch.arm64),
  ]);
  return makePackage({ out, targets, signed: false, electronDist: standIn });
}

async function main(): Promise<void> {
  if (asked.help) return console.log(USAGE);
  const out = resolve(asked.out);
  setBuildTime();
  const made = asked['stand-in'] ? await packOverStandIns(out) : await packForThisSystem(out);
  const programs = unpackedIn(out);
  const faults = programs.length === 0 ? ['No packed program was found.'] : [];
  for (const program of programs)
    faults.push(...(await packageFaults(program)).map((fault) => `${relative(out, program.executable)}: ${fault}`));
  for (const fault of faults) console.error(fault);
  for (const path of [...made, ...programs.map(({ executable }) => executable)]) console.log(path);
  console.log(faults.length === 0 ? `Packed and read back: ${out}` : `${faults.length} faults; do not ship this.`);
  process.exitCode = faults.length === 0 ? 0 : 1;
}

await main().catch((error: NodeJS.ErrnoException) => {
  const isNetwork = ['ENOTFOUND', 'EAI_AGAIN', 'ECONNREFUSED', 'ETIMEDOUT'].includes(error.code ?? '');
  console.error(
    isNetwork
      ? `Nothing was packed: electron-builder fetches Electron's runtime and its own tools, and the network was not there (${error.message}). Try again with a network, or name a runtime at hand with --electron.`
      : `Nothing was packed. ${error.message}`,
  );
  process.exitCode = 1;
});
