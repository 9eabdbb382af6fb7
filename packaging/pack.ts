import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { Platform } from 'electron-builder';
import { ROOT } from '../electron/node/paths.ts';
import { makePackage, packageFaults, type Unpacked } from './package.ts';
import { writeStandInDistribution } from './standInDistribution.ts';

// `npm run dist`: the installers of the system it runs on. `npm run pack`: the folder an installer would be made of, over a
// stand-in for the Electron runtime, where that cannot be fetched. Both read back what was made and fail on any fault.

const USAGE = 'npm run dist -- [--dir] [--signed] [--out FOLDER]   or   npm run pack -- [--out FOLDER]';

const { values: asked } = parseArgs({
  options: {
    dir: { type: 'boolean', default: false },
    signed: { type: 'boolean', default: false },
    'stand-in': { type: 'boolean', default: false },
    out: { type: 'string', default: resolve(ROOT, 'out') },
    help: { type: 'boolean', default: false },
  },
});

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

async function main(): Promise<void> {
  if (asked.help) return console.log(USAGE);
  const out = resolve(asked.out);
  setBuildTime();
  const isStandIn = asked['stand-in'];
  const electronDist = `${out}-stand-in-electron`;
  if (isStandIn) await writeStandInDistribution(electronDist);
  const platform = isStandIn ? Platform.LINUX : Platform.current();
  const made = await makePackage({
    out,
    targets: platform.createTarget(isStandIn || asked.dir ? 'dir' : undefined),
    signed: asked.signed,
    ...(isStandIn ? { electronDist } : {}),
  });
  const programs = unpackedIn(out);
  const faults = programs.length === 0 ? ['No packed program was found.'] : [];
  for (const program of programs) faults.push(...(await packageFaults(program)));
  for (const fault of faults) console.error(fault);
  for (const path of made) console.log(path);
  console.log(faults.length === 0 ? `Packed and read back: ${out}` : `${faults.length} faults; do not ship this.`);
  process.exitCode = faults.length === 0 ? 0 : 1;
}

await main();
