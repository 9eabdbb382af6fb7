import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { median } from './timing.ts';

/** Keeps note of a command's memory; Debian's package time. */
const GNU_TIME = '/usr/bin/time';

export interface ProcessTimes {
  readonly bestMs: number;
  readonly medianMs: number;
  /** Most memory it held, MB; null where nothing can measure it. */
  readonly peakMb: number | null;
  readonly stdout: string;
}

/**
 * Runs a command so many times and once more for its memory.
 * @returns null when it did not finish within the limit the first time
 * @throws Error with what it said when it fails
 */
export function timedProcess(
  command: string,
  args: readonly string[],
  runs: number,
  limitMs: number,
  noteFile: string,
): ProcessTimes | null {
  const times: number[] = [];
  let stdout = '';
  for (let run = 0; run < runs; run += 1) {
    const start = performance.now();
    const done = spawnSync(command, [...args], { timeout: limitMs, killSignal: 'SIGKILL', encoding: 'utf8' });
    times.push(performance.now() - start);
    if (done.signal !== null) return null;
    if (done.status !== 0) throw new Error(`${command} ${args.join(' ')}: ${done.stderr || done.stdout}`);
    stdout = done.stdout;
  }
  return { bestMs: Math.min(...times), medianMs: median(times), peakMb: peakMbOf(command, args, noteFile), stdout };
}

function peakMbOf(command: string, args: readonly string[], noteFile: string): number | null {
  if (!existsSync(GNU_TIME)) return null;
  const { status } = spawnSync(GNU_TIME, ['-f', '%M', '-o', noteFile, command, ...args]);
  return status === 0 ? Number(readFileSync(noteFile, 'utf8')) / 1024 : null;
}
