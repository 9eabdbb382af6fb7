import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { dirname } from 'node:path';

/** At this size the log becomes `.old` and a new one begins, bytes: the two together stay small enough to send. */
const ROTATE_BYTES = 512_000;

/** What may stand in a line: a code, a word or a number, so that no title, path or text of a document can. */
const PLAIN = /^[A-Za-z0-9._-]{1,60}$/;

export type Log = (code: string, details?: Readonly<Record<string, string | number>>) => void;

/**
 * A log in a local file: an instant, a code and short values a line. A log that cannot be written is done without.
 * @param path of the file; the one before it is kept as `path` with `.old` after it
 * @param now gives the instant of a line
 */
export function fileLog(path: string, now: () => Date): Log {
  return (code, details = {}) => {
    const values = Object.entries(details).map(([name, value]) => `${plain(name)}=${plain(String(value))}`);
    try {
      mkdirSync(dirname(path), { recursive: true });
      if (sizeOf(path) >= ROTATE_BYTES) renameSync(path, `${path}.old`);
      appendFileSync(path, `${[now().toISOString(), plain(code), ...values].join(' ')}\n`, { mode: 0o600 });
    } catch {
      // A full disk or a folder that refuses must not stop the program.
    }
  };
}

const plain = (text: string): string => (PLAIN.test(text) ? text : 'unprintable');
const sizeOf = (path: string): number => statSync(path, { throwIfNoEntry: false })?.size ?? 0;
