import { spawnSync } from 'node:child_process';
import { pathToFileURL } from 'node:url';

/** Every layer is a project of its own, so that core cannot see the DOM or Node even by accident. */
export const LAYERS = [
  'core',
  'electron',
  'electron/node',
  'electron/main',
  'electron/preload',
  'renderer',
  'packaging',
  'tests',
];

// `npm run types`
if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const failed = LAYERS.filter((layer) => spawnSync('npx', ['tsc', '-p', layer], { stdio: 'inherit' }).status !== 0);
  console.log(failed.length === 0 ? 'Types are sound in every layer.' : `Type errors in: ${failed.join(', ')}`);
  process.exitCode = failed.length === 0 ? 0 : 1;
}
