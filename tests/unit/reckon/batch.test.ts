import { describe, expect, it } from 'vitest';
import { reckon, SUMS } from '../../../core/reckon/sums.ts';
import type { Parameter, Sum } from '../../../core/reckon/types.ts';
import { runReckon } from '../../../electron/node/reckonRun.ts';

/** The sums this work is asked to have, with what each must take. */
const ASKED: Readonly<Record<string, readonly string[]>> = {
  'path-loss': ['model', 'mhz', 'd', 'h1', 'h2', 'ground'],
  diffraction: ['mhz', 'd', 'h1', 'h2', 'ae', 'ground', 'polarisation'],
  'ground-wave': ['mhz', 'd', 'watts', 'er', 'sigma'],
  'noise-floor': ['mhz', 'place', 'hz', 'loss', 'nf'],
  cascade: ['stages', 'hz', 'snr'],
  'tilt-loss': ['elements', 'heel', 'azimuth'],
  'sat-margin': ['gain', 'loss', 'own', 'elevation'],
  'gnss-chain': ['gain', 'loss', 'nf', 'window'],
  'sky-hop': ['d', 'fof2', 'foe', 'm3000'],
  'time-variability': ['percent', 'mhz', 'd', 'h1', 'h2'],
  overload: ['watts', 'mhz', 'offset', 'm', 'isolation'],
};

describe('batch', () => {
  const batch = (text: string, ...args: string[]) => runReckon([...args, '--batch', 'cases.csv'], () => text);
  const lines = (stdout: string) => stdout.trim().split('\n');

  it('appends the answers to each row', () => {
    const { exitCode, stdout, stderr } = batch('h1,h2\n20,20\n16.7,25\n', 'horizon');
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' });
    expect(lines(stdout)[0]).toBe('h1,h2,horizonNm,horizonKm,error');
    expect(lines(stdout)[1]).toMatch(/^20,20,19\.906\d*,36\.86\d*,$/);
    expect(lines(stdout)).toHaveLength(3);
  });

  it('a bad row gets its sentence, the others are done, and the exit is 2', () => {
    const { exitCode, stdout, stderr } = batch('h1,h2\n20,20\n-1,20\n,5\n', 'horizon');
    expect(exitCode).toBe(2);
    expect(lines(stdout)[2]).toMatch(/^-1,20,,,"h1=-1 must be .*"$/);
    expect(lines(stdout)[3]).toMatch(/horizon needs h1/);
    expect(stderr.split('\n')).toEqual([
      expect.stringMatching(/^Row 3: h1=-1 must be .*\.$/),
      expect.stringMatching(/^Row 4: horizon needs h1, .*\.$/),
      '2 of 3 rows could not be done; see the column "error".',
      '',
    ]);
  });

  it('a column "sum" mixes sums; keys on the line serve every row', () => {
    const { exitCode, stdout } = batch('sum,h1,vswr\nhorizon,20,\nopen-end-vswr,,4\n');
    expect(exitCode).toBe(2);
    expect(lines(stdout)[1]).toMatch(/horizon needs h2/);
    const served = batch('h1\n20\n', 'horizon', 'h2=20');
    expect(lines(served.stdout)[1]).toMatch(/^20,19\.906/);
  });

  it('reads semicolons with decimal commas, a byte-order mark and Windows line ends', () => {
    const { exitCode, stdout } = batch('\uFEFFm;mm2\r\n7,5;1,5\r\n', 'volt-drop');
    expect(exitCode).toBe(0);
    expect(lines(stdout)[1]).toMatch(/^"7,5","1,5",0\.9625,7\.638/);
  });

  it('refuses an empty table, one with two columns of one name, and one whose quotes do not close', () => {
    expect(batch('', 'horizon').stderr).toMatch(/cases\.csv has no rows/);
    expect(batch('h1,h2\n', 'horizon').exitCode).toBe(2);
    expect(batch('h1,h1\n1,2\n', 'horizon').stderr).toMatch(/cannot be read as a CSV table: .*called "h1"/);
    expect(batch('h1,h2\n"1,2\n', 'horizon').stderr).toMatch(/cannot be read as a CSV table/);
  });

  it('a row with too many or too few cells fails alone; rows are counted as a sheet counts them', () => {
    const { stdout, stderr } = batch('h1,h2\n1,2,3\n\n5\n20,20\n', 'horizon');
    expect(stderr).toMatch(/^Row 2: The header names 2 columns, but this row has 3\.\nRow 4: .* has 1\.\n2 of 3 rows/);
    expect(lines(stdout)[3]).toMatch(/^20,20,19\.906/);
  });

  it('names the first ten bad rows and counts them all', () => {
    const { stderr } = batch(`h1,h2\n${'-1,2\n'.repeat(25)}`, 'horizon');
    expect(lines(stderr)).toHaveLength(11);
    expect(lines(stderr)[10]).toBe('25 of 25 rows could not be done; see the column "error".');
  });

  it('--json gives one entry a row', () => {
    const parsed = JSON.parse(batch('vswr\n4\n1\n', 'open-end-vswr', '--json').stdout) as { error?: string }[];
    expect(parsed).toHaveLength(2);
    expect(parsed[0]).toMatchObject({ results: { lossDb: { unit: 'dB' } } });
    expect(parsed[1]).toMatchObject({ row: 3, error: expect.stringMatching(/vswr=1 must be/) });
  });
});

/** What a sum must be given: of a group, its first. */
const neededOf = (sum: Sum): readonly Parameter[] =>
  sum.parameters.filter(({ key }) => !sum.oneOf?.slice(1).includes(key));

/** Values no sum may take: below and above the span of a number, a word that is no number or not on the list. */
function wrongValues(parameter: Parameter): readonly string[] {
  if (parameter.kind === 'text') return parameter.choices ? ['no-such-word'] : [];
  const { min = 0, max = 0 } = parameter;
  const span = max - min + 1;
  return [String(min - span), String(max + span), 'much', 'NaN', 'Infinity', '1e999'];
}

describe('batch by any sum', () => {
  const quoted = (cells: readonly string[]) => cells.map((cell) => `"${cell}"`).join(',');

  it.each(Object.entries(ASKED))('%s takes %j', (id, keys) => {
    expect(SUMS.find((sum) => sum.id === id)?.parameters.map(({ key }) => key)).toEqual(
      expect.arrayContaining([...keys]),
    );
  });

  it.each(SUMS.map((sum) => [sum.id, sum] as const))(
    '%s: every bad cell fails its own row, the good rows agree',
    (id, sum) => {
      const needed = neededOf(sum);
      const example = needed.map((parameter) => parameter.example);
      const bad = needed.flatMap((parameter, i) =>
        wrongValues(parameter).map((value) => ({ i, value, key: parameter.key })),
      );
      const rows = [example, ...bad.map(({ i, value }) => example.with(i, value)), example];
      const text = [needed.map(({ key }) => key), ...rows].map(quoted).join('\n');
      const { exitCode, stdout, stderr } = runReckon([id, '--batch', 'cases.csv', '--json'], () => text);
      const done = JSON.parse(stdout) as { row: number; results?: Record<string, { value: number }>; error?: string }[];
      expect(exitCode).toBe(2);
      expect(stderr).toContain(`${bad.length} of ${rows.length} rows could not be done`);
      bad.forEach(({ key, value }, i) => {
        expect(done[i + 1]).toMatchObject({ row: i + 3, error: expect.stringContaining(`${key}=${value} must be`) });
        expect(done[i + 1]).not.toHaveProperty('results');
      });
      const alone = reckon(id, Object.fromEntries(needed.map(({ key, example: value }) => [key, value])));
      const expected = alone.ok ? Object.fromEntries(alone.answers.map(({ key, value }) => [key, value])) : {};
      expect(Object.keys(expected).length).toBeGreaterThan(0);
      for (const good of [done[0], done.at(-1)]) {
        const values = Object.entries(good?.results ?? {}).map(([key, { value }]) => [key, value]);
        expect(Object.fromEntries(values)).toEqual(expected);
      }
    },
  );

  it('all sums in one table, by a column "sum", each with its own example', () => {
    const keys = [...new Set(SUMS.flatMap((sum) => neededOf(sum).map(({ key }) => key)))];
    const rows = SUMS.map((sum) => [
      sum.id,
      ...keys.map((key) => neededOf(sum).find((p) => p.key === key)?.example ?? ''),
    ]);
    const text = [['sum', ...keys], ...rows].map(quoted).join('\n');
    const { exitCode, stdout, stderr } = runReckon(['--batch', 'cases.csv'], () => text);
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' });
    expect(stdout.trim().split('\n')).toHaveLength(SUMS.length + 1);
  });

  it('help words every parameter as a person would', () => {
    for (const sum of SUMS) {
      const help = runReckon([sum.id, '--help'], () => '').stdout;
      for (const { key } of sum.parameters) expect(help).toMatch(new RegExp(`^ {4}${key} {2,}the `, 'm'));
      expect(help).not.toMatch(/the (the|or|its|how|a) |,,/);
    }
  });
});
