import { overheadOf } from '../catalogue/lookup.ts';
import type { Overhead } from '../model/boat.ts';
import type { PartOf } from '../model/part.ts';
import type { DataLink, Item, Project } from '../model/project.ts';
import type { Build } from './build.ts';
import { addGate, stands, use } from './build.ts';
import { structuresUnder } from './components.ts';
import { supplyGate } from './supply.ts';

/** A failure gate, or why there is nothing to fail. */
export type Found = { readonly gate: string } | { readonly gate: null; readonly reason: string };

/** Sky needs no window in plastic, wood or cloth, but metal and carbon shut it out. */
export function seesSky(overhead: Overhead): boolean {
  return overhead !== 'metal' && overhead !== 'carbon';
}

/** What stands between an item and the sky, in words: `carbon` or `metal`. */
export function overheadInWords(project: Project, item: Item): string {
  return overheadOf(project, item) === 'carbon' ? 'carbon' : 'metal';
}

/**
 * The gate that is true when an item's own GNSS receiver has no fix: its antenna, the run to it and what it stands on.
 * The receiver itself and its supply are left to the caller. An outside antenna counts if one is connected; without
 * one the receiver is taken to have an antenna inside its case.
 */
export function ownFix(build: Build, item: Item): Found {
  const id = `own-fix:${item.id}`;
  if (build.gates.has(id)) return { gate: id };
  const receiver = receiverOf(build, item);
  if (!receiver) return { gate: null, reason: `${item.tag} has no GNSS receiver` };
  const outside = gnssRuns(build, item);
  if (outside.length > 0) return outsideFix(build, item, outside);
  if (!receiver.antennaInside) return { gate: null, reason: `${item.tag} has no GNSS antenna` };
  if (seesSky(overheadOf(build.project, item))) return { gate: addGate(build, id, 'or', standsOn(build, item)) };
  const over = overheadInWords(build.project, item);
  return { gate: null, reason: `${item.tag} has its GNSS antenna inside, under ${over}, and gets no fix` };
}

interface GnssRun {
  readonly antenna: Item;
  readonly inputs: readonly string[];
}

function outsideFix(build: Build, item: Item, runs: readonly GnssRun[]): Found {
  const open = runs.filter((run) => seesSky(overheadOf(build.project, run.antenna)));
  const [first] = runs;
  if (open.length === 0 && first) {
    const over = overheadInWords(build.project, first.antenna);
    return { gate: null, reason: `${item.tag} gets no fix: its GNSS antenna ${first.antenna.tag} is under ${over}` };
  }
  const chains = open.map((run, index) => addGate(build, `own-fix:${item.id}/${index}`, 'or', run.inputs));
  return { gate: addGate(build, `own-fix:${item.id}`, 'and', chains) };
}

function receiverOf(build: Build, item: Item): { readonly antennaInside: boolean } | undefined {
  const part = build.index.effective.get(item.id);
  if (part?.kind === 'position-source') return { antennaInside: part.traits.integralAntenna };
  if (part?.kind === 'radio' && part.radioClass === 'gnss-receiver') {
    return { antennaInside: part.traits.integralAntenna };
  }
  return part?.kind === 'radio' && part.traits.internalGnss ? { antennaInside: true } : undefined;
}

/** GNSS antennas an item is connected to, each with what the signal goes through. */
function gnssRuns(build: Build, item: Item): readonly GnssRun[] {
  const found: GnssRun[] = [];
  for (const path of build.pathsOf.get(item.id) ?? []) {
    const antenna = build.index.items.get(path.antennaId);
    if (path.service !== 'gnss' || !antenna) continue;
    const things = [
      ...path.runIds.map((id) => use(build, 'run', id)),
      ...path.deviceIds.map((id) => use(build, 'item', id)),
    ];
    found.push({ antenna, inputs: [...things, use(build, 'item', antenna.id), ...standsOn(build, antenna)] });
  }
  return found;
}

/** The structures an item is lost with, as components. */
export function standsOn(build: Build, item: Item): readonly string[] {
  return structuresUnder(build.project, item).map((id) => use(build, 'structure', id));
}

/**
 * The gate that is true when a set is fed no position: its own receiver and every source that reaches it over a data
 * link, directly or through a bus, have all failed.
 */
export function positionGate(build: Build, item: Item): Found {
  const id = `position:${item.id}`;
  if (build.gates.has(id)) return { gate: id };
  const reasons: string[] = [];
  const sources: string[] = [];
  const own = ownFix(build, item);
  if (own.gate !== null) sources.push(own.gate);
  else if (receiverOf(build, item)) reasons.push(own.reason);
  for (const link of positionLinks(build, item.id)) {
    const over = overLink(build, link, item.id, new Set());
    if (over.gate !== null) sources.push(over.gate);
    else reasons.push(over.reason);
  }
  if (sources.length > 0) return { gate: addGate(build, id, 'and', sources) };
  return { gate: null, reason: reasons[0] ?? `no position source is connected to ${item.tag}` };
}

function positionLinks(build: Build, itemId: string): readonly DataLink[] {
  return (build.index.linksAtItem.get(itemId) ?? []).filter(
    (link) => stands(link) && link.carries.includes('position'),
  );
}

/** Position over one link from `hereId`: the far end's own fix or, where the far end is a bus, whatever feeds the bus. */
function overLink(build: Build, link: DataLink, hereId: string, passed: ReadonlySet<string>): Found {
  const farId = link.from.itemId === hereId ? link.to.itemId : link.from.itemId;
  const far = build.index.items.get(farId);
  if (!far || !stands(far) || passed.has(farId))
    return { gate: null, reason: `${link.number} leads to no position source` };
  const source = isBus(build.index.effective.get(farId)) ? busPosition(build, far, passed) : ownFix(build, far);
  if (source.gate === null) return source;
  const inputs = [use(build, 'link', link.id), use(build, 'item', farId), supplyGate(build, farId), source.gate];
  return { gate: addGate(build, `link-position:${link.id}<${[...passed, hereId].join('<')}`, 'or', inputs) };
}

/** One gate per bus for all its listeners: a listener's own receiver among the sources changes nothing for itself. */
function busPosition(build: Build, bus: Item, passed: ReadonlySet<string>): Found {
  const id = passed.size === 0 ? `bus-position:${bus.id}` : `bus-position:${bus.id}<${[...passed].join('<')}`;
  if (build.gates.has(id)) return { gate: id };
  const inside = new Set([...passed, bus.id]);
  const sources: string[] = [];
  let reason = `nothing puts a position on ${bus.tag}`;
  for (const link of positionLinks(build, bus.id)) {
    const over = overLink(build, link, bus.id, inside);
    if (over.gate !== null) sources.push(over.gate);
    else if (isSource(build, link.from.itemId === bus.id ? link.to.itemId : link.from.itemId)) reason = over.reason;
  }
  return sources.length > 0 ? { gate: addGate(build, id, 'and', sources) } : { gate: null, reason };
}

function isSource(build: Build, itemId: string): boolean {
  const item = build.index.items.get(itemId);
  return item !== undefined && receiverOf(build, item) !== undefined;
}

/** A bus, display or router passes on what others put on it. */
function isBus(part: { readonly kind: string } | undefined): boolean {
  if (part?.kind !== 'equipment') return false;
  const { equipmentClass } = part as PartOf<'equipment'>;
  return equipmentClass === 'data-bus' || equipmentClass === 'display' || equipmentClass === 'router';
}
