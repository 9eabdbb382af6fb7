import { figure } from '../model/figure.ts';
import type { ConnectorType, LossTable, PartOf } from '../model/part.ts';

const MEASURED = 'two-adapter network-analyser measurement on a mailing list, 2012, halved per connector';
const MEMORY = 'makers’ catalogues, from memory';

const table = (rows: readonly (readonly [number, number])[], toleranceDb: number, measured: boolean): LossTable => ({
  rows: rows.map(([frequencyMhz, lossDb]) => ({ frequencyMhz, lossDb })),
  toleranceDb,
  basis: measured ? 'measured' : 'assumed',
  source: measured ? MEASURED : MEMORY,
});

/** 0.05 dB times the square root of the frequency in GHz: the rule for precision connectors, at a few frequencies. */
const rootLaw = (factor: number): readonly (readonly [number, number])[] =>
  [1, 100, 1000, 2500, 6000].map((mhz) => [mhz, factor * Math.sqrt(mhz / 1000)] as const);

/** Loss of one UHF-type connector; nearly all of it reflection, which grows to 1.3 GHz and then partly cancels. */
export const UHF_LOSS: LossTable = table(
  [
    [30, 0],
    [100, 0.006],
    [150, 0.01],
    [200, 0.015],
    [450, 0.09],
    [600, 0.13],
    [900, 0.33],
    [1000, 0.4],
    [1300, 0.43],
    [1600, 0.43],
  ],
  0.02,
  true,
);
export const N_LOSS: LossTable = table(
  [
    [30, 0],
    [150, 0.002],
    [900, 0.02],
    [1000, 0.025],
    [1300, 0.05],
    [2000, 0.05],
    [6000, 0.12],
  ],
  0.02,
  true,
);

function connector(
  id: string,
  connectorType: ConnectorType,
  name: string,
  description: string,
  lossTable: LossTable,
  maxMhz: number,
): PartOf<'connector'> {
  return {
    id,
    kind: 'connector',
    connectorType,
    name,
    description,
    ports: [],
    lossTable,
    figures: { maxFrequencyMhz: figure(maxMhz, 0, 'data-sheet', 'usual frequency limit of the type, RF glossary') },
    traits: {},
  };
}

export const CONNECTORS: readonly PartOf<'connector'>[] = [
  connector(
    'connector-uhf',
    'uhf',
    'PL-259 plug (UHF type)',
    'The usual VHF plug. Good to about 300 MHz; not for GNSS or L-band.',
    UHF_LOSS,
    300,
  ),
  connector('connector-n', 'n', 'N plug', 'Weather-resistant 50 ohm plug to 11 GHz.', N_LOSS, 11000),
  connector(
    'connector-bnc',
    'bnc',
    'BNC plug',
    'Bayonet plug to 4 GHz; handhelds and emergency antennas.',
    table(rootLaw(0.06), 0.05, false),
    4000,
  ),
  connector(
    'connector-tnc',
    'tnc',
    'TNC plug',
    'Screwed small plug to 11 GHz; GNSS and L-band antennas.',
    table(rootLaw(0.05), 0.03, false),
    11000,
  ),
  connector(
    'connector-sma',
    'sma',
    'SMA plug',
    'Small screwed plug to 18 GHz.',
    table(rootLaw(0.03), 0.03, false),
    18000,
  ),
  connector(
    'connector-fme',
    'fme',
    'FME plug',
    'Small plug that passes through a mast; to 2 GHz.',
    table(
      [
        [30, 0.02],
        [900, 0.1],
        [2000, 0.15],
      ],
      0.05,
      false,
    ),
    2000,
  ),
  connector(
    'connector-f',
    'f',
    'F plug',
    '75 ohm television plug.',
    table(
      [
        [30, 0.02],
        [1000, 0.1],
      ],
      0.05,
      false,
    ),
    1000,
  ),
  connector(
    'connector-terminal',
    'terminal',
    'Screw terminal',
    'Wire terminal of an HF antenna or tuner.',
    table([[1, 0]], 0, false),
    30,
  ),
];
