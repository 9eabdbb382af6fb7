import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { type ProcessTimes, timedProcess } from './processes.ts';

/**
 * The general-purpose fault-tree analyser of Debian's package scram, run as a program of its own by its documented command
 * line; its report is XML. Nothing of it is part of this project.
 */
const COMMAND = 'scram';

export function analyserVersion(): string | null {
  const { status, stdout } = spawnSync(COMMAND, ['--version'], { encoding: 'utf8' });
  return status === 0 ? (stdout.split('\n')[0] ?? '').trim() : null;
}

/** What it answers, and its own clock. */
export interface AnalyserAnswer {
  readonly process: ProcessTimes;
  /** Best of the runs: cut sets and probability, ms, by the report's own calculation times. */
  readonly algorithmMs: number;
  readonly countByOrder: readonly number[];
  /** Six digits, as the report prints it. */
  readonly probability: number;
}

/** @returns null when it does not finish within the limit */
export function analysed(
  modelFile: string,
  maxOrder: number,
  folder: string,
  runs: number,
  limitMs: number,
): AnalyserAnswer | null {
  const report = `${folder}/report.xml`;
  const args = ['--limit-order', String(maxOrder), '--probability', 'true', modelFile, '-o', report];
  let best: Omit<AnalyserAnswer, 'process'> | null = null;
  for (let run = 0; run < runs; run += 1) {
    const done = spawnSync(COMMAND, args, { timeout: limitMs, killSignal: 'SIGKILL', encoding: 'utf8' });
    if (done.signal !== null) return null;
    if (done.status !== 0) throw new Error(`${COMMAND} ${args.join(' ')}: ${done.stderr}`);
    const answer = readReport(readFileSync(report, 'utf8'));
    if (best === null || answer.algorithmMs < best.algorithmMs) best = answer;
  }
  const process = timedProcess(COMMAND, args, runs, limitMs, `${folder}/memory.txt`);
  return best && process ? { ...best, process } : null;
}

/** The few numbers that are wanted; the list of sets behind them can be fifty megabytes long. */
function readReport(report: string): Omit<AnalyserAnswer, 'process'> {
  const found = (pattern: RegExp): string => pattern.exec(report)?.[1] ?? '';
  const clock = (name: string): number => 1000 * Number(found(new RegExp(`<${name}>([^<]*)</${name}>`)));
  return {
    algorithmMs: clock('products') + clock('probability'),
    countByOrder: found(/<sum-of-products[^>]* distribution="([^"]*)"/)
      .split(' ')
      .filter(Boolean)
      .map(Number),
    probability: Number(found(/<sum-of-products[^>]* probability="([^"]*)"/)),
  };
}
