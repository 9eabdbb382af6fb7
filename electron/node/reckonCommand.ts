import { readFileSync, realpathSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runReckon } from './reckonRun.ts';

const isStartedDirectly =
  process.argv[1] !== undefined && realpathSync(process.argv[1]) === fileURLToPath(import.meta.url);
if (isStartedDirectly) {
  const { exitCode, stdout, stderr } = runReckon(process.argv.slice(2), (path) => readFileSync(path, 'utf8'));
  process.stdout.write(stdout);
  process.stderr.write(stderr);
  process.exitCode = exitCode;
}
