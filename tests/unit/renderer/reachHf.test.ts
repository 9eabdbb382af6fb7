import { describe, expect, it } from 'vitest';
import type { HfBand, HfDay, HfHour, HfResult } from '../../../core/reach/types.ts';
import { formatText } from '../../../core/units/format.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import type { RichText } from '../../../core/units/quantity.ts';
import { gridLayout, moved, shownBands, sunMarks } from '../../../renderer/panels/reach/hfGrid.ts';
import { efficiencySteps } from '../../../renderer/panels/reach/hfWhy.ts';
import {
  bandList,
  bandsAt,
  cellReading,
  clock,
  distanceChoices,
  hfHeadline,
  hopWords,
  sharedNotes,
} from '../../../renderer/panels/reach/hfWords.ts';

const said = (text: RichText): string => formatText(text, METRIC_PREFERENCES).replaceAll('\u00a0', ' ');

/** The marine bands as the radio regulations space them; the figures beside them are made up. */
const CARRIERS = [0.518, 2.182, 4.125, 6.215, 8.291, 12.29, 16.42, 18.795, 22.1, 25.1];
const BANDS: readonly HfBand[] = CARRIERS.map((frequencyMhz) => ({
  id: `b${frequencyMhz}`,
  name: frequencyMhz < 1 ? '518 kHz' : `${Math.round(frequencyMhz)} MHz`,
  frequencyMhz,
  radiationOhm: 4,
  reactanceOhm: -400,
  coilOhm: 2,
  efficiency: 0.25,
  feederLossDb: 1,
  radiatedW: 25,
  insulatorPeakV: 3000,
  noiseDb: 50,
  groundWave: [],
  notes: [],
}));
const RESULT: HfResult = {
  id: 'h',
  pathId: 'p',
  itemId: 'i',
  antennaId: 'a',
  canTransmit: true,
  effectiveLengthM: 10,
  groundLossOhm: 10,
  bands: BANDS,
  notes: [],
};

/** A sun that rises at 6 and sets at 18, a maximum of 6 MHz by night and 20 MHz by day. */
function day(stateOf: (mhz: number, hour: number) => HfHour['state'] = decided): HfDay {
  const hours = Array.from({ length: 24 }, (_, hour) => ({
    hour,
    sunZenithDeg: 90.83 - 60 * Math.sin((Math.PI * (hour - 6)) / 12),
    foF2Mhz: 6,
    foEMhz: isDay(hour) ? 3 : 0,
    mufMhz: mufAt(hour),
    workingMhz: 0.85 * mufAt(hour),
    takeoffDeg: 20,
  }));
  const cells = hours.flatMap(({ hour }) => {
    const states = BANDS.slice(1).map((band) => ({ band, state: stateOf(band.frequencyMhz, hour) }));
    const best = states.findLast(({ state }) => state === 'open')?.band.id;
    return states.map(({ band, state }): HfHour => ({ hour, bandId: band.id, state, isBest: band.id === best }));
  });
  return { distanceKm: 926, hops: 1, hours, cells, notes: [] };
}
const isDay = (hour: number): boolean => hour > 6 && hour < 18;
const mufAt = (hour: number): number => (isDay(hour) ? 20 : 6);
function decided(mhz: number, hour: number): HfHour['state'] {
  if (mhz > mufAt(hour)) return 'shut';
  return mhz > 0.85 * mufAt(hour) ? 'edge' : 'open';
}

describe('the band-by-hour view', () => {
  it('leaves out a band without hours, and puts the highest on top', () => {
    const shown = shownBands(day(), BANDS);
    expect(shown.map(({ frequencyMhz }) => frequencyMhz)).toEqual(CARRIERS.slice(1).reverse());
    const { rows } = gridLayout(day(), BANDS, 408);
    for (const [index, row] of rows.slice(1).entries()) expect(row.y).toBeGreaterThan(rows[index]?.y ?? Infinity);
  });

  it.each([408, 544])('keeps rows clear of each other and cells tall enough to tell apart at %i px', (width) => {
    const { rows, cellPx, plot } = gridLayout(day(), BANDS, width);
    expect(cellPx).toBeGreaterThanOrEqual(10);
    for (const [index, row] of rows.slice(1).entries()) {
      expect(row.y - (rows[index]?.y ?? 0)).toBeGreaterThanOrEqual(cellPx + 1);
    }
    for (const { y } of rows) {
      expect(y - cellPx / 2).toBeGreaterThanOrEqual(plot.top);
      expect(y + cellPx / 2).toBeLessThanOrEqual(plot.bottom);
    }
  });

  it('draws a line through a band where its frequency is that band’s', () => {
    const flat = day();
    const at = { ...flat, hours: flat.hours.map((hour) => ({ ...hour, mufMhz: 8.291 })) };
    const { rows, muf } = gridLayout(at, BANDS, 408);
    const y = rows.find(({ band }) => band.frequencyMhz === 8.291)?.y ?? 0;
    const [, drawn] = muf.slice(1).split('L')[0]?.split(' ') ?? [];
    expect(Number(drawn)).toBeCloseTo(y, 0);
  });

  it('has sunrise and sunset where the sun crosses the horizon', () => {
    const marks = sunMarks(day());
    expect(marks.map(({ kind }) => kind)).toEqual(['sunrise', 'sunset']);
    expect(marks[0]?.hour).toBeCloseTo(6, 6);
    expect(marks[1]?.hour).toBeCloseTo(18, 6);
    const { nights, plot } = gridLayout(day(), BANDS, 408);
    expect(nights).toHaveLength(2);
    expect(nights[0]?.from).toBe(plot.left);
    expect(nights[1]?.to).toBe(plot.right);
  });

  it('is all night or all day where the sun does not cross it', () => {
    const polar = (zenith: number): HfDay => {
      const at = day();
      return { ...at, hours: at.hours.map((hour) => ({ ...hour, sunZenithDeg: zenith })) };
    };
    expect(gridLayout(polar(100), BANDS, 408).nights).toHaveLength(1);
    expect(gridLayout(polar(60), BANDS, 408).nights).toHaveLength(0);
  });

  it('moves by arrow keys, round the clock but not off the bands', () => {
    expect(moved({ row: 2, hour: 0 }, 'ArrowLeft', 9)).toEqual({ row: 2, hour: 23 });
    expect(moved({ row: 2, hour: 23 }, 'ArrowRight', 9)).toEqual({ row: 2, hour: 0 });
    expect(moved({ row: 0, hour: 5 }, 'ArrowUp', 9)).toEqual({ row: 0, hour: 5 });
    expect(moved({ row: 8, hour: 5 }, 'ArrowDown', 9)).toEqual({ row: 8, hour: 5 });
    expect(moved({ row: 3, hour: 5 }, 'End', 9)).toEqual({ row: 3, hour: 23 });
    expect(moved({ row: 3, hour: 5 }, 'a', 9)).toBeNull();
  });
});

describe('words for HF', () => {
  it('say which band to try first and which others are open', () => {
    expect(said(hfHeadline(RESULT, day(), 12))).toBe(
      'Over 500 NM at 12:00 solar time, try 16 MHz first. 2, 4, 6, 8 and 12 MHz are open too.',
    );
    expect(said(hfHeadline({ ...RESULT, canTransmit: false }, day(), 0))).toContain('listen on 4 MHz first. 2 MHz is');
  });

  it('do not promise what is only at the edge, and say when nothing carries', () => {
    const edge = day((mhz) => (mhz < 3 ? 'edge' : 'shut'));
    expect(said(hfHeadline(RESULT, edge, 3))).toContain('no band is sure; 2 MHz may carry');
    expect(
      said(
        hfHeadline(
          RESULT,
          day(() => 'shut'),
          3,
        ),
      ),
    ).toContain('none of its bands carries');
  });

  it('count the ground wave as carrying', () => {
    const near = day((mhz) => (mhz < 5 ? 'ground' : 'shut'));
    expect(bandsAt(near, BANDS, 4).ground).toEqual(['2 MHz', '4 MHz']);
    expect(said(hfHeadline(RESULT, near, 4))).toContain('try 2 and 4 MHz. The ground wave covers the distance.');
    expect(hopWords(near, BANDS, 4)).toBe('Along the sea; no hop is needed.');
    expect(hopWords(day(), BANDS, 4)).toContain('One hop by the sky');
  });

  it('read a cell out in full', () => {
    const at = day();
    const band = BANDS[5];
    const cell = at.cells.find(({ hour, bandId }) => hour === 12 && bandId === band?.id);
    if (!band || !cell) throw new Error('the day has that cell');
    const text = said(cellReading(at, band, cell));
    expect(text).toMatch(/^12 MHz at 12:00 is open/);
    expect(text).toContain(
      'Working frequency 17.0 MHz, median maximum 20.0 MHz, take-off 20°, sun 59° above the horizon.',
    );
  });

  it('say each note once, with the bands it is about', () => {
    const bands = BANDS.map((band, index) => (index > 7 ? { ...band, notes: ['too long'] } : band));
    expect(sharedNotes({ ...RESULT, bands, notes: ['no strap'] })).toEqual([
      { bands: null, note: 'no strap' },
      { bands: '22 and 25\u00a0MHz', note: 'too long' },
    ]);
  });

  it('give the time of day and lists as people write them', () => {
    expect(clock(6.5)).toBe('06:30');
    expect(clock(23.9999)).toBe('00:00');
    expect(bandList(['4 MHz'])).toBe('4\u00a0MHz');
    expect(bandList(['518 kHz', '4 MHz'])).toBe('518\u00a0kHz and 4\u00a0MHz');
  });

  it('offer distances that are round in the reader’s unit', () => {
    for (const km of distanceChoices(METRIC_PREFERENCES)) expect((km / 1.852) % 1).toBeCloseTo(0, 9);
    for (const km of distanceChoices({ ...METRIC_PREFERENCES, distance: 'km' })) expect(km % 10).toBe(0);
  });
});

describe('why the efficiency', () => {
  it('shows the sum that gives it', () => {
    const [band] = BANDS.slice(1);
    if (!band) throw new Error('there is a band');
    const steps = efficiencySteps(RESULT, band);
    expect(steps.map(({ name }) => name)).toEqual([
      'Height',
      'Radiation',
      'Coil',
      'Ground',
      'Efficiency',
      'Radiated',
      'Insulator',
    ]);
    expect(said(steps[4]?.sum ?? [])).toBe('4.00 Ω / (4.00 Ω + 2.00 Ω + 10.0 Ω) = 25 %');
    expect(said(steps[5]?.sum ?? [])).toMatch(/^100 W arrive at its foot/);
  });

  it('gives a least value where the wire is too long for the closed forms, and no watts for a receiver', () => {
    const [band] = BANDS.slice(-1);
    if (!band) throw new Error('there is a band');
    const long = { ...band, radiationOhm: null, reactanceOhm: null, coilOhm: null, radiatedW: null };
    const steps = efficiencySteps(RESULT, long);
    expect(steps.map(({ name }) => name)).toEqual(['Height', 'Efficiency']);
    expect(said(steps[1]?.sum ?? [])).toContain('at least 25 %');
  });
});
