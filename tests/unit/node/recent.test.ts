import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { recentFileSchema } from '../../../electron/contract.ts';
import { MACHINE_PARTS } from '../../../electron/node/files/parts.ts';
import { MAX_RECENT, RecentFiles } from '../../../electron/node/recent.ts';

let folder = '';
let list = '';
let now = 0;
const parts = { ...MACHINE_PARTS, now: () => now };
const recent = (): RecentFiles => new RecentFiles(list, parts);
const boat = (name: string): string => {
  const path = join(folder, name);
  writeFileSync(path, '{}');
  return path;
};
const names = async (): Promise<string[]> => (await recent().list()).map(({ name }) => name);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'backstay-recent-'));
  list = join(folder, 'app data', 'recent.json');
  now = Date.UTC(2026, 10, 26);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('recent files', () => {
  it('are remembered over a restart, the latest first, by ids that tell no path', async () => {
    const paths = ['a.backstay', 'b.backstay'].map(boat);
    for (const path of paths) await recent().add(path);
    now += 1000;
    await recent().add(paths[0] ?? '');
    const listed = await recent().list();
    for (const file of listed) recentFileSchema.parse(file);
    expect(listed).toMatchObject([
      { name: 'a.backstay', lastUsed: '2026-11-26T00:00:01.000Z', missing: false },
      { name: 'b.backstay', missing: false },
    ]);
    expect(JSON.stringify(listed)).not.toContain(tmpdir());
    expect(await recent().pathOf(listed[0]?.id ?? '')).toBe(paths[0]);
    expect(await recent().pathOf('forged')).toBeUndefined();
  });

  it('keep their id while they stay in the list', async () => {
    const path = boat('a.backstay');
    await recent().add(path);
    const [before] = await recent().list();
    await recent().add(path);
    expect((await recent().list()).map(({ id }) => id)).toEqual([before?.id]);
  });

  it(`are ${MAX_RECENT} at most, and none after they are forgotten`, async () => {
    for (let n = 1; n <= 15; n += 1) await recent().add(boat(`${n}.backstay`));
    expect(await names()).toEqual(
      ['15', '14', '13', '12', '11', '10', '9', '8', '7', '6', '5', '4'].map((n) => `${n}.backstay`),
    );
    await recent().clear();
    expect(await names()).toEqual([]);
  });

  it('that are gone are marked, not forgotten', async () => {
    const path = boat('a.backstay');
    await recent().add(path);
    rmSync(path);
    expect(await recent().list()).toMatchObject([{ name: 'a.backstay', missing: true }]);
  });

  it('added at once by two instances are both there', async () => {
    const shared = recent();
    await Promise.all(['a', 'b', 'c'].map((name) => shared.add(boat(`${name}.backstay`))));
    await recent().add(boat('d.backstay'));
    expect(await names()).toEqual(['d', 'c', 'b', 'a'].map((name) => `${name}.backstay`));
  });

  it.each([
    '',
    '{',
    '[]',
    'null',
    '{"files":[{"id":1}]}',
    '{"files":[{"id":"x","path":"","lastUsed":""}]}',
    '\u0000\uFFFD',
  ])('begin anew where the list is %j, which is set aside', async (text) => {
    mkdirSync(join(folder, 'app data'));
    writeFileSync(list, text);
    expect(await names()).toEqual([]);
    await recent().add(boat('a.backstay'));
    expect(await names()).toEqual(['a.backstay']);
    const aside = readdirSync(join(folder, 'app data')).filter((name) => name.includes('unreadable'));
    expect(aside).toEqual(['recent.json.unreadable-2026-11-26']);
    expect(readFileSync(join(folder, 'app data', aside[0] ?? ''), 'utf8')).toBe(text);
  });

  it('that cannot be written down are remembered until the end', async () => {
    writeFileSync(join(folder, 'app data'), 'a file where the folder should be');
    const shared = recent();
    await shared.add(boat('a.backstay'));
    await shared.add(boat('b.backstay'));
    expect((await shared.list()).map(({ name }) => name)).toEqual(['b.backstay', 'a.backstay']);
  });
});
