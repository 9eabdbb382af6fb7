import { describe, expect, it } from 'vitest';
import type { LevelCurve } from '../../../core/reach/levelCurve.ts';
import { AT_REST, type LevelPoint, type RangeResult, type TrialState } from '../../../core/reach/types.ts';
import { formatText } from '../../../core/units/format.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import type { RichText } from '../../../core/units/quantity.ts';
import { levelAtDbm, readingWords } from '../../../renderer/panels/range/reading.ts';
import { changeWords, heelWords, isTried, rollWords, trialWords } from '../../../renderer/panels/range/trial.ts';

const said = (text: RichText): string => formatText(text, METRIC_PREFERENCES);
const trying = (change: Partial<TrialState>): TrialState => ({ ...AT_REST, ...change });

describe('what is tried', () => {
  it('is said in words, each part only when it is not at rest', () => {
    expect(said(heelWords(0))).toBe('upright');
    expect(said(heelWords(-12))).toBe('12° to port');
    expect(said(rollWords(10))).toBe('10° either way');
    expect(said(trialWords(trying({ heelDeg: 20, bearingDeg: 270 })))).toBe(
      'Heeled 20° to starboard, the other station to port',
    );
    expect(said(trialWords(trying({ rollDeg: 15, power: 'low', timePercent: 90, bearingDeg: 0 })))).toBe(
      'Rolling 15° either way, the other station ahead, on low power, for 90 % of the time',
    );
    expect(said(trialWords(trying({ power: 'low' })))).toBe('On low power');
  });

  it('is nothing while only the bearing changes: an upright whip is the same all round', () => {
    expect(isTried(AT_REST)).toBe(false);
    expect(isTried(trying({ bearingDeg: 0 }))).toBe(false);
    for (const change of [{ heelDeg: -1 }, { rollDeg: 1 }, { power: 'low' }, { timePercent: 99 }] as const) {
      expect(isTried(trying(change))).toBe(true);
    }
  });

  it('says both ranges before and after', () => {
    const band = (nominalKm: number) => ({ nominalKm, lowKm: nominalKm, highKm: nominalKm });
    const upright = { dependable: band(18.52), typical: band(37.04) } as RangeResult;
    const tried = { dependable: band(14.816), typical: band(27.78) } as RangeResult;
    expect(said(changeWords(upright, tried))).toBe('dependable 10.0 NM → 8.0 NM, typical 20.0 NM → 15.0 NM');
  });
});

const point = (distanceKm: number, levelDbm: number): LevelPoint => ({
  distanceKm,
  levelDbm,
  lowDbm: levelDbm - 5,
  highDbm: levelDbm + 5,
  twoRayDbm: null,
  scatterDbm: null,
});

describe('reading the curve', () => {
  const curve: LevelCurve = {
    range: {} as RangeResult,
    bandDb: 5,
    points: [point(1, -60), point(3, -80), point(10, -115)],
    sensitivityDbm: -107,
    dependableDbm: -87,
    horizonKm: 8,
  };

  it('goes between its points, and keeps its ends', () => {
    expect(levelAtDbm(curve.points, 2)).toBe(-70);
    expect(levelAtDbm(curve.points, 3)).toBe(-80);
    expect(levelAtDbm(curve.points, 0.1)).toBe(-60);
    expect(levelAtDbm(curve.points, 50)).toBe(-115);
    expect(levelAtDbm([], 1)).toBeNull();
  });

  it('says how it stands to both thresholds', () => {
    expect(said(readingWords(curve, 2))).toBe(
      'At 1.1 NM: −70 dBm ± 5 dB, 37 dB over the sensitivity, 17 dB more than the margin asks',
    );
    expect(said(readingWords(curve, 5))).toMatch(
      /−90 dBm ± 5 dB, 17 dB over the sensitivity, 3 dB short of the margin$/,
    );
    expect(said(readingWords(curve, 10))).toMatch(/−115 dBm ± 5 dB, 8 dB under the sensitivity$/);
  });
});
