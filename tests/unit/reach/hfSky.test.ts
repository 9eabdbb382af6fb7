import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Conditions, conditionsSchema } from '../../../core/model/project.ts';
import { VOICE_CHANNELS } from '../../../core/reach/hfBands.ts';
import { skyDay } from '../../../core/reach/hfDay.ts';
import { skyOfDay } from '../../../core/reach/hfSky.ts';

const BANDS = VOICE_CHANNELS.map((channel) => ({ ...channel, groundWave: [] }));
const conditions: fc.Arbitrary<Conditions> = fc
  .record({
    foF2NightMhz: fc.double({ min: 1.5, max: 6, noNaN: true }),
    rise: fc.double({ min: 0, max: 8, noNaN: true }),
    m3000: fc.double({ min: 2.5, max: 3.4, noNaN: true }),
    latitudeDeg: fc.integer({ min: -80, max: 80 }),
    month: fc.integer({ min: 1, max: 12 }),
    sunspotNumber: fc.integer({ min: 0, max: 200 }),
  })
  .map(({ rise, ...rest }) => conditionsSchema.parse({ ...rest, foF2DayMhz: rest.foF2NightMhz + rise }));

describe('the sky over a day', () => {
  it('keeps foF2 between the two figures stated, and reaches both where the sun rises and sets', () => {
    fc.assert(
      fc.property(conditions, (stated) => {
        const sky = skyOfDay(stated).map(({ foF2Mhz }) => foF2Mhz);
        expect(sky).toHaveLength(24);
        for (const mhz of sky) {
          expect(mhz).toBeGreaterThanOrEqual(stated.foF2NightMhz - 1e-9);
          expect(mhz).toBeLessThanOrEqual(stated.foF2DayMhz + 1e-9);
        }
        if (Math.abs(stated.latitudeDeg) > 60) return;
        expect(Math.max(...sky)).toBeCloseTo(stated.foF2DayMhz, 9);
        expect(Math.min(...sky)).toBeCloseTo(stated.foF2NightMhz, 9);
      }),
      { seed: 11 },
    );
  });

  it('is highest after noon and lowest before dawn at middle latitudes (common practice, no source)', () => {
    const sky = skyOfDay(conditionsSchema.parse({ latitudeDeg: 45, month: 3 })).map(({ foF2Mhz }) => foF2Mhz);
    const hourOf = (mhz: number): number => sky.indexOf(mhz);
    expect(hourOf(Math.max(...sky))).toBeGreaterThanOrEqual(12);
    expect(hourOf(Math.max(...sky))).toBeLessThanOrEqual(16);
    expect(hourOf(Math.min(...sky))).toBeGreaterThanOrEqual(3);
    expect(hourOf(Math.min(...sky))).toBeLessThanOrEqual(7);
  });
});

describe('bands by hour', () => {
  it('are open only at or below the working frequency, with at most one best band an hour, the highest open one', () => {
    fc.assert(
      fc.property(conditions, fc.integer({ min: 50, max: 8000 }), (stated, distanceKm) => {
        const day = skyDay(stated, BANDS, distanceKm);
        expect(day.hours).toHaveLength(24);
        for (const { hour, workingMhz, mufMhz, takeoffDeg } of day.hours) {
          expect(workingMhz).toBeLessThanOrEqual(mufMhz + 1e-9);
          expect(takeoffDeg).toBeGreaterThanOrEqual(0);
          const cells = day.cells.filter((cell) => cell.hour === hour);
          const mhzOf = (bandId: string): number => BANDS.find(({ id }) => id === bandId)?.frequencyMhz ?? Number.NaN;
          const open = cells.filter(({ state }) => state === 'open');
          // One hop more may carry a hair higher: the gyrofrequency adds most to the shortest hops.
          for (const { bandId } of open) expect(mhzOf(bandId)).toBeLessThanOrEqual(1.01 * workingMhz);
          for (const { bandId, state } of cells) if (mhzOf(bandId) > 1.01 * mufMhz) expect(state).toBe('shut');
          const best = cells.filter(({ isBest }) => isBest).map(({ bandId }) => mhzOf(bandId));
          expect(best).toEqual(open.length === 0 ? [] : [Math.max(...open.map(({ bandId }) => mhzOf(bandId)))]);
        }
      }),
      { seed: 12, numRuns: 60 },
    );
  });

  it('near-vertical incidence carries a little more than the critical frequency: 1.05 to 1.25 of it at 200 km (P.533)', () => {
    const stated = conditionsSchema.parse({ foF2DayMhz: 8, foF2NightMhz: 4, month: 12, latitudeDeg: 50 });
    for (const { foF2Mhz, foEMhz, mufMhz } of skyDay(stated, BANDS, 200).hours) {
      if (foEMhz > 0.5 * foF2Mhz) continue;
      expect(mufMhz / foF2Mhz).toBeGreaterThan(1.02);
      expect(mufMhz / foF2Mhz).toBeLessThan(1.25);
    }
  });

  it('longer single hops carry higher frequencies', () => {
    const stated = conditionsSchema.parse({});
    const mufs = [200, 500, 1000, 2000, 3000].map((km) => skyDay(stated, BANDS, km).hours[12]?.mufMhz ?? 0);
    expect(mufs).toEqual(mufs.toSorted((a, b) => a - b));
  });

  it('takes as few hops as reach, and says what it is not', () => {
    const stated = conditionsSchema.parse({});
    expect(skyDay(stated, BANDS, 1000).hops).toBe(1);
    // A hop is 4000 km at most, and less by the height of the layer.
    expect(skyDay(stated, BANDS, 7000).hops).toBeGreaterThanOrEqual(2);
    expect(skyDay(stated, BANDS, 7000).hops).toBeLessThanOrEqual(3);
    expect(skyDay(stated, BANDS, 1000).notes.join(' ')).toMatch(/no noise|no level|absor/i);
  });

  it.each([49, 8001, Number.NaN])('refuses %d km', (km) => {
    expect(() => skyDay(conditionsSchema.parse({}), BANDS, km)).toThrow(RangeError);
  });
});
