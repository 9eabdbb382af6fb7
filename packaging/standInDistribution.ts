import { chmod, mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** What marks the fuse wire in Electron's binary (read in @electron/fuses; the reader there must find it again). */
const FUSE_SENTINEL = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
const WIRE_VERSION = 1;
/** As a runtime comes: run-as-node, node options, inspect and file privileges on, the rest off, a ninth on (from memory). */
const WIRE_AS_DELIVERED = '101100011';

/** Languages the stand-in carries: two that are kept and one that must go. */
const LOCALES = ['en-GB', 'en-US', 'de'];

const standInText = (name: string): string => `Stands in for Electron's ${name} in tests. Not part of Electron.\n`;

function standInBinary(): Buffer {
  return Buffer.concat([
    Buffer.from(`#!/bin/sh\necho 'A stand-in for tests, not Electron.' >&2\nexit 1\n`),
    Buffer.from(FUSE_SENTINEL),
    Buffer.from([WIRE_VERSION, WIRE_AS_DELIVERED.length]),
    Buffer.from(WIRE_AS_DELIVERED),
    Buffer.from('\n'),
  ]);
}

/**
 * Writes a folder shaped like Electron's distribution for Linux, so that packaging can be exercised where the runtime
 * cannot be fetched: the binary is a few bytes with a fuse wire in it, every other file a line of text.
 */
export async function writeStandInDistribution(folder: string): Promise<void> {
  const texts = [
    'LICENSE',
    'LICENSES.chromium.html',
    'version',
    'icudtl.dat',
    'resources.pak',
    'v8_context_snapshot.bin',
    'chrome-sandbox',
    'chrome_crashpad_handler',
    ...LOCALES.map((locale) => `locales/${locale}.pak`),
  ];
  for (const name of texts) {
    await mkdir(dirname(join(folder, name)), { recursive: true });
    await writeFile(join(folder, name), standInText(name));
  }
  await mkdir(join(folder, 'resources'), { recursive: true });
  await writeFile(join(folder, 'electron'), standInBinary());
  await chmod(join(folder, 'electron'), 0o755);
}
