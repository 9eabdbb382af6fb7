import * as promises from 'node:fs/promises';
import { setTimeout as pause } from 'node:timers/promises';

/** What the file layer needs of the machine; tests put a clock, a pause or a failing call of their own in its place. */
export interface FileParts {
  readonly fs: Pick<
    typeof promises,
    'access' | 'copyFile' | 'link' | 'open' | 'readdir' | 'readlink' | 'realpath' | 'rename' | 'rm' | 'stat'
  >;
  /** Milliseconds since 1970. */
  now(): number;
  sleep(ms: number): Promise<unknown>;
}

export const MACHINE_PARTS: FileParts = { fs: promises, now: Date.now, sleep: (ms) => pause(ms) };
