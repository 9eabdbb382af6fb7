import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../core/catalogue/catalogue.ts';
import { DEFAULT_MARGIN, marginDb } from '../../core/model/margin.ts';
import { reachKm } from '../../core/propagation/reach.ts';
import { seaPathLossDb } from '../../core/propagation/sphericalEarth.ts';
import { type CoaxPart, coaxLossDb } from '../../core/rf/coax.ts';
import { lostPercent, wattsToDbm } from '../../core/rf/decibels.ts';
import { KM_PER_NM } from '../../core/units/constants.ts';

const coax = (name: string): CoaxPart => {
  const part = CATALOGUE.find((candidate) => candidate.kind === 'coax' && candidate.name.startsWith(name));
  if (part?.kind !== 'coax') throw new Error(`no coax ${name}`);
  return part;
};

describe('what the trade says (common practice, no source)', () => {
  it('10 m of 400-class cable lose about 1.7 dB at 1.6 GHz', () => {
    expect(Math.abs(coaxLossDb(coax('400-class'), 10, 1600) - 1.7)).toBeLessThan(0.1);
  });

  it('25 W between two 20 m masts: about 20 nautical miles to the horizon, about 15 of them dependable', () => {
    const allowedDb = wattsToDbm(25) + 2 * 2.15 - 2 * 3 + 107 - marginDb(DEFAULT_MARGIN);
    const nm = reachKm({ frequencyMhz: 156.8, h1M: 20, h2M: 20 }, allowedDb) / KM_PER_NM;
    expect(Math.abs(nm - 15)).toBeLessThan(0.5);
  });

  it('25 m of RG-58 turn 25 W into about 7', () => {
    expect(25 * (1 - lostPercent(coaxLossDb(coax('RG-58C'), 25, 156.8)) / 100)).toBeCloseTo(7.5, 0);
  });
});

describe('worked links of an open AIS handbook, which reckons 40 log d - 20 log h1 - 20 log h2 (sections 27.8 and 32.8)', () => {
  // That plane-earth rule knows neither frequency nor the earth's curve.
  it.each([
    [30, 20, 20 * KM_PER_NM, 127.2, 8],
    [15, 30, 25, 122.9, 5],
  ])(
    '%d m to %d m over %f km: its %d dB is within %d dB of the smooth sea at 162 MHz',
    (h1M, h2M, distanceKm, printedDb, withinDb) => {
      const ruleDb = 40 * Math.log10(distanceKm * 1000) - 20 * Math.log10(h1M) - 20 * Math.log10(h2M);
      expect(Math.abs(ruleDb - printedDb)).toBeLessThan(0.06);
      const seaDb = seaPathLossDb({ frequencyMhz: 162, h1M, h2M, distanceKm });
      expect(Math.abs(seaDb - printedDb), `${seaDb} dB`).toBeLessThan(withinDb);
    },
  );
});

describe('feeder rule of racing boats: 40 per cent at most, with the cable lengths it lists (Category 2, 2012–13)', () => {
  it('RG-8X to 15 m: the rule’s own length just touches its own limit', () => {
    const lost = lostPercent(coaxLossDb(coax('RG-8X'), 15, 156.8));
    expect(lost).toBeGreaterThan(38);
    expect(lost).toBeLessThan(42);
  });

  it('RG-8/U to 28 m: within 41 per cent', () => {
    expect(lostPercent(coaxLossDb(coax('RG-8/U'), 28, 156.8))).toBeLessThan(41.5);
  });
});
