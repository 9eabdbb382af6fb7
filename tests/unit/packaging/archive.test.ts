import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createPackage, extractAll } from '@electron/asar';
import { NtExecutable, NtExecutableResource, Resource } from 'resedit';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT } from '../../../electron/node/paths.ts';
import { type ArchivedFile, archiveFaults, readArchive } from '../../../packaging/archive.ts';
import { fuseFaults } from '../../../packaging/fuses.ts';
import { integrityFaults } from '../../../packaging/integrity.ts';
import { SYSTEMS, writeStandInDistribution } from '../../../packaging/standIn/distributions.ts';
import { startFaults } from '../../../packaging/startCheck.ts';

// The program is packed twice by the command itself, for every system over a stand-in for the Electron runtime, and what was
// written is read back. The stand-in shows what electron-builder does with our files, not how Electron runs them (docs/release.md).

const work = mkdtempSync(join(tmpdir(), 'backstay-pack-'));
const PACK_LIMIT_MS = 180_000;

function pack(name: string): string {
  const out = join(work, name);
  execFileSync('npx', ['tsx', 'packaging/pack.ts', '--stand-in', '--out', out], { cwd: ROOT, stdio: 'pipe' });
  return out;
}

/** Every file of a folder by its path within, with the hash of its bytes. */
function hashes(folder: string): [string, string][] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .sort()
    .filter((name) => statSync(join(folder, name)).isFile())
    .map((name) => [
      name,
      createHash('sha256')
        .update(readFileSync(join(folder, name)))
        .digest('hex'),
    ]);
}

let out = '';
let again = '';
/** The program as packed for Linux. */
let first = '';
beforeAll(() => {
  out = pack('first');
  again = pack('a-second-folder');
  first = join(out, 'linux-unpacked');
}, PACK_LIMIT_MS);
afterAll(() => rmSync(work, { recursive: true, force: true }));

const asarOf = (unpacked: string): string => join(unpacked, 'resources/app.asar');
/** Bundlers name a file by its content; the name before that is ours. */
const withoutHash = (path: string): string => path.replace(/-[\w-]{8}(\.\w+)$/, '-HASH$1');

describe('the packed program', () => {
  it('holds these files and no other', () => {
    const files = readArchive(asarOf(first)).map(({ path }) => withoutHash(path));
    expect(files.toSorted()).toEqual([
      'dist/electron/main.js',
      'dist/electron/preload.cjs',
      'dist/renderer/assets/BarlowSemiCondensed-Bold-HASH.ttf',
      'dist/renderer/assets/BarlowSemiCondensed-Medium-HASH.ttf',
      'dist/renderer/assets/BarlowSemiCondensed-Regular-HASH.ttf',
      'dist/renderer/assets/BarlowSemiCondensed-SemiBold-HASH.ttf',
      'dist/renderer/assets/HelpPages-HASH.css',
      'dist/renderer/assets/HelpPages-HASH.js',
      'dist/renderer/assets/backstay-HASH.svg',
      'dist/renderer/assets/index-HASH.css',
      'dist/renderer/assets/index-HASH.js',
      'dist/renderer/assets/pdfkit.standalone-HASH.js',
      'dist/renderer/assets/rolldown-runtime-HASH.js',
      'dist/renderer/index.html',
      'dist/renderer/licences.json',
      'package.json',
    ]);
  });

  it('names no folder of the machine it was built on, points to no source map, and is no larger than it should be', () => {
    expect(archiveFaults(readArchive(asarOf(first)), [ROOT, work, `${tmpdir()}/`])).toEqual([]);
  });

  it('says in its package.json what it is and nothing of how it is built', () => {
    const own = readArchive(asarOf(first)).find(({ path }) => path === 'package.json');
    const packed = JSON.parse(own?.bytes.toString('utf8') ?? '{}');
    const ours = JSON.parse(readFileSync(resolve(ROOT, 'package.json'), 'utf8'));
    expect(packed).toEqual({
      name: 'backstay',
      version: ours.version,
      description: ours.description,
      license: 'MIT',
      author: ours.author,
      private: true,
      type: 'module',
      main: 'dist/electron/main.js',
    });
  });

  it('has beside it the licences of all it is made of, and no language but English', () => {
    const beside = hashes(first).map(([name]) => name);
    expect(beside).toContain('resources/licences.txt');
    expect(beside).toContain('LICENSE.electron.txt');
    expect(beside).toContain('LICENSES.chromium.html');
    expect(beside.filter((name) => name.startsWith('locales/'))).toEqual(['locales/en-GB.pak', 'locales/en-US.pak']);
    expect(beside.filter((name) => name.includes('node_modules'))).toEqual([]);
  });

  it('has every fuse as it must be', async () => {
    expect(await fuseFaults(join(first, 'backstay'))).toEqual([]);
  });

  it('starts from the archive alone: window, page, every file the page names, a handler for every channel', () => {
    expect(startFaults(asarOf(first))).toEqual([]);
  });

  it('is the same, byte for byte, when it is made again elsewhere', () => {
    for (const folder of ['app', 'linux-unpacked', 'win-unpacked', 'mac-arm64'])
      expect(hashes(join(again, folder)), folder).toEqual(hashes(join(out, folder)));
  });
});

describe('the program packed for Windows', () => {
  const exe = (): string => join(out, 'win-unpacked/Backstay.exe');

  it('holds the same archive, and knows it by its hash', () => {
    const asar = join(out, 'win-unpacked/resources/app.asar');
    expect(readFileSync(asar).equals(readFileSync(asarOf(first)))).toBe(true);
    expect(integrityFaults(asar, exe())).toEqual([]);
  });

  it('has every fuse as it must be', async () => expect(await fuseFaults(exe())).toEqual([]));

  it('carries our name, version and icon', () => {
    const { entries } = NtExecutableResource.from(NtExecutable.from(readFileSync(exe())));
    const [version] = Resource.VersionInfo.fromEntries(entries);
    expect(version?.getStringValues({ lang: 1033, codepage: 1200 })).toMatchObject({
      ProductName: 'Backstay',
      LegalCopyright: 'Copyright © 2026 The Backstay authors',
    });
    expect(Resource.IconGroupEntry.fromEntries(entries)[0]?.icons.length).toBe(7);
  });
});

describe('the program packed for macOS', () => {
  const app = (): string => join(out, 'mac-arm64/Backstay.app');
  const description = (): string => readFileSync(join(app(), 'Contents/Info.plist'), 'utf8');

  it('holds the same archive, and knows it by its hash', () => {
    const asar = join(app(), 'Contents/Resources/app.asar');
    expect(readFileSync(asar).equals(readFileSync(asarOf(first)))).toBe(true);
    expect(integrityFaults(asar, app())).toEqual([]);
  });

  it('has every fuse as it must be', async () => expect(await fuseFaults(app())).toEqual([]));

  it('opens .backstay files, with icons of its own', () => {
    expect(description()).toMatch(/<key>CFBundleTypeExtensions<\/key>\s*<array>\s*<string>backstay<\/string>/);
    for (const name of ['icon.icns', 'backstay.icns']) {
      expect(description()).toContain(`<string>${name}</string>`);
      expect(readFileSync(join(app(), 'Contents/Resources', name)).toString('latin1', 0, 4)).toBe('icns');
    }
  });

  it('asks for no camera, microphone or Bluetooth, and no exception to secure transport', () => {
    expect(description()).not.toMatch(/UsageDescription|NSAppTransportSecurity/);
    expect(description()).toContain('<key>NSHumanReadableCopyright</key>');
  });
});

// What the checks above are worth: each is shown something it must refuse.

describe('the check of an archive', () => {
  const good = (): ArchivedFile[] => readArchive(asarOf(first));
  const file = (path: string, text: string): ArchivedFile => ({ path, bytes: Buffer.from(text) });

  it.each([
    'dist/renderer/assets/index-abcdefgh.js.map',
    'node_modules/zod/index.js',
    'core/assess.ts',
    'tests/unit/x.test.ts',
    'dist/electron/other.js',
    'dist/renderer/assets/boat-abcdefgh.backstay',
    '.env',
  ])('refuses %s', (path) => {
    expect(archiveFaults([...good(), file(path, '')], [])).toEqual([`${path} is not on the list of what is shipped.`]);
  });

  it('refuses a folder of the machine, a source map, a missing part and what is too large', () => {
    const bad = good().filter(({ path }) => path !== 'dist/electron/preload.cjs' && path !== 'package.json');
    const text = `const here = "/home/someone/boat";\n//# sourceMappingURL=x.js.map\n`;
    const huge = { path: 'dist/renderer/assets/huge-abcdefgh.css', bytes: Buffer.alloc(6_000_001) };
    const faults = archiveFaults([...bad, file('package.json', text), huge], ['/home/someone']);
    expect(faults.map((fault) => fault.replace(/\d{7,}/, 'N'))).toEqual([
      'dist/electron/preload.cjs is missing.',
      'package.json names a folder of this machine: /home/someone.',
      'package.json points to a source map.',
      'dist/renderer/assets/huge-abcdefgh.css has N bytes, more than a part should.',
      'The files have N bytes together, more than the program should.',
    ]);
  });
});

describe('the check of the archive’s hash', () => {
  it('sees that an archive was changed after it was packed, and a program that knows none', async () => {
    const folder = join(work, 'changed-after');
    extractAll(asarOf(first), folder);
    writeFileSync(join(folder, 'dist/electron/preload.cjs'), 'changed');
    await createPackage(folder, `${folder}.asar`);
    for (const executable of ['win-unpacked/Backstay.exe', 'mac-arm64/Backstay.app'])
      expect(integrityFaults(`${folder}.asar`, join(out, executable)).join()).toContain('hash of another archive');
    const runtime = join(work, 'knows-none');
    await writeStandInDistribution('win32', runtime);
    expect(integrityFaults(asarOf(first), join(runtime, 'electron.exe')).join()).toContain('carries no hash');
  });
});

/** Run-as-node, node options, inspect and file privileges are on; cookie encryption, integrity and asar-only are off. */
const NOT_AS_WANTED = 7;

describe('the check of the fuses', () => {
  it('names each that still stands as Electron is delivered, on any system', async () => {
    const binaries = { linux: 'electron', win32: 'electron.exe', darwin: 'Electron.app' };
    for (const system of SYSTEMS) {
      const runtime = join(work, 'as-delivered', system);
      await writeStandInDistribution(system, runtime);
      expect((await fuseFaults(join(runtime, binaries[system]))).length, system).toBe(NOT_AS_WANTED);
    }
  });

  it('refuses a binary without a fuse wire', async () => {
    const path = join(work, 'no-wire');
    writeFileSync(path, 'nothing');
    await expect(fuseFaults(path)).rejects.toThrow('sentinel');
  });
});

describe('the check of the start', () => {
  /** The packed program with one thing changed, packed again. */
  async function changed(name: string, change: (folder: string) => void): Promise<string> {
    const folder = join(work, name);
    extractAll(asarOf(first), folder);
    change(folder);
    await createPackage(folder, `${folder}.asar`);
    return `${folder}.asar`;
  }

  it('sees a main process that needs a package left out', async () => {
    const asar = await changed('needs-more', (folder) => {
      const main = join(folder, 'dist/electron/main.js');
      writeFileSync(main, `import 'zod';\n${readFileSync(main, 'utf8')}`);
    });
    expect(startFaults(asar).join()).toMatch(/did not bring up a window .*Cannot find package 'zod'/s);
  });

  it('sees a style sheet that the page names and the archive lacks', async () => {
    const asar = await changed('no-style', (folder) => {
      const assets = join(folder, 'dist/renderer/assets');
      for (const name of readdirSync(assets)) if (name.endsWith('.css')) rmSync(join(assets, name));
    });
    expect(startFaults(asar).map(withoutHash)).toEqual([
      expect.stringMatching(/^\.\/assets\/index-.*\.css was answered with 404\.$/),
    ]);
  });

  it('sees a missing page', async () => {
    const asar = await changed('no-page', (folder) => rmSync(join(folder, 'dist/renderer/index.html')));
    expect(startFaults(asar)).toContain('/index.html was answered with 404.');
  });
});
