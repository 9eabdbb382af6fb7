import { figure } from '../../../core/model/figure.ts';
import type { Part, Port } from '../../../core/model/part.ts';
import { partSchema } from '../../../core/model/part.ts';
import type { DataLink, Feed, Item, Project, Run } from '../../../core/model/project.ts';
import { dataLinkSchema, feedSchema, itemSchema, projectSchema, runSchema } from '../../../core/model/project.ts';

const f = (value: number) => figure(value, 0, 'assumed', 'test');
const rf = (id: string, band: 'vhf-marine' | 'gnss' | 'l-band' | 'cellular' = 'vhf-marine'): Port => ({
  id,
  medium: 'rf',
  label: id,
  connector: 'uhf',
  bands: [band],
  impedanceOhm: 50,
});
const dc = (id: string, role: 'in' | 'out'): Port => ({ id, medium: 'dc', label: id, role });
const data: Port = { id: 'data', medium: 'data', label: 'data' };
const supply = [dc('in', 'in'), dc('out', 'out')];
const named = (id: string, ports: readonly Port[]) => ({ id, name: id, description: id, ports });

const radioFigures = {
  txPowerW: f(25),
  frequencyMhz: f(156.8),
  rxSensitivityDbm: f(-119),
  supplyVoltageV: f(12),
  txCurrentA: f(5.5),
  rxCurrentA: f(0.5),
};
const radioTraits = {
  dsc: false,
  internalGnss: false,
  needsFixToTransmit: false,
  ownBattery: false,
  portable: false,
  integralAntenna: false,
};
const antennaFigures = { gainDbi: f(2), lengthM: f(1), feedHeightM: f(0.5), hpbwDeg: f(80), vswr: f(1) };
const through = (fromPortId: string, toPortId: string, whenUnpowered: 'through' | 'open' | 'unknown') => ({
  fromPortId,
  toPortId,
  lossKey: 'lossDb',
  transmit: true,
  receive: true,
  whenUnpowered,
});

const splitter = (id: string, whenUnpowered: 'through' | 'unknown') => ({
  ...named(id, [rf('antenna'), rf('vhf'), rf('ais'), dc('in', 'in')]),
  kind: 'inline',
  deviceClass: 'splitter-active',
  throughs: [through('vhf', 'antenna', whenUnpowered), through('ais', 'antenna', 'unknown')],
  figures: { lossDb: f(0.5) },
  traits: { needsSupply: true, transmitRated: true, position: null },
});
const power = (id: string, powerClass: string) => ({
  ...named(id, supply),
  kind: 'power',
  powerClass,
  figures: { voltageV: f(12) },
  traits: {},
});
const standalone = (id: string, standaloneClass: string, dsc: boolean) => ({
  ...named(id, []),
  kind: 'standalone',
  standaloneClass,
  figures: { txPowerW: f(5), frequencyMhz: f(156.8), rxSensitivityDbm: f(-119), gainDbi: f(0) },
  traits: { dsc, internalGnss: dsc },
});
const antenna = (id: string, antennaClass: string, port: Port) => ({
  ...named(id, [port]),
  kind: 'antenna',
  antennaClass,
  figures: antennaFigures,
  traits: { polarisation: 'vertical', tradeLabel: '' },
});
const equipment = (id: string, equipmentClass: string) => ({
  ...named(id, [data, ...supply]),
  kind: 'equipment',
  equipmentClass,
  figures: {},
  traits: { needsSupply: true },
});

const coax = (id: string, ohm: number) => ({
  ...named(id, []),
  kind: 'coax',
  figures: {
    lossK1: f(0.4),
    lossK2: f(0),
    lossTolerancePercent: f(5),
    minFrequencyMhz: f(1),
    maxFrequencyMhz: f(6000),
    impedanceOhm: f(ohm),
    velocityFactor: f(0.85),
    outsideDiameterMm: f(10),
    bendOnceMm: f(25),
    massGPerM: f(100),
  },
  traits: {},
});

const PARTS: readonly Part[] = [
  {
    ...named('vhf', [rf('ant'), dc('in', 'in'), data]),
    kind: 'radio',
    radioClass: 'vhf-fixed',
    figures: radioFigures,
    traits: { ...radioTraits, dsc: true },
  },
  {
    ...named('ais', [rf('ant'), rf('gnss', 'gnss'), dc('in', 'in'), data]),
    kind: 'radio',
    radioClass: 'ais-class-b-cs',
    figures: { ...radioFigures, txPowerW: f(2), frequencyMhz: f(162) },
    traits: { ...radioTraits, internalGnss: true, needsFixToTransmit: true },
  },
  {
    ...named('terminal', [rf('ant', 'l-band'), dc('in', 'in')]),
    kind: 'radio',
    radioClass: 'l-band-messenger',
    figures: { ...radioFigures, txPowerW: f(2), frequencyMhz: f(1621) },
    traits: { ...radioTraits, ownBattery: true, portable: true },
  },
  {
    ...named('repeater', [rf('out', 'cellular'), rf('in', 'cellular')]),
    kind: 'radio',
    radioClass: 'cellular-repeater',
    figures: { ...radioFigures, txPowerW: f(0.5), frequencyMhz: f(800) },
    traits: radioTraits,
  },
  antenna('cell-antenna', 'cellular', rf('rf', 'cellular')),
  antenna('whip', 'vhf-whip', rf('rf')),
  antenna('gnss-antenna', 'gnss', rf('rf', 'gnss')),
  antenna('patch', 'l-band', rf('rf', 'l-band')),
  antenna('emergency', 'vhf-emergency', rf('rf')),
  splitter('splitter', 'unknown'),
  splitter('splitter-through', 'through'),
  {
    ...named('switch', [rf('set'), rf('a'), rf('b')]),
    kind: 'inline',
    deviceClass: 'switch',
    throughs: [through('set', 'a', 'through'), through('set', 'b', 'through')],
    figures: { lossDb: f(0.1) },
    traits: { needsSupply: false, transmitRated: true, position: 1 },
  },
  {
    ...named('joint', [rf('a'), rf('b')]),
    kind: 'inline',
    deviceClass: 'joint',
    throughs: [through('a', 'b', 'through')],
    figures: { lossDb: f(0.01) },
    traits: { needsSupply: false, transmitRated: true, position: null },
  },
  {
    ...named('gps', [data, dc('in', 'in')]),
    kind: 'position-source',
    figures: { supplyVoltageV: f(12), currentA: f(0.2) },
    traits: { integralAntenna: true, display: false },
  },
  equipment('bus', 'data-bus'),
  equipment('lamp', 'lamp'),
  equipment('radar', 'radar'),
  power('bank', 'battery-bank'),
  power('breaker', 'breaker'),
  power('panel', 'panel'),
  standalone('handheld', 'handheld-vhf', false),
  standalone('handheld-dsc', 'handheld-vhf-dsc', true),
  standalone('beacon', 'beacon-406', false),
  {
    ...named('plug', []),
    kind: 'connector',
    connectorType: 'uhf',
    lossTable: { rows: [{ frequencyMhz: 100, lossDb: 0.01 }], toleranceDb: 0, basis: 'assumed', source: 'test' },
    figures: { maxFrequencyMhz: f(300) },
    traits: {},
  },
  coax('coax', 50),
  coax('tv-cable', 75),
  {
    ...named('wire', []),
    kind: 'conductor',
    figures: { areaMm2: f(2.5), ohmPerKm: f(7), ampacityA: f(30) },
    traits: { awg: null },
  },
].map((part) => partSchema.parse(part));

export const P = (xM: number, zM: number, yM = 0) => ({ xM, yM, zM });

export function item(id: string, partId: string, placeId: string | null, more: Partial<Item> = {}): Item {
  const at = { hut: P(6, 1), masthead: P(5, 16), arch: P(11, 4), bilge: P(6, -0.3), locker: P(8, 0.6) };
  const position = at[placeId as keyof typeof at] ?? P(8, 1.5);
  return itemSchema.parse({ id, tag: id, partId, position, placeId, ...more });
}

export function run(id: string, from: string, to: string, more: Partial<Run> = {}): Run {
  const end = (text: string) => ({ itemId: text.split('.')[0] ?? '', portId: text.split('.')[1] ?? '' });
  return runSchema.parse({
    id,
    number: id,
    cableId: 'coax',
    from: end(from),
    to: end(to),
    measuredLengthM: 10,
    ...more,
  });
}

export function feed(id: string, from: string, to: string, more: Partial<Feed> = {}): Feed {
  const ends = { from: { itemId: from, portId: 'out' }, to: { itemId: to, portId: 'in' } };
  return feedSchema.parse({ id, number: id, ...ends, conductorId: 'wire', lengthM: 3, ...more });
}

export function link(id: string, from: string, to: string, carries: DataLink['carries'] = ['position']): DataLink {
  const ends = { from: { itemId: from, portId: 'data' }, to: { itemId: to, portId: 'data' } };
  return dataLinkSchema.parse({ id, number: id, ...ends, carries, standard: 'nmea-2000' });
}

/** A small sloop: masthead VHF and AIS behind one splitter, one breaker, one bank, a GNSS on a bus, handheld and beacon. */
export function smallBoat(change: Partial<Project> = {}): Project {
  const place = (id: string, position: object, more: object = {}) => ({
    id,
    name: id,
    position,
    structureId: null,
    compartmentId: null,
    outdoors: false,
    overhead: 'open',
    ...more,
  });
  return projectSchema.parse({
    format: 'backstay',
    version: 1,
    title: 'Test boat',
    layoutName: 'As found',
    boat: {
      name: 'Test boat',
      kind: 'sloop',
      loaM: 12,
      lwlM: 10,
      beamM: 3.8,
      draughtM: 2,
      airDraughtM: 17,
      freeboardForeM: 1.4,
      freeboardMidM: 1.1,
      freeboardAftM: 1.1,
      hullMaterial: 'grp',
      deckMaterial: 'grp',
      masts: [{ id: 'main', name: 'Mast', xM: 5, footZM: 1.5, truckZM: 16, material: 'aluminium', stepped: 'deck' }],
      fittings: [
        { id: 'arch', name: 'Arch', kind: 'arch', xForeM: 10.8, xAftM: 11.2, zBaseM: 1, zTopM: 4, material: 'steel' },
      ],
      compartments: [{ id: 'saloon', name: 'Saloon', side: 'centre', xForeM: 4, xAftM: 8, soleZM: -0.3 }],
    },
    places: [
      place('hut', P(6, 1), { compartmentId: 'saloon' }),
      place('masthead', P(5, 16), { structureId: 'main', outdoors: true }),
      place('arch', P(11, 4), { structureId: 'arch', outdoors: true }),
      place('bilge', P(6, -0.3), { compartmentId: 'saloon' }),
      place('locker', P(8, 0.6), { compartmentId: 'saloon' }),
    ],
    parts: PARTS,
    items: [
      item('VHF', 'vhf', 'hut'),
      item('AIS', 'ais', 'hut'),
      item('SP', 'splitter', 'hut'),
      item('A1', 'whip', 'masthead'),
      item('GPS', 'gps', 'arch'),
      item('BUS', 'bus', 'hut'),
      item('BRK', 'breaker', 'hut'),
      item('BAT', 'bank', 'bilge', { name: 'House bank' }),
      item('HH', 'handheld', null),
      item('EPIRB', 'beacon', null, { facts: { bracket: 'float-free', registration: 'this-boat' } }),
    ],
    runs: [
      run('W1', 'VHF.ant', 'SP.vhf'),
      run('W2', 'AIS.ant', 'SP.ais'),
      run('W3', 'SP.antenna', 'A1.rf', { measuredLengthM: 15 }),
    ],
    feeds: [feed('F0', 'BAT', 'BRK'), feed('F1', 'BRK', 'VHF'), feed('F2', 'BRK', 'AIS'), feed('F3', 'BRK', 'SP')],
    dataLinks: [link('D1', 'GPS', 'BUS'), link('D2', 'BUS', 'VHF')],
    stations: [],
    settings: { horizonRule: 'four-thirds-earth', feederLossLimitDb: 2.218, voltageDropLimitPercent: 3, margin: [] },
    ...change,
  });
}
