import { type Figure, figure } from '../model/figure.ts';
import {
  type Band,
  bandSchema,
  type ConnectorType,
  type DeviceClass,
  type LossTable,
  type PartOf,
  type Port,
  type Through,
} from '../model/part.ts';
import { N_LOSS, UHF_LOSS } from './connectors.ts';

const ALL: readonly Band[] = bandSchema.options;
const VHF: readonly Band[] = ['vhf-marine'];
const PRACTICE = 'common practice, no source';

const rf = (
  id: string,
  label: string,
  connector: ConnectorType,
  bands: readonly Band[] = ALL,
  impedanceOhm = 50,
): Port => ({
  id,
  medium: 'rf',
  label,
  connector,
  bands: [...bands],
  impedanceOhm,
});
const SUPPLY: Port = { id: 'dc', medium: 'dc', label: 'supply', role: 'in' };

const way = (
  fromPortId: string,
  toPortId: string,
  lossKey: string,
  transmit = true,
  whenUnpowered: Through['whenUnpowered'] = 'through',
): Through => ({ fromPortId, toPortId, lossKey, transmit, receive: true, whenUnpowered });

interface Device {
  readonly id: string;
  readonly deviceClass: DeviceClass;
  readonly name: string;
  readonly description: string;
  readonly ports: readonly Port[];
  readonly throughs: readonly Through[];
  readonly figures?: Readonly<Record<string, Figure>>;
  readonly lossTables?: Readonly<Record<string, LossTable>>;
  readonly transmitRated?: boolean;
  readonly position?: number;
}

function device(row: Device): PartOf<'inline'> {
  const needsSupply = row.ports.some((port) => port.medium === 'dc');
  return {
    id: row.id,
    kind: 'inline',
    deviceClass: row.deviceClass,
    name: row.name,
    description: row.description,
    ports: [...row.ports],
    throughs: [...row.throughs],
    figures: { ...row.figures },
    lossTables: { ...row.lossTables },
    traits: { needsSupply, transmitRated: row.transmitRated ?? true, position: row.position ?? null },
  };
}

/** Two connectors mated: twice the loss of one. */
const pair = (table: LossTable): LossTable => ({
  ...table,
  rows: table.rows.map((row) => ({ ...row, lossDb: row.lossDb * 2 })),
  source: `${table.source}; pair = two connectors`,
});

const joint = (
  id: string,
  name: string,
  description: string,
  connector: ConnectorType,
  table: LossTable,
): PartOf<'inline'> =>
  device({
    id,
    deviceClass: 'joint',
    name,
    description,
    ports: [rf('a', 'side A', connector), rf('b', 'side B', connector)],
    throughs: [way('a', 'b', 'joint')],
    lossTables: { joint: table },
  });

const ARRESTOR: LossTable = {
  rows: [
    { frequencyMhz: 1, lossDb: 0.03 },
    { frequencyMhz: 500, lossDb: 0.05 },
    { frequencyMhz: 2500, lossDb: 0.067 },
    { frequencyMhz: 4000, lossDb: 0.29 },
  ],
  toleranceDb: 0.03,
  basis: 'data-sheet',
  source: 'wireless terminal installation manual, table 12 (maxima)',
};
const ADAPTER: LossTable = {
  rows: [
    { frequencyMhz: 1, lossDb: 0.02 },
    { frequencyMhz: 162, lossDb: 0.1 },
    { frequencyMhz: 1600, lossDb: 0.2 },
  ],
  toleranceDb: 0.1,
  basis: 'assumed',
  source: PRACTICE,
};
const ACTIVE_LOSS = figure(0.5, 0.3, 'data-sheet', 'users’ upper figure in transmit; makers state under 1 dB');

const activeSplitter = (
  id: string,
  name: string,
  vhf: Through['whenUnpowered'],
  ais: Through['whenUnpowered'],
  words: string,
): PartOf<'inline'> =>
  device({
    id,
    deviceClass: 'splitter-active',
    name,
    description: `One VHF antenna for a voice set and an AIS set; voice has priority and blanks AIS while it transmits. ${words}`,
    ports: [
      rf('antenna', 'antenna', 'uhf', VHF),
      rf('vhf', 'VHF set', 'uhf', VHF),
      rf('ais', 'AIS set', 'uhf', VHF),
      SUPPLY,
    ],
    throughs: [way('antenna', 'vhf', 'lossDb', true, vhf), way('antenna', 'ais', 'lossDb', true, ais)],
    figures: { lossDb: ACTIVE_LOSS },
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
  device({
    id: 'splitter-tv-2-way',
    deviceClass: 'splitter-passive',
    name: 'Television-type two-way splitter',
    description: 'Passive, 75 ohm, made for receivers. Never for a transmitter.',
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
    figures: { lossDb: figure(0.5, 0.4, 'assumed', 'heat in the tuner above 6 MHz under 10 per cent, from memory') },
  }),
  device({
    id: 'preamplifier-vhf-receive',
    deviceClass: 'amplifier',
    name: 'Receive preamplifier',
    description: 'For a receiver only.',
    ports: [rf('antenna', 'antenna', 'bnc'), rf('set', 'set', 'bnc'), SUPPLY],
    throughs: [way('antenna', 'set', 'lossDb', false, 'open')],
    figures: {
      lossDb: figure(0, 0, 'assumed', PRACTICE),
      gainDb: figure(15, 3, 'assumed', PRACTICE),
      noiseFigureDb: figure(2, 1, 'assumed', PRACTICE),
    },
    transmitRated: false,
  }),
  joint(
    'joint-uhf-pair',
    'Joint, PL-259 pair with barrel',
    'Two plugs and a barrel, as at a mast foot. Costs almost nothing while dry; keep it dry and within reach.',
    'uhf',
    pair(UHF_LOSS),
  ),
  joint('joint-n-pair', 'Joint, N pair', 'Plug and socket, N type.', 'n', pair(N_LOSS)),
  joint(
    'joint-deck-plug-uhf',
    'Through-deck plug, UHF type',
    'Watertight gland with plug and socket.',
    'uhf',
    pair(UHF_LOSS),
  ),
  device({
    id: 'adapter-uhf-bnc',
    deviceClass: 'adapter',
    name: 'Adapter UHF to BNC',
    description: 'Lets a BNC antenna onto a fixed set.',
    ports: [rf('a', 'UHF side', 'uhf'), rf('b', 'BNC side', 'bnc')],
    throughs: [way('a', 'b', 'adapter')],
    lossTables: { adapter: ADAPTER },
  }),
  device({
    id: 'adapter-uhf-n',
    deviceClass: 'adapter',
    name: 'Adapter UHF to N',
    description: 'Between the two series.',
    ports: [rf('a', 'UHF side', 'uhf'), rf('b', 'N side', 'n')],
    throughs: [way('a', 'b', 'adapter')],
    lossTables: { adapter: ADAPTER },
  }),
];
