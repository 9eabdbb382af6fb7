import { describe, expect, it } from 'vitest';
import { reckon, SUMS } from '../../../core/reckon/sums.ts';
import { runReckon } from '../../../electron/node/reckonRun.ts';

const noFile = (path: string): string => {
  throw new Error(`no file ${path}`);
};
const run = (...args: string[]) => runReckon(args, noFile);

function answers(sumId: string, typed: Record<string, string>): Record<string, number> {
  const reckoned = reckon(sumId, typed);
  if (!reckoned.ok) throw new Error(reckoned.message);
  return Object.fromEntries(reckoned.answers.map(({ key, value }) => [key, value]));
}

describe('sums', () => {
  it('horizon: 20.12 nautical miles for two 20 m masts by 2.25, 19.91 by four thirds earth', () => {
    expect(answers('horizon', { h1: '20', h2: '20', constant: '2.25' }).horizonNm).toBeCloseTo(20.12, 2);
    expect(answers('horizon', { h1: '20', h2: '20' }).horizonNm).toBeCloseTo(19.91, 2);
  });

  it('dbm-watts, both ways', () => {
    expect(answers('dbm-watts', { watts: '25' }).levelDbm).toBeCloseTo(43.98, 2);
    expect(answers('dbm-watts', { dbm: '44' }).powerW).toBeCloseTo(25.12, 2);
  });

  it('mismatch: VSWR 3 behind 3 dB reads 1.67 at the radio; a perfect match has no return loss to print', () => {
    expect(answers('mismatch', { vswr: '3', loss: '3' }).vswrAtRadio).toBeCloseTo(1.67, 2);
    expect(answers('mismatch', { vswr: '1' })).not.toHaveProperty('returnLossDb');
  });

  it('open-end-vswr: 4.0 is 40 per cent, both ways', () => {
    expect(answers('open-end-vswr', { vswr: '4' }).lostPercent).toBeCloseTo(40, 9);
    expect(answers('open-end-vswr', { loss: '2.2185' }).openEndVswr).toBeCloseTo(4, 3);
  });

  it('feeder-share: 40 per cent is 2.218 dB and leaves 15 of 25 W', () => {
    expect(answers('feeder-share', { percent: '40' })).toMatchObject({ wattsLeft: expect.closeTo(15, 9) });
    expect(answers('feeder-share', { percent: '40' }).lossDb).toBeCloseTo(2.218, 3);
    expect(answers('feeder-share', { db: '3.0103', watts: '5' }).wattsLeft).toBeCloseTo(2.5, 4);
  });

  it('volt-drop in mm² and AWG', () => {
    expect(answers('volt-drop', { m: '7,5', mm2: '1,5' }).dropPercent).toBeCloseTo(7.64, 2);
    expect(answers('volt-drop', { m: '5', awg: '10' }).areaMm2).toBeCloseTo(5.26, 2);
    expect(answers('volt-drop', { m: '5', awg: '2/0' }).areaMm2).toBeCloseTo(67.43, 2);
  });

  it('range: 30.63 nautical miles for the usual pair, 15.1 with 20 dB kept in hand', () => {
    const usual = { h1: '20', h2: '20', loss1: '3', loss2: '3' };
    expect(answers('range', usual).rangeNm).toBeCloseTo(30.63, 2);
    expect(answers('range', { ...usual, margin: '20' }).rangeNm).toBeCloseTo(15.1, 1);
  });

  it('every sum says its source, and its examples work', () => {
    expect(SUMS.map(({ id }) => id).sort()).toEqual([
      'cascade',
      'coax-loss',
      'dbm-watts',
      'diffraction',
      'feeder-share',
      'gnss-chain',
      'ground-wave',
      'hf-antenna',
      'hf-day',
      'horizon',
      'isolation',
      'mismatch',
      'noise-floor',
      'open-end-vswr',
      'overload',
      'path-loss',
      'range',
      'sat-margin',
      'sky-hop',
      'tilt-loss',
      'time-variability',
      'volt-drop',
    ]);
    for (const sum of SUMS) {
      const skipped = sum.oneOf?.slice(1) ?? [];
      const typed = Object.fromEntries(
        sum.parameters.filter(({ key }) => !skipped.includes(key)).map(({ key, example }) => [key, example]),
      );
      const values = Object.values(answers(sum.id, typed));
      expect(sum.source.length).toBeGreaterThan(10);
      expect(values.length).toBeGreaterThan(0);
      expect(values.every(Number.isFinite)).toBe(true);
    }
  });
});

describe('what a person may get wrong', () => {
  it.each([
    ['tide', {}, /There is no sum "tide": take one of coax-loss/],
    [
      'horizon',
      { h1: '-2', h2: '3' },
      /^h1=-2 must be the height of one antenna above the water, 0 to 5000 m, e\.g\. h1=16\.$/,
    ],
    ['horizon', { h1: 'high', h2: '3' }, /^h1=high must be/],
    ['horizon', { h1: '1e999', h2: '3' }, /^h1=1e999 must be/],
    ['horizon', { h1: '', h2: '3' }, /^horizon needs h1, .* e\.g\. h1=16\.$/],
    ['horizon', { h1: '3', h2: '3', constant: '2.3' }, /^constant=2\.3 must be one of 4\/3, 2\.25, 2\.2, geometric/],
    ['horizon', { h1: '3', h2: '3', h3: '3' }, /^horizon knows no "h3": it takes h1, h2, constant\.$/],
    ['open-end-vswr', {}, /exactly one of loss and vswr, e\.g\. loss=2\.2 or vswr=4/],
    ['open-end-vswr', { loss: '2', vswr: '4' }, /exactly one of/],
    ['open-end-vswr', { vswr: '1' }, /^vswr=1 must be/],
    ['volt-drop', { m: '3', awg: '11/0' }, /^awg=11\/0 must be a size/],
    ['coax-loss', { type: 'string', m: '3' }, /^type=string is not one cable type/],
    [
      'range',
      { h1: '5000', h2: '5000', watts: '2000', gain1: '30', gain2: '30', sensitivity: '-150' },
      /beyond 400 km/,
    ],
  ])('%s %o', (sumId, typed, sentence) => {
    const reckoned = reckon(sumId, typed);
    expect(reckoned.ok ? 'answers' : reckoned.message).toMatch(sentence);
  });
});

describe('command line', () => {
  it('prints answers with units and the source', () => {
    const { exitCode, stdout, stderr } = run('horizon', 'h1=20', 'h2=20', 'constant=2.25');
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' });
    expect(stdout).toMatch(/20\.1 NM/);
    expect(stdout).toMatch(/source: /);
  });

  it('--json prints full precision', () => {
    const { stdout } = run('open-end-vswr', 'vswr=4', '--json');
    const parsed = JSON.parse(stdout) as { sum: string; results: Record<string, { value: number; unit: string }> };
    expect(parsed.sum).toBe('open-end-vswr');
    expect(parsed.results.lossDb).toMatchObject({ value: expect.closeTo(2.21849, 5), unit: 'dB' });
  });

  it('--help lists every sum with its units and source; after a sum, that sum alone', () => {
    const all = run('--help');
    for (const { id } of SUMS) expect(all.stdout).toContain(`${id}: `);
    expect(all.stdout.match(/source: /g)).toHaveLength(SUMS.length);
    const one = run('volt-drop', '--help').stdout;
    expect(one).toMatch(/m {11}the length one way, 0 to 500 m/);
    expect(one).not.toContain('horizon: ');
    expect(run('tide', '--help').exitCode).toBe(2);
  });

  it.each([
    [[], /Say which sum/],
    [['horizon', 'h1'], /"h1" is not key=value/],
    [['horizon', 'h1=1', 'h1=2'], /h1 is given twice/],
    [['horizon', '--fast'], /There is no option --fast/],
    [['horizon', '--batch'], /--batch needs a file/],
    [['horizon', 'h1=-1', 'h2=1'], /^h1=-1 must be/],
    [['horizon', '--batch', 'none.csv'], /none\.csv cannot be read as a CSV table: no file none\.csv/],
  ])('%j is exit 2 with one sentence', (args, sentence) => {
    const { exitCode, stdout, stderr } = run(...(args as string[]));
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' });
    expect(stderr).toMatch(sentence);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });
});
