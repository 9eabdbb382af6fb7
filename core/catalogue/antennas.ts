import { type Figure, figure } from '../model/figure.ts';
import type { AntennaClass, Band, ConnectorType, PartOf } from '../model/part.ts';

interface Row {
  readonly id: string;
  readonly antennaClass: AntennaClass;
  readonly text: readonly [name: string, description: string];
  readonly bands: readonly Band[];
  readonly connector: ConnectorType;
  readonly label?: string;
  readonly polarisation?: 'vertical' | 'horizontal' | 'circular';
  readonly gainDbi: Figure;
  readonly hpbwDeg: Figure;
  readonly lengthM: number;
  readonly feedHeightM: number;
  readonly vswr?: number;
  readonly amplifierDb?: Figure;
  readonly amplifierNoiseDb?: Figure;
  /** Half waves above each other and their pitch in wavelengths. */
  readonly stack?: readonly [elements: number, pitchWavelengths: number];
}

const read = (value: number, tolerance: number, source: string): Figure =>
  figure(value, tolerance, 'data-sheet', source);
const computed = (value: number, tolerance: number, source: string): Figure =>
  figure(value, tolerance, 'computed', source);
const assumed = (value: number, tolerance: number, source = 'common practice, no source'): Figure =>
  figure(value, tolerance, 'assumed', source);

const HANDBOOK = 'open AIS handbook ch. 32';
/** A label is one thing, what the length allows another: gains are those of half waves in phase, integrated. */
const COLLINEAR = 'half waves in phase at 0.75 wavelength, integrated over the sphere';
const HALF_WAVE = { gainDbi: read(2.15, 0.5, HANDBOOK), hpbwDeg: read(78, 3, HANDBOOK), stack: [1, 0.75] } as const;
const HF = {
  gainDbi: computed(-2, 4, 'short-monopole closed forms near 8 MHz over 10 ohm of earth; far less at 2 MHz'),
  hpbwDeg: assumed(80, 15),
} as const;

const VHF: readonly Band[] = ['vhf-marine'];

const VHF_ROWS: readonly Row[] = [
  {
    id: 'antenna-vhf-whip-3db',
    antennaClass: 'vhf-whip',
    text: [
      'VHF masthead whip 0.9 m, sold as 3 dB',
      'Half-wave whip. The box says 3 dB; its length allows 2.15 dBi. Broad vertical beam, forgiving of heel.',
    ],
    bands: VHF,
    connector: 'uhf',
    label: '3 dB',
    ...HALF_WAVE,
    lengthM: 0.9,
    feedHeightM: 0.45,
  },
  {
    id: 'antenna-vhf-collinear-6db',
    antennaClass: 'vhf-collinear',
    text: [
      'VHF whip 2.4 m, sold as 6 dB',
      'Two half waves above each other. The box says 6 dB; its length allows about 5 dBi.',
    ],
    bands: VHF,
    connector: 'uhf',
    label: '6 dB',
    gainDbi: computed(5.04, 0.7, `${COLLINEAR}, two; the handbook prints 5.5 to 6`),
    hpbwDeg: read(35, 4, 'sailing magazine’s antenna test; the handbook prints 30, the integration 35.1'),
    stack: [2, 0.75],
    lengthM: 2.4,
    feedHeightM: 1.5,
  },
  {
    id: 'antenna-vhf-collinear-9db',
    antennaClass: 'vhf-collinear',
    text: [
      'VHF whip 5.2 m, sold as 9 dB',
      'Four half waves above each other; its beam is so narrow that a roll takes it off the horizon.',
    ],
    bands: VHF,
    connector: 'uhf',
    label: '9 dB',
    gainDbi: computed(7.9, 0.7, `${COLLINEAR}, four; the handbook prints 8.5 to 9`),
    hpbwDeg: read(17, 2, `${HANDBOOK}: 16 to 20; the integration gives 17.1`),
    stack: [4, 0.75],
    lengthM: 5.2,
    feedHeightM: 3,
  },
  {
    id: 'antenna-vhf-quarter-wave',
    antennaClass: 'vhf-whip',
    text: ['VHF quarter-wave on a ground plane', 'Short rod that needs the metal under it.'],
    bands: VHF,
    connector: 'uhf',
    gainDbi: assumed(1.5, 1.5, `${HANDBOOK} prints 2.5 to 3.5 dBi over an ideal ground; a small one gives less`),
    hpbwDeg: read(45, 5, HANDBOOK),
    lengthM: 0.46,
    feedHeightM: 0.2,
  },
  {
    id: 'antenna-ais-whip-3db',
    antennaClass: 'vhf-whip',
    text: ['AIS whip 0.9 m, cut for 162 MHz', 'Half-wave whip for AIS alone.'],
    bands: VHF,
    connector: 'uhf',
    label: '3 dB',
    ...HALF_WAVE,
    lengthM: 0.93,
    feedHeightM: 0.45,
  },
  {
    id: 'antenna-ais-whip-1m2',
    antennaClass: 'vhf-whip',
    text: ['AIS whip 1.2 m, sold as 3 dB', 'Half-wave radiator in a longer tube, for rails, roofs and arches.'],
    bands: VHF,
    connector: 'uhf',
    label: '3 dB',
    ...HALF_WAVE,
    lengthM: 1.2,
    feedHeightM: 0.5,
  },
  {
    id: 'antenna-vhf-emergency',
    antennaClass: 'vhf-emergency',
    text: [
      'Emergency VHF antenna, collapsible',
      'Kept below, plugged in when the mast is gone. Try it once, with the lead and plug it will need.',
    ],
    bands: VHF,
    connector: 'bnc',
    gainDbi: assumed(-1, 2),
    hpbwDeg: assumed(90, 15),
    lengthM: 0.5,
    feedHeightM: 0.25,
    vswr: 1.6,
  },
];

const OTHER_ROWS: readonly Row[] = [
  {
    id: 'antenna-hf-whip-7m',
    antennaClass: 'hf-whip',
    text: ['HF whip 7 m', 'Fed by a tuner at its base; touch means burns.'],
    bands: ['mf-hf'],
    connector: 'terminal',
    ...HF,
    lengthM: 7,
    feedHeightM: 3.5,
  },
  {
    id: 'antenna-hf-wire',
    antennaClass: 'hf-wire',
    text: [
      'HF wire or insulated backstay',
      'Wire between two insulators, fed by a tuner; the lead-in radiates with it. Touch means burns.',
    ],
    bands: ['mf-hf'],
    connector: 'terminal',
    ...HF,
    lengthM: 9,
    feedHeightM: 0,
  },
  {
    id: 'antenna-gnss-active',
    antennaClass: 'gnss',
    text: ['GNSS antenna, active', 'Patch with amplifier, fed with DC up its coax. Needs open sky.'],
    bands: ['gnss'],
    connector: 'tnc',
    polarisation: 'circular',
    gainDbi: assumed(3, 2, 'element 0 to 5 dBi, from memory'),
    hpbwDeg: assumed(120, 20, 'from memory'),
    lengthM: 0.1,
    feedHeightM: 0.05,
    amplifierDb: read(28, 3, 'GNSS base-antenna data page: 28 dB, 2 dB either way, at 3 V; a handbook prints 26 to 35'),
    amplifierNoiseDb: read(1.8, 0.3, 'OEM GNSS receiver user guide, figure 4.7'),
  },
  {
    id: 'antenna-l-band-passive',
    antennaClass: 'l-band',
    text: [
      'L-band antenna, passive',
      'Omnidirectional helix or patch for a text terminal. Its cable takes from reception as much as from transmission.',
    ],
    bands: ['l-band'],
    connector: 'tnc',
    polarisation: 'circular',
    gainDbi: assumed(2, 1.5),
    hpbwDeg: assumed(120, 20),
    lengthM: 0.15,
    feedHeightM: 0.05,
  },
  {
    id: 'antenna-cellular-omni',
    antennaClass: 'cellular',
    text: ['Cellular antenna, omnidirectional', 'Wideband mobile-network antenna.'],
    bands: ['cellular'],
    connector: 'sma',
    gainDbi: assumed(4, 2.5),
    hpbwDeg: assumed(40, 20),
    lengthM: 0.5,
    feedHeightM: 0.25,
  },
  {
    id: 'antenna-wifi-omni',
    antennaClass: 'wifi',
    text: ['Wi-Fi antenna, omnidirectional', 'For a long-range client radio.'],
    bands: ['wifi'],
    connector: 'n',
    gainDbi: assumed(7, 2),
    hpbwDeg: assumed(18, 8),
    lengthM: 0.45,
    feedHeightM: 0.25,
  },
  {
    id: 'antenna-broadcast-whip',
    antennaClass: 'broadcast',
    text: ['Broadcast whip', 'FM and DAB reception.'],
    bands: ['broadcast'],
    connector: 'din-41585',
    gainDbi: assumed(0, 2),
    hpbwDeg: assumed(78, 10),
    lengthM: 1,
    feedHeightM: 0.5,
  },
  {
    id: 'antenna-navtex-active',
    antennaClass: 'navtex',
    text: ['NAVTEX antenna, active', 'Short active whip or loop for 518 and 490 kHz.'],
    bands: ['navtex'],
    connector: 'bnc',
    gainDbi: assumed(0, 3),
    hpbwDeg: assumed(90, 15),
    lengthM: 0.4,
    feedHeightM: 0.2,
    amplifierDb: assumed(10, 5),
    amplifierNoiseDb: assumed(10, 5, 'swamped by the noise from outside at 518 kHz; common practice, no source'),
  },
  {
    id: 'antenna-satellite-dome',
    antennaClass: 'dome',
    text: ['Satellite dome', 'Stabilised or electronically steered dish under a cover.'],
    bands: ['satellite-broadband', 'l-band'],
    connector: 'n',
    polarisation: 'circular',
    gainDbi: read(11.4, 3, 'radiation safety evaluation of L-band terminals: 9.0, 11.4 and 14.9 dBi by size'),
    hpbwDeg: read(45, 10, 'radiation safety evaluation of L-band terminals, medium size'),
    lengthM: 0.4,
    feedHeightM: 0.2,
  },
];

const isHf = (row: Row): boolean => row.antennaClass === 'hf-whip' || row.antennaClass === 'hf-wire';

/** Earth and conductor of an HF antenna: what its efficiency hangs on. */
const HF_FIGURES = {
  groundLossOhm: assumed(10, 8, '2 on a metal hull to 20 on a poor counterpoise; common practice, no source'),
  conductorRadiusMm: assumed(3, 2, '6 mm wire or rod; common practice, no source'),
} as const;

const stackFigures = ([elements, pitch]: readonly [number, number]) => ({
  elements: assumed(elements, 0, 'half waves that fit its length'),
  pitchWavelengths: assumed(pitch, 0.1, 'usual pitch; common practice, no source'),
});

function antenna(row: Row): PartOf<'antenna'> {
  const [name, description] = row.text;
  return {
    id: row.id,
    kind: 'antenna',
    antennaClass: row.antennaClass,
    name,
    description,
    ports: [
      { id: 'feed', medium: 'rf', label: 'feed', connector: row.connector, bands: [...row.bands], impedanceOhm: 50 },
    ],
    figures: {
      gainDbi: row.gainDbi,
      lengthM: assumed(row.lengthM, 0.1, 'usual length of the class'),
      feedHeightM: assumed(row.feedHeightM, 0.1, 'middle of the radiating part above the base'),
      hpbwDeg: row.hpbwDeg,
      vswr: assumed(row.vswr ?? 1.3, 0.2, 'usual in band when sound; common practice, no source'),
      ...(row.amplifierDb ? { amplifierGainDb: row.amplifierDb } : {}),
      ...(row.amplifierNoiseDb ? { amplifierNoiseFigureDb: row.amplifierNoiseDb } : {}),
      ...(row.stack ? stackFigures(row.stack) : {}),
      ...(isHf(row) ? HF_FIGURES : {}),
    },
    traits: { polarisation: row.polarisation ?? 'vertical', tradeLabel: row.label ?? '' },
  };
}

export const ANTENNAS: readonly PartOf<'antenna'>[] = [...VHF_ROWS, ...OTHER_ROWS].map(antenna);
