import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BaseFedWire,
  conductorLossOhm,
  feedImpedance,
  insulatorPeakV,
  LONGEST_WAVELENGTHS,
  leastEfficiency,
  lengthInWavelengths,
  shortAntenna,
} from '../../../core/rf/shortAntenna.ts';

const WIRE: BaseFedWire = { lengthM: 9, verticalShare: 0.95, radiusMm: 3, frequencyMhz: 4.125 };
const longestM = (frequencyMhz: number): number => (LONGEST_WAVELENGTHS * 299.792458) / frequencyMhz - 1e-6;

describe('short HF antenna', () => {
  const wires = fc.record({
    frequencyMhz: fc.double({ min: 1.6, max: 25, noNaN: true }),
    share: fc.double({ min: 0.05, max: 1, noNaN: true }),
    groundOhm: fc.double({ min: 0, max: 100, noNaN: true }),
    verticalShare: fc.double({ min: 0.1, max: 1, noNaN: true }),
  });
  const wireOf = (frequencyMhz: number, share: number, verticalShare: number): BaseFedWire => ({
    lengthM: Math.max(0.5, share * longestM(frequencyMhz)),
    verticalShare,
    radiusMm: 3,
    frequencyMhz,
  });

  it('a longer or steeper wire never radiates less, and more ground loss never helps', () => {
    fc.assert(
      fc.property(wires, ({ frequencyMhz, share, groundOhm, verticalShare }) => {
        const at = (factor: number, standing: number, ohm: number): number =>
          shortAntenna(wireOf(frequencyMhz, share * factor, verticalShare * standing), { groundLossOhm: ohm })
            .efficiency;
        const efficiency = at(0.9, 0.9, groundOhm);
        expect(efficiency).toBeGreaterThan(0);
        expect(efficiency).toBeLessThanOrEqual(1);
        // Where nothing but the coil loses, steepness cancels out to rounding.
        expect(at(0.9, 1, groundOhm)).toBeGreaterThanOrEqual(efficiency * (1 - 1e-12));
        expect(at(0.9, 0.9, groundOhm + 1)).toBeLessThanOrEqual(efficiency);
        // Past the quarter wave the coil grows again; of a nearly level wire, which hardly radiates, that takes much.
        if (verticalShare > 0.5) expect(at(1, 0.9, groundOhm)).toBeGreaterThan(0.97 * efficiency);
      }),
      { seed: 3 },
    );
  });

  it('power is kept: current squared times radiation is the power times the efficiency', () => {
    const antenna = shortAntenna(WIRE, { groundLossOhm: 10 });
    const { radiationOhm, coilOhm, efficiency, reactanceOhm } = antenna;
    const amps = insulatorPeakV(antenna, 10, 150) / Math.hypot(radiationOhm + 10, reactanceOhm);
    expect((amps ** 2 * radiationOhm) / 2).toBeCloseTo(150 * efficiency, 8);
    expect((amps ** 2 * (10 + coilOhm)) / 2).toBeCloseTo(150 * (1 - efficiency), 8);
  });

  it('where the closed forms end the least efficiency carries on without a step above 0.3 dB', () => {
    for (const frequencyMhz of [4.125, 12.29, 22])
      for (const groundLossOhm of [2, 10, 20]) {
        const before = { lengthM: longestM(frequencyMhz), verticalShare: 1, radiusMm: 3, frequencyMhz };
        const after = { ...before, lengthM: before.lengthM + 2e-6 };
        const step = leastEfficiency(after, groundLossOhm) / shortAntenna(before, { groundLossOhm }).efficiency;
        expect(Math.abs(10 * Math.log10(step))).toBeLessThan(0.3);
      }
  });

  it('a wire that lies flat radiates nothing along the sea, even over a perfect earth', () => {
    expect(shortAntenna({ ...WIRE, verticalShare: 0 }, { groundLossOhm: 0 }).efficiency).toBe(0);
    expect(leastEfficiency({ ...WIRE, lengthM: 60, verticalShare: 0 }, 0)).toBe(0);
  });

  it.each([
    [{ ...WIRE, lengthM: 0 }],
    [{ ...WIRE, lengthM: 201 }],
    [{ ...WIRE, verticalShare: 1.01 }],
    [{ ...WIRE, verticalShare: Number.NaN }],
    [{ ...WIRE, radiusMm: 0 }],
    [{ ...WIRE, lengthM: 0.1, radiusMm: 10 }],
    [{ ...WIRE, frequencyMhz: 31 }],
  ])('refuses %o', (wire) => {
    for (const ask of [
      () => lengthInWavelengths(wire),
      () => feedImpedance(wire),
      () => shortAntenna(wire, { groundLossOhm: 10 }),
      () => leastEfficiency(wire, 10),
      () => conductorLossOhm(wire, 58),
    ])
      expect(ask).toThrow(RangeError);
  });

  it('refuses a wire too long or too short for the form, and losses and powers that are none', () => {
    expect(() => feedImpedance({ ...WIRE, frequencyMhz: 12 })).toThrow(/hold to 0\.35 wavelengths.* is 0\.36/);
    expect(() => conductorLossOhm({ ...WIRE, frequencyMhz: 12 }, 58)).toThrow(RangeError);
    expect(() => leastEfficiency(WIRE, 10)).toThrow(/closed forms/);
    expect(() => leastEfficiency({ ...WIRE, lengthM: 60 }, -1)).toThrow(RangeError);
    expect(() => shortAntenna(WIRE, { groundLossOhm: -1 })).toThrow(RangeError);
    expect(() => shortAntenna(WIRE, { groundLossOhm: 10, coilQ: 9 })).toThrow(RangeError);
    expect(() => insulatorPeakV(shortAntenna(WIRE, { groundLossOhm: 10 }), 10, 0)).toThrow(RangeError);
    expect(() => conductorLossOhm(WIRE, 0)).toThrow(RangeError);
  });
});
