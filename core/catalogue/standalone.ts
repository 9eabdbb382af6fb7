import { type Figure, figure } from '../model/figure.ts';
import type { PartOf, StandaloneClass } from '../model/part.ts';

interface Row {
  readonly id: string;
  readonly standaloneClass: StandaloneClass;
  readonly text: readonly [name: string, description: string];
  readonly powerW: Figure;
  readonly mhz: number;
  readonly sensitivityDbm: Figure;
  readonly gainDbi: Figure;
  readonly dsc?: boolean;
  readonly internalGnss?: boolean;
  /** Figures that only some classes have. */
  readonly more?: Partial<PartOf<'standalone'>['figures']>;
}

const read = (value: number, tolerance: number, source: string): Figure =>
  figure(value, tolerance, 'data-sheet', source);
const assumed = (value: number, tolerance: number, source: string): Figure =>
  figure(value, tolerance, 'assumed', source);

const BEACON_W = read(5, 2.3, 'satellite-system page: 5 W burst of 0.5 s every 50 s; from memory: 2 dB either way');
const AIS_W = read(1, 0.3, 'open AIS handbook ch. 32: 1 W e.i.r.p., so the antenna counts as 0 dBi');
const HANDHELD_W = read(5, 1, 'handheld owner’s manual: 5 W high, 1 W low');
const VHF_DBM = figure(-107, 3, 'standard', '47 CFR 80.913(e): 1 uV, 6 dB S/N');
const SENDS_ONLY = assumed(-107, 3, 'sends only: no receiver of its own is reckoned');
const IN_HAND = assumed(-3, 2, 'rubber antenna near the body, -6 to -1 dBi; common practice, no source');
const EIRP = assumed(0, 1, 'its power is stated as e.i.r.p.');
const WHIP = assumed(-2, 2, 'short whip; common practice, no source');

/** The 121.5 MHz carrier that aircraft and lifeboats home on. */
const HOMING = {
  homingPowerW: assumed(0.05, 0.03, '50 mW, 3 dB either way; from memory'),
  homingFrequencyMhz: figure(121.5, 0, 'standard', 'homing frequency of distress beacons, IMO text'),
} as const;
const LOW_1_W = read(1, 0.3, 'handheld owner’s manual: 1 W on the low setting');

const ROWS: readonly Row[] = [
  {
    id: 'beacon-406-manual',
    standaloneClass: 'beacon-406',
    text: [
      '406 MHz beacon, manual bracket',
      'Distress beacon taken from its bracket by hand. Register it, test it only by its own test.',
    ],
    powerW: BEACON_W,
    mhz: 406.04,
    sensitivityDbm: SENDS_ONLY,
    gainDbi: WHIP,
    internalGnss: true,
    more: HOMING,
  },
  {
    id: 'beacon-406-float-free',
    standaloneClass: 'beacon-406',
    text: [
      '406 MHz beacon, float-free',
      'Distress beacon that frees itself when the boat sinks. Register it, test it only by its own test.',
    ],
    powerW: BEACON_W,
    mhz: 406.04,
    sensitivityDbm: SENDS_ONLY,
    gainDbi: WHIP,
    internalGnss: true,
    more: HOMING,
  },
  {
    id: 'beacon-personal',
    standaloneClass: 'personal-beacon',
    text: [
      'Personal locator beacon',
      '406 MHz beacon carried by one person. Register it, test it only by its own test.',
    ],
    powerW: BEACON_W,
    mhz: 406.04,
    sensitivityDbm: SENDS_ONLY,
    gainDbi: WHIP,
    internalGnss: true,
    more: HOMING,
  },
  {
    id: 'sart-radar',
    standaloneClass: 'radar-sart',
    text: ['Radar transponder (SART)', 'Answers 9 GHz radar with a line of dots.'],
    powerW: assumed(0.4, 0.1, '0.4 W e.i.r.p., from memory'),
    mhz: 9400,
    sensitivityDbm: assumed(-50, 3, 'radar sensitivity of the class, from memory'),
    gainDbi: EIRP,
  },
  {
    id: 'sart-ais',
    standaloneClass: 'ais-sart',
    text: ['AIS-SART', 'Sends its position on AIS from the raft.'],
    powerW: AIS_W,
    mhz: 162,
    sensitivityDbm: SENDS_ONLY,
    gainDbi: EIRP,
    internalGnss: true,
  },
  {
    id: 'mob-ais',
    standaloneClass: 'ais-mob',
    text: ['AIS person-overboard device', 'Sends its wearer’s position on AIS.'],
    powerW: AIS_W,
    mhz: 162,
    sensitivityDbm: SENDS_ONLY,
    gainDbi: EIRP,
    internalGnss: true,
  },
  {
    id: 'handheld-vhf-5w',
    standaloneClass: 'handheld-vhf',
    text: ['VHF handheld, 5 W', 'Voice from the cockpit or the raft.'],
    powerW: HANDHELD_W,
    mhz: 156.8,
    sensitivityDbm: VHF_DBM,
    gainDbi: IN_HAND,
    more: { lowTxPowerW: LOW_1_W },
  },
  {
    id: 'handheld-vhf-dsc-5w',
    standaloneClass: 'handheld-vhf-dsc',
    text: ['VHF handheld with DSC and GNSS, 5 W', 'Voice, and an alert with position, of short reach.'],
    powerW: HANDHELD_W,
    mhz: 156.8,
    sensitivityDbm: VHF_DBM,
    gainDbi: IN_HAND,
    more: { lowTxPowerW: LOW_1_W },
    dsc: true,
    internalGnss: true,
  },
  {
    id: 'handheld-satellite',
    standaloneClass: 'handheld-satellite',
    text: ['Satellite messenger, handheld', 'Text and position by low-orbit satellite.'],
    powerW: read(1.6, 0.3, 'L-band data module developer’s guide Table 13'),
    mhz: 1621,
    sensitivityDbm: read(-117, 1, 'L-band data module developer’s guide Table 13'),
    gainDbi: assumed(0, 2, 'common practice, no source'),
    internalGnss: true,
  },
];

function standalone(row: Row): PartOf<'standalone'> {
  const [name, description] = row.text;
  return {
    id: row.id,
    kind: 'standalone',
    standaloneClass: row.standaloneClass,
    name,
    description,
    ports: [],
    figures: {
      txPowerW: row.powerW,
      frequencyMhz: figure(row.mhz, 0, 'standard', 'working frequency of the service'),
      rxSensitivityDbm: row.sensitivityDbm,
      gainDbi: row.gainDbi,
      ...row.more,
    },
    traits: { dsc: row.dsc ?? false, internalGnss: row.internalGnss ?? false },
  };
}

export const STANDALONE: readonly PartOf<'standalone'>[] = ROWS.map(standalone);
