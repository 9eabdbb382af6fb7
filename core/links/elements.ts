import type { ProjectIndex } from '../catalogue/lookup.ts';
import type { Basis } from '../model/figure.ts';
import type { PartOf } from '../model/part.ts';
import type { Item, Run, Subject } from '../model/project.ts';
import { coaxLoss } from '../rf/coax.ts';
import { tableLossDb } from '../rf/lossTable.ts';
import { mismatchLossDb, reflectionOfVswr } from '../rf/mismatch.ts';
import type { PathElement, ReceiveAmplifier } from './types.ts';
import type { DeviceHop, RunHop } from './walk.ts';

/** An element before the running totals are known. */
export interface Loss {
  readonly kind: PathElement['kind'];
  readonly label: string;
  readonly subject: Subject;
  readonly lossDb: number;
  readonly toleranceDb: number;
  readonly basis: Basis;
  readonly source: string;
  readonly formula: string;
  /** Gain and noise figure in reception of an amplifier in this way; absent for what only takes. */
  readonly amplifier?: ReceiveAmplifier;
}

/** What a run adds: its connector at the radio's end, the cable, its connector at the far end. */
export function runLosses(index: ProjectIndex, hop: RunHop, lengthM: number, frequencyMhz: number): readonly Loss[] {
  const { run } = hop;
  const [nearId, farId] =
    hop.fromRadioEnd === 'from' ? [run.connectorFromId, run.connectorToId] : [run.connectorToId, run.connectorFromId];
  const near = connectorLoss(index, run, nearId, frequencyMhz);
  const far = connectorLoss(index, run, farId, frequencyMhz);
  return [near, cableLoss(index, run, lengthM, frequencyMhz), far].filter((loss) => loss !== null);
}

function connectorLoss(index: ProjectIndex, run: Run, partId: string | null, frequencyMhz: number): Loss | null {
  const part = partId === null ? undefined : index.parts.get(partId);
  if (part?.kind !== 'connector') return null;
  const lossDb = tableLossDb(part.lossTable, frequencyMhz);
  return {
    kind: 'connector',
    label: `${part.name}, ${run.number}`,
    subject: { kind: 'run', id: run.id },
    lossDb,
    toleranceDb: part.lossTable.toleranceDb,
    basis: part.lossTable.basis,
    source: part.lossTable.source,
    formula: `${lossDb.toFixed(3)} dB at ${frequencyMhz} MHz, from its table`,
  };
}

function cableLoss(index: ProjectIndex, run: Run, lengthM: number, frequencyMhz: number): Loss {
  const part = index.parts.get(run.cableId);
  const common = { kind: 'cable', subject: { kind: 'run', id: run.id } } as const;
  if (part?.kind !== 'coax') return leadLoss(run, lengthM, part?.name);
  const { lossDb, toleranceDb, extrapolated } = coaxLoss(part, lengthM, frequencyMhz);
  const per100M = lengthM > 0 ? (lossDb * 100) / lengthM : coaxLoss(part, 100, frequencyMhz).lossDb;
  const { source, basis } = part.figures.lossK1;
  const sum = `${lengthM.toFixed(1)} m × ${per100M.toFixed(1)} dB/100 m at ${frequencyMhz} MHz`;
  return {
    ...common,
    label: `${run.number}, ${part.name}`,
    lossDb,
    toleranceDb,
    basis: extrapolated ? 'assumed' : basis,
    source: extrapolated ? `${source}; carried on beyond the table's span` : source,
    formula: sum,
  };
}

/** A single wire or a part nobody knows: no loss is put to it, and that is said. */
function leadLoss(run: Run, lengthM: number, name: string | undefined): Loss {
  return {
    kind: 'cable',
    subject: { kind: 'run', id: run.id },
    label: `${run.number}, ${name ?? 'unknown cable'}`,
    lossDb: 0,
    toleranceDb: 0,
    basis: 'assumed',
    source:
      name === undefined ? 'no such part in the catalogue' : 'a single lead is part of the antenna, not of the feeder',
    formula: `${lengthM.toFixed(1)} m, no loss reckoned`,
  };
}

/** Loss of the way taken through a device: a figure by its key, else a table by its key. */
export function deviceLoss(hop: DeviceHop, frequencyMhz: number): Loss {
  const { item, part, through } = hop;
  const isJoint = part.deviceClass === 'joint' || part.deviceClass === 'adapter';
  const common = {
    kind: isJoint ? 'joint' : 'device',
    label: `${item.tag}, ${part.name}`,
    subject: { kind: 'item', id: item.id },
    ...amplifierOf(hop),
  } as const;
  const figure = part.figures[through.lossKey];
  if (figure) {
    const { value, tolerance, basis, source } = figure;
    return {
      ...common,
      lossDb: Math.max(0, value),
      toleranceDb: tolerance,
      basis,
      source,
      formula: `${value} dB stated`,
    };
  }
  const table = part.lossTables[through.lossKey];
  if (table) {
    const lossDb = tableLossDb(table, frequencyMhz);
    const formula = `${lossDb.toFixed(3)} dB at ${frequencyMhz} MHz, from its table`;
    return { ...common, lossDb, toleranceDb: table.toleranceDb, basis: table.basis, source: table.source, formula };
  }
  const source = 'no loss is stated for this way through the part';
  return { ...common, lossDb: 0, toleranceDb: 0, basis: 'assumed', source, formula: 'no loss reckoned' };
}

/** The receive amplifier of a way; a noise figure nobody states is taken as 5 dB, 3 either way (common practice, no source). */
function amplifierOf({ part, through }: DeviceHop): { readonly amplifier?: ReceiveAmplifier } {
  const gain = through.gainKey === undefined ? undefined : part.figures[through.gainKey];
  if (!gain) return {};
  const noise = through.noiseFigureKey === undefined ? undefined : part.figures[through.noiseFigureKey];
  const noiseFigureDb = Math.max(0, noise?.value ?? 5);
  return { amplifier: { gainDb: gain.value, noiseFigureDb, noiseToleranceDb: noise?.tolerance ?? 3 } };
}

/**
 * Power the antenna throws back, as a loss. A transmitter's stated power is what it sends into a matched line; of that the
 * line takes its matched loss and the antenna takes all but the reflected share, so the two add.
 */
export function antennaMismatch(item: Item, part: PartOf<'antenna'>): Loss {
  const { value: vswr, tolerance, basis, source } = part.figures.vswr;
  const lossDb = mismatchLossDb(Math.max(1, vswr));
  const reflected = 100 * reflectionOfVswr(Math.max(1, vswr)) ** 2;
  return {
    kind: 'mismatch',
    label: `${item.tag}, mismatch`,
    subject: { kind: 'item', id: item.id },
    lossDb,
    toleranceDb: mismatchLossDb(Math.max(1, vswr) + tolerance) - lossDb,
    basis,
    source,
    formula: `VSWR ${vswr.toFixed(1)}: ${reflected.toFixed(1)} % thrown back`,
  };
}
