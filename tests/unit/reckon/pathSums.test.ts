import { describe, expect, it } from 'vitest';
import { reckon } from '../../../core/reckon/sums.ts';

function answers(sumId: string, typed: Record<string, string>): Record<string, number> {
  const reckoned = reckon(sumId, typed);
  if (!reckoned.ok) throw new Error(reckoned.message);
  return Object.fromEntries(reckoned.answers.map(({ key, value }) => [key, value]));
}

function fault(sumId: string, typed: Record<string, string>): string {
  const reckoned = reckon(sumId, typed);
  return reckoned.ok ? '' : reckoned.message;
}

describe('path-loss', () => {
  const path = { mhz: '156.8', d: '30', h1: '15', h2: '1.5' };

  it('smooth sea, worked by hand: 142.83 dB at 30 km, 36.93 of it by diffraction; 120.47 at 10 km', () => {
    const far = answers('path-loss', path);
    expect(far.lossDb).toBeCloseTo(142.83, 2);
    expect(far.overFreeSpaceDb).toBeCloseTo(36.93, 2);
    expect(answers('path-loss', { ...path, d: '10' }).lossDb).toBeCloseTo(120.47, 2);
  });

  it('free space: 105.9 dB on the same path, whatever the heights', () => {
    const free = answers('path-loss', { ...path, model: 'free-space' });
    expect(free.lossDb).toBeCloseTo(105.9, 1);
    expect(free.overFreeSpaceDb).toBeCloseTo(0, 12);
  });

  it('two rays, 20 m to 20 m at 2 km: 4.26 dB over free space, 3.64 without the surface wave', () => {
    const near = answers('path-loss', { model: 'two-ray', mhz: '156.8', d: '2', h1: '20', h2: '20' });
    expect(near.overFreeSpaceDb).toBeCloseTo(4.26, 2);
    expect(near.raysOnlyDb).toBeCloseTo(3.64, 2);
    expect(near.grazingDeg).toBeCloseTo(1.1425, 3);
  });

  it('sea median, 20 m to 15 m and 400 MHz at 50 km: 152.55 dB', () => {
    const median = answers('path-loss', { model: 'sea-median', mhz: '400', d: '50', h1: '20', h2: '15' });
    expect(median.lossDb).toBeCloseTo(152.55, 2);
    expect(median.scatterPathDb).toBeCloseTo(165.21, 2);
  });

  it('fresh water takes more of a low vertical antenna at VHF', () => {
    const lake = answers('path-loss', { ...path, ground: 'fresh-water' });
    expect(lake.lossDb).toBeGreaterThan((answers('path-loss', path).lossDb ?? 0) + 1);
  });

  it('refuses what a model is not for, with the model to take instead', () => {
    expect(fault('path-loss', { ...path, model: 'sea-median', d: '60' })).toMatch(/below 10 m: take model=smooth-sea/);
    expect(fault('path-loss', { ...path, model: 'two-ray' })).toMatch(/horizon/);
    expect(fault('path-loss', { ...path, model: 'two-ray', d: '10' })).toMatch(/take the smooth-sea model/);
    expect(fault('path-loss', { ...path, model: 'two-ray', d: '0.05' })).toMatch(/take free space/);
    expect(fault('path-loss', { ...path, d: '0' })).toMatch(/^d=0 must be the distance, 0\.001 to 2000 km/);
    expect(fault('path-loss', { ...path, h1: '-1' })).toMatch(/^h1=-1 must be/);
    expect(fault('path-loss', { ...path, model: 'ducting' })).toMatch(/^model=ducting must be one of smooth-sea/);
  });
});

describe('diffraction', () => {
  const path = { mhz: '156.8', h1: '15', h2: '1.5' };

  it('worked by hand: 36.93 dB at 30 km, 24.11 dB at 10 km with 2.49 m of 24.75 clear', () => {
    const far = answers('diffraction', { ...path, d: '30' });
    expect(far.diffractionDb).toBeCloseTo(36.93, 2);
    expect(far).not.toHaveProperty('clearanceM');
    const near = answers('diffraction', { ...path, d: '10' });
    expect(near.diffractionDb).toBeCloseTo(24.11, 2);
    expect(near.horizonKm).toBeCloseTo(21.02, 2);
    expect(near.clearanceM).toBeCloseTo(2.494, 3);
    expect(near.requiredClearanceM).toBeCloseTo(24.754, 3);
  });

  it('takes any earth radius: 26.81 dB at 10 km where 1924 km put the horizon there', () => {
    expect(answers('diffraction', { ...path, d: '10', ae: '1924.05' }).diffractionDb).toBeCloseTo(26.81, 1);
  });
});

describe('time-variability', () => {
  const path = { mhz: '156.8', d: '60', h1: '16', h2: '16' };

  it('the median needs nothing more; 90 and 99 per cent need more, 10 per cent less', () => {
    const extra = (percent: string) => answers('time-variability', { ...path, percent }).extraLossDb ?? Number.NaN;
    expect(extra('50')).toBe(0);
    expect(extra('90')).toBeGreaterThan(0);
    expect(extra('99')).toBeGreaterThan(extra('90'));
    expect(extra('10')).toBeLessThan(0);
  });

  it('adds to the loss of the smooth sea, and 90 per cent is what is left out', () => {
    const held = answers('time-variability', path);
    expect(held.medianLossDb).toBe(answers('path-loss', path).lossDb);
    expect(held.lossDb).toBe((held.medianLossDb ?? 0) + (held.extraLossDb ?? 0));
    expect(held).toEqual(answers('time-variability', { ...path, percent: '90' }));
    expect(fault('time-variability', { ...path, percent: '100' })).toMatch(
      /^percent=100 must be the share of the time/,
    );
  });
});

describe('overload', () => {
  it('25 W from 50 m off: -2.05 dBm, a VHF set blocked by 21 dB and rid of it from 557.5 m or at 0.2 W', () => {
    const near = answers('overload', { m: '50', offset: '0.5' });
    expect(near.levelDbm).toBeCloseTo(-2.05, 2);
    expect(near.blockingMarginDb).toBeCloseTo(-20.95, 2);
    expect(near.careMarginDb).toBeCloseTo(12.05, 2);
    expect(near.keptFromM).toBeCloseTo(557.5, 1);
    expect(near.keptWithW).toBeCloseTo(0.201, 3);
    expect(answers('overload', { m: '557.5', offset: '0.5' }).blockingMarginDb).toBeCloseTo(0, 2);
    expect(answers('overload', { m: '50', offset: '0.5', watts: '0.201' }).blockingMarginDb).toBeCloseTo(0, 1);
  });

  it('own antennas with 40 dB between: AIS blocked by 19 dB, gains not counted twice', () => {
    const own = answers('overload', { receiver: 'ais', isolation: '40', offset: '5.2' });
    expect(own.levelDbm).toBeCloseTo(3.98, 2);
    expect(own.blockingMarginDb).toBeCloseTo(-18.98, 2);
    expect(own).not.toHaveProperty('keptFromM');
    expect(answers('overload', { receiver: 'ais', isolation: '40', offset: '5.2', gain1: '9' })).toEqual(own);
  });

  it('knows which limit holds where: own channel, next channel, beyond', () => {
    expect(answers('overload', { m: '50', offset: '0' })).toHaveProperty('ownChannelMarginDb');
    expect(answers('overload', { m: '50', offset: '0.025' })).toHaveProperty('adjacentChannelMarginDb');
    expect(answers('overload', { m: '50', offset: '1' })).toHaveProperty('blockingMarginDb');
  });

  it('takes a distance or an isolation, not both and not none', () => {
    expect(fault('overload', { offset: '1' })).toMatch(/exactly one of m and isolation/);
    expect(fault('overload', { offset: '1', m: '50', isolation: '40' })).toMatch(/exactly one of m and isolation/);
    expect(fault('overload', { offset: '1', m: '0' })).toMatch(
      /^m=0 must be the distance through the air, 1 to 20000 m/,
    );
  });
});
