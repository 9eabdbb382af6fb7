import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { recoverySchema } from '../../../electron/contract.ts';
import { MACHINE_PARTS } from '../../../electron/node/files/parts.ts';
import {
  RECOVERY_LIMITS,
  type RecoveryEntry,
  type RecoveryLimits,
  RecoveryStore,
} from '../../../electron/node/recovery/recovery.ts';
import { summarise } from '../../../electron/node/recovery/summary.ts';
import { Random } from '../../files/random.ts';

const DEMO = readFileSync(join(import.meta.dirname, '../../../assets/demo/brannoch-tern.backstay'), 'utf8');
const SEED = 20_261_126;
const NOON = Date.UTC(2026, 10, 26, 12);

let folder = '';
let now = NOON;
const parts = { ...MACHINE_PARTS, now: () => now };
const store = (limits: RecoveryLimits = RECOVERY_LIMITS): RecoveryStore => new RecoveryStore(folder, parts, limits);
const fileOf = (id: string): string => join(folder, `copy-${id}.recovery`);

function entry(documentId: string, changes: Partial<RecoveryEntry> = {}): RecoveryEntry {
  return { documentId, path: '/boats/tern.backstay', name: 'tern.backstay', title: 'Tern', text: DEMO, ...changes };
}

beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), 'backstay-recovery-')), 'app data', 'recovery');
  now = NOON;
});
afterEach(() => rmSync(dirname(dirname(folder)), { recursive: true, force: true }));

describe('recovery copies', () => {
  it('come back as they were kept, to the letter, for the next start', async () => {
    const origin = { size: 3, mtimeMs: 5.5, sha256: 'abc' };
    const text = '⛵ "Möwe"\n\r\n\u0000 last line without a newline';
    await store().keep(entry('a', { text, origin }));
    expect(await store().read('a')).toEqual({
      path: '/boats/tern.backstay',
      origin,
      name: 'tern.backstay',
      title: 'Tern',
      text,
      keptAt: NOON,
      isWhole: true,
    });
    expect(await store().read('a')).toMatchObject({ text });
  });

  it('are listed with a summary of what they hold, the latest first', async () => {
    await store().keep(entry('a'));
    now += 60_000;
    await store().keep(entry('b', { path: null, name: '', title: 'New boat', text: '{"items":[1],"runs":[]}' }));
    const listed = await store().list();
    for (const copy of listed) recoverySchema.parse(copy);
    const { items, runs, alternatives } = JSON.parse(DEMO) as Record<string, unknown[]>;
    const layouts = alternatives?.length === 1 ? '1 other layout' : `${alternatives?.length} other layouts`;
    expect(listed).toMatchObject([
      { id: 'b', title: 'New boat', name: '', keptAt: '2026-11-26T12:01:00.000Z', summary: '1 item, 0 runs.' },
      { id: 'a', title: 'Tern', summary: `${items?.length} items, ${runs?.length} runs, ${layouts}.` },
    ]);
    expect(listed.map(({ bytes }) => bytes)).toEqual(['b', 'a'].map((id) => statSync(fileOf(id)).size));
  });

  it('are one for each document, and go when it is saved or they are not wanted', async () => {
    const [one, other] = [store(), store()];
    await Promise.all([one.keep(entry('a')), other.keep(entry('b')), one.keep(entry('a', { text: '{"items":[]}' }))]);
    expect(readdirSync(folder)).toHaveLength(2);
    expect((await one.read('a')).text).toBe('{"items":[]}');
    await one.drop('a');
    await one.drop('a');
    await other.drop('b');
    expect(await one.list()).toEqual([]);
    await expect(one.read('a')).rejects.toThrow('This recovery copy is no longer there.');
  });

  it('asked to be kept and dropped at once are dropped', async () => {
    const busy = store();
    await Promise.all([busy.keep(entry('a')), busy.keep(entry('a')), busy.drop('a')]);
    expect(await busy.list()).toEqual([]);
  });

  it.each(['../../evil', '', 'a/b', 'a\\b', '..', 'a'.repeat(65), 'a\u0000', 'C:'])(
    'under the id %j are refused: an id is never a path',
    async (id) => {
      await expect(store().keep(entry(id))).rejects.toThrow('There is no such recovery copy.');
      await expect(store().read(id)).rejects.toThrow('There is no such recovery copy.');
      await expect(store().drop(id)).rejects.toThrow('There is no such recovery copy.');
    },
  );

  it('carry names that hide nothing', async () => {
    await store().keep(entry('a', { title: 'a\nb\u202Ec', name: 'yatsk\u202Ecab.exe' }));
    expect((await store().list())[0]).toMatchObject({ title: 'a·b·c', name: 'yatsk·cab.exe' });
  });

  it('are for this account only', async () => {
    await store().keep(entry('a'));
    expect(statSync(folder).mode & 0o777).toBe(0o700);
  });

  it('that cannot be kept give a sentence, and the one before stays', async () => {
    await store().keep(entry('a'));
    mkdirSync(fileOf('b'));
    await expect(store().keep(entry('b'))).rejects.toThrow(
      'No recovery copy of Tern could be kept: it is a folder. ' +
        'Your work is still open here. Save it now, to another disk if need be.',
    );
    expect(await store().list()).toHaveLength(1);
  });
});

describe('a recovery folder', () => {
  it('holds no more than its limits, the oldest going first, and never what is open now', async () => {
    now = Date.now();
    const keepOld = async (): Promise<void> => {
      for (const [id, ageS] of Object.entries({ a: 40, b: 30, c: 20, d: 10 })) {
        await store().keep(entry(id, { text: '{}' }));
        utimesSync(fileOf(id), now / 1000 - ageS, now / 1000 - ageS);
      }
    };
    const ids = async (): Promise<string[]> => (await store().list()).map(({ id }) => id).sort();
    const wide = { count: 100, bytes: 1e9, ageMs: 1e12 };
    await keepOld();
    await store({ ...wide, count: 3 }).keep(entry('own'));
    expect(await ids()).toEqual(['c', 'd', 'own']);
    await keepOld();
    await store({ ...wide, ageMs: 25_000 }).keep(entry('own'));
    expect(await ids()).toEqual(['c', 'd', 'own']);
    const working = store({ ...wide, bytes: DEMO.length });
    for (const id of ['own', 'own-2', 'own-3']) await working.keep(entry(id));
    expect(await ids()).toEqual(['own', 'own-2', 'own-3']);
  });

  it('with other files in it lists and removes none of them', async () => {
    mkdirSync(folder, { recursive: true });
    for (const name of ['notes.txt', 'copy-.recovery', 'copy-a b.recovery', '.backstay-x.tmp', 'x.recovery']) {
      writeFileSync(join(folder, name), 'mine');
    }
    const working = store({ count: 0, bytes: 0, ageMs: 0 });
    await working.keep(entry('a'));
    expect(await working.list()).toHaveLength(1);
    expect(readdirSync(folder)).toHaveLength(6);
  });
});

describe('a damaged recovery copy', () => {
  const damaged = async (change: (bytes: Buffer) => Uint8Array): Promise<RecoveryStore> => {
    await store().keep(entry('a'));
    writeFileSync(fileOf('a'), change(readFileSync(fileOf('a'))));
    return store();
  };

  it('cut short says about what can be read, and answers with it', async () => {
    const cut = await damaged((bytes) => bytes.subarray(0, bytes.length / 2));
    const [listed] = await cut.list();
    expect(listed).toMatchObject({ id: 'a', title: 'Tern', name: 'tern.backstay' });
    expect(listed?.summary).toMatch(/^Damaged: about \d+ items and \d+ runs? can be read\.$/);
    const { text, isWhole } = await cut.read('a');
    expect(DEMO.startsWith(text)).toBe(true);
    expect([text.length > 20_000, isWhole]).toEqual([true, false]);
  });

  it('with a damaged head takes the title from the text', async () => {
    const headless = await damaged((bytes) => bytes.subarray(bytes.indexOf('"name"')));
    const { title } = JSON.parse(DEMO) as { title: string };
    expect(await headless.list()).toMatchObject([
      { title, name: '', summary: expect.stringMatching(/^Damaged: about/) },
    ]);
    expect((await headless.read('a')).text).toContain(DEMO);
  });

  it('without its head still answers with the whole work', async () => {
    const headless = await damaged((bytes) => bytes.subarray(bytes.indexOf(10) + 1));
    expect((await headless.list())[0]?.summary).toMatch(/^Damaged in part: \d+ items, /);
    expect(await headless.read('a')).toMatchObject({ text: DEMO, path: null, isWhole: false });
  });

  it('changed in one letter but still a boat says so', async () => {
    const changed = await damaged((bytes) => Buffer.from(bytes.toString().replace('"notes": "', '"notes": "!')));
    expect((await changed.list())[0]?.summary).toMatch(/^Damaged in part: \d+ items, /);
  });

  it('without anything in it, and one that is no text, are listed as such', async () => {
    const empty = await damaged(() => Buffer.alloc(0));
    expect(await empty.list()).toMatchObject([{ summary: 'Nothing of it can be read.' }]);
    const noise = await damaged(() => Buffer.from([0xff, 0, 0xc3, 0x28, 10, 0xff]));
    expect(await noise.list()).toMatchObject([{ summary: expect.stringContaining('it does not read as a boat') }]);
  });

  it(`of any kind never stops the list nor takes others with it (seed ${SEED})`, async () => {
    const random = new Random(SEED);
    const working = store();
    await working.keep(entry('sound'));
    await working.keep(entry('a', { text: DEMO.slice(0, 3000) }));
    const whole = readFileSync(fileOf('a'));
    for (let round = 0; round < 300; round += 1) {
      const bytes = Buffer.from(whole.subarray(0, random.below(4) === 0 ? random.below(whole.length) : whole.length));
      for (let hits = random.below(8); hits > 0 && bytes.length > 0; hits -= 1) {
        // Half of them in the head, which is where the program itself reads.
        bytes[random.below(random.below(2) === 0 ? Math.min(400, bytes.length) : bytes.length)] = random.below(256);
      }
      writeFileSync(fileOf('a'), bytes);
      const listed = await working.list();
      for (const copy of listed) recoverySchema.parse(copy);
      expect(listed.map(({ id }) => id).sort(), `seed ${SEED}, round ${round}`).toEqual(['a', 'sound']);
      expect(typeof (await working.read('a')).text).toBe('string');
    }
  });
});

describe('the summary of a text', () => {
  it.each([
    ['', 'Nothing of it can be read.'],
    ['[]', 'Damaged: it does not read as a boat; its text can be looked at.'],
    ['{}', '0 items, 0 runs.'],
    ['{"items":{"length":9},"runs":"xx"}', '0 items, 0 runs.'],
    ['{"title":"T", "items":[{"partId": "x"', 'Damaged: about 1 item and 0 runs can be read.'],
  ])('%s', (text, summary) => {
    expect(summarise(text).summary).toBe(summary);
  });
});
