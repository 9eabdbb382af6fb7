import { type Basis, type Figure, figure } from '../model/figure.ts';
import type { AntennaClass, Band, ConnectorType, PartOf } from '../model/part.ts';

const HANDBOOK = 'open AIS handbook ch. 32; length-limited gain computed';
const PRACTICE = 'common practice, no source';

interface Row {
  readonly id: string;
  readonly antennaClass: AntennaClass;
  readonly name: string;
  readonly description: string;
  readonly bands: readonly Band[];
  readonly connector: ConnectorType;
  readonly label?: string;
  readonly polarisation?: 'vertical' | 'horizontal' | 'circular';
  /** Gain dBi and its tolerance. */
  readonly gain: readonly [number, number];
  readonly lengthM: number;
  readonly feedHeightM: number;
  readonly hpbwDeg: number;
  readonly vswr?: number;
  readonly amplifierDb?: number;
  readonly basis?: Basis;
  readonly source?: string;
}

function antenna(row: Row): PartOf<'antenna'> {
  const basis = row.basis ?? 'assumed';
  const source = row.source ?? PRACTICE;
  const known = (value: number, tolerance: number): Figure => figure(value, tolerance, basis, source);
  const amplifier = row.amplifierDb === undefined ? {} : { amplifierGainDb: known(row.amplifierDb, 3) };
  return {
    id: row.id,
    kind: 'antenna',
    antennaClass: row.antennaClass,
    name: row.name,
    description: row.description,
    ports: [
      { id: 'feed', medium: 'rf', label: 'feed', connector: row.connector, bands: [...row.bands], impedanceOhm: 50 },
    ],
    figures: {
      gainDbi: known(row.gain[0], row.gain[1]),
      lengthM: known(row.lengthM, 0.1),
      feedHeightM: figure(row.feedHeightM, 0.1, 'computed', 'middle of the radiating part above the base'),
      hpbwDeg: known(row.hpbwDeg, row.hpbwDeg * 0.1),
      vswr: figure(row.vswr ?? 1.3, 0.2, 'assumed', 'usual in band when sound; common practice, no source'),
      ...amplifier,
    },
    traits: { polarisation: row.polarisation ?? 'vertical', tradeLabel: row.label ?? '' },
  };
}

const VHF: readonly Band[] = ['vhf-marine'];

const ROWS: readonly Row[] = [
  {
    id: 'antenna-vhf-whip-3db',
    antennaClass: 'vhf-whip',
    name: 'VHF masthead whip 0.9 m, sold as 3 dB',
    description:
      'Half-wave whip. The box says 3 dB; its length allows 2.15 dBi. Broad vertical beam, forgiving of heel.',
    bands: VHF,
    connector: 'uhf',
    label: '3 dB',
    gain: [2.15, 0.5],
    lengthM: 0.9,
    feedHeightM: 0.45,
    hpbwDeg: 80,
    basis: 'data-sheet',
    source: HANDBOOK,
  },
  {
    id: 'antenna-vhf-collinear-6db',
    antennaClass: 'vhf-collinear',
    name: 'VHF whip 2.4 m, sold as 6 dB',
    description: 'Two half waves above each other. The box says 6 dB; its length allows about 5 dBi.',
    bands: VHF,
    connector: 'uhf',
    label: '6 dB',
    gain: [5.04, 0.7],
    lengthM: 2.4,
    feedHeightM: 1.5,
    hpbwDeg: 35,
    basis: 'data-sheet',
    source: HANDBOOK,
  },
  {
    id: 'antenna-vhf-collinear-9db',
    antennaClass: 'vhf-collinear',
    name: 'VHF whip 5.2 m, sold as 9 dB',
    description: 'Four half waves above each other; a beam so narrow that a roll takes it off the horizon.',
    bands: VHF,
    connector: 'uhf',
    label: '9 dB',
    gain: [7.9, 0.7],
    lengthM: 5.2,
    feedHeightM: 3,
    hpbwDeg: 17,
    basis: 'data-sheet',
    source: HANDBOOK,
  },
  {
    id: 'antenna-vhf-quarter-wave',
    antennaClass: 'vhf-whip',
    name: 'VHF quarter-wave on a ground plane',
    description: 'Short rod that needs the metal under it.',
    bands: VHF,
    connector: 'uhf',
    gain: [1.5, 1.5],
    lengthM: 0.46,
    feedHeightM: 0.2,
    hpbwDeg: 45,
    basis: 'data-sheet',
    source: HANDBOOK,
  },
  {
    id: 'antenna-ais-whip-3db',
    antennaClass: 'vhf-whip',
    name: 'AIS whip 0.9 m, cut for 162 MHz',
    description: 'Half-wave whip for AIS alone.',
    bands: VHF,
    connector: 'uhf',
    label: '3 dB',
    gain: [2.15, 0.5],
    lengthM: 0.93,
    feedHeightM: 0.45,
    hpbwDeg: 78,
    basis: 'data-sheet',
    source: HANDBOOK,
  },
  {
    id: 'antenna-ais-whip-1m2',
    antennaClass: 'vhf-whip',
    name: 'AIS whip 1.2 m, sold as 3 dB',
    description: 'Half-wave radiator in a longer tube, for rails, roofs and arches.',
    bands: VHF,
    connector: 'uhf',
    label: '3 dB',
    gain: [2.15, 0.5],
    lengthM: 1.2,
    feedHeightM: 0.5,
    hpbwDeg: 78,
    basis: 'data-sheet',
    source: HANDBOOK,
  },
  {
    id: 'antenna-vhf-emergency',
    antennaClass: 'vhf-emergency',
    name: 'Emergency VHF antenna, collapsible',
    description: 'Kept below, plugged in when the mast is gone. Try it once, with the lead and plug it will need.',
    bands: VHF,
    connector: 'bnc',
    gain: [-1, 2],
    lengthM: 0.5,
    feedHeightM: 0.25,
    hpbwDeg: 90,
    vswr: 1.6,
  },
  {
    id: 'antenna-hf-whip-7m',
    antennaClass: 'hf-whip',
    name: 'HF whip 7 m',
    description: 'Fed by a tuner at its base; touch means burns.',
    bands: ['mf-hf'],
    connector: 'terminal',
    gain: [-2, 3],
    lengthM: 7,
    feedHeightM: 3.5,
    hpbwDeg: 80,
    basis: 'computed',
    source: 'short-monopole closed forms; efficiency depends on the earth',
  },
  {
    id: 'antenna-hf-wire',
    antennaClass: 'hf-wire',
    name: 'HF wire or insulated backstay',
    description: 'Wire between two insulators, fed by a tuner; the lead-in radiates with it. Touch means burns.',
    bands: ['mf-hf'],
    connector: 'terminal',
    gain: [-2, 3],
    lengthM: 9,
    feedHeightM: 0,
    hpbwDeg: 80,
    basis: 'computed',
    source: 'short-monopole closed forms; efficiency depends on the earth',
  },
  {
    id: 'antenna-gnss-active',
    antennaClass: 'gnss',
    name: 'GNSS antenna, active',
    description: 'Patch with amplifier, fed with DC up its coax. Needs open sky.',
    bands: ['gnss'],
    connector: 'tnc',
    polarisation: 'circular',
    gain: [3, 2],
    lengthM: 0.1,
    feedHeightM: 0.05,
    hpbwDeg: 120,
    amplifierDb: 28,
    basis: 'data-sheet',
    source: 'GNSS handbook ch. 4 (26 to 35 dB amplifier)',
  },
  {
    id: 'antenna-l-band-passive',
    antennaClass: 'l-band',
    name: 'L-band antenna, passive',
    description: 'Omnidirectional helix or patch for a text terminal. Every dB of cable counts twice here.',
    bands: ['l-band'],
    connector: 'tnc',
    polarisation: 'circular',
    gain: [2, 1.5],
    lengthM: 0.15,
    feedHeightM: 0.05,
    hpbwDeg: 120,
  },
  {
    id: 'antenna-cellular-omni',
    antennaClass: 'cellular',
    name: 'Cellular antenna, omnidirectional',
    description: 'Wideband mobile-network antenna.',
    bands: ['cellular'],
    connector: 'sma',
    gain: [4, 2],
    lengthM: 0.5,
    feedHeightM: 0.25,
    hpbwDeg: 40,
  },
  {
    id: 'antenna-wifi-omni',
    antennaClass: 'wifi',
    name: 'Wi-Fi antenna, omnidirectional',
    description: 'For a long-range client radio.',
    bands: ['wifi'],
    connector: 'n',
    gain: [7, 2],
    lengthM: 0.45,
    feedHeightM: 0.25,
    hpbwDeg: 18,
  },
  {
    id: 'antenna-broadcast-whip',
    antennaClass: 'broadcast',
    name: 'Broadcast whip',
    description: 'FM and DAB reception.',
    bands: ['broadcast'],
    connector: 'din-41585',
    gain: [0, 2],
    lengthM: 1,
    feedHeightM: 0.5,
    hpbwDeg: 78,
  },
  {
    id: 'antenna-navtex-active',
    antennaClass: 'navtex',
    name: 'NAVTEX antenna, active',
    description: 'Short active whip or loop for 518 and 490 kHz.',
    bands: ['navtex'],
    connector: 'bnc',
    gain: [0, 3],
    lengthM: 0.4,
    feedHeightM: 0.2,
    hpbwDeg: 90,
    amplifierDb: 10,
  },
  {
    id: 'antenna-satellite-dome',
    antennaClass: 'dome',
    name: 'Satellite dome',
    description: 'Stabilised or electronically steered dish under a cover.',
    bands: ['satellite-broadband', 'l-band'],
    connector: 'n',
    polarisation: 'circular',
    gain: [12, 3],
    lengthM: 0.4,
    feedHeightM: 0.2,
    hpbwDeg: 30,
  },
];

export const ANTENNAS: readonly PartOf<'antenna'>[] = ROWS.map(antenna);
