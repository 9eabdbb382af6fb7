import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseProject } from '../../core/document/load.ts';
import { MIGRATIONS } from '../../core/document/migrations.ts';
import { serialiseProject } from '../../core/document/save.ts';
import { PROJECT_VERSION } from '../../core/model/project.ts';

// Every file version ever written keeps a document here for ever, as it was written then. docs/format.md says what else a
// new version needs.

const FOLDER = join(import.meta.dirname, '../unit/document/versions');

/** SHA-256 of each fixture: mending one to make a test pass would hide that old files no longer open. */
const FIXTURES: Readonly<Record<string, string>> = {
  // The first document ever written, and one from the end of version 1's time: 1 grew by optional entries only.
  '1-first.backstay': '603bc22e7d76c7fc6e4317b7506ca356e6b39c7e3677f5423eac7fb58765b7be',
  '1.backstay': '392f5fa3117ccafde3c1babfc5d40e2fa3c5b1ec066e726f4d8f8345b9f98a72',
};

const textOf = (name: string): string => readFileSync(join(FOLDER, name), 'utf8');
const versionIn = (name: string): unknown => (JSON.parse(textOf(name)) as Record<string, unknown>).version;

describe('the documents of every file version', () => {
  it.each(Array.from({ length: PROJECT_VERSION }, (_, index) => index + 1))('has one of version %d', (version) => {
    expect(Object.keys(FIXTURES).filter((name) => versionIn(name) === version)).not.toEqual([]);
  });

  it('are those listed here, untouched since they were written', () => {
    const found = readdirSync(FOLDER).map((name) => [name, createHash('sha256').update(textOf(name)).digest('hex')]);
    expect(Object.fromEntries(found)).toEqual(FIXTURES);
  });

  it.each(Object.keys(FIXTURES))('%s opens, loses nothing and is written as the present version', (name) => {
    const result = parseProject(textOf(name));
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    const isOld = versionIn(name) !== PROJECT_VERSION;
    expect(result.notes.some((note) => note.startsWith('Brought from file version'))).toBe(isOld);
    const written = JSON.parse(serialiseProject(result.project)) as Record<string, unknown>;
    expect(written.version).toBe(PROJECT_VERSION);
    const raw = JSON.parse(textOf(name)) as Record<string, unknown>;
    // Lists keep their length whatever a migration does to their entries; what it means to take out it has to say here.
    for (const list of ['items', 'runs', 'feeds', 'dataLinks', 'alternatives', 'measurements', 'parts', 'stations']) {
      expect((written[list] as unknown[]).length, list).toBe((raw[list] as unknown[] | undefined)?.length ?? 0);
    }
    if (!isOld) expect(written).toMatchObject(raw);
  });

  it('have a migration each but the last', () => {
    expect(MIGRATIONS).toHaveLength(PROJECT_VERSION - 1);
  });
});
