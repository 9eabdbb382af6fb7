import { indexProject, type ProjectIndex } from '../catalogue/lookup.ts';
import type { Part, PartOf, RfPort } from '../model/part.ts';
import type { Item, Project } from '../model/project.ts';
import { type CascadeResult, cascade, lossStage } from '../rf/cascade.ts';
import { afterLossW, combineTolerances, lostPercent, wattsToDbm } from '../rf/decibels.ts';
import { lossOfOpenEndVswrDb, openEndVswr, vswrAtInput } from '../rf/mismatch.ts';
import { serviceOf, serviceOfClass, type Working, workingFrequency } from './band.ts';
import { antennaMismatch, deviceLoss, type Loss, runLosses } from './elements.ts';
import { measuredFeederLossDb } from './measuredLoss.ts';
import { runLengthM } from './route.ts';
import type { PathBudget, PathElement } from './types.ts';
import { isSetFor, type Walk, walksFrom } from './walk.ts';

/** A VSWR beyond this is off any meter's scale; a feeder without loss would read without limit. */
export const MAX_SHOWN_VSWR = 99;
const LEAST_READABLE_LOSS_DB = lossOfOpenEndVswrDb(MAX_SHOWN_VSWR);
/** Port id of a set whose antenna is inside it. */
export const INTEGRAL_PORT_ID = 'integral';

type SetPart = PartOf<'radio'> | PartOf<'position-source'>;

interface Known {
  readonly inputs: readonly unknown[];
  readonly budget: PathBudget;
}
const cache = new WeakMap<Item, Map<string, Known>>();

/**
 * The loss of every path: from each antenna socket of each radio and position source to each antenna it reaches, element
 * by element, and one path without elements for each radio with its antenna inside. Whatever is to be removed is not
 * counted. A budget is the same object as before where nothing it depends on changed.
 */
export function budgetPaths(project: Project): readonly PathBudget[] {
  const index = indexProject(project);
  const budgets: PathBudget[] = [];
  for (const item of project.items) {
    const part = index.effective.get(item.id);
    if (item.status === 'remove' || !part || !isSet(part)) continue;
    if (part.kind === 'radio' && part.traits.integralAntenna) budgets.push(integralBudget(item, part));
    for (const port of part.ports) {
      if (port.medium === 'rf') budgets.push(...budgetsFrom(project, index, item, part, port));
    }
  }
  return budgets;
}

const isSet = (part: Part): part is SetPart => part.kind === 'radio' || part.kind === 'position-source';

function budgetsFrom(
  project: Project,
  index: ProjectIndex,
  item: Item,
  part: SetPart,
  port: RfPort,
): readonly PathBudget[] {
  const timesSeen = new Map<string, number>();
  return walksFrom(project, item, port).map((walk) => {
    const base = `${item.id}.${port.id}>${walk.antenna.id}`;
    const times = (timesSeen.get(base) ?? 0) + 1;
    timesSeen.set(base, times);
    const id = times === 1 ? base : `${base}#${times}`;
    const lengthsM = walk.hops.map((hop) => (hop.kind === 'run' ? runLengthM(project, hop.run) : 0));
    return remembered(item, id, inputsOf(project, index, part, walk, lengthsM), () =>
      makeBudget(project, index, { id, item, part, port, walk, lengthsM }),
    );
  });
}

/** Everything a budget depends on, by identity or value. */
function inputsOf(
  project: Project,
  index: ProjectIndex,
  part: SetPart,
  walk: Walk,
  lengthsM: readonly number[],
): readonly unknown[] {
  const hops = walk.hops.flatMap((hop): readonly unknown[] => {
    if (hop.kind === 'device') return [hop.item.tag, hop.part, hop.through];
    const { cableId, connectorFromId, connectorToId } = hop.run;
    const partIds = [cableId, connectorFromId ?? '', connectorToId ?? ''];
    return [hop.run, hop.fromRadioEnd, ...partIds.map((partId) => index.parts.get(partId))];
  });
  return [part, walk.antenna, walk.antennaPart, project.measurements, ...lengthsM, ...hops];
}

function remembered(item: Item, id: string, inputs: readonly unknown[], make: () => PathBudget): PathBudget {
  const ofItem = cache.get(item) ?? new Map<string, Known>();
  cache.set(item, ofItem);
  const old = ofItem.get(id);
  if (old && old.inputs.length === inputs.length && old.inputs.every((input, i) => input === inputs[i]))
    return old.budget;
  const budget = make();
  ofItem.set(id, { inputs, budget });
  return budget;
}

interface Ends {
  readonly id: string;
  readonly item: Item;
  readonly part: SetPart;
  readonly port: RfPort;
  readonly walk: Walk;
  readonly lengthsM: readonly number[];
}

function makeBudget(project: Project, index: ProjectIndex, ends: Ends): PathBudget {
  const { id, item, part, port, walk } = ends;
  const radio = part.kind === 'radio' ? part : null;
  const working = workingFrequency(port.bands, radio?.figures.frequencyMhz.value ?? 0);
  const feeder = walk.hops.flatMap((hop, i) =>
    hop.kind === 'run'
      ? runLosses(index, hop, ends.lengthsM[i] ?? 0, working.frequencyMhz)
      : [deviceLoss(hop, working.frequencyMhz)],
  );
  const devices = walk.hops.filter((hop) => hop.kind === 'device');
  const canTransmit = devices.every((hop) => hop.through.transmit);
  const txPowerW = canTransmit ? transmitPowerW(radio, working) : null;
  // A tuner presents its own match to the radio; what the antenna reads beyond it says nothing about the feeder.
  const isTuned = devices.some((hop) => hop.part.deviceClass === 'tuner');
  const losses = isTuned ? feeder : [...feeder, antennaMismatch(walk.antenna, walk.antennaPart)];
  return {
    id,
    radioId: item.id,
    portId: port.id,
    antennaId: walk.antenna.id,
    service: serviceOf(working, radio?.radioClass ?? null),
    frequencyMhz: working.frequencyMhz,
    canTransmit,
    runIds: walk.hops.flatMap((hop) => (hop.kind === 'run' ? [hop.run.id] : [])),
    deviceIds: devices.map((hop) => hop.item.id),
    ...totals(losses, txPowerW, walk.antennaPart.figures.gainDbi.value),
    antennaHeightM: walk.antenna.position.zM + walk.antennaPart.figures.feedHeightM.value,
    ...matchOf(isTuned ? 1 : walk.antennaPart.figures.vswr.value, sumDb(feeder)),
    reception: receptionOf(losses),
    openEndVswr: shownOpenEndVswr(sumDb(feeder)),
    measuredLossDb: measuredFeederLossDb(project.measurements, item.id, walk.hops, feeder),
    switchIds: devices.filter((hop) => !isSetFor(hop)).map((hop) => hop.item.id),
  };
}

/**
 * Power into a path: the set's own, on its own frequency, or what it sends on the marine VHF channels beside it; null for a
 * receiver or a receiving socket.
 */
function transmitPowerW(radio: PartOf<'radio'> | null, working: Working): number | null {
  const onVhf = working.band === 'vhf-marine' ? radio?.figures.vhfTxPowerW?.value : undefined;
  const watts = (working.isOwn ? radio?.figures.txPowerW.value : onVhf) ?? 0;
  return watts > 0 ? watts : null;
}

type Totals = Pick<
  PathBudget,
  'elements' | 'lossDb' | 'toleranceDb' | 'lostPercent' | 'txPowerW' | 'wattsAtAntenna' | 'eirpDbm' | 'antennaGainDbi'
>;

function totals(losses: readonly Loss[], txPowerW: number | null, antennaGainDbi: number): Totals {
  const lossDb = sumDb(losses);
  return {
    elements: withRunningTotals(losses, txPowerW),
    lossDb,
    toleranceDb: combineTolerances(losses.map((loss) => loss.toleranceDb)),
    lostPercent: lostPercent(lossDb),
    txPowerW,
    wattsAtAntenna: txPowerW === null ? null : afterLossW(txPowerW, lossDb),
    eirpDbm: txPowerW === null ? null : wattsToDbm(txPowerW) - lossDb + antennaGainDbi,
    antennaGainDbi,
  };
}

function withRunningTotals(losses: readonly Loss[], txPowerW: number | null): readonly PathElement[] {
  let runningLossDb = 0;
  return losses.map((loss) => {
    const before = runningLossDb;
    runningLossDb += loss.lossDb;
    return {
      ...loss,
      runningLossDb,
      wattsIn: txPowerW === null ? null : afterLossW(txPowerW, before),
      wattsOut: txPowerW === null ? null : afterLossW(txPowerW, runningLossDb),
      shareLostPercent: lostPercent(runningLossDb) - lostPercent(before),
    };
  });
}

/** The antenna's VSWR and what the feeder lets a meter at the radio see of it. A tuner shows the radio a match of its own. */
function matchOf(vswr: number, feederLossDb: number): Pick<PathBudget, 'antennaVswr' | 'radioVswr'> {
  const antennaVswr = Math.max(1, vswr);
  return { antennaVswr, radioVswr: vswrAtInput(feederLossDb, antennaVswr) };
}

/** Friis over the path as the signal comes in, antenna side first. */
function receptionOf(losses: readonly Loss[]): CascadeResult {
  const stages = losses.flatMap(({ lossDb, amplifier }) => [
    ...(lossDb > 0 ? [lossStage(lossDb)] : []),
    ...(amplifier ? [amplifier] : []),
  ]);
  return cascade(stages.reverse());
}

const sumDb = (losses: readonly Loss[]): number => losses.reduce((sum, loss) => sum + loss.lossDb, 0);

function shownOpenEndVswr(feederLossDb: number): number {
  return feederLossDb > LEAST_READABLE_LOSS_DB ? openEndVswr(feederLossDb) : MAX_SHOWN_VSWR;
}

/** A set with its antenna inside: nothing between the two, and no gain that the figures state. */
function integralBudget(item: Item, part: PartOf<'radio'>): PathBudget {
  const id = `${item.id}.${INTEGRAL_PORT_ID}>${item.id}`;
  return remembered(item, id, [part], () => {
    const watts = part.figures.txPowerW.value;
    const frequencyMhz = part.figures.frequencyMhz.value;
    return {
      id,
      radioId: item.id,
      portId: INTEGRAL_PORT_ID,
      antennaId: item.id,
      service: serviceOfClass(part.radioClass),
      frequencyMhz,
      canTransmit: true,
      runIds: [],
      deviceIds: [],
      ...totals([], watts > 0 ? watts : null, 0),
      antennaHeightM: item.position.zM,
      ...matchOf(1, 0),
      reception: receptionOf([]),
      openEndVswr: MAX_SHOWN_VSWR,
      measuredLossDb: null,
      switchIds: [],
    };
  });
}
