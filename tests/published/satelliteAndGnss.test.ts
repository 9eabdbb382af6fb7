import { describe, expect, it } from 'vitest';
import {
  type AntennaSwap,
  geostationarySight,
  gOverTDbPerK,
  marginChange,
  satellitePathLossDb,
  satelliteSight,
  systemTemperatureK,
} from '../../core/propagation/satellite.ts';
import { sensitivityDbm } from '../../core/rf/cascade.ts';
import {
  carrierToNoiseDbHz,
  GAIN_WINDOWS,
  type GnssChain,
  gnssCascade,
  LEAST_SIGNAL_DBM,
  longestCableLossDb,
  passiveRunOverDb,
  windowVerdict,
} from '../../core/rf/gnssChain.ts';

describe('satellite geometry', () => {
  it.each([
    // A navigation satellite at 20 180 km. Source: a university page on link and noise of satellite navigation; its three
    // figures do not lie on one circle, hence 0.4 per cent.
    [20_180, 5, 25_150, 100],
    [20_180, 50, 21_410, 86],
    [20_180, 90, 20_180, 1e-6],
    // Geostationary from the edge and from beneath (handbook figures 41 679 and 35 786 km, from memory): the radius of
    // the earth is 6378 km there and 6371 here.
    [35_793, 0, 41_679, 2],
    [35_793, 90, 35_786, 7.1],
  ])('%d km high at %d degrees is %d km away, within %d km', (heightKm, elevationDeg, km, tolerance) => {
    expect(Math.abs(satelliteSight(heightKm, elevationDeg).slantRangeKm - km)).toBeLessThan(tolerance);
  });

  it('free-space loss at 1575.42 MHz and 5 degrees: 184.4 dB (the same page)', () => {
    expect(satellitePathLossDb(1575.42, 20_180, 5)).toBeCloseTo(184.4, 1);
  });

  it('textbook: satellite 10 degrees east of a station at 35 north (handbook, 4th edition, 3.1 and 3.2)', () => {
    const sight = geostationarySight(35, 10);
    // The book prints 36.23 for an arc of 36.2245.
    expect(Math.abs((sight?.earthArcDeg ?? 0) - 36.23)).toBeLessThan(0.006);
    expect(sight?.slantRangeKm).toBeCloseTo(37_215, -1);
    expect(sight?.elevationDeg).toBeCloseTo(48, 0);
    expect(sight?.bearingDeg).toBeCloseTo(162.9, 1);
  });

  it('web example: satellite 60 degrees east of a station at 20 south', () => {
    const sight = geostationarySight(-20, 60);
    expect(Math.abs((sight?.slantRangeKm ?? 0) - 39_571)).toBeLessThan(7);
    expect(sight?.bearingDeg).toBeCloseTo(78.83, 1);
    // The page has cos El = 0.9405, which is 19.86 degrees, and prints 18.86: a slip.
    expect(sight?.elevationDeg).toBeCloseTo((Math.acos(0.9405) * 180) / Math.PI, 1);
  });

  it('a geostationary satellite can be seen to 81.3 degrees of latitude and no further', () => {
    expect(geostationarySight(81.2, 0)?.elevationDeg).toBeGreaterThan(0);
    expect(geostationarySight(81.4, 0)).toBeNull();
    expect(geostationarySight(0, 180)).toBeNull();
    expect(geostationarySight(0, 0)?.elevationDeg).toBeCloseTo(90, 9);
  });

  it('the two ways to the geometry agree, north mirrors south, and higher is never farther', () => {
    for (let latitude = 0; latitude <= 80; latitude += 5) {
      for (let east = -75; east <= 75; east += 15) {
        const north = geostationarySight(latitude, east);
        const south = geostationarySight(-latitude, east);
        expect(south?.elevationDeg).toBe(north?.elevationDeg);
        if (!north) continue;
        const arc = Math.acos(Math.cos((latitude * Math.PI) / 180) * Math.cos((east * Math.PI) / 180));
        expect(north.earthArcDeg).toBeCloseTo((arc * 180) / Math.PI, 6);
      }
    }
    for (const heightKm of [100, 780, 35_793]) {
      for (let e = 0; e < 90; e += 1) {
        expect(satelliteSight(heightKm, e + 1).slantRangeKm).toBeLessThan(satelliteSight(heightKm, e).slantRangeKm);
      }
    }
  });
});

describe('satellite terminal', () => {
  const swap: AntennaSwap = {
    outsideGainDbi: 3,
    lineLossDb: 3,
    ownGainDbi: 0,
    ownObstructionDb: 0,
    receiverNoiseFigureDb: 1.5,
    antennaTemperatureK: 130,
  };

  it('3 dB of gain behind the 3 dB a module allows for everything (developer guide, table 13) is no better than none', () => {
    const change = marginChange(swap);
    expect(change.breakEvenLossDb).toBe(3);
    expect(change.transmitDb).toBe(0);
    // Hearing is the worse for it: the line adds noise, more than its loss under a sky colder than 290 K.
    expect(change.receiveDb).toBeLessThan(-1);
  });

  it('receiving loses exactly the line where the antenna is as warm as the line', () => {
    const warm = marginChange({ ...swap, antennaTemperatureK: 290 });
    expect(warm.receiveDb).toBeCloseTo(warm.transmitDb, 9);
  });

  it('a line of nothing between equal antennas changes nothing; an obstruction counts in full for the outside one', () => {
    const equal = { ...swap, outsideGainDbi: 0, lineLossDb: 0 };
    expect(marginChange(equal)).toEqual({ transmitDb: 0, receiveDb: 0, breakEvenLossDb: 0 });
    const hidden = marginChange({ ...equal, ownObstructionDb: 6 });
    expect([hidden.transmitDb, hidden.receiveDb]).toEqual([6, 6]);
  });

  it('more line never helps', () => {
    for (let loss = 0; loss < 12; loss += 0.5) {
      const [short, long] = [loss, loss + 0.5].map((lineLossDb) => marginChange({ ...swap, lineLossDb }));
      expect(long?.transmitDb).toBeLessThan(short?.transmitDb ?? 0);
      expect(long?.receiveDb).toBeLessThan((short?.receiveDb ?? 0) - 0.5 + 1e-9);
    }
  });

  it.each([
    ['small voice, 9.0 dBi', 9, -17],
    ['directional, 14.9 dBi', 14.9, -12],
  ])('%s: ordinary figures come within 1 dB of the G/T in satellite filings', (_name, antennaGainDbi, filed) => {
    // 0.8 dB of feeder as in a radiation evaluation of such terminals; 2.5 dB and 120 K are common practice, no source.
    const terminal = { antennaGainDbi, lineLossDb: 0.8, receiverNoiseFigureDb: 2.5, antennaTemperatureK: 120 };
    expect(Math.abs(gOverTDbPerK(terminal) - filed)).toBeLessThan(1);
  });

  it('G/T is the same reckoned at the receiver instead of at the antenna', () => {
    const station = { antennaGainDbi: 9, lineLossDb: 2.2, receiverNoiseFigureDb: 3, antennaTemperatureK: 80 };
    const line = 10 ** (station.lineLossDb / 10);
    const atReceiverK = 80 / line + 290 * (1 - 1 / line) + 290 * (10 ** 0.3 - 1);
    expect(gOverTDbPerK(station)).toBeCloseTo(9 - 2.2 - 10 * Math.log10(atReceiverK), 9);
  });
});

describe('GNSS chain', () => {
  const published: GnssChain = {
    beforeLossDb: 0,
    amplifier: { gainDb: 29, noiseFigureDb: 1.8 },
    afterLossDb: 5,
    receiverNoiseFigureDb: 6.5,
  };

  it('29 dB, 1.8 dB; 5 dB of cable; receiver 6.5 dB: 24 dB and 1.9 dB (OEM receiver user guide, figure 4.7)', () => {
    const { gainDb, noiseFigureDb } = gnssCascade(published);
    expect(gainDb).toBeCloseTo(24, 9);
    expect(noiseFigureDb).toBeCloseTo(1.85, 2);
    // The guide rounds up; it is within its rule of 18 to 36 dB and at most 4 dB.
    expect(Math.abs(noiseFigureDb - 1.9)).toBeLessThan(0.06);
    expect(windowVerdict(gainDb, GAIN_WINDOWS.oem).verdict).toBe('inside');
  });

  it('25 dB antenna, 15 dB wanted: 10 dB of cable at most (timing receiver user guide, page 10)', () => {
    expect(longestCableLossDb(25, GAIN_WINDOWS.timing)).toBe(10);
  });

  it('70 dB antenna, 10 dB of cable, 30 dB wanted: a 30 dB attenuator (survey receiver application note APN077)', () => {
    expect(windowVerdict(70 - 10, { minDb: null, maxDb: 30 })).toEqual({
      verdict: 'too much',
      shortfallDb: 0,
      attenuatorDb: 30,
    });
  });

  it('least signal by the interface specification in a 290 K system: 45.5 dB-Hz; a page has 38.5 to 46.5 at this level', () => {
    const estimate = carrierToNoiseDbHz(LEAST_SIGNAL_DBM, 0, 0, 290);
    expect(estimate).toBeCloseTo(45.5, 1);
    expect(estimate).toBeGreaterThan(38.5);
    expect(estimate).toBeLessThan(46.5);
  });

  it('211 K and 1.3 dB: -203.6 dBW/Hz, so 45.4 dB-Hz at -128.2 dBm (a university page, with T0 = 300 K: within 0.1 dB)', () => {
    expect(Math.abs(carrierToNoiseDbHz(-128.2, 0, 1.3, 211) - (203.6 - 158.2))).toBeLessThan(0.1);
  });

  it('with the antenna at 290 K the estimate is the sensitivity sum turned round', () => {
    const { noiseFigureDb } = gnssCascade(published);
    const carrier = carrierToNoiseDbHz(-130, 2, noiseFigureDb, 290);
    expect(sensitivityDbm(noiseFigureDb, 1, carrier)).toBeCloseTo(-128, 9);
  });

  it('the same cable costs a passive antenna all its loss and an active one next to nothing', () => {
    const clean = gnssCascade({ ...published, afterLossDb: 0 }).noiseFigureDb;
    const active = gnssCascade({ ...published, afterLossDb: 8 }).noiseFigureDb;
    expect(active - clean).toBeLessThan(0.4);
    const passive = { ...published, amplifier: null, receiverNoiseFigureDb: 2 };
    expect(gnssCascade({ ...passive, afterLossDb: 8 }).noiseFigureDb).toBeCloseTo(10, 9);
    expect(gnssCascade({ ...passive, afterLossDb: 0 }).noiseFigureDb).toBeCloseTo(2, 9);
  });

  it('3 dB may lie before the first amplifier (GNSS manual, appendix C.1), which in a passive antenna is the receiver', () => {
    expect(passiveRunOverDb({ ...published, beforeLossDb: 3 })).toBe(0);
    expect(passiveRunOverDb({ ...published, beforeLossDb: 3.5 })).toBe(0.5);
    expect(passiveRunOverDb({ ...published, amplifier: null })).toBe(2);
  });

  it('loss before the amplifier is worse than after it, and more loss never helps', () => {
    for (let loss = 0.5; loss < 15; loss += 0.5) {
      const before = gnssCascade({ ...published, beforeLossDb: loss });
      const after = gnssCascade({ ...published, afterLossDb: 5 + loss });
      expect(before.gainDb).toBeCloseTo(after.gainDb, 9);
      expect(before.noiseFigureDb).toBeGreaterThan(after.noiseFigureDb);
      expect(after.noiseFigureDb).toBeGreaterThan(gnssCascade(published).noiseFigureDb);
    }
  });

  it('the shortfall or attenuator of every window brings the gain to its edge', () => {
    for (const window of Object.values(GAIN_WINDOWS)) {
      for (let gainDb = -10; gainDb < 60; gainDb += 0.5) {
        const { shortfallDb, attenuatorDb } = windowVerdict(gainDb, window);
        expect(windowVerdict(gainDb + shortfallDb - attenuatorDb, window).verdict).toBe('inside');
      }
    }
  });
});

describe('what lies outside', () => {
  it('is refused with a RangeError', () => {
    const station = { antennaGainDbi: 0, lineLossDb: 1, receiverNoiseFigureDb: 2, antennaTemperatureK: 130 };
    expect(() => satelliteSight(0, 10)).toThrow(RangeError);
    expect(() => satelliteSight(780, -1)).toThrow(RangeError);
    expect(() => satellitePathLossDb(0, 780, 10)).toThrow(RangeError);
    expect(() => geostationarySight(91, 0)).toThrow(RangeError);
    expect(() => geostationarySight(0, Number.NaN)).toThrow(RangeError);
    expect(() => systemTemperatureK({ ...station, lineLossDb: -1 })).toThrow(RangeError);
    expect(() => gOverTDbPerK({ ...station, antennaGainDbi: Number.NaN })).toThrow(RangeError);
    expect(() =>
      gOverTDbPerK({ antennaGainDbi: 0, lineLossDb: 0, receiverNoiseFigureDb: 0, antennaTemperatureK: 0 }),
    ).toThrow(RangeError);
    expect(() => carrierToNoiseDbHz(-130, 0, 1, -1)).toThrow(RangeError);
    expect(() => carrierToNoiseDbHz(-130, 0, 0, 0)).toThrow(RangeError);
    expect(() => carrierToNoiseDbHz(Number.NaN, 0, 1, 130)).toThrow(RangeError);
    expect(() => windowVerdict(Number.NaN, GAIN_WINDOWS.imo)).toThrow(RangeError);
    expect(() => windowVerdict(10, { minDb: 20, maxDb: 10 })).toThrow(RangeError);
  });
});
