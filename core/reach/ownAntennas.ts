import type { ProjectIndex } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import type { PartOf } from '../model/part.ts';
import type { Item } from '../model/project.ts';
import { wattsToDbm } from '../rf/decibels.ts';
import { collinearLengthM } from '../rf/pattern.ts';
import { stackOf } from '../siting/stack.ts';
import { type StackPair, stackIsolation, stackValidity } from '../siting/stackIsolation.ts';
import { SPEED_OF_LIGHT_M_PER_S } from '../units/constants.ts';
import { limitsAt, type Receiving, receiverOf } from './strongLimits.ts';
import type { StrongSignal } from './types.ts';

/** Own transmitters told of at each receiver: the strongest. */
const STRONGEST = 4;
/** Carriers `stackIsolation` is for, MHz. */
const [LEAST_MHZ, MOST_MHZ] = [30, 500];

/** The paths of one antenna, where the formula covers it. */
interface Placed {
  readonly item: Item;
  readonly part: PartOf<'antenna'>;
  readonly paths: readonly Receiving[];
}

/** One transmitter at one receiver, before it is put into words. */
interface Arrival {
  readonly from: Receiving;
  readonly apart: Apart;
  /** Infinite in the near field, where there is no level. */
  readonly levelDbm: number;
}

/**
 * The strongest own transmitters at each VHF and AIS receiver aboard, from other antennas than its own. Upright antennas only.
 * Between two antennas the isolation is reckoned once for each frequency.
 */
export function ownAntennaSignals(index: ProjectIndex, paths: readonly Receiving[]): readonly StrongSignal[] {
  const antennas = placedOf(index, paths);
  return antennas.flatMap((to) => {
    const arrivals = to.paths.map((): Arrival[] => []);
    for (const from of antennas) {
      if (from === to) continue;
      const known = apartsOf(from, to);
      for (const path of from.paths) {
        if (path.txPowerW === null) continue;
        const apart = known.get(path.frequencyMhz) ?? reckonApart(known, from, to, path);
        const sentDbm = wattsToDbm(path.txPowerW) - path.lossDb - (apart.isolationDb ?? Number.NEGATIVE_INFINITY);
        for (const [i, receiver] of to.paths.entries()) {
          if (receiver.radioId === path.radioId) continue;
          keepStrongest(arrivals[i] ?? [], { from: path, apart, levelDbm: sentDbm + receiver.reception.gainDb });
        }
      }
    }
    return to.paths.flatMap((receiver, i) => (arrivals[i] ?? []).map((arrival) => signalOf(arrival, receiver)));
  });
}

function placedOf(index: ProjectIndex, paths: readonly Receiving[]): readonly Placed[] {
  const found = new Map<string, { item: Item; part: PartOf<'antenna'>; paths: Receiving[] }>();
  for (const path of paths) {
    if (!(path.frequencyMhz >= LEAST_MHZ && path.frequencyMhz <= MOST_MHZ)) continue;
    const known = found.get(path.antennaId);
    const item = index.items.get(path.antennaId);
    const part = index.effective.get(path.antennaId);
    if (known) known.paths.push(path);
    else if (item && part?.kind === 'antenna' && part.traits.polarisation === 'vertical')
      found.set(path.antennaId, { item, part, paths: [path] });
  }
  return [...found.values()];
}

/** Adds to a short list that is kept strongest first. */
function keepStrongest(list: Arrival[], arrival: Arrival): void {
  if (list.length === STRONGEST && arrival.levelDbm <= (list.at(-1)?.levelDbm ?? 0)) return;
  const place = list.findIndex(({ levelDbm }) => levelDbm < arrival.levelDbm);
  list.splice(place < 0 ? list.length : place, 0, arrival);
  if (list.length > STRONGEST) list.pop();
}

const signals = new WeakMap<PathBudget, WeakMap<PathBudget, StrongSignal>>();

/** A budget is a new object whenever its antenna, its place or its parts change, so the two budgets are all a pair depends on. */
function signalOf(arrival: Arrival, to: Receiving): StrongSignal {
  const ofFrom = signals.get(arrival.from) ?? new WeakMap<PathBudget, StrongSignal>();
  signals.set(arrival.from, ofFrom);
  const signal = ofFrom.get(to) ?? makeSignal(arrival, to);
  ofFrom.set(to, signal);
  return signal;
}

function makeSignal({ from, apart, levelDbm: reckonedDbm }: Arrival, to: Receiving): StrongSignal {
  const levelDbm = apart.isolationDb === null ? null : reckonedDbm;
  const offsetMhz = from.service === to.service ? 0 : Math.abs(from.frequencyMhz - to.frequencyMhz);
  return {
    id: `${from.id}~${to.id}`,
    kind: 'own-antenna',
    fromId: from.id,
    toPathId: to.id,
    toItemId: to.radioId,
    frequencyMhz: from.frequencyMhz,
    offsetMhz,
    powerW: from.txPowerW ?? 0,
    isolationDb: apart.isolationDb,
    validity: apart.validity,
    levelDbm,
    limits: limitsAt(receiverOf(to), offsetMhz).map(({ key, label, limitDbm, source }) => ({
      key,
      label,
      limitDbm,
      marginDb: levelDbm === null ? null : limitDbm - levelDbm,
      clearM: null,
      source,
    })),
  };
}

/** What lies between two antennas at one frequency. */
interface Apart {
  readonly isolationDb: number | null;
  readonly validity: StrongSignal['validity'];
}
interface Aparts {
  readonly parts: readonly [unknown, unknown];
  readonly byMhz: Map<number, Apart>;
}
const apartCache = new WeakMap<Item, WeakMap<Item, Aparts>>();

/** What is known of two antennas so far, by frequency: the same both ways, and for every set on them. */
function apartsOf(from: Placed, to: Placed): Map<number, Apart> {
  const [a, b] = from.item.id < to.item.id ? [from, to] : [to, from];
  const ofA = apartCache.get(a.item) ?? new WeakMap<Item, Aparts>();
  apartCache.set(a.item, ofA);
  const known = ofA.get(b.item);
  if (known?.parts[0] === a.part && known.parts[1] === b.part) return known.byMhz;
  const byMhz = new Map<number, Apart>();
  ofA.set(b.item, { parts: [a.part, b.part], byMhz });
  return byMhz;
}

function reckonApart(known: Map<number, Apart>, from: Placed, to: Placed, { frequencyMhz }: Receiving): Apart {
  const pair = pairOf(from, to, frequencyMhz);
  const validity = stackValidity(pair);
  const apart: Apart =
    validity === 'near-field'
      ? { isolationDb: null, validity }
      : { isolationDb: stackIsolation(pair).isolationDb, validity: validity === 'checked' ? 'holds' : validity };
  known.set(frequencyMhz, apart);
  return apart;
}

/** Where the two stand towards each other, over the sea where both stand clear of it. */
function pairOf(from: Placed, to: Placed, frequencyMhz: number): StackPair {
  const middleM = ({ item, part }: Placed): number => item.position.zM + part.figures.feedHeightM.value;
  const [fromM, toM] = [middleM(from), middleM(to)];
  const [first, second] = [stackOf(from.part, frequencyMhz), stackOf(to.part, frequencyMhz)];
  const wavelengthM = SPEED_OF_LIGHT_M_PER_S / (frequencyMhz * 1e6);
  const [a, b] = [from.item.position, to.item.position];
  const isClear = fromM > collinearLengthM(first, wavelengthM) / 2 && toM > collinearLengthM(second, wavelengthM) / 2;
  return {
    frequencyMhz,
    sideM: Math.hypot(a.xM - b.xM, a.yM - b.yM),
    upM: toM - fromM,
    first,
    second,
    ...(isClear ? { over: { water: 'sea', firstHeightM: fromM } } : {}),
  };
}
