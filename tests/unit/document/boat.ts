import { newProject } from '../../../core/model/defaults.ts';
import { type Figure, figure } from '../../../core/model/figure.ts';
import type { Part, PartOf } from '../../../core/model/part.ts';
import type { Feed, Item, Project, Run } from '../../../core/model/project.ts';

// A small boat with parts of its own, for the tests of documents and edits: nothing here depends on the catalogue.

const f = (value: number): Figure => figure(value, 0, 'assumed', 'test');
const common = (id: string, name: string) => ({ id, name, description: '' });

const radioFigures = (txPowerW: number, frequencyMhz: number) => ({
  txPowerW: f(txPowerW),
  frequencyMhz: f(frequencyMhz),
  rxSensitivityDbm: f(-107),
  supplyVoltageV: f(12),
  txCurrentA: f(5.5),
  rxCurrentA: f(0.5),
});
const plainTraits = {
  dsc: false,
  internalGnss: false,
  needsFixToTransmit: false,
  ownBattery: false,
  portable: false,
  integralAntenna: false,
};

export const VHF: PartOf<'radio'> = {
  ...common('t-vhf', 'Test VHF set'),
  kind: 'radio',
  radioClass: 'vhf-fixed',
  ports: [
    { id: 'ant', medium: 'rf', label: 'Antenna', connector: 'uhf', bands: ['vhf-marine'], impedanceOhm: 50 },
    { id: 'dc', medium: 'dc', label: 'Supply', role: 'in' },
    { id: 'nmea', medium: 'data', label: 'NMEA' },
  ],
  figures: radioFigures(25, 156.8),
  traits: { ...plainTraits, dsc: true },
};
export const AIS: PartOf<'radio'> = {
  ...common('t-ais', 'Test AIS set'),
  kind: 'radio',
  radioClass: 'ais-class-b-so',
  ports: [
    { id: 'ant', medium: 'rf', label: 'VHF antenna', connector: 'bnc', bands: ['vhf-marine'], impedanceOhm: 50 },
    { id: 'gnss', medium: 'rf', label: 'GNSS antenna', connector: 'sma', bands: ['gnss'], impedanceOhm: 50 },
    { id: 'dc', medium: 'dc', label: 'Supply', role: 'in' },
    { id: 'nmea', medium: 'data', label: 'NMEA' },
  ],
  figures: radioFigures(5, 162),
  traits: { ...plainTraits, needsFixToTransmit: true },
};

const antenna = (
  id: string,
  name: string,
  band: 'vhf-marine' | 'gnss',
  connector: 'uhf' | 'tnc',
): PartOf<'antenna'> => ({
  ...common(id, name),
  kind: 'antenna',
  antennaClass: band === 'gnss' ? 'gnss' : 'vhf-whip',
  ports: [{ id: 'feed', medium: 'rf', label: 'Feed', connector, bands: [band], impedanceOhm: 50 }],
  figures: { gainDbi: f(2.15), lengthM: f(0.9), feedHeightM: f(0.45), hpbwDeg: f(80), vswr: f(1.5) },
  traits: { polarisation: band === 'gnss' ? 'circular' : 'vertical', tradeLabel: '' },
});
export const WHIP = antenna('t-whip', 'Test VHF whip', 'vhf-marine', 'uhf');
export const GNSS_ANTENNA = antenna('t-gnss-antenna', 'Test GNSS antenna', 'gnss', 'tnc');

const device = (
  id: string,
  name: string,
  deviceClass: PartOf<'inline'>['deviceClass'],
  branches: readonly string[],
  transmitRated: boolean,
): PartOf<'inline'> => ({
  ...common(id, name),
  kind: 'inline',
  deviceClass,
  ports: ['antenna', ...branches].map((portId) => ({
    id: portId,
    medium: 'rf',
    label: portId,
    connector: 'uhf',
    bands: ['vhf-marine'],
    impedanceOhm: 50,
  })),
  throughs: branches.map((portId) => ({
    fromPortId: 'antenna',
    toPortId: portId,
    lossKey: 'wayLossDb',
    transmit: transmitRated,
    receive: true,
    whenUnpowered: 'through',
  })),
  figures: { wayLossDb: f(0.5) },
  lossTables: {},
  traits: { needsSupply: false, transmitRated, position: deviceClass === 'switch' ? 1 : null },
});
export const SPLITTER = device('t-splitter', 'Test splitter', 'splitter-active', ['vhf', 'ais'], true);
export const RX_SPLITTER = device(
  't-rx-splitter',
  'Test receive splitter',
  'splitter-passive',
  ['out1', 'out2'],
  false,
);
export const JOINT = device('t-joint', 'Test joint', 'joint', ['b'], true);
export const SWITCH = device('t-switch', 'Test switch', 'switch', ['p1', 'p2'], true);

const coax = (id: string, mm: number, k1: number, impedanceOhm: number): PartOf<'coax'> => ({
  ...common(id, id),
  kind: 'coax',
  ports: [],
  figures: {
    lossK1: f(k1),
    lossK2: f(0),
    lossTolerancePercent: f(5),
    minFrequencyMhz: f(1),
    maxFrequencyMhz: f(3000),
    impedanceOhm: f(impedanceOhm),
    velocityFactor: f(0.66),
    outsideDiameterMm: f(mm),
    bendOnceMm: f(50),
    massGPerM: f(50),
  },
  traits: {},
});
export const THIN = coax('t-thin', 5, 1.6, 50);
export const THICK = coax('t-thick', 10.3, 0.4, 50);
export const TV = coax('t-tv', 6.1, 1.1, 75);

export const PLUG: PartOf<'connector'> = {
  ...common('t-plug', 'Test UHF plug'),
  kind: 'connector',
  ports: [],
  connectorType: 'uhf',
  lossTable: { rows: [{ frequencyMhz: 100, lossDb: 0.01 }], toleranceDb: 0, basis: 'assumed', source: 'test' },
  figures: { maxFrequencyMhz: f(300) },
  traits: {},
};
export const WIRE: PartOf<'conductor'> = {
  ...common('t-wire', '2.5 mm2 test wire'),
  kind: 'conductor',
  ports: [],
  figures: { areaMm2: f(2.5), ohmPerKm: f(7), ampacityA: f(25) },
  traits: { awg: null },
};

const power = (
  id: string,
  name: string,
  powerClass: PartOf<'power'>['powerClass'],
  hasInlet: boolean,
): PartOf<'power'> => ({
  ...common(id, name),
  kind: 'power',
  powerClass,
  ports: [
    { id: 'out', medium: 'dc', label: 'Output', role: 'out' },
    ...(hasInlet ? [{ id: 'in', medium: 'dc', label: 'Input', role: 'in' } as const] : []),
  ],
  figures: { voltageV: f(12) },
  traits: {},
});
export const BANK = power('t-bank', 'Test bank', 'battery-bank', false);
export const BREAKER = power('t-breaker', 'Test breaker', 'breaker', true);

export const PARTS: readonly Part[] = [
  VHF,
  AIS,
  WHIP,
  GNSS_ANTENNA,
  SPLITTER,
  RX_SPLITTER,
  JOINT,
  SWITCH,
  THIN,
  THICK,
  TV,
  PLUG,
  WIRE,
  BANK,
  BREAKER,
];

/** A sloop with the parts above and nothing fitted. */
export function emptyBoat(): Project {
  const base = newProject({
    name: 'Testling',
    kind: 'sloop',
    loaM: 12,
    beamM: 3.8,
    draughtM: 1.9,
    airDraughtM: 17,
    freeboardM: 1.1,
  });
  return { ...base, parts: [...PARTS] };
}

export function item(
  id: string,
  partId: string,
  tag: string,
  xM: number,
  zM: number,
  placeId: string | null = null,
): Item {
  return {
    id,
    tag,
    partId,
    name: '',
    position: { xM, yM: 0, zM },
    endPosition: null,
    placeId,
    status: 'keep',
    overrides: { figures: {}, traits: {} },
    facts: {},
    notes: '',
  };
}

export function run(number: string, from: readonly [string, string], to: readonly [string, string]): Run {
  return {
    id: `run-${Number(number.slice(1))}`,
    number,
    cableId: THICK.id,
    from: { itemId: from[0], portId: from[1] },
    to: { itemId: to[0], portId: to[1] },
    via: [],
    slackM: 0,
    measuredLengthM: null,
    connectorFromId: null,
    connectorToId: null,
    labelText: null,
    status: 'keep',
    facts: {},
    notes: '',
  };
}

export function feed(number: string, fromItem: string, toItem: string, toPort: string): Feed {
  return {
    id: `feed-${Number(number.slice(1))}`,
    number,
    from: { itemId: fromItem, portId: 'out' },
    to: { itemId: toItem, portId: toPort },
    conductorId: WIRE.id,
    lengthM: 4,
    fuse: null,
    status: 'keep',
    notes: '',
  };
}

/** A VHF set on a masthead whip and a bank with a breaker feeding it: W01, F01, F02. */
export function smallBoat(): Project {
  const base = emptyBoat();
  return {
    ...base,
    items: [
      item('whip', WHIP.id, 'A1', 4.7, 16, 'mast-1-head'),
      item('vhf', VHF.id, 'VHF-1', 6, 0.8, 'nav-station'),
      item('bank', BANK.id, 'BAT-1', 6.6, -0.3),
      item('breaker', BREAKER.id, 'B1', 6, 0.9),
    ],
    runs: [
      {
        ...run('W01', ['whip', 'feed'], ['vhf', 'ant']),
        via: [{ position: { xM: 4.7, yM: 0, zM: 0.8 }, placeId: null }],
      },
    ],
    feeds: [feed('F01', 'bank', 'breaker', 'in'), feed('F02', 'breaker', 'vhf', 'dc')],
  };
}
