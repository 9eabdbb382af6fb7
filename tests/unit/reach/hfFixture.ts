import type { PartOf, Port } from '../../../core/model/part.ts';
import { type Item, itemSchema, type Project } from '../../../core/model/project.ts';
import { f, inline, item, project, radio, run } from '../links/fixture.ts';

/** An invented HF installation with round figures: set, 10 m of coax, tuner, 1 m of lead, wire. */

const port = (id: string, band: 'mf-hf' | 'navtex'): Port => ({
  id,
  medium: 'rf',
  label: id,
  connector: 'uhf',
  bands: [band],
  impedanceOhm: 50,
});

export const HF_SET = radio('hf', {
  radioClass: 'mf-hf',
  ports: [port('rf', 'mf-hf')],
  figures: { ...radio('x').figures, txPowerW: f(150, 30), frequencyMhz: f(8.291) },
});
const FAX = radio('fax', {
  radioClass: 'navtex-receiver',
  ports: [port('rf', 'mf-hf')],
  figures: { ...radio('x').figures, txPowerW: f(0), frequencyMhz: f(8.291) },
});
const NAVTEX = radio('navtex', {
  radioClass: 'navtex-receiver',
  ports: [port('rf', 'navtex')],
  figures: { ...radio('x').figures, txPowerW: f(0), frequencyMhz: f(0.518) },
});

const antenna = (
  id: string,
  antennaClass: PartOf<'antenna'>['antennaClass'],
  figures: Partial<PartOf<'antenna'>['figures']>,
): PartOf<'antenna'> => ({
  kind: 'antenna',
  id,
  name: id,
  description: '',
  ports: [{ ...port('feed', antennaClass === 'navtex' ? 'navtex' : 'mf-hf') }],
  antennaClass,
  figures: { gainDbi: f(-2, 4), lengthM: f(7), feedHeightM: f(0), hpbwDeg: f(80), vswr: f(1), ...figures },
  traits: { polarisation: 'vertical', tradeLabel: '' },
});
const EARTH = { groundLossOhm: f(10, 8), conductorRadiusMm: f(3) };

const LEAD: PartOf<'coax'> = {
  kind: 'coax',
  id: 'lead',
  name: 'lead',
  description: '',
  ports: [],
  figures: {
    lossK1: f(0),
    lossK2: f(0),
    lossTolerancePercent: f(0),
    minFrequencyMhz: f(1),
    maxFrequencyMhz: f(30),
    impedanceOhm: f(50),
    velocityFactor: f(1),
    outsideDiameterMm: f(7),
    bendOnceMm: f(30),
    massGPerM: f(50),
  },
  traits: {},
};

const TUNER: PartOf<'inline'> = {
  ...inline(
    'tuner',
    'tuner',
    [],
    [
      {
        fromPortId: 'set',
        toPortId: 'antenna',
        lossKey: 'through',
        transmit: true,
        receive: true,
        whenUnpowered: 'open',
      },
    ],
  ),
  ports: [port('set', 'mf-hf'), port('antenna', 'mf-hf')],
};

const PARTS = [
  HF_SET,
  FAX,
  NAVTEX,
  LEAD,
  TUNER,
  antenna('hf-whip', 'hf-whip', EARTH),
  antenna('hf-wire', 'hf-wire', { ...EARTH, lengthM: f(9) }),
  antenna('navtex-rod', 'navtex', { lengthM: f(0.4), amplifierGainDb: f(10) }),
];

/** The wire stands: 9 m straight up from 2 m, its lead 1 m from the tuner below it. */
export const WIRE = item('wire', 'hf-wire', 2, { endPosition: { xM: 5, yM: 0, zM: 11 } });
export const TUNER_ITEM: Item = item('atu', 'tuner', 1, { facts: { earthTo: 'plate' } });

export interface HfBoat {
  readonly antenna?: Item;
  readonly tuner?: Item;
  readonly coaxM?: number;
  readonly insideMetalM?: number;
  readonly over?: Partial<Project>;
}

/** The installation with its tuner. */
export function hfBoat({
  antenna: end = WIRE,
  tuner = TUNER_ITEM,
  coaxM = 10,
  insideMetalM,
  over,
}: HfBoat = {}): Project {
  const lead = { cableId: 'lead', ...(insideMetalM === undefined ? {} : { facts: { insideMetalM } }) };
  return project(
    [item('set', 'hf'), tuner, end],
    [run('w1', 'set.rf', 'atu.set', coaxM), run('w2', 'atu.antenna', `${end.id}.feed`, 1, lead)],
    PARTS,
    over ?? {},
  );
}

/** A set straight to an antenna by coax, no tuner between. */
export function straightTo(setPartId: string, antennaPartId: string): Project {
  const end = itemSchema.parse({ ...item('end', antennaPartId, 4) });
  return project([item('set', setPartId), end], [run('w1', 'set.rf', 'end.feed', 5)], PARTS);
}
