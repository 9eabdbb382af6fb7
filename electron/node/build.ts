import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, stat, writeFile } from 'node:fs/promises';
import { isBuiltin } from 'node:module';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build, type InlineConfig, type Rolldown } from 'vite';
import { licencesAsText, packageOfModule, shippedLicences } from './licences.ts';
import { DIST, ROOT } from './paths.ts';

const STAMP = resolve(DIST, 'build-stamp.txt');
const SOURCES = ['core', 'renderer', 'electron', 'assets', 'docs/user-guide.md', 'package.json', 'package-lock.json'];

/** Builds renderer, main and preload if any source changed since the last build. Returns whether it built. */
export async function buildWhatIsStale(): Promise<boolean> {
  const fingerprint = await sourceFingerprint();
  if (existsSync(STAMP) && (await readFile(STAMP, 'utf8')) === fingerprint) return false;
  await buildInto(DIST);
  await writeFile(STAMP, fingerprint);
  return true;
}

/**
 * Builds the page, the main process, the preload and the list of licences. The same sources give the same bytes.
 * @param dist folder to build into; its `renderer` and `electron` folders are emptied first
 * @throws Error when a bundle would need anything beside Electron and Node, or holds a package whose licence is not listed
 */
export async function buildInto(dist: string): Promise<void> {
  // A test runner's or developer's NODE_ENV would bring the development build of React, with paths of this machine in it.
  process.env.NODE_ENV = 'production';
  const licences = await shippedLicences();
  const renderer = resolve(dist, 'renderer');
  const chunks = [
    ...(await bundle({
      configFile: resolve(ROOT, 'renderer/vite.config.ts'),
      logLevel: 'warn',
      build: { outDir: renderer },
    })),
    ...(await bundle(nodeBuild('electron/main/main.ts', 'es', 'main.js', dist, true))),
    // A sandboxed preload must be one CommonJS file.
    ...(await bundle(nodeBuild('electron/preload/preload.ts', 'cjs', 'preload.cjs', dist, false))),
  ];
  refuseOutsideImports(chunks);
  refuseUnlicensed(
    chunks,
    licences.map(({ name }) => name),
  );
  await mkdir(renderer, { recursive: true });
  await writeFile(resolve(renderer, 'licences.json'), `${JSON.stringify(licences, null, 1)}\n`);
  await writeFile(resolve(dist, 'licences.txt'), licencesAsText(licences));
}

async function bundle(config: InlineConfig): Promise<Rolldown.OutputChunk[]> {
  const built = await build(config);
  if (!('output' in built)) throw new Error('one build was asked for, and not to be watched');
  return built.output.filter((file) => file.type === 'chunk');
}

function nodeBuild(
  entry: string,
  format: 'es' | 'cjs',
  fileName: string,
  dist: string,
  emptyOutDir: boolean,
): InlineConfig {
  return {
    configFile: false,
    root: ROOT,
    logLevel: 'warn',
    build: {
      ssr: resolve(ROOT, entry),
      target: 'node22',
      outDir: resolve(dist, 'electron'),
      emptyOutDir,
      rolldownOptions: { external: ['electron'], output: { format, entryFileNames: fileName, codeSplitting: false } },
    },
    ssr: { noExternal: true },
  };
}

/** The package holds no node_modules, so that whatever a bundle left outside would be missing on the user's machine. */
function refuseOutsideImports(chunks: readonly Rolldown.OutputChunk[]): void {
  const own = new Set(chunks.map(({ fileName }) => fileName));
  for (const { fileName, imports, dynamicImports } of chunks) {
    for (const name of [...imports, ...dynamicImports]) {
      if (!own.has(name) && name !== 'electron' && !isBuiltin(name))
        throw new Error(`${fileName} imports ${name}, which is not bundled and would be missing once installed`);
    }
  }
}

function refuseUnlicensed(chunks: readonly Rolldown.OutputChunk[], listed: readonly string[]): void {
  for (const id of chunks.flatMap(({ moduleIds }) => moduleIds)) {
    const name = packageOfModule(id);
    if (name !== null && !listed.includes(name))
      throw new Error(`${name} is bundled but not among the dependencies, so that its licence would not be shown`);
  }
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
