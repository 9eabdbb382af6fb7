import { describe, expect, it } from 'vitest';
import { reckon } from '../../../core/reckon/sums.ts';
import { runReckon } from '../../../electron/node/reckonRun.ts';

function answers(sumId: string, typed: Record<string, string>): Record<string, number> {
  const reckoned = reckon(sumId, typed);
  if (!reckoned.ok) throw new Error(reckoned.message);
  return Object.fromEntries(reckoned.answers.map(({ key, value }) => [key, value]));
}

function refusal(sumId: string, typed: Record<string, string>): string {
  const reckoned = reckon(sumId, typed);
  return reckoned.ok ? 'accepted' : reckoned.message;
}

describe('noise-floor', () => {
  it('a -119 dBm set behind 3 dB of cable among chargers is worth -114.8 dBm', () => {
    const got = answers('noise-floor', { mhz: '156.8', loss: '3' });
    expect(got.externalDb).toBeCloseTo(11.69, 2);
    expect(got.upperDb).toBeCloseTo(11.69 + 10.6, 2);
    expect(got.lowerDb).toBeCloseTo(11.69 - 5.3, 2);
    expect(got.systemDb).toBeCloseTo(13.4, 1);
    expect(got.effectiveDbm).toBeCloseTo(-114.8, 1);
  });

  it('MF: the noise field of 2182 kHz in 2.7 kHz, and lightning by category', () => {
    const mf = { mhz: '2.182', hz: '2700', antenna: 'short-monopole', fof2: '5' };
    expect(answers('noise-floor', mf).fieldDbuvPerM).toBeCloseTo(8.7, 1);
    const stormy = answers('noise-floor', { ...mf, lightning: 'strong' });
    expect(stormy.fieldDbuvPerM).toBeCloseTo(28.7, 1);
  });

  it('says which span a place is known in', () => {
    expect(refusal('noise-floor', { mhz: '156.8', place: 'quiet-rural' })).toMatch(
      /from 0\.3 to 30 MHz, not at 156\.8/,
    );
    expect(refusal('noise-floor', { mhz: '156.8', place: 'harbour' })).toMatch(/must be one of city, residential/);
    expect(refusal('noise-floor', { mhz: '1575' })).toMatch(/0\.3 to 250 MHz/);
  });
});

describe('cascade', () => {
  it('a web tutorial: 3.83 dB, and -101.2 dBm in 10 MHz at -1 dB', () => {
    const got = answers('cascade', { stages: '-2/18:1.5/-1/-6:8', hz: '10e6', snr: '-1' });
    expect(got.gainDb).toBeCloseTo(9, 9);
    expect(got.noiseFigureDb).toBeCloseTo(3.83, 2);
    // The page rounds kT0 to -174 dBm/Hz and its answer to a tenth.
    expect(Math.abs((got.weakestDbm ?? 0) + 101.2)).toBeLessThan(0.08);
  });

  it('takes decimal commas and spaces; nothing in a row is nothing', () => {
    expect(answers('cascade', { stages: '-2,5 / 12:2,0' })).toEqual(answers('cascade', { stages: '-2.5/12:2' }));
    const nothing = answers('cascade', { stages: '0' });
    expect([nothing.gainDb, nothing.noiseFigureDb, nothing.temperatureK]).toEqual([0, 0, 0]);
  });

  it('a preamplifier at the antenna beats one behind the cable', () => {
    const aloft = answers('cascade', { stages: '18:1.5/-3/0:8' }).noiseFigureDb ?? 0;
    const below = answers('cascade', { stages: '-3/18:1.5/0:8' }).noiseFigureDb ?? 0;
    expect(below - aloft).toBeGreaterThan(2);
  });

  it.each(['', '18', '-3/', 'x', '1:2:3', '5:-1'])('refuses "%s" with a sentence', (stages) => {
    expect(refusal('cascade', { stages })).toMatch(/stage/);
  });
});

describe('gnss-chain', () => {
  it('OEM guide: 24 dB and 1.85 dB, inside its window', () => {
    const got = answers('gnss-chain', { gain: '29', loss: '5', window: 'oem' });
    expect(got.netGainDb).toBeCloseTo(24, 9);
    expect(got.noiseFigureDb).toBeCloseTo(1.85, 2);
    expect([got.shortfallDb, got.attenuatorDb, got.longestLossDb]).toEqual([0, 0, 11]);
  });

  it('the same antenna is 4 dB too strong by the IMO window and right by a typed one', () => {
    expect(answers('gnss-chain', { gain: '29', loss: '5' }).attenuatorDb).toBeCloseTo(4, 9);
    const typed = answers('gnss-chain', { gain: '29', loss: '5', window: '15..' });
    expect([typed.shortfallDb, typed.attenuatorDb, typed.longestLossDb]).toEqual([0, 0, 14]);
    expect(answers('gnss-chain', { gain: '29', before: '2', loss: '5', window: '15..' }).longestLossDb).toBe(12);
    expect(answers('gnss-chain', { gain: '29', loss: '5', window: '..20' })).not.toHaveProperty('longestLossDb');
  });

  it('a passive antenna has its cable before the first amplifier', () => {
    const got = answers('gnss-chain', { gain: '0', loss: '5', nf: '2', window: '..40' });
    expect(got.passiveOverDb).toBe(2);
    expect(got.noiseFigureDb).toBeCloseTo(7, 9);
    expect(got.carrierToNoiseDbHz).toBeLessThan(
      answers('gnss-chain', { gain: '29', loss: '5' }).carrierToNoiseDbHz ?? 0,
    );
  });

  it.each(['..', 'best', '5-9', ''])(
    'refuses the window "%s", or takes the usual one where none is typed',
    (window) => {
      const said = refusal('gnss-chain', { gain: '29', loss: '5', window });
      expect(said).toMatch(window === '' ? /accepted/ : /must be one of imo/);
    },
  );

  it('refuses a window upside down', () => {
    expect(refusal('gnss-chain', { gain: '29', loss: '5', window: '30..10' })).toMatch(/must not end below its start/);
  });
});

describe('tilt-loss', () => {
  it('four elements at 0.75: 7.90 dBi, 5.26 m; 10 degrees of heel cost 4.2 dB abeam and 0.13 fore and aft', () => {
    const whip = { elements: '4', pitch: '0.75', heel: '10' };
    const abeam = answers('tilt-loss', whip);
    expect(abeam.gainDbi).toBeCloseTo(7.9, 2);
    expect(abeam.lengthM).toBeCloseTo(5.26, 2);
    expect(abeam.tiltLossDb).toBeCloseTo(4.2, 1);
    expect(answers('tilt-loss', { ...whip, azimuth: '90' }).tiltLossDb).toBeCloseTo(0.13, 2);
    expect(abeam.heeledGainDbi).toBeCloseTo((abeam.gainDbi ?? 0) - (abeam.tiltLossDb ?? 0), 9);
  });

  it('by width alone: 3 dB at half of it, and no gain is made up', () => {
    const got = answers('tilt-loss', { width: '30', heel: '15' });
    expect(got.patternDb).toBeCloseTo(3, 9);
    expect(got).not.toHaveProperty('gainDbi');
  });

  it('takes one of both, and whole elements', () => {
    expect(refusal('tilt-loss', { heel: '10' })).toMatch(/exactly one of elements and width/);
    expect(refusal('tilt-loss', { elements: '2', width: '30', heel: '10' })).toMatch(/exactly one of/);
    expect(refusal('tilt-loss', { elements: '2.5', heel: '10' })).toMatch(/whole number/);
  });
});

describe('sat-margin', () => {
  it('3 dB of gain behind 3 dB of cable sends no better than none and hears worse', () => {
    const got = answers('sat-margin', { gain: '3', loss: '3' });
    expect([got.transmitDb, got.breakEvenLossDb]).toEqual([0, 3]);
    expect(got.receiveDb).toBeLessThan(0);
    expect(got.receiveDb).toBeCloseTo((got.outsideGtDbPerK ?? 0) - (got.ownGtDbPerK ?? 0), 9);
  });

  it('a shadowed own antenna turns the answer', () => {
    expect(answers('sat-margin', { gain: '3', loss: '3', hidden: '8' }).transmitDb).toBe(8);
  });

  it('a satellite overhead is its height away', () => {
    expect(answers('sat-margin', { gain: '3', loss: '3', elevation: '90' }).slantKm).toBeCloseTo(780, 6);
  });
});

describe('on the command line', () => {
  it('runs a table through each, a row at a time', () => {
    const table =
      'sum,mhz,stages,gain,loss,elements,heel\nnoise-floor,160,,,,,\ncascade,,-3/0:6,,,,\ngnss-chain,,,28,6,,\nsat-margin,,,3,2,,\ntilt-loss,,,,,2,10\n';
    const { exitCode, stderr, stdout } = runReckon(['--batch', 'cases.csv'], () => table);
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' });
    expect(stdout.trim().split('\n')).toHaveLength(6);
  });
});
