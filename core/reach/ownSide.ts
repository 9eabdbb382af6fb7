import { indexProject } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import type { Part, PartOf } from '../model/part.ts';
import type { Item, Project } from '../model/project.ts';
import { LEAST_HEIGHT_M } from '../propagation/sphericalEarth.ts';
import { powerToleranceDb } from '../rf/decibels.ts';
import { chainOf } from './feederTerms.ts';
import { antennaTerms, ownGainTerm } from './gainTerms.ts';
import { type ReceivingSide, receiverNoise } from './receiverNoise.ts';
import { powerOf, powerTerm, sensitivityTerm, turnedDownTerm } from './setTerms.ts';
import { sumOf, type Term } from './terms.ts';
import { heeledHeightM } from './trial.ts';
import type { SeaService, TrialState } from './types.ts';

/** What the links of one radio by one antenna share, whatever station they go to. */
export interface OwnSide {
  readonly id: string;
  readonly pathId: string | null;
  readonly item: Item;
  readonly service: SeaService;
  readonly frequencyMhz: number;
  readonly heightM: number;
  /** Null where it does not send, or does not receive. */
  readonly transmit: OwnWay | null;
  readonly receive: OwnWay | null;
  /** Null where it does not receive. */
  readonly receiving: ReceivingSide | null;
  /** Of the set, dB. No station states any, so its figures are taken to be as uncertain as the own set's. */
  readonly powerToleranceDb: number;
  readonly sensitivityToleranceDb: number;
}

/** The own terms of one direction, in the order of that direction. */
export interface OwnWay {
  readonly terms: readonly Term[];
  /** Their sum if nothing lay between radio and antenna. */
  readonly withoutFeederDb: number;
}

/** What a side is made from. */
export type Source =
  | { readonly kind: 'path'; readonly path: PathBudget; readonly item: Item; readonly part: PartOf<'radio'> }
  | { readonly kind: 'standalone'; readonly item: Item; readonly part: PartOf<'standalone'> };

/** Lower than the item's own place: such a set is used from the raft or the water, m. */
const AT_THE_WATER_M = 1;
const HOMING_MHZ = 121.5;

const SERVICE_OF_PATH: Partial<Record<PathBudget['service'], SeaService>> = {
  'vhf-voice': 'voice',
  ais: 'ais',
  cellular: 'cellular',
  wifi: 'wifi',
};

/** What a source is for over the sea; null for what is not reckoned here. */
export function seaServiceOf(source: Source): SeaService | null {
  if (source.kind === 'standalone') {
    const { standaloneClass, figures } = source.part;
    if (standaloneClass.startsWith('handheld-vhf')) return 'voice';
    if (standaloneClass === 'ais-sart' || standaloneClass === 'ais-mob') return 'ais';
    return (figures.homingPowerW?.value ?? 0) > 0 ? 'homing' : null;
  }
  const { path, part } = source;
  // A repeater's second socket feeds the antenna indoors.
  if (part.radioClass === 'cellular-repeater' && path.portId !== part.ports.find(({ medium }) => medium === 'rf')?.id) {
    return null;
  }
  return SERVICE_OF_PATH[path.service] ?? null;
}

export const frequencyOf = (source: Source, service: SeaService): number => {
  if (source.kind === 'path') return source.path.frequencyMhz;
  const { frequencyMhz, homingFrequencyMhz } = source.part.figures;
  return service === 'homing' ? (homingFrequencyMhz?.value ?? HOMING_MHZ) : frequencyMhz.value;
};

/** Everything on the own side of a link, in a state of heel and power. */
export function ownSide(project: Project, source: Source, service: SeaService, state: TrialState): OwnSide {
  return source.kind === 'path'
    ? sideOfPath(project, source, service, state)
    : sideOfStandalone(source.item, source.part, service, state);
}

function sideOfPath(
  project: Project,
  { path, item, part }: Extract<Source, { kind: 'path' }>,
  service: SeaService,
  state: TrialState,
): OwnSide {
  const index = indexProject(project);
  const antenna = index.items.get(path.antennaId) ?? item;
  const antennaPart: Part = index.effective.get(antenna.id) ?? part;
  const heightM = heeledHeightM(state.heelDeg, antenna.position.yM, path.antennaHeightM);
  const { rxSensitivityDbm, noiseFigureDb } = part.figures;
  const power = powerOf(part.figures, path.txPowerW, state);
  const receiver = receiverNoise(service, noiseFigureDb, rxSensitivityDbm);
  const chain = chainOf(path, receiver.noiseFigureDb);
  const gains = antennaTerms({ path, antenna, antennaPart, heightM, state });
  const sensitivity = sensitivityTerm(item, rxSensitivityDbm);
  return {
    id: path.id,
    pathId: path.id,
    item,
    service,
    frequencyMhz: path.frequencyMhz,
    heightM,
    transmit: power && wayOut(powerTerm(item, power, state), chain.transmit, gains, service),
    receive: {
      terms: [...gains, ...chain.receive, sensitivity],
      withoutFeederDb: sumOf(gains) + sensitivity.value,
    },
    receiving: {
      frequencyMhz: path.frequencyMhz,
      sensitivityDbm: rxSensitivityDbm.value,
      receiver,
      receiveLossDb: 0 - sumOf(chain.receive),
      antennaGainDbi: path.antennaGainDbi,
    },
    powerToleranceDb: power ? powerToleranceDb(power.value, power.tolerance) : 0,
    sensitivityToleranceDb: rxSensitivityDbm.tolerance,
  };
}

/** A set whose power is stated as what it may radiate is turned down by what its antenna gains beyond the feeder's loss. */
function wayOut(power: Term, feeder: readonly Term[], gains: readonly Term[], service: SeaService): OwnWay {
  if (service !== 'wifi') {
    return { terms: [power, ...feeder, ...gains], withoutFeederDb: power.value + sumOf(gains) };
  }
  const [gain] = gains;
  const peakDbi = gain?.value ?? 0;
  const down = turnedDownTerm(peakDbi + sumOf(feeder));
  return {
    terms: [power, down, ...feeder, ...gains],
    withoutFeederDb: power.value + turnedDownTerm(peakDbi).value + sumOf(gains),
  };
}

function sideOfStandalone(item: Item, part: PartOf<'standalone'>, service: SeaService, state: TrialState): OwnSide {
  const { figures } = part;
  const isHandheld = service === 'voice';
  const source: Source = { kind: 'standalone', item, part };
  const frequencyMhz = frequencyOf(source, service);
  const power = powerOf(
    figures,
    (service === 'homing' ? figures.homingPowerW : figures.txPowerW)?.value ?? null,
    state,
  );
  const zM = isHandheld ? item.position.zM : Math.min(AT_THE_WATER_M, item.position.zM);
  const heightM = Math.max(LEAST_HEIGHT_M, zM);
  const gain = ownGainTerm(item, figures.gainDbi, heightM, isHandheld);
  const sensitivity = sensitivityTerm(item, figures.rxSensitivityDbm);
  const receiver = receiverNoise(service, undefined, figures.rxSensitivityDbm);
  return {
    id: item.id,
    pathId: null,
    item,
    service,
    frequencyMhz,
    heightM,
    transmit: power && wayOut(powerTerm(item, power, state), [], [gain], service),
    receive: isHandheld ? { terms: [gain, sensitivity], withoutFeederDb: gain.value + sensitivity.value } : null,
    receiving: isHandheld
      ? {
          frequencyMhz,
          sensitivityDbm: figures.rxSensitivityDbm.value,
          receiver,
          receiveLossDb: 0,
          antennaGainDbi: figures.gainDbi.value,
        }
      : null,
    powerToleranceDb: power ? powerToleranceDb(power.value, power.tolerance) : 0,
    sensitivityToleranceDb: figures.rxSensitivityDbm.tolerance,
  };
}
