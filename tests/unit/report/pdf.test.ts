import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type PDFDocument from 'pdfkit';
import { describe, expect, it } from 'vitest';
import { type Assessment, assess } from '../../../core/assess.ts';
import { parseProject } from '../../../core/document/load.ts';
import { swapAlternative } from '../../../core/edit/alternatives.ts';
import type { Project } from '../../../core/model/project.ts';
import { CAUTIONS } from '../../../core/report/cautions.ts';
import { pdfSettings, renderSheetPdf } from '../../../core/report/pdf.ts';
import { isPrintable, printable } from '../../../core/report/pdfSink.ts';
import { installSheet } from '../../../core/report/sheet.ts';
import type { Sheet } from '../../../core/report/types.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import { readSheetFonts } from '../../../electron/node/fonts.ts';
import { sheetPdf } from '../../../electron/node/pdf.ts';
import { ASSESSMENT, BOAT } from './boat.ts';

const DEMO_FOLDER = resolve(import.meta.dirname, '../../../assets/demo');
const DEMO_BOATS = readdirSync(DEMO_FOLDER).filter((name) => name.endsWith('.backstay'));
const hasPoppler = spawnSync('pdftotext', ['-v']).status === 0;
const folder = mkdtempSync(join(tmpdir(), 'backstay-pdf-'));
let made = 0;

function sheetOf(project: Project, assessment: Assessment, paper: 'A4' | 'Letter' = 'A4'): Sheet {
  return installSheet(project, assessment, { paper, preferences: METRIC_PREFERENCES, date: '2031-04-12' });
}

async function saved(sheet: Sheet): Promise<string> {
  made += 1;
  const path = join(folder, `${made}.pdf`);
  writeFileSync(path, await sheetPdf(sheet));
  return path;
}

/** Text of a PDF, one string per page, white space folded. */
function pagesOf(path: string): string[] {
  const text = execFileSync('pdftotext', ['-raw', path, '-'], { encoding: 'utf8', maxBuffer: 1e8 });
  return text
    .split('\f')
    .slice(0, -1)
    .map((page) => page.replaceAll(/\s+/g, ' '));
}

interface Word {
  readonly text: string;
  readonly box: readonly [left: number, top: number, right: number, bottom: number];
}

/** Words of a PDF with their boxes in points, page by page. */
function wordsOf(path: string): { width: number; height: number; words: Word[] }[] {
  const xml = execFileSync('pdftotext', ['-bbox', path, '-'], { encoding: 'utf8', maxBuffer: 1e8 });
  return xml
    .split('<page ')
    .slice(1)
    .map((page) => ({
      width: Number(/width="([\d.]+)"/.exec(page)?.[1]),
      height: Number(/height="([\d.]+)"/.exec(page)?.[1]),
      words: [
        ...page.matchAll(/<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)<\/word>/g),
      ].map((found) => ({
        text: found[5] ?? '',
        box: [Number(found[1]), Number(found[2]), Number(found[3]), Number(found[4])],
      })),
    }));
}

const MM = 72 / 25.4;

/** Nothing outside the frame, and nothing of the text area in the title block. */
function expectInside(path: string): void {
  for (const [index, page] of wordsOf(path).entries()) {
    for (const { text, box } of page.words) {
      const [left, top, right, bottom] = box;
      const where = `"${text}" on page ${index + 1}`;
      expect(left, where).toBeGreaterThan(7 * MM);
      expect(right, where).toBeLessThan(page.width - 7 * MM);
      expect(top, where).toBeGreaterThan(7 * MM);
      expect(bottom, where).toBeLessThan(page.height - 7 * MM);
    }
  }
}

/** A boat with so much on board that every list runs over many pages. */
function crowded(): { project: Project; assessment: Assessment } {
  const [run] = BOAT.runs;
  const [finding] = ASSESSMENT.findings;
  if (!run || !finding) throw new Error('The test boat has no run or no finding.');
  const long = 'This remark goes on and on, as remarks of surveyors do. '.repeat(40);
  const runs = Array.from({ length: 150 }, (_, index) => ({
    ...run,
    id: `r${index}`,
    number: `W${100 + index}`,
    notes: '',
  }));
  const findings = Array.from({ length: 60 }, (_, index) => ({
    ...finding,
    key: `k${index}`,
    mark: `C${index + 1}`,
    overruled: null,
    action: [index % 20 === 3 ? long.repeat(5) : index % 5 === 0 ? long : 'Mend it.'],
  }));
  return {
    project: {
      ...BOAT,
      runs,
      notes: `${long}${'Unbreakable'.repeat(60)}`,
      title: long,
      boat: { ...BOAT.boat, name: 'A very long name of a boat '.repeat(6) },
    },
    assessment: { ...ASSESSMENT, findings },
  };
}

describe('the PDF', () => {
  it('is the same bytes for the same sheet, and none for a bad date', async () => {
    const sheet = sheetOf(BOAT, ASSESSMENT);
    const [one, two] = await Promise.all([sheetPdf(sheet), sheetPdf(sheet)]);
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
    expect(Buffer.from(one).subarray(0, 5).toString('latin1')).toBe('%PDF-');
    await expect(sheetPdf({ ...sheet, titleBlock: { ...sheet.titleBlock, date: 'x' } })).rejects.toThrow(RangeError);
  });

  it('carries bookmarks and the date it was given, not today', async () => {
    const bytes = Buffer.from(await sheetPdf(sheetOf(BOAT, ASSESSMENT))).toString('latin1');
    expect(bytes).toContain('/Outlines');
    expect(bytes).toContain('(D:20310412');
    expect(bytes).not.toMatch(new RegExp(`D:${new Date().getFullYear()}`));
  });
});

describe.skipIf(!hasPoppler)('the PDF read back by pdftotext (skipped where poppler-utils is missing)', () => {
  it.each(['A4', 'Letter'] as const)('prints numbers and cautions on %s, every page numbered', async (paper) => {
    const path = await saved(sheetOf(BOAT, ASSESSMENT, paper));
    const pages = pagesOf(path);
    const all = pages.join(' ');
    for (const caution of CAUTIONS) expect(all).toContain(caution.text);
    for (const number of [
      '25.0 W at the set, 11.4 W at the antenna',
      '3.43 ± 0.34 dB',
      '16.70',
      '15.1',
      '20.2',
      '1.20 or less',
      '2.5 mm²',
      '−0.90',
    ]) {
      expect(all).toContain(number);
    }
    expect(all).not.toMatch(/seaworth|complian/i);
    pages.forEach((page, index) => {
      expect(page).toContain(`${index + 1} of ${pages.length}`);
      expect(page).toContain('Local codes, the makers’ instructions');
      expect(page).toContain('Test Ketch');
    });
    expectInside(path);
    const sizes = new Set(
      wordsOf(path).map((page) =>
        [page.width, page.height]
          .map(Math.round)
          .toSorted((a, b) => a - b)
          .join(' x '),
      ),
    );
    expect([...sizes]).toEqual([paper === 'A4' ? '595 x 842' : '612 x 792']);
  });

  it.each(DEMO_BOATS)(
    'keeps every word of %s inside the frame, as found and as proposed, on both papers',
    async (name) => {
      const loaded = parseProject(readFileSync(join(DEMO_FOLDER, name), 'utf8'));
      if (!loaded.ok) throw new Error(`${name} does not load.`);
      const found = loaded.project;
      const layouts = [found, ...found.alternatives.map((alternative) => swapAlternative(found, alternative.id))];
      for (const [index, project] of layouts.entries()) {
        const path = await saved(sheetOf(project, assess(project), index % 2 === 0 ? 'A4' : 'Letter'));
        const all = pagesOf(path).join(' ');
        for (const run of project.runs) expect(all).toContain(run.number);
        for (const finding of assess(project).findings) expect(all).toContain(`${finding.mark} ${finding.title}`);
        expect(all).not.toMatch(/seaworth|complian|NaN|undefined/i);
        expectInside(path);
      }
    },
  );

  it('draws the profile at the scale it states', async () => {
    const path = await saved(sheetOf(BOAT, ASSESSMENT));
    const page = pagesOf(path).find((text) => text.includes('when printed at full size'));
    expect(page).toMatch(/Scale 1:\d+ when printed/);
  });

  it('comes out of PDFKit’s browser build the same, page by page', async () => {
    const build = resolve(import.meta.dirname, '../../../node_modules/pdfkit/js/pdfkit.browser.mjs');
    const { default: BrowserDocument } = (await import(pathToFileURL(build).href)) as { default: typeof PDFDocument };
    const sheet = sheetOf(BOAT, ASSESSMENT);
    const document = new BrowserDocument(pdfSettings(sheet));
    const chunks: Uint8Array[] = [];
    const ended = new Promise((done) => document.on('end', done));
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    renderSheetPdf(document, sheet, await readSheetFonts());
    document.end();
    await ended;
    const path = join(folder, 'browser.pdf');
    writeFileSync(path, Buffer.concat(chunks));
    expect(pagesOf(path)).toEqual(pagesOf(await saved(sheet)));
  });

  it('loses nothing and leaves nothing outside the frame when every list runs over many pages', async () => {
    const { project, assessment } = crowded();
    const path = await saved(sheetOf(project, assessment));
    const pages = pagesOf(path);
    const all = pages.join(' ');
    for (const run of project.runs) expect(all).toContain(run.number);
    for (const finding of assessment.findings) expect(all).toContain(`${finding.mark} Surplus cable coiled`);
    // 3 findings x 200 repeats, 12 x 40 more, 40 each in notes and title; a few are parted by a page's foot.
    expect(all.match(/goes on and on/g)?.length).toBeGreaterThanOrEqual(3 * 200 + 12 * 40 + 80 - 20);
    const schedule = pages.filter((page) => page.includes('Cable schedule') && page.includes('W1'));
    expect(schedule.length).toBeGreaterThan(2);
    for (const page of schedule) expect(page).toContain('From (unit / port)');
    expectInside(path);
  });

  it('prints every character its typeface has, and a stand-in for those it lacks', async () => {
    const characters = Array.from({ length: 0x2300 }, (_, code) => String.fromCodePoint(code)).filter(isPrintable);
    const visible = characters.filter((each) => /\S/u.test(each) && each !== '\u00ad');
    const path = await saved(sheetOf({ ...BOAT, notes: visible.join(' ') }, ASSESSMENT));
    const all = new Set(pagesOf(path).join(' ').normalize('NFC'));
    expect(visible.filter((each) => !all.has(each.normalize('NFC')))).toEqual([]);
    expect(printable('a→b ✓ Ж 日 Ĳ\tz\u200b')).toBe('a>b yes ? ? ? z');
  });

  it('survives text that means harm', async () => {
    const hostile = '%PDF-1.4 endobj ) ( \\ /JS (app.alert(1)) <script> \u0000\u0007 \u202e';
    const path = await saved(sheetOf({ ...BOAT, notes: hostile, preparedBy: hostile }, ASSESSMENT));
    expect(pagesOf(path)[0]).toContain('app.alert');
    expect(spawnSync('pdfinfo', [path], { encoding: 'utf8' }).stdout).toMatch(/JavaScript: +no/);
  });
});
