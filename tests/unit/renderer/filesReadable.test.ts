import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseProject } from '../../../core/document/load.ts';
import { serialiseProject } from '../../../core/document/save.ts';
import { pathOf, placeOfPath, problemIndex } from '../../../renderer/store/problemPlace.ts';
import { type ReadableText, readableText } from '../../../renderer/store/readable.ts';
import { boat } from './filesFixture.ts';

const TERN = readFileSync(resolve(import.meta.dirname, '../../../assets/demo/brannoch-tern.backstay'), 'utf8');
const allLines = ({ parts }: ReadableText) => parts.flat();
const marked = (text: ReadableText) => allLines(text).filter(({ mark }) => mark !== '');

describe('what can be read of a broken file', () => {
  it('marks the character at which it stops being a document, in its own line', () => {
    const text = '{\n  "format": "backstay",\n  "title": nope\n}\n';
    const [line, ...others] = marked(readableText(text, problemIndex(text, '')));
    expect(others).toEqual([]);
    expect(line).toEqual({ number: 3, before: '  "title": ', mark: 'n', after: 'ope' });
  });

  it('shows the beginning, and the lines round a problem further on', () => {
    const text = Array.from({ length: 500 }, (_, i) => `line ${i + 1}`).join('\n');
    const shown = readableText(text, text.indexOf('line 300'));
    expect(shown.parts).toHaveLength(2);
    expect(shown.isCut).toBe(true);
    expect(shown.parts[0]?.[0]?.before).toBe('line 1');
    expect(marked(shown).map(({ number }) => number)).toEqual([300]);
    expect(readableText('short', null)).toMatchObject({ isCut: false, parts: [[{ number: 1, before: 'short' }]] });
  });

  it('counts lines alike whatever ends them, and shows no character that draws strangely', () => {
    const shown = readableText('a\r\nb\rc\n\u202Eevil\u0000\u001B[31m', null);
    expect(allLines(shown).map(({ before }) => before)).toEqual(['a', 'b', 'c', '\uFFFDevil\uFFFD\uFFFD[31m']);
  });

  it('stays short whatever the file holds', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 3000, unit: 'binary' }), fc.nat(4000), (text, at) => {
        const shown = readableText(text, Math.min(at, text.length));
        const lines = allLines(shown);
        expect(lines.length).toBeLessThanOrEqual(100);
        for (const { before, mark, after } of lines) expect((before + mark + after).length).toBeLessThan(600);
        expect(marked(shown)).toHaveLength(1);
      }),
    );
  });

  it('is quick and short for a huge single line', () => {
    const text = 'x'.repeat(3_000_000);
    const shown = readableText(text, problemIndex(text, ''));
    expect(allLines(shown)).toHaveLength(1);
  });
});

describe('the place of a problem in the text', () => {
  it('reads a place as the loader tells it', () => {
    expect(pathOf('runs[3] "W04" › to.portId')).toEqual(['runs', '3', 'to', 'portId']);
    expect(pathOf('the whole file')).toEqual([]);
    expect(pathOf('line 3, column 4')).toEqual([]);
  });

  it('finds the value at a path, or the nearest thing round it', () => {
    const text = '{"a":[{"b":1},{"b":"x, {","c":[true,null]}],"d":2}';
    expect(placeOfPath(text, ['a', '1', 'b'])).toBe(text.indexOf('"x, {"'));
    expect(placeOfPath(text, ['a', '1', 'c', '1'])).toBe(text.indexOf('null'));
    expect(placeOfPath(text, ['d'])).toBe(text.indexOf('2}'));
    expect(placeOfPath(text, ['a', '1', 'missing'])).toBe(text.indexOf('{"b":"x'));
    expect(placeOfPath(text, ['e'])).toBeNull();
  });

  it('finds what the loader complains of in a real document', () => {
    const document = JSON.parse(TERN) as { runs: { lengthM?: unknown; cableId?: unknown; number: string }[] };
    const run = document.runs[3];
    if (!run) throw new Error('the demo boat has fewer runs than this test needs');
    Object.assign(run, { number: 12345 });
    const text = JSON.stringify(document, null, 2);
    const loaded = parseProject(text);
    if (loaded.ok) throw new Error('a run number that is no text was taken');
    const index = problemIndex(text, loaded.problems[0]?.where ?? '');
    expect(text.slice(index ?? 0, (index ?? 0) + 5)).toBe('12345');
  });

  it('has nothing to say of a sound document', () => {
    expect(problemIndex(serialiseProject(boat('Tern')), 'the whole file')).toBeNull();
  });
});
