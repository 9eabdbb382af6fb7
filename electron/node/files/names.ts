import { createHash, randomUUID } from 'node:crypto';
import { hostname } from 'node:os';

/** Longest name of a file, bytes of UTF-8, that every usual file system takes. */
const MAX_NAME_BYTES = 255;

/** Longest name shown to a person, characters. */
const MAX_SHOWN = 120;

const bytesIn = (text: string): number => Buffer.byteLength(text, 'utf8');

/**
 * A name safe to show: no control characters, no halves of a character, and none that turn the direction of writing, by which `evil.exe` can be
 * made to look like `exe.live`. A long one is cut in the middle, so that its ending stays.
 */
export function shownName(name: string): string {
  const plain = name.replaceAll(/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/gu, '\u00B7');
  const characters = [...plain];
  if (characters.length <= MAX_SHOWN) return characters.join('');
  const half = MAX_SHOWN / 2;
  return `${characters.slice(0, half - 1).join('')}…${characters.slice(-half).join('')}`;
}

/** A name with an ending put after it; one too long is cut and told from its neighbours by a mark of its whole. */
export function withEnding(name: string, ending: string): string {
  if (bytesIn(name) + bytesIn(ending) <= MAX_NAME_BYTES) return `${name}${ending}`;
  const mark = `-${digest(name).slice(0, 8)}`;
  const room = MAX_NAME_BYTES - bytesIn(mark) - bytesIn(ending);
  let stem = '';
  let used = 0;
  for (const character of name) {
    used += bytesIn(character);
    if (used > room) break;
    stem += character;
  }
  return `${stem}${mark}${ending}`;
}

/** Where the version before the last save is kept: `boat.backstay~` beside `boat.backstay`. */
export const previousName = (name: string): string => withEnding(name, '~');

/** A copy set aside: `boat.backstay.unreadable-2026-11-26`, from the second of a day on with a number. */
export function unreadableName(name: string, now: number, count: number): string {
  const day = new Date(now).toISOString().slice(0, 10);
  return withEnding(name, `.unreadable-${day}${count === 1 ? '' : `-${count}`}`);
}

/**
 * A name for the temporary of one save. It says of which file, machine and process it is, so that a later save can tell
 * a leftover from a save that is going on, and it is short whatever the file is called.
 */
export function temporaryName(name: string): string {
  return `${temporaryStart(name)}${MACHINE}-${process.pid}-${randomUUID().slice(0, 8)}.tmp`;
}

export interface TemporaryMark {
  readonly isOwnMachine: boolean;
  readonly pid: number;
}

/** Whose temporary a name of a folder is, or null where it is not one for the file called `name`. */
export function temporaryMark(found: string, name: string): TemporaryMark | null {
  const start = temporaryStart(name);
  if (!found.startsWith(start)) return null;
  const [, machine, pid] = /^([0-9a-f]{8})-(\d+)-[0-9a-f]{8}\.tmp$/.exec(found.slice(start.length)) ?? [];
  return pid === undefined ? null : { isOwnMachine: machine === MACHINE, pid: Number(pid) };
}

const digest = (text: string): string => createHash('sha256').update(text).digest('hex');
const MACHINE = digest(hostname()).slice(0, 8);
const temporaryStart = (name: string): string => `.backstay-${digest(name).slice(0, 12)}-`;
