import { chmod, mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { NtExecutable, NtExecutableResource, Resource } from 'resedit';
import { fuseWire } from './wire.ts';

// Folders shaped like Electron's distributions, so that packaging can be exercised where the runtime cannot be fetched. A
// binary is a few bytes with a fuse wire in it, every other file a line of text. What electron-builder looks for is there.

export type System = 'linux' | 'win32' | 'darwin';
export const SYSTEMS: readonly System[] = ['linux', 'win32', 'darwin'];

type Files = ReadonlyMap<string, string | Buffer>;

const standInText = (name: string): string => `Stands in for Electron's ${name} in tests. Not part of Electron.\n`;
const texts = (names: readonly string[]): [string, string][] => names.map((name) => [name, standInText(name)]);

const BESIDE = ['LICENSE', 'LICENSES.chromium.html', 'version'];
/** Languages a stand-in carries: some that are kept and one that must go. */
const PAKS = ['en-GB', 'en-US', 'de'].map((locale) => `locales/${locale}.pak`);
const PARTS = ['icudtl.dat', 'resources.pak', 'v8_context_snapshot.bin'];

const linux = (): Files =>
  new Map<string, string | Buffer>([
    ...texts([...BESIDE, ...PAKS, ...PARTS, 'chrome-sandbox', 'chrome_crashpad_handler', 'resources/README']),
    ['electron', Buffer.concat([Buffer.from(`#!/bin/sh\necho 'A stand-in, not Electron.' >&2\nexit 1\n`), fuseWire()])],
  ]);

/** An empty Windows program with the version record that electron-builder rewrites, and the wire after its end. */
function windowsProgram(): Buffer {
  const program = NtExecutable.createEmpty();
  const resources = NtExecutableResource.from(program);
  const version = Resource.VersionInfo.createEmpty();
  version.setStringValues({ lang: 1033, codepage: 1200 }, { ProductName: 'A stand-in, not Electron' });
  version.outputToResourceEntries(resources.entries);
  resources.outputResource(program);
  program.setExtraData(new Uint8Array(fuseWire()).buffer);
  return Buffer.from(program.generate());
}

const windows = (): Files =>
  new Map<string, string | Buffer>([
    ...texts([...BESIDE, ...PAKS, ...PARTS, 'resources/README']),
    ['electron.exe', windowsProgram()],
  ]);

/** Requests that Electron's own description carries (from memory) and that must not go along. */
const REQUESTS = ['AudioCapture', 'BluetoothAlways', 'BluetoothPeripheral', 'Camera', 'Microphone'];

const plist = (executable: string): string => `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE plist PUBLIC "-//Apple//DTD PLIST 1.0//EN" "http://www.apple.com/DTDs/PropertyList-1.0.dtd">
<plist version="1.0"><dict><key>CFBundleExecutable</key><string>${executable}</string>
${REQUESTS.map((what) => `<key>NS${what}UsageDescription</key><string>A stand-in's.</string>`).join('\n')}
</dict></plist>
`;

/** A bundle's description and its program. */
const bundle = (app: string, name: string): [string, string][] => [
  [`${app}/Contents/Info.plist`, plist(name)],
  ...texts([`${app}/Contents/MacOS/${name}`]),
];

function macos(): Files {
  const frameworks = 'Electron.app/Contents/Frameworks';
  const framework = `${frameworks}/Electron Framework.framework`;
  const helpers = ['', ' (Renderer)', ' (Plugin)', ' (GPU)'].map((kind) => `Electron Helper${kind}`);
  const languages = ['en', 'en_GB', 'de'].flatMap((language) => [
    `Electron.app/Contents/Resources/${language}.lproj/locale`,
    `${framework}/Versions/A/Resources/${language}.lproj/locale.pak`,
  ]);
  return new Map<string, string | Buffer>([
    ...texts([...BESIDE, ...languages]),
    ...bundle('Electron.app', 'Electron'),
    ...helpers.flatMap((name) => bundle(`${frameworks}/${name}.app`, name)),
    [`${framework}/Electron Framework`, fuseWire()],
  ]);
}

const FILES: Readonly<Record<System, () => Files>> = { linux, win32: windows, darwin: macos };

/** Writes the stand-in distribution of one system. */
export async function writeStandInDistribution(system: System, folder: string): Promise<void> {
  for (const [name, content] of FILES[system]()) {
    const path = join(folder, name);
    await mkdir(dirname(path), { recursive: true });
    await writeFile(path, content);
    if (typeof content !== 'string') await chmod(path, 0o755);
  }
}
