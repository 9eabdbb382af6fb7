import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';
import { printStartup } from './startup.ts';

// `npm run bench`: the benchmark is bundled first, because that is how the program ships; straight from source the
// development loader's own wrappers would be measured too. A whole process from a tree's file to its answer is timed with a
// second program, which holds nothing else. Start-up and memory are those of the built page in a browser.

const outDir = resolve(import.meta.dirname, '../../dist/bench');
for (const name of ['bench', 'solveTree']) {
  await build({
    configFile: false,
    logLevel: 'warn',
    build: {
      ssr: resolve(import.meta.dirname, `${name}.ts`),
      outDir,
      target: 'node20',
      emptyOutDir: name === 'bench',
    },
    ssr: { noExternal: true },
  });
}
await import(pathToFileURL(resolve(outDir, 'bench.js')).href);
await printStartup();
