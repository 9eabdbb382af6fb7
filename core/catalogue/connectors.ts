import { type Figure, figure } from '../model/figure.ts';
import type { ConnectorType, LossTable, PartOf } from '../model/part.ts';

type Rows = readonly (readonly [frequencyMhz: number, lossDb: number])[];

const table = (rows: Rows, toleranceDb: number, basis: LossTable['basis'], source: string): LossTable => ({
  rows: rows.map(([frequencyMhz, lossDb]) => ({ frequencyMhz, lossDb })),
  toleranceDb,
  basis,
  source,
});

/** A loss that grows with the square root of the frequency, given at 1 GHz, as rows of a table. */
const rootLaw = (atOneGhzDb: number): Rows =>
  [1, 100, 400, 1000, 1600, 2500, 6000].map((mhz) => [mhz, atOneGhzDb * Math.sqrt(mhz / 1000)] as const);

const MEASURED = 'network-analyser table on a mailing list, 2012: two adapters measured, halved';

/**
 * One UHF-type connector. Nearly all of its loss is reflection. The same table falls again above 1.3 GHz because the two
 * parts measured cancel each other there; that depends on their spacing, so the peak is held instead.
 */
const UHF_LOSS: LossTable = table(
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
  ],
  0.04,
  'published-test',
  `${MEASURED}; 100 MHz from a wattmeter test; peak held above 1.3 GHz`,
);

/** One N connector. Below 900 MHz the test could not tell it from none. */
const N_LOSS: LossTable = table(
  [
    [30, 0],
    [900, 0],
    [1000, 0.025],
    [1300, 0.05],
    [1600, 0.025],
    [2000, 0.025],
  ],
  0.04,
  'published-test',
  `${MEASURED}, resolution 0.01 dB; a list’s rule of 0.05 dB at 1 GHz by the square root lies within the tolerance`,
);

const MEMORY = 'makers’ catalogues, from memory';
const GLOSSARY = 'frequency limit of the type, RF glossary';

function connector(
  id: string,
  connectorType: ConnectorType,
  [name, description]: readonly [string, string],
  lossTable: LossTable,
  maxFrequencyMhz: Figure,
): PartOf<'connector'> {
  return {
    id,
    kind: 'connector',
    connectorType,
    name,
    description,
    ports: [],
    lossTable,
    figures: { maxFrequencyMhz },
    traits: {},
  };
}

const readMhz = (value: number, source = GLOSSARY): Figure => figure(value, 0, 'data-sheet', source);
const assumedMhz = (value: number): Figure => figure(value, 0, 'assumed', 'common practice, no source');

export const CONNECTORS: readonly PartOf<'connector'>[] = [
  connector(
    'connector-uhf',
    'uhf',
    ['PL-259 plug (UHF type)', 'The usual VHF plug. Good to about 300 MHz; not for GNSS or L-band.'],
    UHF_LOSS,
    readMhz(300, 'limit named on a radio amateurs’ list'),
  ),
  connector('connector-n', 'n', ['N plug', 'Weather-resistant 50 ohm plug to 11 GHz.'], N_LOSS, readMhz(11000)),
  connector(
    'connector-bnc',
    'bnc',
    ['BNC plug', 'Bayonet plug to 4 GHz; handhelds and emergency antennas.'],
    table(
      rootLaw(0.06),
      0.06,
      'assumed',
      'half the specified maximum of 0.2 dB at 3 GHz, by the square root; from memory',
    ),
    readMhz(4000),
  ),
  connector(
    'connector-tnc',
    'tnc',
    ['TNC plug', 'Screwed small plug to 11 GHz; GNSS and L-band antennas.'],
    table(rootLaw(0.05), 0.04, 'assumed', `0.05 dB at 1 GHz by the square root; ${MEMORY}`),
    readMhz(11000),
  ),
  connector(
    'connector-sma',
    'sma',
    ['SMA plug', 'Small screwed plug to 18 GHz.'],
    table(rootLaw(0.03), 0.03, 'assumed', `0.03 dB at 1 GHz by the square root; ${MEMORY}`),
    readMhz(18000),
  ),
  connector(
    'connector-fme',
    'fme',
    ['FME plug', 'Small plug that passes through a mast; to 2 GHz.'],
    table(rootLaw(0.1), 0.06, 'assumed', 'about 0.1 dB at 900 MHz; common practice, no source'),
    assumedMhz(2000),
  ),
  connector(
    'connector-f',
    'f',
    ['F plug', '75 ohm television plug.'],
    table(rootLaw(0.1), 0.06, 'assumed', 'common practice, no source'),
    assumedMhz(2000),
  ),
  connector(
    'connector-terminal',
    'terminal',
    ['Screw terminal', 'Wire terminal of an HF antenna or tuner.'],
    table([[1, 0]], 0, 'assumed', 'no loss reckoned below 30 MHz'),
    assumedMhz(30),
  ),
];
