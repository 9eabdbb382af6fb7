import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

const TRANSPORT = '<key>NSAppTransportSecurity</key>';

/**
 * A macOS bundle's description without its exceptions to secure transport. electron-builder opens them for an updater that
 * this program does not have; it talks to no network at all.
 * @param plist as electron-builder writes it
 * @throws Error when the exceptions are there and do not end
 */
export function withoutTransportExceptions(plist: string): string {
  const start = plist.indexOf(TRANSPORT);
  if (start < 0) return plist;
  let depth = 0;
  for (const tag of plist.slice(start).matchAll(/<(\/?)dict>/g)) {
    depth += tag[1] === '/' ? -1 : 1;
    if (depth === 0) return plist.slice(0, start).trimEnd() + plist.slice(start + tag.index + tag[0].length);
  }
  throw new Error('the description of the macOS bundle ends within NSAppTransportSecurity');
}

/** Rewrites the description of the packed bundle; before signing, or the signature would not hold. */
export async function closeTransport(appOutDir: string): Promise<void> {
  const path = join(appOutDir, 'Backstay.app/Contents/Info.plist');
  await writeFile(path, withoutTransportExceptions(await readFile(path, 'utf8')));
}
