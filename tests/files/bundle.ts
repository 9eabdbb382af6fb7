import { chmodSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'vite';

const ROOT = resolve(import.meta.dirname, '../..');

/** A folder of its own that other accounts may enter. */
export function openFolder(name: string): string {
  const folder = mkdtempSync(join(tmpdir(), `backstay-${name}-`));
  chmodSync(folder, 0o755);
  return folder;
}

/** Bundles child.ts into one file, so that hundreds of processes start quickly. Answers with its path. */
export async function bundleChild(): Promise<string> {
  const outDir = openFolder('child');
  await build({
    configFile: false,
    root: ROOT,
    logLevel: 'warn',
    build: {
      ssr: resolve(import.meta.dirname, 'child.ts'),
      target: 'node20',
      outDir,
      emptyOutDir: true,
      minify: false,
      rolldownOptions: { output: { format: 'es', entryFileNames: 'child.mjs', codeSplitting: false } },
    },
    ssr: { noExternal: true },
  });
  return join(outDir, 'child.mjs');
}
