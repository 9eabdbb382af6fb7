import { describe, expect, it } from 'vitest';
import { reckon } from '../../../core/reckon/sums.ts';

function answers(sumId: string, typed: Record<string, string>): Record<string, number> {
  const reckoned = reckon(sumId, typed);
  if (!reckoned.ok) throw new Error(reckoned.message);
  return Object.fromEntries(reckoned.answers.map(({ key, value }) => [key, value]));
}

function sentence(sumId: string, typed: Record<string, string>): string {
  const reckoned = reckon(sumId, typed);
  return reckoned.ok ? 'answers' : reckoned.message;
}

describe('ground-wave', () => {
  // Field of 1 kW: the published code of Rec. ITU-R P.368-10, see tests/published/groundWave.test.ts.
  it('2.182 MHz over 100 km of sea: 67.93 dBµV/m for 1 kW, 52.7 for 30 W radiated', () => {
    const kilowatt = answers('ground-wave', { mhz: '2.182', d: '100' });
    expect(Math.abs((kilowatt.fieldDbuvPerM ?? Number.NaN) - 67.9307)).toBeLessThan(0.02);
    expect(Math.abs((kilowatt.lossDb ?? Number.NaN) - 80.8324)).toBeLessThan(0.02);
    expect(answers('ground-wave', { mhz: '2.182', d: '100', watts: '30' }).fieldDbuvPerM).toBeCloseTo(52.7, 1);
  });

  it('land costs more than sea', () => {
    const sea = answers('ground-wave', { mhz: '4', d: '50' });
    const land = answers('ground-wave', { mhz: '4', d: '50', er: '15', sigma: '0,001' });
    expect((land.lossDb ?? Number.NaN) - (sea.lossDb ?? Number.NaN)).toBeGreaterThan(20);
  });

  it('says what is wrong: frequency, and a distance too near for a radiated field', () => {
    expect(sentence('ground-wave', { mhz: '31', d: '50' })).toMatch(/^mhz=31 must be the frequency, 0\.01 to 30 MHz/);
    expect(sentence('ground-wave', { mhz: '2', d: '-5' })).toMatch(/^d=-5 must be/);
    expect(sentence('ground-wave', { mhz: '2', d: '0,1' })).toBe(
      'The distance of a ground wave must be one wavelength (0.150 km) to 10000 km, not 0.1.',
    );
  });
});

describe('sky-hop', () => {
  const day = { fof2: '8', foe: '3.3', m3000: '3', fh: '1.2' };

  // Routines of Rec. ITU-R P.533, see tests/published/skyWave.test.ts.
  it('1000 km by day: highest 14.24 MHz, working 12.11, E layer to 13.14, take-off 29.8 degrees', () => {
    const hop = answers('sky-hop', { d: '1000', ...day });
    expect(hop.mufMhz).toBeCloseTo(14.2442, 3);
    expect(hop.workingMhz).toBeCloseTo(12.1076, 3);
    expect(hop.eLayerMufMhz).toBeCloseTo(13.1386, 3);
    expect(hop.mirrorKm).toBeCloseTo(320.667, 2);
    expect(hop.takeoffDeg).toBeCloseTo(29.7681, 3);
  });

  it('no E layer, or one too far: no frequency by it, and nothing in the way', () => {
    const night = answers('sky-hop', { d: '500', fof2: '4' });
    expect(night).not.toHaveProperty('eLayerMufMhz');
    expect(night.screeningMhz).toBe(0);
    expect(answers('sky-hop', { d: '3000', ...day })).not.toHaveProperty('eLayerMufMhz');
  });

  it('says how far one hop goes', () => {
    expect(sentence('sky-hop', { d: '4500', fof2: '8' })).toMatch(/^d=4500 must be/);
    expect(sentence('sky-hop', { d: '3900', fof2: '8', m3000: '3.5' })).toMatch(
      /^One hop by this layer spans 1 to 3\d\d\d km, not 3900\.$/,
    );
  });
});
