import { newProject } from '../../../core/model/defaults.ts';
import { figure } from '../../../core/model/figure.ts';
import type { Part } from '../../../core/model/part.ts';
import { type Project, projectSchema, type Subject } from '../../../core/model/project.ts';
import type { Scene } from '../../../renderer/canvas/gestures/gesture.ts';
import { loadPreferences } from '../../../renderer/store/preferences.ts';
import { type AppStore, createAppStore } from '../../../renderer/store/store.ts';

const f = (value: number) => figure(value, 0, 'assumed', 'test');
const socket = (id: string) => ({
  id,
  medium: 'rf' as const,
  label: id,
  connector: 'uhf' as const,
  bands: ['vhf-marine' as const],
  impedanceOhm: 50,
});

const PARTS: Part[] = [
  {
    id: 't-vhf',
    name: 'Test VHF',
    description: 'Fixed set',
    kind: 'radio',
    radioClass: 'vhf-fixed',
    ports: [socket('ant'), { id: 'dc', medium: 'dc', label: 'supply', role: 'in' }],
    figures: {
      txPowerW: f(25),
      frequencyMhz: f(156.8),
      rxSensitivityDbm: f(-107),
      supplyVoltageV: f(12),
      txCurrentA: f(5),
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
  },
  {
    id: 't-whip',
    name: 'Test whip',
    description: 'Masthead whip',
    kind: 'antenna',
    antennaClass: 'vhf-whip',
    ports: [socket('feed')],
    figures: { gainDbi: f(2.15), lengthM: f(0.9), feedHeightM: f(0.4), hpbwDeg: f(78), vswr: f(1.2) },
    traits: { polarisation: 'vertical', tradeLabel: '3 dB' },
  },
  {
    id: 't-joint',
    name: 'Test joint',
    description: 'Plug pair',
    kind: 'inline',
    deviceClass: 'joint',
    ports: [socket('a'), socket('b')],
    throughs: [
      { fromPortId: 'a', toPortId: 'b', lossKey: 'loss', transmit: true, receive: true, whenUnpowered: 'through' },
    ],
    figures: { loss: f(0.03) },
    lossTables: {},
    traits: { needsSupply: false, transmitRated: true, position: null },
  },
  {
    id: 't-coax',
    name: 'Test coax',
    description: '50 ohm',
    kind: 'coax',
    ports: [],
    figures: {
      lossK1: f(1.6),
      lossK2: f(0.007),
      lossTolerancePercent: f(10),
      minFrequencyMhz: f(1),
      maxFrequencyMhz: f(1000),
      impedanceOhm: f(50),
      velocityFactor: f(0.66),
      outsideDiameterMm: f(5),
      bendOnceMm: f(25),
      massGPerM: f(37),
    },
    traits: {},
  },
];

/** A ketch with a set (`vhf`, x 8, z 1), a whip (`whip`, x 4, z 13), run `w` between them with a bend at x 4, z 2, and a lone set (`spare`). */
export function smallProject(): Project {
  const bare = newProject({
    name: 'Test',
    kind: 'ketch',
    loaM: 12,
    beamM: 3.8,
    draughtM: 1.9,
    airDraughtM: 14,
    freeboardM: 1.1,
  });
  const at = (xM: number, zM: number) => ({ xM, yM: 0, zM });
  return projectSchema.parse({
    ...bare,
    places: [
      { ...bare.places[0], id: 'table', name: 'Chart table', position: at(6, 1) },
      { ...bare.places[0], id: 'foot', name: 'Mast foot', position: at(4.2, 2.4) },
    ],
    parts: PARTS,
    items: [
      { id: 'vhf', tag: 'VHF-1', partId: 't-vhf', position: at(8, 1) },
      { id: 'whip', tag: 'A1', partId: 't-whip', position: at(4, 13) },
      { id: 'spare', tag: 'VHF-2', partId: 't-vhf', position: at(10, 1) },
    ],
    runs: [
      {
        id: 'w',
        number: 'W01',
        cableId: 't-coax',
        from: { itemId: 'whip', portId: 'feed' },
        to: { itemId: 'vhf', portId: 'ant' },
        via: [{ position: at(4, 2), placeId: null }],
      },
    ],
  });
}

/** A part of the fixture by id. */
export function testPart(id: string): Part {
  const part = PARTS.find((known) => known.id === id);
  if (!part) throw new Error(`no test part ${id}`);
  return part;
}

/** A sheet at 40 px per metre whose hits are told by the test: metre x at px 600 − 40 x, z at px 600 − 40 z. */
export function testScene(project: Project, hit: Subject | null = null): { scene: Scene; store: AppStore } {
  const store = createAppStore(project, loadPreferences({ getItem: () => null }));
  const scene: Scene = {
    store,
    projection: () => ({ originX: 600, originY: 600, scale: 40 }),
    size: () => ({ width: 700, height: 700 }),
    subjectAt: () => (hit ? { subject: hit, isMark: false } : null),
  };
  return { scene, store };
}

/** Sheet px of a point of the boat, in the projection of `testScene`. */
export const px = (xM: number, zM: number) => ({ x: 600 - 40 * xM, y: 600 - 40 * zM });
export const PLAIN = { shift: false, alt: false };
