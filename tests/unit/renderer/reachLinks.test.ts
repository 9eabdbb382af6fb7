import { describe, expect, it } from 'vitest';
import { conditionsSchema } from '../../../core/model/project.ts';
import { LIGHTNING_CHOICES, NOISE_CHOICES } from '../../../core/reach/conditionWords.ts';
import type { GnssResult, SatelliteResult } from '../../../core/reach/types.ts';
import { formatText } from '../../../core/units/format.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import type { RichText } from '../../../core/units/quantity.ts';
import { CONDITION_FIELDS, conditionsSummary } from '../../../renderer/panels/reach/conditions.ts';
import { levelLayout, levelSteps } from '../../../renderer/panels/reach/gnssLevels.ts';
import { firstSentence, gnssFigures, linkFigures, windowWords } from '../../../renderer/panels/reach/linkFigures.ts';

const said = (text: RichText): string => formatText(text, METRIC_PREFERENCES);

describe('figures of a satellite link', () => {
  const result: SatelliteResult = {
    id: 's',
    itemId: 'i',
    pathId: 'p',
    antennaId: 'a',
    orbit: 'low',
    frequencyMhz: 1621,
    lineLossDb: 3.4,
    antennaGainDbi: 3,
    eirpDbm: 31.6,
    gOverTDbPerK: -25.2,
    change: { transmitDb: -1.4, receiveDb: 0.6, breakEvenLossDb: 2 },
    lineLimitDb: 3,
    verdict: ['x'],
    isGood: false,
  };
  const shown = (of: SatelliteResult): Record<string, string> =>
    Object.fromEntries(linkFigures(of).map(({ name, value }) => [name, said(value)]));

  it('give line loss against its limit, both changes with their sign, and what one compares by', () => {
    expect(shown(result)).toEqual({
      Orbit: 'low orbit, 1621 MHz',
      'Line loss': '3.4 dB of 3.0 dB its maker allows',
      'Antenna gain': '3.0 dBi',
      Sending: '−1.4 dB',
      Receiving: '+0.6 dB',
      'Break-even': '2.0 dB',
      'e.i.r.p.': '31.6 dBm',
      'G/T': '−25.2 dB/K',
    });
  });

  it('leave out what a set does not have', () => {
    const own = { ...result, pathId: null, change: null, eirpDbm: null, gOverTDbPerK: null };
    expect(Object.keys(shown(own))).toEqual(['Orbit', 'Antenna gain']);
    expect(shown({ ...result, lineLimitDb: null })['Line loss']).toBe('3.4 dB, no limit known');
  });
});

describe('a verdict', () => {
  it.each([
    [['It holds.'], 'It holds.', ''],
    [
      ['No better than none. It sends ', { value: 8.7, unit: 'dB', digits: 1 }, ' worse.'],
      'No better than none.',
      'It sends 8.7 dB worse.',
    ],
    [['No fix. ', { value: 1.5, unit: 'dB', digits: 1 }, ' left.'], 'No fix.', '1.5 dB left.'],
    [[{ value: 1.5, unit: 'dB', digits: 1 }, ' left: enough. Good'], '1.5 dB left: enough.', 'Good'],
    [['no end'], 'no end', ''],
  ] as const)('has a first sentence and what is behind it: %j', (text, first, rest) => {
    expect(firstSentence(text).map(said)).toEqual([first, rest]);
  });
});

describe('gain before a GNSS receiver', () => {
  const cable = [
    { label: 'cable', lossDb: 8.5 },
    { label: 'plug', lossDb: 0.01 },
    { label: 'splitter', lossDb: 3.5 },
  ];

  it('goes up by the amplifier and down by each thing that counts', () => {
    expect(levelSteps(14.49, 26.5, cable).map(({ label, toDb }) => [label, toDb])).toEqual([
      ['amplifier in the antenna', 26.5],
      ['cable', 18],
      ['splitter', 14.5],
    ]);
  });

  it('always ends at the net gain, whatever else is on the way', () => {
    expect(levelSteps(30, 26, cable).at(-1)).toMatchObject({ label: 'amplifier on the way', toDb: 30 });
    expect(levelSteps(10, 26, cable).at(-1)).toMatchObject({ label: 'what else is on the way', toDb: 10 });
    expect(levelSteps(-12, null, cable).at(-1)?.toDb).toBe(-12);
    expect(levelSteps(0, null, [])).toEqual([]);
  });

  it('is drawn with every step and the window inside the picture', () => {
    const steps = levelSteps(14.5, 26.5, cable);
    const layout = levelLayout(steps, { minDb: 15, maxDb: null }, 400);
    for (const { fromDb, toDb } of steps) {
      for (const db of [fromDb, toDb]) {
        expect(layout.y(db)).toBeGreaterThan(0);
        expect(layout.y(db)).toBeLessThanOrEqual(layout.bottom);
      }
    }
    expect(layout.window?.bottom).toBeCloseTo(layout.y(15), 9);
    expect(layout.window?.top).toBeLessThan(layout.y(26.5));
    const last = layout.steps.at(-1);
    expect((last?.x ?? 0) + (last?.width ?? 0)).toBeCloseTo(layout.socketX, 9);
    expect(levelLayout(steps, { minDb: null, maxDb: null }, 400).window).toBeNull();
    expect(levelLayout([], null, 400).steps).toEqual([]);
  });

  it('has its window and figures in words', () => {
    expect(said(windowWords({ minDb: 10, maxDb: 30 }))).toBe('between 10 dB and 30 dB');
    expect(said(windowWords({ minDb: 15, maxDb: null }))).toBe('at least 15 dB');
    expect(said(windowWords(null))).toBe('not stated by its maker');
    const result: GnssResult = {
      id: 'g',
      itemId: 'i',
      pathId: null,
      antennaId: 'i',
      netGainDb: null,
      noiseFigureDb: 2,
      carrierToNoiseDbHz: 44.1,
      window: null,
      verdict: ['x'],
      isGood: true,
    };
    expect(gnssFigures(result).map(({ name, value }) => `${name} ${said(value)}`)).toEqual([
      'Noise figure 2.0 dB',
      'C/N0 44.1 dB-Hz',
    ]);
  });
});

describe('conditions', () => {
  const fresh = conditionsSchema.parse({});

  it('offer exactly what the document takes', () => {
    for (const { id } of NOISE_CHOICES) expect(conditionsSchema.safeParse({ noise: id }).success).toBe(true);
    for (const { id } of LIGHTNING_CHOICES) expect(conditionsSchema.safeParse({ lightning: id }).success).toBe(true);
    expect(NOISE_CHOICES).toHaveLength(conditionsSchema.shape.noise.unwrap().options.length);
    expect(LIGHTNING_CHOICES).toHaveLength(conditionsSchema.shape.lightning.unwrap().options.length);
    for (const { key, min, max } of CONDITION_FIELDS) {
      for (const value of [min, max]) expect(conditionsSchema.safeParse({ [key]: value }).success).toBe(true);
      for (const value of [min - 0.1, max + 0.1]) {
        expect(conditionsSchema.safeParse({ [key]: value }).success).toBe(false);
      }
    }
  });

  it('are summed up in one line', () => {
    expect(conditionsSummary(fresh)).toBe('rural noise, no lightning, July');
    expect(conditionsSummary({ ...fresh, lightning: 'severe', month: 1 })).toBe(
      'rural noise, severe lightning, January',
    );
  });
});
