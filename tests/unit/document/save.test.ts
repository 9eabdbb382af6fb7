import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MAX_DEPTH } from '../../../core/document/jsonSyntax.ts';
import { parseProject } from '../../../core/document/load.ts';
import { MIGRATIONS, type Migration, migrate } from '../../../core/document/migrations.ts';
import { serialiseProject } from '../../../core/document/save.ts';
import { PROJECT_VERSION, type Project, projectSchema } from '../../../core/model/project.ts';
import { smallBoat } from './boat.ts';

const SEED = 20_261_125;

describe('a saved document', () => {
  it('reads back as the same project', () => {
    const project = smallBoat();
    expect(parseProject(serialiseProject(project))).toEqual({ ok: true, project, notes: [] });
  });

  it('has the keys in the order of the schema whatever order an edit left them in', () => {
    const project = smallBoat();
    const [whip, ...others] = project.items;
    const shuffled = Object.fromEntries(Object.entries(whip ?? {}).reverse());
    const turned = { ...Object.fromEntries(Object.entries(project).reverse()), items: [shuffled, ...others] };
    expect(serialiseProject(turned as unknown as Project)).toBe(serialiseProject(project));
    const written = JSON.parse(serialiseProject(project));
    const order = Object.keys(projectSchema.shape);
    expect(Object.keys(written)).toEqual(order.filter((key) => key in written));
  });

  it('is indented by two spaces and ends in a newline', () => {
    const text = serialiseProject(smallBoat());
    expect(text.startsWith('{\n  "format": "backstay",\n  "version": 1,\n')).toBe(true);
    expect(text.endsWith('}\n')).toBe(true);
  });

  it('is never written from a project that is not valid', () => {
    const project = smallBoat();
    const boat = { ...project.boat, loaM: Number.NaN };
    expect(() => serialiseProject({ ...project, boat })).toThrow('NaN');
  });
});

describe('migrations', () => {
  it('lead from every version to the present one', () => {
    expect(MIGRATIONS).toHaveLength(PROJECT_VERSION - 1);
  });

  const chain: readonly Migration[] = [
    (document) => ({ ...document, items: document.things, things: undefined }),
    ({ title, ...rest }) => ({ ...rest, heading: `${title}!` }),
  ];

  it('run one version at a time up to the target', () => {
    const old = { version: 1, title: 'T', things: [1] };
    expect(migrate(old, 1, chain, 3)).toEqual({ version: 3, heading: 'T!', items: [1] });
    expect(migrate({ version: 2, title: 'T' }, 2, chain, 3)).toEqual({ version: 3, heading: 'T!' });
    expect(old).toEqual({ version: 1, title: 'T', things: [1] });
  });

  it('leave a document of the target version alone', () => {
    const document = { version: 3 };
    expect(migrate(document, 3, chain, 3)).toBe(document);
  });

  it('refuse a gap in the chain', () => {
    expect(() => migrate({}, 1, chain, 4)).toThrow(new RangeError('There is no migration from version 3.'));
  });

  // The schema knows only the present version, so an older one is played by counting the present as the second.
  const present = JSON.parse(serialiseProject(smallBoat()));
  const { title, ...untitled } = present;

  it('bring an old file up to date when it is opened, and say so', () => {
    const old = JSON.stringify({ ...untitled, version: 1, heading: title });
    const step: Migration = ({ heading, ...rest }) => ({ ...rest, title: heading });
    const asPresent: Migration = (document) => step(document);
    const result = parseProject(old, { current: 2, migrations: [asPresent] });
    // Version 2 does not exist yet: the migrated shape is right and only its number is refused.
    expect(result).toEqual({
      ok: false,
      problems: [
        {
          where: 'version',
          what: 'Version is 2, which is not one of the choices.',
          mend: 'It has to be "1".',
        },
      ],
    });
  });

  it('that fail refuse the file with a sentence', () => {
    const broken: Migration = () => {
      throw new Error('boom');
    };
    expect(parseProject(JSON.stringify(present), { current: 2, migrations: [broken] })).toEqual({
      ok: false,
      problems: [
        {
          where: 'the whole file',
          what: 'It has the older file version 1 and could not be brought up to 2.',
          mend: 'Open it with the version that made it and check it there, or open a backup.',
        },
      ],
    });
  });
});

describe(`damaged documents (seed ${SEED})`, () => {
  const text = serialiseProject(smallBoat());

  /** Every path to a value in a JSON document. */
  function pathsOf(value: unknown, path: string[] = []): string[][] {
    if (typeof value !== 'object' || value === null) return [path];
    return [path, ...Object.entries(value).flatMap(([key, entry]) => pathsOf(entry, [...path, key]))];
  }
  const paths = pathsOf(JSON.parse(text)).filter((path) => path.length > 0);

  const isSound = (result: ReturnType<typeof parseProject>): boolean =>
    result.ok
      ? projectSchema.safeParse(result.project).success
      : result.problems.length > 0 &&
        result.problems.every(({ where, what, mend }) => [where, what, mend].every((words) => words.trim() !== ''));

  it('never throw: any value in any place', () => {
    const anything = fc.oneof(
      fc.jsonValue(),
      fc.constantFrom<unknown>(-3, 1e308, -0, 0, '', 'vhf', 'whip', null, [], {}, 'mast-1', 'NaN', true),
    );
    fc.assert(
      fc.property(fc.constantFrom(...paths), anything, (path, value) => {
        const raw = JSON.parse(text);
        const target = path.slice(0, -1).reduce((at, key) => at[key], raw);
        target[path.at(-1) ?? ''] = value;
        return isSound(parseProject(JSON.stringify(raw)));
      }),
      { seed: SEED, numRuns: 1500 },
    );
  });

  it('never throw: entries taken out, doubled or swapped', () => {
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.constantFrom(...paths), (from, to) => {
        const raw = JSON.parse(text);
        const at = (path: string[]) => path.slice(0, -1).reduce((value, key) => value?.[key], raw);
        const copied = structuredClone(at(from)?.[from.at(-1) ?? '']);
        const target = at(to);
        if (Array.isArray(target)) target.push(copied);
        else if (copied === undefined) return true;
        else delete target[to.at(-1) ?? ''];
        return isSound(parseProject(JSON.stringify(raw)));
      }),
      { seed: SEED, numRuns: 800 },
    );
  });

  it('never throw: text cut, overwritten or filled in anywhere', () => {
    fc.assert(
      fc.property(
        fc.nat(text.length),
        fc.nat(40),
        fc.oneof(fc.string(), fc.constantFrom('"', '{', '}', '[', ']', ',', 'NaN', '\\', '\n', '-', '1e999')),
        (start, length, filling) => isSound(parseProject(text.slice(0, start) + filling + text.slice(start + length))),
      ),
      { seed: SEED, numRuns: 800 },
    );
  });

  it('find a place in the text for whatever JSON.parse refuses', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom(...'{}[]",:.-+eE0123456789 \n\\utrfalsn/x'), maxLength: 30 }),
        (junk) => {
          const result = parseProject(junk);
          if (result.ok) return false;
          const [first] = result.problems;
          return isSound(result) && first?.what !== 'It is not JSON.';
        },
      ),
      { seed: SEED, numRuns: 3000 },
    );
  });

  it('as deep as allowed are still read', () => {
    const nested = JSON.parse('['.repeat(MAX_DEPTH - 12) + ']'.repeat(MAX_DEPTH - 12));
    const raw = JSON.parse(text);
    raw.items[1].partId = 'unknown';
    raw.items[1].overrides.traits.deep = nested;
    expect(parseProject(JSON.stringify(raw)).ok).toBe(true);
  });
});
