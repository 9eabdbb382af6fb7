import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, stat, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build, type InlineConfig } from 'vite';
import { DIST, ROOT } from './paths.ts';

const STAMP = resolve(DIST, 'build-stamp.txt');
const SOURCES = ['core', 'renderer', 'electron', 'assets', 'package-lock.json'];

/** Builds renderer, main and preload if any source changed since the last build. Returns whether it built. */
export async function buildWhatIsStale(): Promise<boolean> {
  const fingerprint = await sourceFingerprint();
  if (existsSync(STAMP) && (await readFile(STAMP, 'utf8')) === fingerprint) return false;
  await build({ configFile: resolve(ROOT, 'renderer/vite.config.ts'), logLevel: 'warn' });
  await build(nodeBuild('electron/main/main.ts', 'es', 'main.js', false));
  // A sandboxed preload must be one CommonJS file.
  await build(nodeBuild('electron/preload/preload.ts', 'cjs', 'preload.cjs', false));
  await mkdir(DIST, { recursive: true });
  await writeFile(STAMP, fingerprint);
  return true;
}

function nodeBuild(entry: string, format: 'es' | 'cjs', fileName: string, emptyOutDir: boolean): InlineConfig {
  return {
    configFile: false,
    root: ROOT,
    logLevel: 'warn',
    build: {
      ssr: resolve(ROOT, entry),
      target: 'node22',
      outDir: resolve(DIST, 'electron'),
      emptyOutDir,
      rolldownOptions: { external: ['electron'], output: { format, entryFileNames: fileName, codeSplitting: false } },
    },
    ssr: { noExternal: true },
  };
}

/** Names, sizes and times of all sources: cheap, and changes whenever a source does. */
async function sourceFingerprint(): Promise<string> {
  const hash = createHash('sha256');
  for (const source of SOURCES) {
    const path = resolve(ROOT, source);
    const isFolder = (await stat(path)).isDirectory();
    const files = isFolder ? (await readdir(path, { recursive: true })).sort().map((name) => join(path, name)) : [path];
    for (const file of files) {
      const { size, mtimeMs } = await stat(file);
      hash.update(`${file}\0${size}\0${mtimeMs}\n`);
    }
  }
  return hash.digest('hex');
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  console.log((await buildWhatIsStale()) ? 'Built into dist/.' : 'Nothing to build: dist/ is up to date.');
}
