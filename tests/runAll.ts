import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findChromium } from './e2e/chromium.ts';
import { LAYERS } from './types.ts';

// One command for everything: types, lint, dependency directions (a unit test), unit, published-source and end-to-end
// tests. Ends with a line that counts them.

const reports = mkdtempSync(join(tmpdir(), 'backstay-tests-'));
const counts = { passed: 0, failed: 0, skipped: 0 };

function run(title: string, command: string, args: readonly string[], env: NodeJS.ProcessEnv = {}): boolean {
  console.log(`\n== ${title}`);
  const { status } = spawnSync(command, args, { stdio: 'inherit', env: { ...process.env, ...env } });
  return status === 0;
}

/** A check that is not counted test by test counts as one. */
function check(title: string, command: string, args: readonly string[]): void {
  counts[run(title, command, args) ? 'passed' : 'failed'] += 1;
}

for (const layer of LAYERS) check(`types: ${layer}`, 'npx', ['tsc', '-p', layer]);
check('lint and format', 'npx', ['biome', 'check', '--error-on-warnings', '.']);

const unitReport = join(reports, 'unit.json');
const unitFine = run('unit and published-source tests', 'npx', [
  'vitest',
  'run',
  '-c',
  'tests/vitest.config.ts',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${unitReport}`,
]);
const unit = JSON.parse(readFileSync(unitReport, 'utf8')) as Record<string, number>;
counts.passed += unit.numPassedTests ?? 0;
counts.failed += (unit.numFailedTests ?? 0) + (unitFine ? 0 : Number((unit.numFailedTests ?? 0) === 0));
counts.skipped += (unit.numPendingTests ?? 0) + (unit.numTodoTests ?? 0);

if (findChromium() === null) {
  console.log(
    '\n== end-to-end tests SKIPPED: no Chromium found. Install one (Debian: chromium) or name it in CHROMIUM_PATH.',
  );
  counts.skipped += 1;
} else {
  const e2eReport = join(reports, 'e2e.json');
  const e2eFine = run(
    'end-to-end tests',
    'npx',
    ['playwright', 'test', '-c', 'tests/e2e/playwright.config.ts', '--reporter=list,json'],
    { PLAYWRIGHT_JSON_OUTPUT_NAME: e2eReport },
  );
  const { stats } = JSON.parse(readFileSync(e2eReport, 'utf8')) as { stats: Record<string, number> };
  counts.passed += (stats.expected ?? 0) + (stats.flaky ?? 0);
  counts.failed += (stats.unexpected ?? 0) + (e2eFine ? 0 : Number((stats.unexpected ?? 0) === 0));
  counts.skipped += stats.skipped ?? 0;
}

console.log(`\n${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`);
process.exitCode = counts.failed === 0 ? 0 : 1;
