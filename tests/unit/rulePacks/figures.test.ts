import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import { lostPercent } from '../../../core/rf/decibels.ts';
import { OSR_CABLE_TABLE, RULE_FIGURES } from '../../../core/rulePacks/figures.ts';
import { feed } from '../redundancy/smallBoat.ts';
import { area, boat, change, drop, figures, height, held, hfDsc, power, rule, words } from './boats.ts';

// The figures as the texts print them, noted down from those texts before the program; sources beside each.

describe('figures of the rules', () => {
  it.each([
    ['alertMeans', 2, '47 CFR 80.1081(a), mirrored text'],
    ['solasReserveWithSourceH', 1, 'SOLAS IV/13, 2.1, restated by a supplier of GMDSS batteries'],
    ['solasReserveH', 6, 'SOLAS IV/13, 2.2, the same; 47 CFR 80.1099(b)(3)'],
    ['solasTransmitShare', 0.5, 'SOLAS IV/13, guidance, the same; 47 CFR 80.921(d) has the same form'],
    ['solasRechargeH', 10, 'SOLAS IV/13, 6.1, the same'],
    ['solasCapacityCheckMonths', 12, 'SOLAS IV/13, 6.2, the same'],
    ['survivalVhfSmaller', 2, 'SOLAS III/6.2, supplier’s summary: 300 to 500 GT'],
    ['survivalVhf', 3, 'SOLAS III/6.2, supplier’s summary: 500 GT and over'],
    ['survivalSarts', 2, 'SOLAS III/6.2, supplier’s summary: 500 GT and over'],
    ['availabilityNear', 1, '47 CFR 80.1105(c), mirrored text'],
    ['availabilityFar', 2, '47 CFR 80.1105(d), mirrored text'],
    ['usVoltagePercent', 10, '47 CFR 80.875(a), mirrored text'],
    ['usReserveH', 6, '47 CFR 80.875(b), mirrored text'],
    ['usBatteryHeadRoomM', 0.26, '47 CFR 80.875(b), mirrored text'],
    ['usLakesReserveH', 2, '47 CFR 80.965(a), mirrored text'],
    ['usPassengerReserveH', 3, '47 CFR 80.921(b), mirrored text'],
    ['usFishingReserveH', 3, '46 CFR 28.375(b), mirrored text'],
    ['usFishingShortM', 11, '46 CFR 28.375(d), mirrored text'],
    ['ukBeaconTestMonths', 12, 'MGN 673, 1.1'],
    ['ukBeaconServiceMonths', 60, 'MGN 673, 1.1.2'],
    ['ukYachtReserveH', 3, 'LY3, a surveyor’s summary'],
    ['ukFishingReserveH', 6, 'SI 1999/3210, 24(2)(c)'],
    ['ukFishingVhfTransmitShare', 0.2, 'SI 1999/3210, 24(2)(c): a fifth'],
    ['ukFishingHfTransmitShare', 1 / 3, 'SI 1999/3210, 24(2)(c): a third'],
    ['ukFishingShortestM', 12, 'SI 1999/3210, 24(2)(c)'],
    ['ukFishingLongestM', 45, 'SI 1999/3210, 24(2)(c)'],
    ['osrVhfW', 25, 'OSR 2012-13, 3.29.1(b)(i), quoted word for word'],
    ['osrFeederPercent', 40, 'OSR 2012-13, 3.29.1(b)(ii), quoted word for word'],
    ['osrAisLengthM', 0.38, 'OSR about 2022, 3.29.6(b), quoted in a forum'],
    ['osrAisHeightM', 3, 'OSR about 2022, 3.29.6(b), quoted in a forum'],
  ] as const)('%s is %d (%s)', (key, value, source) => {
    expect(source).not.toBe('');
    expect(RULE_FIGURES[key]).toBe(value);
  });

  it('has the cable table of OSR 2012-13, 3.29.1(b)(iii): RG-8X 15 m, RG-8/U 28 m, then by kind 43 m and 70 m', () => {
    expect(OSR_CABLE_TABLE.map(({ name, upToM }) => [name, upToM])).toEqual([
      ['RG-8X', 15],
      ['RG-8/U', 28],
      ['semi-air RG-8', 43],
      ['600 class', 70],
    ]);
  });

  it('loses 40 per cent at 2.218 dB, and the table’s lengths imply 0.148, 0.079, 0.052 and 0.032 dB a metre', () => {
    // Elementary: -10 log10(0.6) = 2.218 dB.
    expect(lostPercent(2.218)).toBeCloseTo(40, 1);
    expect(OSR_CABLE_TABLE.map(({ upToM }) => Number((2.2185 / upToM).toFixed(3)))).toEqual([
      0.148, 0.079, 0.052, 0.032,
    ]);
  });

  it.each([
    ['gmdss-reserve-1h', '1 h'],
    ['gmdss-reserve-6h', '6 h'],
    ['gmdss-recharge', '10 h'],
    ['gmdss-capacity-check', '12 months'],
    ['us-voltage', '10 %'],
    ['us-reserve-6h', '6 h'],
    ['us-battery-high', '0.26 m'],
    ['us-lakes-reserve', '2 h'],
    ['us-passenger-reserve', '3 h'],
    ['us-fishing-power', '3 h'],
    ['us-vhf-20nm', '20 nm'],
    ['us-mf-100nm', '100 nm'],
    ['uk-beacon-test', '12 months'],
    ['uk-beacon-service', '60 months'],
    ['uk-yacht-reserve', '3 h'],
    ['uk-fishing-reserve', '6 h'],
    ['osr-25-w', '25 W'],
    ['osr-feeder-loss', '40 %'],
    ['osr-later-ais-antenna', '0.38 m'],
    ['osr-later-ais-antenna', 'foot 3 m'],
  ])('%s says %s on the screen', (id, text) => {
    expect(rule(id).title).toContain(text);
  });
});

describe('sums reckoned by hand', () => {
  it('carries VHF and AIS for capacity over load: 220 Ah by (half of 5.5 + 0.5 + 0.5) A is 58.7 h', () => {
    expect(220 / (5.5 / 2 + 0.5 + 0.5)).toBeCloseTo(58.67, 2);
    expect(words(held('us-reserve-6h', boat(figures('BAT', { capacityAh: 220 }))))).toBe(
      'BAT, full and as marked, 220 Ah ÷ (VHF, half of 5.5 A + 0.5 A + all else on it, 0.5 A) = 58.7 h. Asked for: 6 h.',
    );
  });

  it('turns at six hours: 22.5 Ah by 3.75 A', () => {
    expect(held('us-reserve-6h', boat(figures('BAT', { capacityAh: 22.5 }))).verdict).toBe('met');
    expect(held('us-reserve-6h', boat(figures('BAT', { capacityAh: 22.49 }))).verdict).toBe('not-met');
  });

  it('takes a fifth of VHF and a third of MF/HF for fishing vessels: 28 A and 2 A, 5.5 A and 0.5 A', () => {
    const fishing = boat(
      hfDsc(),
      power(feed('FH', 'BRK', 'HF', { to: { itemId: 'HF', portId: 'dc' } })),
      figures('BAT', { capacityAh: 120 }),
    );
    expect(120 / (5.5 / 5 + 0.5 + 28 / 3 + 2)).toBeCloseTo(9.28, 2);
    expect(words(held('uk-fishing-reserve', fishing))).toContain('= 9.3 h');
  });

  it('adds a set for farther than A1 to the sum beyond A1, and not in A1', () => {
    const edits = [
      hfDsc(),
      power(feed('FH', 'BRK', 'HF', { to: { itemId: 'HF', portId: 'dc' } })),
      figures('BAT', { capacityAh: 200 }),
    ];
    // A1: half of 5.5 + 0.5 + AIS 0.5 + HF at rest 2; A2: half of 28 more.
    expect(words(held('gmdss-reserve-1h', boat(area('A1'), ...edits)))).toContain(`= ${(200 / 5.75).toFixed(1)} h`);
    expect(words(held('gmdss-reserve-1h', boat(...edits)))).toContain(`= ${(200 / 19.75).toFixed(1)} h`);
  });

  it('reckons no hours from the battery that starts the engine', () => {
    const starter = boat(
      drop('BRK'),
      change('BAT', { partId: 'battery-starter-75ah' }),
      power(feed('FX', 'BAT', 'VHF')),
    );
    const result = held('gmdss-reserve-1h', starter);
    expect(result.verdict).toBe('not-met');
    expect(words(result)).toContain('BAT alone, which starts the engine');
  });

  it('reads 9.9 and 10.1 per cent of voltage on either side of the limit', () => {
    const at = (value: number) => {
      const project = boat();
      const measured = {
        id: 'm',
        subject: { kind: 'item', id: 'VHF' },
        kind: 'supply-transmit-v',
        value,
        frequencyMhz: null,
        date: null,
        instrument: '',
        note: '',
      } as const;
      return held('us-voltage', { ...project, measurements: [measured] }).verdict;
    };
    expect([at(12 * 0.901), at(12 * 0.899), at(12 * 1.101)]).toEqual(['met', 'not-met', 'not-met']);
  });

  it('reads the AIS antenna at its least height and length', () => {
    const project = boat(
      drop('SP'),
      change('A1', { placeId: 'arch' }),
      height('A1', 3),
      figures('A1', { lengthM: 0.38 }),
    );
    const runs = [
      {
        ...boat().runs[1],
        id: 'W9',
        number: 'W9',
        from: { itemId: 'AIS', portId: 'ant' },
        to: { itemId: 'A1', portId: 'rf' },
      },
    ] as typeof project.runs;
    const own = { ...project, runs };
    expect(held('osr-later-ais-antenna', own).verdict).toBe('met');
    expect(held('osr-later-ais-antenna', figures('A1', { lengthM: 0.37 })(own)).verdict).toBe('not-met');
    expect(held('osr-later-ais-antenna', height('A1', 2.99)(own)).verdict).toBe('not-met');
  });

  it('shows a feeder both by table and by reckoning where the two disagree', () => {
    // RG-8/U to 28 m by the table; 0.5553 root f + 0.00669 f dB in 100 m at 156.8 MHz is 8.0 dB, so 28 m lose 2.24 dB.
    const direct = drop('SP');
    const project = boat(direct);
    const runs = [
      {
        ...boat().runs[0],
        from: { itemId: 'VHF', portId: 'ant' },
        to: { itemId: 'A1', portId: 'rf' },
        cableId: 'coax-rg-8-u',
        measuredLengthM: 28,
      },
    ] as typeof project.runs;
    const thick = { ...project, runs };
    expect(0.28 * (0.5553 * Math.sqrt(156.8) + 0.00669 * 156.8)).toBeGreaterThan(2.2185);
    expect(held('osr-feeder-table', thick).verdict).toBe('met');
    expect(held('osr-feeder-loss', thick).verdict).toBe('not-met');
    expect(words(held('osr-feeder-table', thick))).toContain('Reckoned, it loses 40 %');
  });

  it('leaves a loss open that is under the limit only without its tolerance', () => {
    const direct = (measuredLengthM: number) => {
      const project = boat(drop('SP'));
      const runs = [
        {
          ...boat().runs[0],
          from: { itemId: 'VHF', portId: 'ant' },
          to: { itemId: 'A1', portId: 'rf' },
          measuredLengthM,
        },
      ] as typeof project.runs;
      return held('osr-feeder-loss', { ...project, runs });
    };
    // 5.009 dB in 100 m, ± 5 per cent: 43 m lose 2.154 dB, under 2.218, and 2.262 dB at the most, over it.
    expect(0.43 * 0.4 * Math.sqrt(156.8)).toBeCloseTo(2.154, 3);
    expect(direct(40).verdict).toBe('met');
    const open = direct(43);
    expect([open.verdict, words(open)]).toEqual([
      'cannot-tell',
      expect.stringContaining('With its tolerance it may lose'),
    ]);
    expect(direct(46).verdict).toBe('not-met');
  });

  it('takes no low antenna that AIS shares for one of its own', () => {
    const low = boat(change('A1', { placeId: 'arch' }), height('A1', 4));
    const result = held('osr-later-ais-antenna', low);
    expect([result.verdict, words(result)]).toEqual([
      'not-met',
      'Shares A1 with VHF, and A1 is not at a masthead: neither of the two ways.',
    ]);
    // With nothing else on the splitter the antenna is its own: 1 m long, 4 m up.
    expect(held('osr-later-ais-antenna', drop('VHF')(low)).verdict).toBe('met');
  });

  it('lets a measured loss count before the reckoned one', () => {
    const project = boat();
    const path = assess(project).paths.find(({ service }) => service === 'vhf-voice');
    expect(path?.lostPercent).toBeLessThan(40);
    const measured = {
      id: 'm',
      subject: { kind: 'run', id: 'W3' },
      kind: 'insertion-loss-db',
      value: 3,
      frequencyMhz: 156.8,
      date: null,
      instrument: '',
      note: '',
    } as const;
    const wet = { ...project, measurements: [measured] };
    const result = held('osr-feeder-loss', wet);
    expect(result.verdict).toBe('not-met');
    expect(words(result)).toContain('which counts');
  });
});
