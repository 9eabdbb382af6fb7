import { figure } from '../model/figure.ts';
import type { Band, LossTable, PartOf, Through } from '../model/part.ts';
import { ALL, amplified, device, PRACTICE, rf, SUPPLY, way } from './inlinePart.ts';
import { JOINTS } from './joints.ts';

const VHF: readonly Band[] = ['vhf-marine'];

const ARRESTOR: LossTable = {
  rows: [
    { frequencyMhz: 500, lossDb: 0.05 },
    { frequencyMhz: 1000, lossDb: 0.03 },
    { frequencyMhz: 2500, lossDb: 0.067 },
    { frequencyMhz: 4000, lossDb: 0.29 },
  ],
  toleranceDb: 0.03,
  basis: 'data-sheet',
  source: 'wireless terminal installation manual, table 12, maxima from 0.5 to 4 GHz; held below',
};
const ACTIVE_LOSS = figure(
  0.5,
  0.4,
  'data-sheet',
  'open AIS handbook table F.4: under 1 dB; a boat forum: under 0.5 dB',
);
const ACTIVE_AIS_GAIN = figure(11, 1, 'data-sheet', 'open AIS handbook: an amplifier of 10 to 12 dB in its AIS way');
const ACTIVE_AIS_NOISE = figure(5, 2, 'assumed', PRACTICE);
const ACTIVE_AMPS = figure(0.2, 0.1, 'assumed', PRACTICE);
const FM_LOSS = figure(3, 3, 'assumed', '0 to 6 dB by its amplifier; common practice, no source');
const FM_OUTPUT = rf('fm', 'broadcast receiver', 'din-41585', ['broadcast']);

const activeSplitter = (
  id: string,
  name: string,
  vhf: Through['whenUnpowered'],
  ais: Through['whenUnpowered'],
  words: string,
  hasFm = false,
): PartOf<'inline'> =>
  device({
    id,
    deviceClass: 'splitter-active',
    name,
    description: `One VHF antenna for a voice set and an AIS set; voice has priority and blanks AIS while it transmits. ${words}`,
    ports: [
      rf('antenna', 'antenna', 'uhf', hasFm ? [...VHF, 'broadcast'] : VHF),
      rf('vhf', 'VHF set', 'uhf', VHF),
      rf('ais', 'AIS set', 'uhf', VHF),
      ...(hasFm ? [FM_OUTPUT] : []),
      SUPPLY,
    ],
    throughs: [
      way('antenna', 'vhf', 'lossDb', true, vhf),
      amplified(way('antenna', 'ais', 'lossDb', true, ais), 'aisGainDb', 'aisNoiseFigureDb'),
      ...(hasFm ? [way('antenna', 'fm', 'fmLossDb', false, 'open')] : []),
    ],
    figures: {
      lossDb: ACTIVE_LOSS,
      currentA: ACTIVE_AMPS,
      aisGainDb: ACTIVE_AIS_GAIN,
      aisNoiseFigureDb: ACTIVE_AIS_NOISE,
      ...(hasFm ? { fmLossDb: FM_LOSS } : {}),
    },
  });

export const INLINE_DEVICES: readonly PartOf<'inline'>[] = [
  activeSplitter(
    'splitter-active-vhf-ais',
    'Active VHF/AIS splitter',
    'through',
    'open',
    'Without supply its relay joins the antenna to the voice set and leaves AIS open.',
  ),
  activeSplitter(
    'splitter-active-unknown',
    'Active VHF/AIS splitter, behaviour unpowered unknown',
    'unknown',
    'unknown',
    'Nobody knows what it does without supply: count on neither set.',
  ),
  activeSplitter(
    'splitter-active-vhf-ais-fm',
    'Active VHF/AIS splitter with FM outlet',
    'through',
    'open',
    'Without supply its relay joins the antenna to the voice set and leaves AIS and the broadcast receiver open.',
    true,
  ),
  device({
    id: 'splitter-tv-2-way',
    deviceClass: 'splitter-passive',
    name: 'Television-type two-way splitter',
    description:
      'Passive, 75 ohm, made for receivers. A transmission gets through, halved and mismatched, until the device burns.',
    ports: [
      rf('antenna', 'antenna', 'f', ALL, 75),
      rf('a', 'output A', 'f', ALL, 75),
      rf('b', 'output B', 'f', ALL, 75),
    ],
    throughs: [way('antenna', 'a', 'lossDb'), way('antenna', 'b', 'lossDb')],
    figures: { lossDb: figure(3.5, 0.5, 'assumed', 'from memory: 3 dB division and about 0.5 dB') },
    transmitRated: false,
  }),
  device({
    id: 'splitter-hybrid-2-way',
    deviceClass: 'splitter-passive',
    name: 'Passive two-way hybrid splitter',
    description: 'For two receivers. 15 to 20 dB between its ports: a transmitter on one would hurt the other.',
    ports: [rf('antenna', 'antenna', 'bnc'), rf('a', 'output A', 'bnc'), rf('b', 'output B', 'bnc')],
    throughs: [way('antenna', 'a', 'lossDb', false), way('antenna', 'b', 'lossDb', false)],
    figures: { lossDb: figure(3.5, 0.3, 'data-sheet', 'open AIS handbook ch. 32: 3.0 dB division and about 0.5 dB') },
    transmitRated: false,
  }),
  device({
    id: 'diplexer-vhf-fm',
    deviceClass: 'diplexer',
    name: 'VHF/FM diplexer',
    description: 'Filter that lends the VHF antenna to a broadcast receiver.',
    ports: [
      rf('antenna', 'antenna', 'uhf'),
      rf('vhf', 'VHF set', 'uhf', VHF),
      rf('fm', 'broadcast receiver', 'din-41585', ['broadcast']),
    ],
    throughs: [way('antenna', 'vhf', 'vhfLossDb'), way('antenna', 'fm', 'fmLossDb', false)],
    figures: { vhfLossDb: figure(0.5, 0.2, 'assumed', PRACTICE), fmLossDb: figure(1, 0.5, 'assumed', PRACTICE) },
  }),
  device({
    id: 'switch-coax-2-way',
    deviceClass: 'switch',
    name: 'Coaxial changeover switch',
    description: 'Puts one set on either of two antennas, by hand.',
    ports: [rf('set', 'set', 'uhf'), rf('a', 'antenna A', 'uhf'), rf('b', 'antenna B', 'uhf')],
    throughs: [way('set', 'a', 'lossDb'), way('set', 'b', 'lossDb')],
    figures: { lossDb: figure(0.1, 0.08, 'assumed', PRACTICE) },
    position: 1,
  }),
  device({
    id: 'arrestor-gas-tube',
    deviceClass: 'arrestor',
    name: 'Surge arrestor, gas tube',
    description: 'Leads part of a surge to the bonding; it does not make a struck antenna safe.',
    ports: [rf('a', 'antenna side', 'n'), rf('b', 'set side', 'n')],
    throughs: [way('a', 'b', 'arrestor')],
    lossTables: { arrestor: ARRESTOR },
  }),
  device({
    id: 'tuner-hf',
    deviceClass: 'tuner',
    name: 'HF antenna tuner',
    description: 'At the foot of the antenna, with a short lead and an earth. Its output can reach thousands of volts.',
    ports: [rf('set', 'set', 'uhf', ['mf-hf']), rf('antenna', 'antenna', 'terminal', ['mf-hf']), SUPPLY],
    throughs: [way('set', 'antenna', 'lossDb', true, 'open')],
    figures: {
      lossDb: figure(
        0.45,
        0.4,
        'assumed',
        'under 10 per cent of the power above 6 MHz, 10 to 25 below 3 MHz; from memory',
      ),
      currentA: figure(1, 0.5, 'assumed', PRACTICE),
    },
  }),
  device({
    id: 'preamplifier-vhf-receive',
    deviceClass: 'amplifier',
    name: 'Receive preamplifier',
    description: 'For a receiver only.',
    ports: [rf('antenna', 'antenna', 'bnc'), rf('set', 'set', 'bnc'), SUPPLY],
    throughs: [amplified(way('antenna', 'set', 'lossDb', false, 'open'), 'gainDb', 'noiseFigureDb')],
    figures: {
      lossDb: figure(0, 0, 'assumed', PRACTICE),
      gainDb: figure(15, 3, 'assumed', PRACTICE),
      noiseFigureDb: figure(2, 1, 'assumed', PRACTICE),
      currentA: figure(0.05, 0.03, 'assumed', PRACTICE),
    },
    transmitRated: false,
  }),
  ...JOINTS,
];
