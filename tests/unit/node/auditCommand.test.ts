import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import type { Project } from '../../../core/model/project.ts';
import { type AuditOutcome, runAudit } from '../../../electron/node/audit.ts';
import { BOAT } from '../report/boat.ts';

const { items, feeds } = BOAT;
/** The test boat with a kept layout that has lost its cables. */
const PROJECT: Project = {
  ...BOAT,
  alternatives: [{ id: 'bare', name: 'Bare', note: '', items, runs: [], feeds, dataLinks: [] }],
};
const FILES = ['install-sheet.pdf', 'cable-schedule.csv', 'path-losses.csv', 'profile.svg', 'assessment.json'];

async function audit(
  argv: readonly string[],
  text = JSON.stringify(PROJECT),
): Promise<AuditOutcome & { files: Map<string, string> }> {
  const files = new Map<string, string>();
  const outcome = await runAudit(argv, {
    readFile: async (path) => {
      if (path !== 'boat.backstay') throw new Error(`${path} could not be opened: there is no such file.`);
      return text;
    },
    writeFile: async (path, content) => void files.set(path, Buffer.from(content).toString('latin1')),
    now: () => '2031-04-12',
  });
  return { ...outcome, files };
}

describe('the audit command', () => {
  it('prints a report and writes nothing unless asked', async () => {
    const { exitCode, stdout, stderr, files } = await audit(['boat.backstay']);
    expect(exitCode).toBe(0);
    expect(stdout).toContain('VHF-1 to A1, VHF voice, 156.800 MHz');
    expect(stdout).toContain('What one failure takes away');
    expect(stdout).not.toMatch(/NaN|undefined|\[object/);
    expect(stderr).toBe('');
    expect(files.size).toBe(0);
  });

  it('writes sheet, schedules, drawing and assessment into a folder and says so', async () => {
    const { exitCode, files, stderr } = await audit(['boat.backstay', '--out', 'out']);
    expect(exitCode).toBe(0);
    expect([...files.keys()]).toEqual(FILES.map((name) => join('out', name)));
    expect(files.get(join('out', 'install-sheet.pdf'))).toMatch(/^%PDF-/);
    expect(files.get(join('out', 'cable-schedule.csv'))).toContain('W01,coax,');
    expect(files.get(join('out', 'profile.svg'))).toContain('<svg ');
    for (const name of FILES) expect(stderr).toContain(`Wrote ${join('out', name)}`);
  });

  it('prints the whole assessment as JSON', async () => {
    const { stdout } = await audit(['boat.backstay', '--json']);
    const { title, boat, layoutName, revision, ...rest } = JSON.parse(stdout) as Record<string, unknown>;
    expect({ title, boat, layoutName, revision }).toEqual({
      title: BOAT.title,
      boat: 'Test Ketch',
      layoutName: 'As found',
      revision: '2',
    });
    expect(rest).toEqual(JSON.parse(JSON.stringify(assess(BOAT))));
  });

  it('tells by its exit status whether findings of a class stand', async () => {
    const standing = assess(BOAT).findings.map((finding) => finding.severity);
    expect(standing).toContain('A');
    for (const level of ['A', 'B', 'C', 'c'])
      expect((await audit(['boat.backstay', '--fail-on', level])).exitCode).toBe(1);
    const overruled = assess(BOAT).findings.map((finding) => ({
      findingKey: finding.key,
      reason: 'Seen and accepted',
      by: '',
    }));
    const calm = JSON.stringify({ ...BOAT, findingOverrides: overruled });
    expect((await audit(['boat.backstay', '--fail-on', 'C'], calm)).exitCode).toBe(0);
    const onlyC = overruled.filter((_, index) => standing[index] !== 'C');
    expect(standing).toContain('C');
    const notes = JSON.stringify({ ...BOAT, findingOverrides: onlyC });
    expect((await audit(['boat.backstay', '--fail-on', 'B'], notes)).exitCode).toBe(0);
    expect((await audit(['boat.backstay', '--fail-on', 'C'], notes)).exitCode).toBe(1);
  });

  it('assesses a kept layout by name', async () => {
    const { stdout } = await audit(['boat.backstay', '--alternative', 'Bare']);
    expect(stdout).toContain('Test Ketch: Bare');
    expect(stdout).not.toContain('VHF-1 to A1');
    const unknown = await audit(['boat.backstay', '--alternative', 'Dream']);
    expect(unknown.exitCode).toBe(2);
    expect(unknown.stderr).toBe('There is no layout "Dream". The document has "As found", "Bare".\n');
  });

  it('speaks the reader’s units and paper', async () => {
    const { files } = await audit([
      'boat.backstay',
      '--out',
      'o',
      '--units',
      'feet',
      '--paper',
      'letter',
      '--decimal',
      'comma',
    ]);
    expect(files.get(join('o', 'cable-schedule.csv'))).toMatch(/Cut \(ft\);/);
    expect(files.get(join('o', 'install-sheet.pdf'))).toContain('/MediaBox [0 0 612 792]');
  });

  it.each([
    [[], /Name the document/],
    [['boat.backstay', 'other'], /one too many/],
    [['boat.backstay', '--fail-on', 'D'], /--fail-on is A or B or C, not "D"/],
    [['boat.backstay', '--paper', 'A5'], /--paper is A4 or Letter/],
    [['boat.backstay', '--sink'], /--sink/],
    [['boat.backstay', '--out'], /--out/],
    [['gone.backstay'], /gone\.backstay could not be opened/],
  ])('answers bad input %j with status 2 and a sentence', async (argv, sentence) => {
    const { exitCode, stdout, stderr } = await audit(argv);
    expect(exitCode).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(sentence);
    expect(stderr).not.toMatch(/\n\s+at /);
  });

  it('names the place in the file and the mend', async () => {
    const broken = JSON.stringify({ ...PROJECT, boat: { ...PROJECT.boat, loaM: -3 } });
    const { exitCode, stderr } = await audit(['boat.backstay', '--out', 'o'], broken);
    expect(exitCode).toBe(2);
    expect(stderr).toMatch(/^boat\.backstay: boat\.loaM: /);
    expect((await audit(['boat.backstay'], '{"format":')).exitCode).toBe(2);
  });

  it('prints its usage', async () => {
    const { exitCode, stdout } = await audit(['--help']);
    expect(exitCode).toBe(0);
    expect(stdout).toContain('--fail-on A|B|C');
  });
});

describe('the command itself', () => {
  const folder = mkdtempSync(join(tmpdir(), 'backstay-audit-'));
  const root = resolve(import.meta.dirname, '../../..');
  const command = (...argv: string[]) =>
    spawnSync(process.execPath, ['--import', 'tsx', resolve(root, 'electron/node/auditCommand.ts'), ...argv], {
      cwd: root,
      env: { ...process.env, INIT_CWD: folder },
      encoding: 'utf8',
    });
  beforeAll(() => writeFileSync(join(folder, 'boat.backstay'), JSON.stringify(PROJECT)));

  it('reads and writes where the user stands, and exits with the status', () => {
    const { status, stdout, stderr } = command('boat.backstay', '--out', 'made/here', '--fail-on', 'A');
    expect(status).toBe(1);
    expect(stdout).toContain('Findings');
    expect(stderr).toContain('Wrote');
    for (const name of FILES) expect(existsSync(join(folder, 'made/here', name)), name).toBe(true);
    expect(readFileSync(join(folder, 'made/here/install-sheet.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('says in one sentence why it cannot read or write', () => {
    for (const [argv, sentence] of [
      [
        ['gone.backstay'],
        /^gone\.backstay could not be opened: there is no such file or folder\. If it is on a removable or network drive, connect that again\.\n$/,
      ],
      [['.'], /is a folder/],
      [['boat.backstay', '--out', 'boat.backstay'], /could not be written/],
    ] as const) {
      const { status, stderr } = command(...argv);
      expect(status).toBe(2);
      expect(stderr).toMatch(sentence);
    }
  });
});
