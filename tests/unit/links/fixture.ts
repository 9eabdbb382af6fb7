import { figure } from '../../../core/model/figure.ts';
import { DEFAULT_MARGIN } from '../../../core/model/margin.ts';
import type { Part, PartOf, Port } from '../../../core/model/part.ts';
import {
  type Item,
  itemSchema,
  type Project,
  projectSchema,
  type Run,
  runSchema,
} from '../../../core/model/project.ts';

/** Small invented installations for tests of the engine: every number round, every part in the project itself. */

export const f = (value: number, tolerance = 0) => figure(value, tolerance, 'assumed', 'test');
const at = (xM: number, zM: number) => ({ xM, yM: 0, zM });

export const rfPort = (
  id: string,
  bands: ('vhf-marine' | 'gnss' | 'broadcast' | 'l-band')[] = ['vhf-marine'],
): Port => ({
  id,
  medium: 'rf',
  label: id,
  connector: 'uhf',
  bands,
  impedanceOhm: 50,
});

export const radio = (id: string, over: Partial<PartOf<'radio'>> = {}): PartOf<'radio'> => ({
  kind: 'radio',
  id,
  name: `radio ${id}`,
  description: '',
  ports: [rfPort('ant')],
  radioClass: 'vhf-fixed',
  figures: {
    txPowerW: f(25),
    frequencyMhz: f(156.8),
    rxSensitivityDbm: f(-107, 2),
    supplyVoltageV: f(13.6),
    txCurrentA: f(5.5),
    rxCurrentA: f(0.5),
  },
  traits: {
    dsc: true,
    internalGnss: false,
    needsFixToTransmit: false,
    ownBattery: false,
    portable: false,
    integralAntenna: false,
  },
  ...over,
});

export const AIS = radio('ais', {
  radioClass: 'ais-class-b-cs',
  ports: [rfPort('ant'), rfPort('gnss', ['gnss'])],
  figures: { ...radio('x').figures, txPowerW: f(2), frequencyMhz: f(162) },
});

export const WHIP: PartOf<'antenna'> = {
  kind: 'antenna',
  id: 'whip',
  name: 'whip',
  description: '',
  ports: [rfPort('feed')],
  antennaClass: 'vhf-whip',
  figures: {
    gainDbi: f(2.15, 0.5),
    lengthM: f(0.9),
    feedHeightM: f(0.5),
    hpbwDeg: f(78),
    vswr: f(1.5, 0.2),
  },
  traits: { polarisation: 'vertical', tradeLabel: '3 dB' },
};

export const COAX: PartOf<'coax'> = {
  kind: 'coax',
  id: 'test-coax',
  name: 'test coax',
  description: '',
  ports: [],
  figures: {
    // 10 dB/100 m at 100 MHz, 12.522 at 156.8.
    lossK1: f(1),
    lossK2: f(0),
    lossTolerancePercent: f(10),
    minFrequencyMhz: f(10),
    maxFrequencyMhz: f(1000),
    impedanceOhm: f(50),
    velocityFactor: f(0.66),
    outsideDiameterMm: f(5),
    bendOnceMm: f(25),
    massGPerM: f(40),
  },
  traits: {},
};

export const PLUG: PartOf<'connector'> = {
  kind: 'connector',
  id: 'plug',
  name: 'plug pair',
  description: '',
  ports: [],
  connectorType: 'uhf',
  lossTable: {
    rows: [
      { frequencyMhz: 100, lossDb: 0.01 },
      { frequencyMhz: 200, lossDb: 0.03 },
    ],
    toleranceDb: 0.02,
    basis: 'measured',
    source: 'test',
  },
  figures: { maxFrequencyMhz: f(300) },
  traits: {},
};

const way = (fromPortId: string, toPortId: string, transmit = true) => ({
  fromPortId,
  toPortId,
  lossKey: 'through',
  transmit,
  receive: true,
  whenUnpowered: 'through' as const,
});

export const inline = (
  id: string,
  deviceClass: PartOf<'inline'>['deviceClass'],
  ports: string[],
  throughs: PartOf<'inline'>['throughs'],
  position: number | null = null,
): PartOf<'inline'> => ({
  kind: 'inline',
  id,
  name: id,
  description: '',
  ports: ports.map((port) => rfPort(port)),
  deviceClass,
  throughs,
  figures: { through: f(0.5, 0.1) },
  lossTables: {},
  traits: { needsSupply: false, transmitRated: true, position },
});

export const SPLITTER = inline(
  'splitter',
  'splitter-active',
  ['ant', 'vhf', 'ais'],
  [way('ant', 'vhf'), way('ant', 'ais')],
);
export const RECEIVE_TAP = inline('tap', 'filter', ['in', 'out'], [way('in', 'out', false)]);
export const JOINT = inline('joint', 'joint', ['a', 'b'], [way('a', 'b')]);
export const SWITCH = inline(
  'switch',
  'switch',
  ['common', 'one', 'two'],
  [way('common', 'one'), way('common', 'two')],
  1,
);

export const item = (id: string, partId: string, zM = 1, over: Partial<Item> = {}): Item =>
  itemSchema.parse({ id, tag: id.toUpperCase(), partId, position: at(5, zM), ...over });

export const run = (id: string, from: string, to: string, lengthM: number, over: Partial<Run> = {}): Run => {
  const [fromItem = '', fromPort = ''] = from.split('.');
  const [toItem = '', toPort = ''] = to.split('.');
  return runSchema.parse({
    id,
    number: id.toUpperCase(),
    cableId: COAX.id,
    from: { itemId: fromItem, portId: fromPort },
    to: { itemId: toItem, portId: toPort },
    measuredLengthM: lengthM,
    ...over,
  });
};

/** A project of these items and runs, with a yacht (16 m), a coast station (100 m) and a raft hand-held for partners. */
export function project(items: Item[], runs: Run[], parts: Part[] = [], over: Partial<Project> = {}): Project {
  const common = { gainDbi: 2.15, feederLossDb: 3, sensitivityDbm: -107 };
  return projectSchema.parse({
    format: 'backstay',
    version: 1,
    title: 'Test',
    layoutName: 'As found',
    boat: BOAT,
    places: [],
    parts: [radio('vhf'), AIS, WHIP, COAX, PLUG, SPLITTER, RECEIVE_TAP, JOINT, SWITCH, ...parts],
    items,
    runs,
    feeds: [],
    dataLinks: [],
    stations: [
      { id: 'yacht', name: 'Like yacht', kind: 'yacht', antennaHeightM: 20, voicePowerW: 25, aisPowerW: 2, ...common },
      { id: 'coast', name: 'Coast', kind: 'coast', antennaHeightM: 100, voicePowerW: 50, aisPowerW: 12.5, ...common },
      {
        id: 'raft',
        name: 'Raft',
        kind: 'raft',
        antennaHeightM: 1.2,
        voicePowerW: 5,
        aisPowerW: 0,
        ...common,
        gainDbi: -3,
      },
    ],
    settings: {
      horizonRule: 'four-thirds-earth',
      feederLossLimitDb: 2.218,
      voltageDropLimitPercent: 3,
      margin: [...DEFAULT_MARGIN],
    },
    ...over,
  });
}

const BOAT = {
  name: 'Test Boat',
  kind: 'sloop',
  loaM: 10,
  lwlM: 9,
  beamM: 3,
  draughtM: 1.5,
  airDraughtM: 15,
  freeboardForeM: 1.2,
  freeboardMidM: 1,
  freeboardAftM: 1,
  hullMaterial: 'grp',
  deckMaterial: 'grp',
};
