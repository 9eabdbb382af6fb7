import { readFile } from 'node:fs/promises';
import { isAbsolute, relative, resolve } from 'node:path';

/**
 * Reads one of the app's own files for a URL path, or null when there is none or the path leads outside `root`.
 * Containment is decided on the resolved path, because a prefix test would also admit a sibling folder.
 * @param root folder of the built renderer
 * @param urlPath path part of the URL, still percent-encoded; `/` means `index.html`
 */
export async function readOwnFile(root: string, urlPath: string): Promise<{ name: string; bytes: Buffer } | null> {
  let decoded: string;
  try {
    decoded = decodeURIComponent(urlPath);
  } catch {
    return null;
  }
  if (decoded.includes('\0')) return null;
  const file = resolve(root, `.${decoded === '/' ? '/index.html' : decoded}`);
  const inside = relative(root, file);
  if (inside === '' || inside.startsWith('..') || isAbsolute(inside)) return null;
  try {
    return { name: file, bytes: await readFile(file) };
  } catch {
    return null;
  }
}
