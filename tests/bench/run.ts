import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

// `npm run bench`: the benchmark is bundled first, because that is how the program ships; straight from source the
// development loader's own wrappers would be measured too.

const outDir = resolve(import.meta.dirname, '../../dist/bench');
await build({
  configFile: false,
  logLevel: 'warn',
  build: { ssr: resolve(import.meta.dirname, 'bench.ts'), outDir, target: 'node20', emptyOutDir: true },
  ssr: { noExternal: true },
});
await import(pathToFileURL(resolve(outDir, 'bench.js')).href);
