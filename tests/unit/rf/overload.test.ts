import { describe, expect, it } from 'vitest';
import { freeSpaceLossDb } from '../../../core/propagation/freeSpace.ts';
import { twoRayPathLossDb } from '../../../core/propagation/twoRay.ts';
import {
  freeSpaceDistanceM,
  STRONG_SIGNAL_LIMITS,
  strongSignalDbm,
  strongSignalMargins,
} from '../../../core/rf/overload.ts';
import { halfWaveIsolation } from '../../../core/siting/coupling.ts';

const NO_GAIN = { transmitterLossDb: 0, transmitterGainDbi: 0, receiverGainDbi: 0, receiverLossDb: 0 };
const MASTHEADS = { transmitterLossDb: 0, transmitterGainDbi: 2.15, receiverGainDbi: 2.15, receiverLossDb: 0 };

/** The tightest limit that holds. */
function tightest(receiver: 'vhf' | 'ais', levelDbm: number, offsetMhz: number) {
  const first = strongSignalMargins(receiver, levelDbm, offsetMhz)[0];
  if (!first) throw new Error('No limit holds.');
  return { key: first.limit.key, marginDb: first.marginDb };
}

describe('a near station (worked by hand)', () => {
  // 20 log(4 pi 50 m / 1.9119 m) = 50.33 dB; 25 W = 43.98 dBm; two gains of 2.15 dBi.
  const pathLossDb = freeSpaceLossDb(156.8, 0.05);

  it('25 W from 50 m off come in at -2.05 dBm and block a VHF set by 21 dB; 1 W still by 7', () => {
    const levelDbm = strongSignalDbm({ ...MASTHEADS, powerW: 25, pathLossDb });
    expect(levelDbm).toBeCloseTo(-2.05, 2);
    const loud = tightest('vhf', levelDbm, 0.5);
    expect(loud.key).toBe('blocking');
    expect(loud.marginDb).toBeCloseTo(-20.95, 2);
    const quietDbm = strongSignalDbm({ ...MASTHEADS, powerW: 1, pathLossDb });
    expect(quietDbm).toBeCloseTo(-16.03, 2);
    expect(tightest('vhf', quietDbm, 0.5).marginDb).toBeCloseTo(-6.97, 2);
  });

  it('blocking ends at 557.5 m for 25 W and at 111.5 m for 1 W: five times nearer, the root of 25', () => {
    const quietAtM = (powerW: number) =>
      freeSpaceDistanceM(156.8, strongSignalDbm({ ...MASTHEADS, powerW, pathLossDb: 0 }) + 23);
    expect(quietAtM(25)).toBeCloseTo(557.5, 1);
    expect(quietAtM(1)).toBeCloseTo(111.5, 1);
    expect(quietAtM(25) / quietAtM(1)).toBeCloseTo(5, 9);
  });

  it('with the sea reflection, 20 m to 20 m at 2 km: 4.26 dB less than free space, -38.35 dBm, nothing blocked', () => {
    // 43.98 + 4.3 - 82.38 - 4.26 (full-wave theory: 4.25).
    const lossDb = twoRayPathLossDb({ frequencyMhz: 156.8, h1M: 20, h2M: 20, distanceKm: 2 });
    const levelDbm = strongSignalDbm({ ...MASTHEADS, powerW: 25, pathLossDb: lossDb });
    expect(levelDbm).toBeCloseTo(-38.35, 2);
    expect(tightest('vhf', levelDbm, 0.5).marginDb).toBeCloseTo(15.35, 2);
    expect(tightest('vhf', levelDbm, 0.025).marginDb).toBeCloseTo(1.35, 2);
  });
});

describe('own antennas (worked by hand)', () => {
  const throughDbm = (isolationDb: number) => strongSignalDbm({ ...NO_GAIN, powerW: 25, pathLossDb: isolationDb });

  it('25 W, half-wave antennas 2 m above one another: 31.7 dB of isolation, over +12 dBm at the AIS receiver', () => {
    const { isolationDb, validity } = halfWaveIsolation({ frequencyMhz: 156.8, sideM: 0, upM: 2 });
    expect(validity).toBe('checked');
    const levelDbm = throughDbm(isolationDb);
    expect(levelDbm).toBeCloseTo(12.24, 1);
    const margins = strongSignalMargins('ais', levelDbm, 162.025 - 156.8);
    expect(margins.map(({ limit }) => limit.key)).toEqual(['blocking', 'care']);
    expect(margins.every(({ marginDb }) => marginDb < 0)).toBe(true);
  });

  it('the 40 to 50 dB that IMO SN/Circ.227 expects of 2 m keep a receiver whole but deaf while the VHF sends', () => {
    for (const isolationDb of [40, 50]) {
      const [blocking, care] = strongSignalMargins('ais', throughDbm(isolationDb), 5.2);
      expect(blocking?.limit.key).toBe('blocking');
      expect(blocking?.marginDb).toBeLessThan(0);
      expect(care?.marginDb).toBeGreaterThan(0);
    }
  });

  it('59 dB would keep AIS open to 25 W on channel 16, 67 dB to 25 W nearer than 5 MHz', () => {
    expect(tightest('ais', throughDbm(58.98), 162.025 - 156.8).marginDb).toBeCloseTo(0, 2);
    expect(tightest('ais', throughDbm(66.98), 162.025 - 157.1).marginDb).toBeCloseTo(0, 2);
  });
});

describe('limits', () => {
  it('blocking of a VHF set is 84 dB over +6 dBµV of electromotive force (dBm = dBµV - 113)', () => {
    expect(tightest('vhf', 0, 2).marginDb).toBe(6 + 84 - 113);
    expect(tightest('vhf', 0, 0.025).marginDb).toBe(6 + 70 - 113);
  });

  it('cover every offset without a gap, the same on either side, and each says its source', () => {
    for (const receiver of ['vhf', 'ais'] as const) {
      for (const offsetMhz of [0, 0.0125, 0.025, 0.0375, 1, 4.999, 5, 12, 100])
        expect(strongSignalMargins(receiver, -50, offsetMhz), `${receiver} ${offsetMhz}`).toHaveLength(2);
      expect(strongSignalMargins(receiver, -50, -5)).toEqual(strongSignalMargins(receiver, -50, 5));
      for (const { source } of STRONG_SIGNAL_LIMITS[receiver]) expect(source.length).toBeGreaterThan(10);
    }
  });

  it('a decibel more of power, or less of loss, is a decibel less of margin', () => {
    const way = { ...MASTHEADS, powerW: 5, pathLossDb: 60 };
    const base = strongSignalDbm(way);
    expect(strongSignalDbm({ ...way, powerW: 5 * 10 ** 0.1 })).toBeCloseTo(base + 1, 12);
    expect(strongSignalDbm({ ...way, receiverLossDb: 1 })).toBeCloseTo(base - 1, 12);
    expect(strongSignalDbm({ ...way, pathLossDb: 61 })).toBeCloseTo(base - 1, 12);
  });

  it('free-space distance and loss undo each other', () => {
    expect(freeSpaceDistanceM(162, freeSpaceLossDb(162, 1.234))).toBeCloseTo(1234, 6);
  });
});

describe('misuse', () => {
  const way = { ...MASTHEADS, powerW: 25, pathLossDb: 50 };
  it('is refused with the name of the figure', () => {
    expect(() => strongSignalDbm({ ...way, powerW: 0 })).toThrow(RangeError);
    expect(() => strongSignalDbm({ ...way, transmitterLossDb: -1 })).toThrow(/transmitterLossDb/);
    expect(() => strongSignalDbm({ ...way, pathLossDb: Number.NaN })).toThrow(/pathLossDb/);
    expect(() => strongSignalMargins('vhf', Number.NaN, 1)).toThrow(/levelDbm/);
    expect(() => strongSignalMargins('vhf', 1, Number.POSITIVE_INFINITY)).toThrow(/offsetMhz/);
    expect(() => freeSpaceDistanceM(0, 60)).toThrow(RangeError);
    expect(() => freeSpaceDistanceM(160, Number.NaN)).toThrow(RangeError);
  });
});
