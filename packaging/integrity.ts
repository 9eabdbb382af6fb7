import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { getRawHeader } from '@electron/asar';
import { NtExecutable, NtExecutableResource } from 'resedit';

/** The hash by which Electron knows the archive on macOS and Windows: of the archive's header, which holds its files' hashes. */
const headerHash = (asar: string): string => createHash('sha256').update(getRawHeader(asar).headerString).digest('hex');

/** The hash a Windows program carries for resources\app.asar, or null when it carries none. */
function hashInProgram(executable: string): string | null {
  const resources = NtExecutableResource.from(NtExecutable.from(readFileSync(executable), { ignoreCert: true }));
  const entry = resources.entries.find(({ type, id }) => type === 'INTEGRITY' && id === 'ELECTRONASAR');
  if (entry === undefined) return null;
  const list = JSON.parse(Buffer.from(entry.bin).toString('utf8')) as { file: string; alg: string; value: string }[];
  return list.find(({ file, alg }) => file === 'resources\\app.asar' && alg === 'SHA256')?.value ?? null;
}

/** The hash a macOS bundle's description carries for Resources/app.asar, or null when it carries none. */
function hashInBundle(bundle: string): string | null {
  const plist = readFileSync(join(bundle, 'Contents/Info.plist'), 'utf8');
  const entry = /<key>Resources\/app\.asar<\/key>\s*<dict>(.*?)<\/dict>/s.exec(plist)?.[1] ?? '';
  return /<key>hash<\/key>\s*<string>([0-9a-f]+)<\/string>/.exec(entry)?.[1] ?? null;
}

/**
 * Whether a packed program knows its archive by the right hash, where the system has a place for it (Linux has none).
 * @param executable the program's binary, or the .app folder
 */
export function integrityFaults(asar: string, executable: string): string[] {
  const kept = executable.endsWith('.exe')
    ? hashInProgram(executable)
    : executable.endsWith('.app')
      ? hashInBundle(executable)
      : headerHash(asar);
  if (kept === null) return ['The program carries no hash of its archive.'];
  return kept === headerHash(asar) ? [] : ['The program carries the hash of another archive and would not start.'];
}
