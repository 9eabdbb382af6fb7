import { indexProject } from '../catalogue/lookup.ts';
import { runLengthM } from '../links/route.ts';
import type { PathBudget, PathElement } from '../links/types.ts';
import type { PartOf } from '../model/part.ts';
import type { Conditions, Item, Project } from '../model/project.ts';
import { coaxLoss } from '../rf/coax.ts';
import { afterLossW, combineTolerances, powerToleranceDb } from '../rf/decibels.ts';
import {
  type BaseFedWire,
  insulatorPeakV,
  LONGEST_GROUND_WAVE_WAVELENGTHS,
  LONGEST_WAVELENGTHS,
  leastEfficiency,
  lengthInWavelengths,
  type ShortAntenna,
  shortAntenna,
} from '../rf/shortAntenna.ts';
import { type HfChannel, type HfPlan, hfPlan } from './hfBands.ts';
import { bandNotes, resultNotes } from './hfNotes.ts';
import { dayNoise, type HfEnd, reachToLike, reachToShore } from './hfReach.ts';
import { type HfWire, hfWire } from './hfWire.ts';
import type { HfBand, HfResult } from './types.ts';

type AntennaPart = PartOf<'antenna'>;

/** Ground loss where an HF antenna states none, ohm, and its tolerance (common practice, no source). */
const USUAL_GROUND_OHM = { value: 10, tolerance: 8 };
/** Noise figure of an HF receiver where none is stated, dB (common practice, no source); below 10 MHz the sky drowns it. */
const USUAL_NOISE_FIGURE_DB = 15;

/** A set, its antenna and the way between. */
interface Installation {
  readonly project: Project;
  readonly path: PathBudget;
  readonly part: PartOf<'radio'>;
  readonly antenna: AntennaPart;
  readonly wire: HfWire;
  readonly plan: HfPlan;
  readonly conditions: Conditions;
}

interface Known {
  readonly inputs: readonly unknown[];
  readonly result: HfResult;
}
const cache = new WeakMap<PathBudget, Known>();

/**
 * Every MF or HF set, NAVTEX and weather-fax receiver with each HF or NAVTEX antenna it reaches: on each band the antenna, the
 * power it radiates, the volts at its foot, and how far the ground wave is read by day. Results are the same objects as
 * before where nothing they depend on changed.
 * Sources: short antenna, ground wave and noise as in their own files; services and far ends in hfBands.ts.
 */
export function solveHf(project: Project, paths: readonly PathBudget[]): readonly HfResult[] {
  const index = indexProject(project);
  return paths.flatMap((path) => {
    const part = index.effective.get(path.radioId);
    const item = index.items.get(path.antennaId);
    const antenna = index.effective.get(path.antennaId);
    if (part?.kind !== 'radio' || antenna?.kind !== 'antenna' || !item || !isHfAntenna(antenna)) return [];
    const plan = hfPlan(part, path.frequencyMhz);
    return plan ? [remembered(project, path, part, item, antenna, plan)] : [];
  });
}

const isHfAntenna = ({ antennaClass }: AntennaPart): boolean =>
  antennaClass === 'hf-whip' || antennaClass === 'hf-wire' || antennaClass === 'navtex';

function remembered(
  project: Project,
  path: PathBudget,
  part: PartOf<'radio'>,
  item: Item,
  antenna: AntennaPart,
  plan: HfPlan,
): HfResult {
  const { items } = indexProject(project);
  const { conditions } = project.settings;
  // The path stands for its runs, cables and devices; where the devices sit and what is known of them it does not tell.
  const inputs = [part, item, antenna, conditions, ...path.deviceIds.map((id) => items.get(id))];
  const old = cache.get(path);
  if (old?.inputs.length === inputs.length && old.inputs.every((input, i) => input === inputs[i])) return old.result;
  const wire = hfWire(project, path, item, antenna);
  const result = resultOf({ project, path, part, antenna, wire, plan, conditions });
  cache.set(path, { inputs, result });
  return result;
}

function resultOf(own: Installation): HfResult {
  const { path, wire, plan, antenna } = own;
  return {
    id: path.id,
    pathId: path.id,
    itemId: path.radioId,
    antennaId: path.antennaId,
    canTransmit: transmitW(own) !== null,
    effectiveLengthM: wire.verticalM,
    groundLossOhm: groundLoss(antenna).value,
    bands: plan.channels.map((channel) => bandOf(own, channel)),
    notes: resultNotes(wire, transmitW(own) !== null, isActive(antenna)),
  };
}

function bandOf(own: Installation, channel: HfChannel): HfBand {
  const { plan, conditions, wire, antenna } = own;
  const { frequencyMhz } = channel;
  const conductor = conductorOf(wire, frequencyMhz);
  const waves = lengthInWavelengths(conductor);
  const closed = closedForms(conductor, antenna);
  const efficiency = efficiencyOf(own, conductor, groundLoss(antenna).value);
  const feederLossDb = feeder(own, frequencyMhz).lossDb;
  const sentW = transmitW(own);
  const wattsAtFoot = sentW === null ? null : afterLossW(sentW, feederLossDb);
  const radiatedW = wattsAtFoot === null ? null : wattsAtFoot * efficiency;
  const isRead = efficiency > 0 && waves <= LONGEST_GROUND_WAVE_WAVELENGTHS;
  const end = isRead ? endOf(own, conductor, radiatedW) : null;
  return {
    ...channel,
    radiationOhm: closed?.radiationOhm ?? null,
    reactanceOhm: closed?.reactanceOhm ?? null,
    coilOhm: closed?.coilOhm ?? null,
    efficiency,
    feederLossDb,
    radiatedW,
    insulatorPeakV:
      closed && wattsAtFoot !== null ? insulatorPeakV(closed, groundLoss(antenna).value, wattsAtFoot) : null,
    noiseDb: dayNoise(conditions.noise, frequencyMhz, conditions).medianDb,
    groundWave: end
      ? [...reachToLike(end, plan.service, conditions), ...reachToShore(end, plan.service, plan.shore, conditions)]
      : [],
    notes: bandNotes(wire, frequencyMhz, waves),
  };
}

/** What goes to the antenna: the set's power, where set and path can send at all. */
function transmitW({ part, path }: Installation): number | null {
  const watts = part.figures.txPowerW.value;
  return path.canTransmit && watts > 0 ? watts : null;
}

/** An antenna with an amplifier in it hears the noise from outside above its own; it needs no earth and no coil. */
const isActive = ({ figures }: AntennaPart): boolean => figures.amplifierGainDb !== undefined;

function groundLoss(antenna: AntennaPart): { readonly value: number; readonly tolerance: number } {
  if (isActive(antenna)) return { value: 0, tolerance: 0 };
  const { value, tolerance } = antenna.figures.groundLossOhm ?? USUAL_GROUND_OHM;
  return { value: Math.min(10_000, Math.max(0, value)), tolerance };
}

function conductorOf({ lengthM, verticalM, radiusMm }: HfWire, frequencyMhz: number): BaseFedWire {
  return { lengthM, verticalShare: verticalM / lengthM, radiusMm, frequencyMhz };
}

function closedForms(conductor: BaseFedWire, antenna: AntennaPart): ShortAntenna | null {
  if (lengthInWavelengths(conductor) > LONGEST_WAVELENGTHS) return null;
  const closed = shortAntenna(conductor, { groundLossOhm: groundLoss(antenna).value });
  return isActive(antenna) ? { ...closed, coilOhm: 0, efficiency: 1 } : closed;
}

function efficiencyOf({ antenna }: Installation, conductor: BaseFedWire, groundLossOhm: number): number {
  if (isActive(antenna)) return 1;
  const isShort = lengthInWavelengths(conductor) <= LONGEST_WAVELENGTHS;
  return isShort ? shortAntenna(conductor, { groundLossOhm }).efficiency : leastEfficiency(conductor, groundLossOhm);
}

function endOf(own: Installation, conductor: BaseFedWire, radiatedW: number | null): HfEnd {
  const { antenna, part } = own;
  const { value, tolerance } = groundLoss(antenna);
  const efficiencyDb = (ohm: number): number =>
    10 * Math.log10(efficiencyOf(own, conductor, Math.min(10_000, Math.max(0, ohm))));
  const nominalDb = efficiencyDb(value);
  const line = feeder(own, conductor.frequencyMhz);
  const { txPowerW, noiseFigureDb } = part.figures;
  const powerDb = txPowerW.value > 0 ? powerToleranceDb(txPowerW.value, txPowerW.tolerance) : 0;
  return {
    frequencyMhz: conductor.frequencyMhz,
    radiatedW,
    downDb: combineTolerances([nominalDb - efficiencyDb(value + tolerance), line.toleranceDb, powerDb]),
    upDb: combineTolerances([efficiencyDb(value - tolerance) - nominalDb, line.toleranceDb, powerDb]),
    lossDb: line.lossDb - nominalDb,
    receiverNoiseFigureDb: Math.max(0, noiseFigureDb?.value ?? USUAL_NOISE_FIGURE_DB),
  };
}

/**
 * Loss from the set to the foot of the antenna: coax on the band's own frequency, plugs and devices as in the budget, whose
 * mismatch is left out, for a tuner makes the match.
 */
function feeder(own: Installation, frequencyMhz: number): { readonly lossDb: number; readonly toleranceDb: number } {
  const losses = own.path.elements
    .filter(({ kind }) => kind !== 'mismatch')
    .map((element) => (element.kind === 'cable' ? cableLoss(own.project, element, frequencyMhz) : element));
  return {
    lossDb: losses.reduce((sum, { lossDb }) => sum + lossDb, 0),
    toleranceDb: combineTolerances(losses.map(({ toleranceDb }) => toleranceDb)),
  };
}

function cableLoss(
  project: Project,
  element: PathElement,
  frequencyMhz: number,
): { readonly lossDb: number; readonly toleranceDb: number } {
  const { runs, parts } = indexProject(project);
  const run = runs.get(element.subject.id);
  const cable = run && parts.get(run.cableId);
  return run && cable?.kind === 'coax' ? coaxLoss(cable, runLengthM(project, run), frequencyMhz) : element;
}
