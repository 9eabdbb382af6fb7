import { describe, expect, it } from 'vitest';
import {
  previousName,
  shownName,
  temporaryMark,
  temporaryName,
  unreadableName,
  withEnding,
} from '../../../electron/node/files/names.ts';
import { problemWith } from '../../../electron/node/files/reasons.ts';

describe('names', () => {
  it('of usual length keep their own beginning', () => {
    expect(previousName('boat.backstay')).toBe('boat.backstay~');
    expect(unreadableName('boat.backstay', Date.UTC(2026, 10, 26, 23), 1)).toBe('boat.backstay.unreadable-2026-11-26');
    expect(unreadableName('boat.backstay', Date.UTC(2026, 10, 26), 3)).toBe('boat.backstay.unreadable-2026-11-26-3');
  });

  it.each(['a', 'é', '船', '⛵', '👩‍🔧'])(
    'of %s at full length stay within 255 bytes, whole characters and distinct',
    (letter) => {
      const long = letter.repeat(Math.floor(255 / Buffer.byteLength(letter)));
      const other = `${long.slice(0, -letter.length)}${'b'.repeat(Buffer.byteLength(letter))}`;
      for (const name of [
        previousName(long),
        unreadableName(long, 0, 12),
        withEnding(long, '.x'),
        temporaryName(long),
      ]) {
        expect(Buffer.byteLength(name)).toBeLessThanOrEqual(255);
        expect(Buffer.from(name).toString()).toBe(name);
      }
      expect(withEnding(long, '.long-ending')).not.toBe(withEnding(other, '.long-ending'));
    },
  );

  it('of temporaries say whose they are, and of which file', () => {
    const name = temporaryName('boat.backstay');
    expect(temporaryMark(name, 'boat.backstay')).toEqual({ isOwnMachine: true, pid: process.pid });
    expect(temporaryMark(name, 'other.backstay')).toBeNull();
    expect(temporaryMark('.backstay-notes.tmp', 'boat.backstay')).toBeNull();
    expect(temporaryMark(`${name}x`, 'boat.backstay')).toBeNull();
  });

  it('that are shown hide no ending and hold no line break', () => {
    expect(shownName('yatsk\u202Ecab.exe')).toBe('yatsk·cab.exe');
    expect(shownName('a\nb\u0000c\u2028d\uD800')).toBe('a·b·c·d·');
    const long = `${'⛵'.repeat(300)}.backstay`;
    expect([...shownName(long)]).toHaveLength(120);
    expect(shownName(long)).toMatch(/^⛵+…⛵+\.backstay$/);
    expect(shownName('Käptn Blåbær 船 👩‍🔧.backstay')).toBe('Käptn Blåbær 船 👩‍🔧.backstay');
  });
});

describe('sentences for failures', () => {
  const codes = `ENOSPC EDQUOT EROFS EACCES EPERM ENOENT EXDEV ENAMETOOLONG EBUSY EIO ENODEV ESTALE EFBIG EINVAL EILSEQ
    EISDIR ENOTDIR ELOOP EMFILE ENOTCONN ETXTBSY`.split(/\s+/);

  it.each(codes)('%s is said in words, with what helps', (code) => {
    const error = Object.assign(new Error('raw words'), { code });
    const { message } = problemWith('/home/secret/boat.backstay', 'could not be written', error, 'It stays.');
    expect(message).toMatch(/^boat\.backstay could not be written: [a-z][^.]+\. It stays\. [A-Z][^.]+\.$/);
    expect(message).not.toMatch(/raw words|secret|[A-Z]{4}/);
  });

  it('an unforeseen one keeps its code and tells no path', () => {
    const error = Object.assign(new Error("EWEIRD: at '/home/secret'"), { code: 'EWEIRD' });
    expect(problemWith('/home/secret/a', 'could not be opened', error).message).toBe(
      'a could not be opened: the system answered EWEIRD.',
    );
    expect(problemWith('/x/a', 'could not be opened', new Error('x')).message).toBe(
      'a could not be opened: the system answered with a fault of its own.',
    );
  });
});
