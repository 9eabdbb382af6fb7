import type { Assessment } from '../../../core/assess.ts';
import type { PathBudget, PathElement } from '../../../core/links/types.ts';
import { figure } from '../../../core/model/figure.ts';
import { type Project, projectSchema } from '../../../core/model/project.ts';
import { SERVICES } from '../../../core/model/services.ts';
import type { RangeResult } from '../../../core/reach/types.ts';
import type { MatrixRow } from '../../../core/redundancy/types.ts';
import { q } from '../../../core/units/quantity.ts';

const sheetFigure = (value: number, tolerance = 0) => figure(value, tolerance, 'data-sheet', 'test figure');

const parts = [
  {
    kind: 'radio',
    id: 'set',
    name: 'Fixed VHF 25 W, DSC',
    description: '',
    radioClass: 'vhf-fixed',
    figures: {
      txPowerW: sheetFigure(25),
      frequencyMhz: sheetFigure(156.8),
      rxSensitivityDbm: sheetFigure(-119),
      supplyVoltageV: sheetFigure(12),
      txCurrentA: sheetFigure(5.5),
      rxCurrentA: sheetFigure(0.5),
    },
    traits: {
      dsc: true,
      internalGnss: false,
      needsFixToTransmit: false,
      ownBattery: false,
      portable: false,
      integralAntenna: false,
    },
    ports: [
      { id: 'rf', medium: 'rf', label: 'ANT', connector: 'uhf', bands: ['vhf-marine'] },
      { id: 'dc', medium: 'dc', label: '12 V', role: 'in' },
      { id: 'nav', medium: 'data', label: 'NAV' },
    ],
  },
  {
    kind: 'antenna',
    id: 'whip',
    name: 'VHF whip 0.9 m',
    description: '',
    antennaClass: 'vhf-whip',
    figures: {
      gainDbi: sheetFigure(2.15, 0.5),
      lengthM: sheetFigure(0.9),
      feedHeightM: sheetFigure(0.45),
      hpbwDeg: sheetFigure(78),
      vswr: sheetFigure(1.5),
    },
    traits: { polarisation: 'vertical', tradeLabel: '3 dB' },
    ports: [{ id: 'rf', medium: 'rf', label: 'FEED', connector: 'uhf', bands: ['vhf-marine'] }],
  },
  {
    kind: 'coax',
    id: 'rg58',
    name: 'RG-58',
    description: '',
    figures: {
      lossK1: sheetFigure(1.6),
      lossK2: sheetFigure(0.006),
      lossTolerancePercent: sheetFigure(10),
      minFrequencyMhz: sheetFigure(1),
      maxFrequencyMhz: sheetFigure(3000),
      impedanceOhm: sheetFigure(50),
      velocityFactor: sheetFigure(0.66),
      outsideDiameterMm: sheetFigure(5),
      bendOnceMm: sheetFigure(25),
      massGPerM: sheetFigure(38),
    },
    traits: {},
  },
  {
    kind: 'conductor',
    id: 'wire',
    name: 'Tinned copper 2.5 mm²',
    description: '',
    figures: { areaMm2: sheetFigure(2.5), ohmPerKm: sheetFigure(7.6), ampacityA: sheetFigure(25) },
    traits: { awg: null },
  },
  {
    kind: 'power',
    id: 'bank',
    name: 'House bank',
    description: '',
    powerClass: 'battery-bank',
    figures: { voltageV: sheetFigure(12) },
    traits: {},
    ports: [{ id: 'out', medium: 'dc', label: '+', role: 'out' }],
  },
  {
    kind: 'standalone',
    id: 'beacon',
    name: '406 MHz beacon',
    description: '',
    standaloneClass: 'beacon-406',
    figures: {
      txPowerW: sheetFigure(5),
      frequencyMhz: sheetFigure(406.04),
      rxSensitivityDbm: sheetFigure(-100),
      gainDbi: sheetFigure(0),
    },
    traits: { dsc: false, internalGnss: true },
  },
  {
    kind: 'connector',
    id: 'plug',
    name: 'PL-259, crimped',
    description: '',
    connectorType: 'uhf',
    lossTable: {
      rows: [{ frequencyMhz: 100, lossDb: 0.01 }],
      toleranceDb: 0.01,
      basis: 'measured',
      source: 'test figure',
    },
    figures: { maxFrequencyMhz: sheetFigure(300) },
    traits: {},
  },
];

/** A small ketch of our own for these tests: one VHF set, one masthead whip, a new run and an old one. */
export const BOAT: Project = projectSchema.parse({
  format: 'backstay',
  version: 1,
  title: 'Test ketch: radio installation',
  layoutName: 'As found',
  purpose: 'Three radio checks answered "weak".',
  preparedBy: 'A. Tester',
  revision: '2',
  boat: {
    name: 'Test Ketch',
    kind: 'ketch',
    homePort: 'Nowhere Haven',
    loaM: 12.4,
    lwlM: 10.6,
    beamM: 3.8,
    draughtM: 1.95,
    airDraughtM: 17.2,
    freeboardForeM: 1.45,
    freeboardMidM: 1.1,
    freeboardAftM: 1.15,
    hullMaterial: 'steel',
    deckMaterial: 'steel',
    masts: [
      { id: 'main', name: 'Main mast', xM: 4.8, footZM: 2.05, truckZM: 16.2, material: 'aluminium', stepped: 'deck' },
    ],
    compartments: [{ id: 'saloon', name: 'Saloon', side: 'centre', xForeM: 4, xAftM: 7, soleZM: -0.5 }],
  },
  places: [
    {
      id: 'masthead',
      name: 'Masthead',
      position: { xM: 4.8, yM: 0, zM: 16.2 },
      structureId: 'main',
      compartmentId: null,
      outdoors: true,
      overhead: 'open',
    },
    {
      id: 'mastfoot',
      name: 'Mast foot',
      position: { xM: 4.8, yM: 0, zM: 2.1 },
      structureId: 'main',
      compartmentId: null,
      outdoors: true,
      overhead: 'open',
    },
    {
      id: 'chart',
      name: 'Chart table',
      position: { xM: 6.2, yM: -0.9, zM: 0.9 },
      structureId: null,
      compartmentId: 'saloon',
      outdoors: false,
      overhead: 'metal',
    },
  ],
  parts,
  items: [
    { id: 'vhf', tag: 'VHF-1', partId: 'set', position: { xM: 6.2, yM: -0.9, zM: 0.9 }, placeId: 'chart' },
    {
      id: 'a1',
      tag: 'A1',
      partId: 'whip',
      position: { xM: 4.7, yM: 0, zM: 16.25 },
      placeId: 'masthead',
      status: 'new',
      notes: 'Bracket bolted to the mast',
    },
    { id: 'bank', tag: 'BT-1', partId: 'bank', position: { xM: 6, yM: 0, zM: -0.3 }, placeId: null },
    {
      id: 'old',
      tag: 'VHF-9',
      partId: 'set',
      position: { xM: 6.2, yM: 0.9, zM: 0.9 },
      placeId: 'chart',
      status: 'remove',
    },
    { id: 'a2', tag: 'A9', partId: 'whip', position: { xM: 12, yM: 0, zM: 3 }, placeId: null, status: 'remove' },
    { id: 'bc', tag: 'BC-1', partId: 'beacon', position: { xM: 8, yM: 0.4, zM: 1.5 }, placeId: null },
  ],
  runs: [
    {
      id: 'w1',
      number: 'W01',
      cableId: 'rg58',
      from: { itemId: 'vhf', portId: 'rf' },
      to: { itemId: 'a1', portId: 'rf' },
      via: [{ position: { xM: 4.8, yM: 0, zM: 2.1 }, placeId: 'mastfoot' }],
      slackM: 0.5,
      connectorFromId: 'plug',
      connectorToId: 'plug',
      status: 'new',
    },
    {
      id: 'w2',
      number: 'W02',
      cableId: 'rg58',
      from: { itemId: 'old', portId: 'rf' },
      to: { itemId: 'a2', portId: 'rf' },
      measuredLengthM: 23.5,
      status: 'remove',
      notes: 'Old run, coiled at the foot',
    },
  ],
  feeds: [
    {
      id: 'f1',
      number: 'F01',
      from: { itemId: 'bank', portId: 'out' },
      to: { itemId: 'vhf', portId: 'dc' },
      conductorId: 'wire',
      lengthM: 4,
      fuse: { ratingA: 10, fromSourceM: 0.1 },
      status: 'new',
    },
  ],
  dataLinks: [],
  stations: [
    {
      id: 'ship',
      name: 'Ship’s bridge',
      kind: 'ship',
      antennaHeightM: 25,
      gainDbi: 2.15,
      feederLossDb: 1,
      voicePowerW: 25,
      aisPowerW: 12.5,
      sensitivityDbm: -119,
    },
    {
      id: 'coast',
      name: 'Coast station',
      kind: 'coast',
      antennaHeightM: 150,
      gainDbi: 6,
      feederLossDb: 2,
      voicePowerW: 50,
      aisPowerW: 12.5,
      sensitivityDbm: -119,
    },
  ],
  measurements: [
    {
      id: 'm1',
      subject: { kind: 'item', id: 'vhf' },
      kind: 'open-end-vswr',
      value: 2.2,
      frequencyMhz: 156.8,
      date: '2031-03-02',
      instrument: 'Analyser no. 3',
    },
    { id: 'm2', subject: { kind: 'item', id: 'vhf' }, kind: 'vswr', value: 1.2, frequencyMhz: null, date: null },
    {
      id: 'm3',
      subject: { kind: 'item', id: 'vhf' },
      kind: 'supply-idle-v',
      value: 12.7,
      frequencyMhz: null,
      date: null,
    },
    {
      id: 'm4',
      subject: { kind: 'item', id: 'vhf' },
      kind: 'supply-transmit-v',
      value: 12.4,
      frequencyMhz: null,
      date: null,
    },
  ],
  settings: {
    horizonRule: 'four-thirds-earth',
    feederLossLimitDb: 2.218,
    voltageDropLimitPercent: 3,
    margin: [
      { id: 'noise', label: 'Own noise', lossDb: 6, source: 'common practice, no source' },
      { id: 'fading', label: 'Fading and roll', lossDb: 8.5, source: 'common practice, no source' },
    ],
  },
});

function element(
  label: string,
  kind: PathElement['kind'],
  lossDb: number,
  before: number,
  subject: PathElement['subject'],
): PathElement {
  const left = (db: number): number => 25 * 10 ** (-db / 10);
  return {
    kind,
    label,
    subject,
    lossDb,
    toleranceDb: lossDb / 10,
    runningLossDb: before + lossDb,
    wattsIn: left(before),
    wattsOut: left(before + lossDb),
    shareLostPercent: (100 * (left(before) - left(before + lossDb))) / 25,
    basis: kind === 'cable' ? 'data-sheet' : 'assumed',
    source: 'test figure',
    formula: '',
  };
}

const RUN = { kind: 'run', id: 'w1' } as const;
export const VOICE_PATH: PathBudget = {
  id: 'vhf.rf>a1',
  radioId: 'vhf',
  portId: 'rf',
  antennaId: 'a1',
  service: 'vhf-voice',
  frequencyMhz: 156.8,
  canTransmit: true,
  elements: [
    element('Plug at VHF-1', 'connector', 0.013, 0, { kind: 'item', id: 'vhf' }),
    element('RG-58', 'cable', 3.4, 0.013, RUN),
    element('Plug at A1', 'connector', 0.013, 3.413, { kind: 'item', id: 'a1' }),
  ],
  runIds: ['w1'],
  deviceIds: [],
  lossDb: 3.426,
  toleranceDb: 0.34,
  lostPercent: 54.6,
  txPowerW: 25,
  wattsAtAntenna: 11.36,
  eirpDbm: 42.7,
  antennaGainDbi: 2.15,
  antennaHeightM: 16.7,
  antennaVswr: 1.3,
  radioVswr: 1.13,
  reception: { gainDb: -3.426, noiseFigureDb: 3.426 },
  openEndVswr: 2.67,
  measuredLossDb: null,
  switchIds: [],
};

function range(stationId: string, dependableKm: number, typicalKm: number, horizonKm: number): RangeResult {
  return {
    id: `vhf>${stationId}`,
    pathId: VOICE_PATH.id,
    itemId: 'vhf',
    stationId,
    service: 'voice',
    frequencyMhz: 156.8,
    ownHeightM: 16.7,
    horizonKm,
    typical: { nominalKm: typicalKm, lowKm: typicalKm * 0.9, highKm: typicalKm * 1.1 },
    dependable: { nominalKm: dependableKm, lowKm: dependableKm * 0.9, highKm: dependableKm * 1.1 },
    limitedBy: 'transmit',
    feederCostTypicalKm: 6.2,
    feederCostDependableKm: 4.1,
    maxLossTypicalDb: 150,
    marginDb: 14.5,
  };
}

const SHOWN = SERVICES.slice(0, 8).map((service) => service.id);

function row(id: string, label: string, kind: MatrixRow['event']['kind'], letters: string): MatrixRow {
  return {
    event: { id, label, kind, downIds: [], note: '' },
    states: SHOWN.map((serviceId, index) => {
      const grade = letters[index] === 'F' ? 'full' : letters[index] === 'R' ? 'reduced' : 'lost';
      return {
        serviceId,
        grade,
        reason: grade === 'full' ? 'VHF-1 by A1.' : `${label}: ${grade} for a reason of its own.`,
        liveWayIds: [],
      };
    }),
  };
}

export const ASSESSMENT: Assessment = {
  paths: [VOICE_PATH],
  ranges: [range('ship', 28, 47, 37.4), range('coast', 55, 90, 67.4)],
  feeds: [
    {
      feedId: 'f1',
      loadId: 'vhf',
      currentA: 5.5,
      lengthM: 4,
      areaMm2: 2.5,
      dropV: 0.31,
      totalDropV: 0.31,
      totalDropPercent: 2.4,
      limitPercent: 3,
      protection: { present: true, ratingA: 10, fromSourceM: 0.1, ampacityA: 25, largestRatingA: 25, verdict: 'good' },
      smallestAreaMm2: 2.5,
    },
  ],
  redundancy: {
    services: SHOWN,
    components: [
      { id: 'c-mast', kind: 'structure', label: 'Main mast', subject: { kind: 'structure', id: 'main' } },
      { id: 'c-w1', kind: 'cable', label: 'W01', subject: RUN },
    ],
    ways: [],
    singlePoints: [
      { componentId: 'c-mast', serviceIds: ['voice-fixed', 'digital-alert'] },
      { componentId: 'c-w1', serviceIds: ['voice-fixed'] },
    ],
    matrix: [row('none', 'Nothing', 'none', 'RFR–RFRF'), row('mast', 'Main mast lost', 'mast', '–F–––RRF')],
  },
  findings: [
    {
      key: 'c:w1',
      ruleId: 'coil',
      severity: 'C',
      mark: 'C1',
      title: 'Surplus cable coiled at the mast foot',
      subjects: [RUN],
      measured: [q(2.3, 'm'), ' coiled up'],
      limit: ['no coil'],
      authority: { name: 'Common practice', strength: 'practice' },
      action: ['Shorten the run.'],
      overruled: { reason: 'The mast is to be unstepped next year.', by: 'Owner' },
    },
    {
      key: 'a:vhf',
      ruleId: 'position',
      severity: 'A',
      mark: 'A1',
      title: 'Distress alert carries no position',
      subjects: [{ kind: 'item', id: 'vhf' }],
      measured: ['no position source is connected'],
      limit: ['a position in every alert'],
      authority: { name: 'Radio regulations of the flag', strength: 'law' },
      action: ['Connect a position source to ', 'VHF-1.'],
      overruled: null,
    },
    {
      key: 'b:w1',
      ruleId: 'feeder',
      severity: 'B',
      mark: 'B1',
      title: 'Feeder loses more than the limit',
      subjects: [RUN, { kind: 'item', id: 'a1' }],
      measured: [q(3.43, 'dB'), ', ', q(54.6, 'percent'), ' of the power'],
      limit: [q(2.218, 'dB')],
      authority: { name: 'Offshore racing rule', strength: 'race' },
      action: ['Replace W01 by a lower-loss cable over ', q(17.2, 'm'), '.'],
      overruled: null,
    },
  ],
};
