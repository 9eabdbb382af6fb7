import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { guidePages, markedParts, PANEL_PAGES, searchPages } from '../../../renderer/help/guide.ts';
import { blockText, parseInline, parseMarkdown } from '../../../renderer/help/markdown.ts';

const GUIDE = readFileSync(resolve(import.meta.dirname, '../../../docs/user-guide.md'), 'utf8');
const pages = guidePages(GUIDE);

describe('Markdown as far as the guide uses it', () => {
  it('reads headings, paragraphs, lists with turned lines, tables and what is marked inside a line', () => {
    const blocks = parseMarkdown(
      '# Title\n\nOne *two*\n**three** `four`.\n\n* first\n  goes on\n* second\n\n1. a\n2. b\n\n| x | y |\n|---|---|\n| 1 | **2** |\n\n![gone](p.png)',
    );
    expect(blocks.map(({ kind }) => kind)).toEqual(['heading', 'paragraph', 'list', 'list', 'table']);
    expect(blocks.map(blockText)).toEqual([
      'Title',
      'One two three four.',
      'first goes on\nsecond',
      'a\nb',
      'x y\n1 2',
    ]);
    expect(blocks[2]).toMatchObject({ isOrdered: false });
    expect(blocks[3]).toMatchObject({ isOrdered: true });
  });

  it('keeps markup and half-marked text as the text it is', () => {
    const hostile = '<img src=x onerror=alert(1)> **not closed, [no link](';
    expect(parseInline(hostile)).toEqual([{ kind: 'text', text: hostile }]);
  });

  it('leaves no mark of Markdown in what is shown of the guide', () => {
    const shown = pages.map(({ text }) => text).join('\n');
    expect(shown.length).toBeGreaterThan(5000);
    expect(shown).not.toMatch(/\*\*|`|\]\(|\|---|^#|\w\*\s/m);
  });

  it('loses no word of the guide but the pictures and its preface', () => {
    const words = (text: string): string[] => text.match(/\p{L}{2,}/gu) ?? [];
    const body = GUIDE.slice(GUIDE.indexOf('\n## '))
      .replace(/!\[[^\]]*\]\([^)]*\)/g, '')
      .replace(/\]\([^)]*\)/g, '');
    expect(words(pages.map(({ text }) => text).join('\n'))).toEqual(words(body));
  });
});

describe('pages of the help', () => {
  it('has a page for every panel', () => {
    const ids = pages.map(({ id }) => id);
    for (const page of Object.values(PANEL_PAGES)) expect(ids).toContain(page);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('finds pages that hold every word, in any case and without accents', () => {
    const some = [
      { id: 'a', text: 'Water\nThe déck is wet, the mast is dry' },
      { id: 'b', text: 'Air\nThe mast bends' },
    ];
    expect(searchPages(some, 'MAST deck').map(({ page }) => page.id)).toEqual(['a']);
    expect(searchPages(some, 'mast').map(({ page }) => page.id)).toEqual(['a', 'b']);
    expect(searchPages(some, 'keel')).toEqual([]);
    expect(searchPages(some, ' ').map(({ near }) => near)).toEqual([null, null]);
    expect(searchPages(some, 'bends')[0]?.near).toContain('mast bends');
  });

  it('marks what was searched for and loses no letter', () => {
    expect(markedParts('A mast, a MAST', 'mast')).toEqual([
      { text: 'A ', isHit: false },
      { text: 'mast', isHit: true },
      { text: ', a ', isHit: false },
      { text: 'MAST', isHit: true },
    ]);
    // Signs that mean something in a pattern are only signs here.
    expect(markedParts('a (b) c', '(b)').map(({ text }) => text)).toEqual(['a ', '(b)', ' c']);
  });
});
