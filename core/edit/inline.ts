import { indexProject, portOf } from '../catalogue/lookup.ts';
import { runLengthM, runRoute } from '../links/route.ts';
import type { Position } from '../model/boat.ts';
import { portFit } from '../model/fit.ts';
import { nextId } from '../model/ids.ts';
import type { PartOf, RfPort } from '../model/part.ts';
import type { Endpoint, Item, Project, Run, RunFacts } from '../model/project.ts';
import { defaultConnectorId } from './cables.ts';
import { edited, entryOf } from './change.ts';
import { requireConnectable } from './connect.ts';
import { middleOfRoute, nearestOnRoute, toMm } from './geometry.ts';
import { addItem } from './items.ts';
import { RefusedEdit } from './refused.ts';
import { removeSubjects } from './remove.ts';
import { numberMaker } from './tags.ts';

/**
 * Puts a splitter, joint, arrestor or other inline device into a run. The run ends at the device and a new one, with the
 * next number, goes on from it; bends, measured length, slack and facts are divided where the device sits on the route.
 * @param position where the device stands; the middle of the route when left out
 * @throws RefusedEdit when the part is not an inline device with two sockets that fit the run's ends
 */
export function insertIntoRun(project: Project, runId: string, partId: string, position?: Position): Project {
  const run = entryOf(project, 'runs', runId);
  const part = inlinePart(project, partId);
  const sockets = socketsFor(project, run, part);
  const route = runRoute(project, run);
  const spot = position ?? middleOfRoute(route);
  const withDevice = addItem(project, spot ? { partId, position: spot } : { partId });
  const device = withDevice.items.at(-1);
  if (!device) throw new RefusedEdit(`${part.name} could not be placed.`);
  const { share, leg } = nearestOnRoute(route, device.position);
  const end = (port: RfPort): Endpoint => ({ itemId: device.id, portId: port.id });
  const [first, second] = divided(run, share, leg);
  const before: Run = { ...first, to: end(sockets.near), connectorToId: defaultConnectorId(project, sockets.near) };
  const after: Run = {
    ...second,
    id: nextId(project, 'run'),
    number: numberMaker(project, 'W')(),
    from: end(sockets.far),
    connectorFromId: defaultConnectorId(project, sockets.far),
  };
  return edited(withDevice, (draft) => {
    const index = draft.runs.findIndex((candidate) => candidate.id === runId);
    draft.runs.splice(index, 1, before, after);
  });
}

/**
 * Takes an inline device out of its two runs and makes one run of them: the first keeps its number, id and plugs at the
 * far ends, bends stay, lengths add up (a length not measured counts as routed), and the cable is that of the longer half.
 * @throws RefusedEdit when the device does not join exactly two runs, or their far ends do not fit each other
 */
export function removeFromRun(project: Project, itemId: string): Project {
  const device = entryOf(project, 'items', itemId);
  const runs = project.runs.filter((run) => [run.from.itemId, run.to.itemId].includes(itemId));
  const [a, b] = runs;
  if (indexProject(project).effective.get(itemId)?.kind !== 'inline' || !a || !b || runs.length > 2) {
    throw new RefusedEdit(
      `${device.tag} joins ${runs.length} cable run${runs.length === 1 ? '' : 's'}; only an inline device between two can be taken out and the cable made good. Delete it, or take runs off it first.`,
    );
  }
  const joined = joinedRun(project, device, a, b);
  const rest = removeSubjects(project, [{ kind: 'item', id: itemId }]);
  requireConnectable(rest, joined.from, joined.to);
  return edited(rest, (draft) => {
    draft.runs.splice(project.runs.indexOf(a), 0, joined);
  });
}

type InlinePart = PartOf<'inline'>;

function inlinePart(project: Project, partId: string): InlinePart {
  const part = indexProject(project).parts.get(partId);
  if (!part) throw new RefusedEdit(`There is no part "${partId}": choose one from the list of parts.`);
  if (part.kind === 'inline') return part;
  throw new RefusedEdit(
    `${part.name} does not go into a run: choose a joint, splitter, arrestor or other inline device.`,
  );
}

/** Which socket of the device meets each half: `near` the half at `run.from`, `far` the half at `run.to`. */
function socketsFor(project: Project, run: Run, part: InlinePart): { near: RfPort; far: RfPort } {
  const pairs = part.throughs.flatMap((way) => {
    const [a, b] = [socket(part, way.fromPortId), socket(part, way.toPortId)];
    if (!a || !b) return [];
    return [
      { near: a, far: b, way },
      { near: b, far: a, way },
    ];
  });
  const fitting = pairs.filter(
    ({ near, far }) => fitsEnd(project, part, near, run.from) && fitsEnd(project, part, far, run.to),
  );
  if (fitting.length === 0) {
    throw new RefusedEdit(
      `${part.name} does not go into ${run.number}: its sockets have no band in common with what the run joins.`,
    );
  }
  const antennaSide = leadsToAntenna(project, run.from, run.id) ? 'near' : 'far';
  const radioEnd = antennaSide === 'near' ? run.to : run.from;
  const scored = fitting.map((pair) => {
    const common = antennaSide === 'near' ? pair.near : pair.far;
    const branch = antennaSide === 'near' ? pair.far : pair.near;
    return { pair, score: antennaScore(part, common) + branchScore(project, radioEnd, branch, pair.way.transmit) };
  });
  const best = scored.reduce((top, candidate) => (candidate.score > top.score ? candidate : top));
  return best.pair;
}

/** The antenna socket is the one that says so, else the one most ways share, unless that says it is for the set. */
function antennaScore(part: InlinePart, port: RfPort): number {
  const ways = part.throughs.filter((way) => [way.fromPortId, way.toPortId].includes(port.id)).length;
  const name = `${port.id} ${port.label}`;
  return 10 * ways + (/\bant/i.test(name) ? 100 : 0) - (/\b(set|radio)\b/i.test(name) ? 100 : 0);
}

/** A transmitter wants a way it may transmit through, and the socket that is named after it. */
function branchScore(project: Project, radioEnd: Endpoint, port: RfPort, transmit: boolean): number {
  const part = indexProject(project).effective.get(radioEnd.itemId);
  if (part?.kind !== 'radio') return 0;
  const trade = part.radioClass.startsWith('ais') ? /ais/i : part.radioClass === 'vhf-fixed' ? /vhf/i : /^$/;
  return (transmit && part.figures.txPowerW.value > 0 ? 2 : 0) + (trade.test(`${port.id} ${port.label}`) ? 1 : 0);
}

function socket(part: InlinePart, portId: string): RfPort | undefined {
  return part.ports.find((port): port is RfPort => port.medium === 'rf' && port.id === portId);
}

/** Whether a socket of a device not yet aboard fits what is at an end of the run; a part nobody knows is given the benefit. */
function fitsEnd(project: Project, part: InlinePart, port: RfPort, end: Endpoint): boolean {
  const other = indexProject(project).effective.get(end.itemId);
  const otherPort = portOf(project, end);
  return !other || !otherPort || portFit({ part, port }, { part: other, port: otherPort }).fits;
}

/** Whether one comes to an antenna from an end of a run without going back over it. */
function leadsToAntenna(project: Project, start: Endpoint, runId: string): boolean {
  const { effective, runsAtItem } = indexProject(project);
  const seenRuns = new Set([runId]);
  const queue = [start.itemId];
  for (let itemId = queue.pop(); itemId !== undefined; itemId = queue.pop()) {
    if (effective.get(itemId)?.kind === 'antenna') return true;
    if (effective.get(itemId)?.kind === 'radio') continue;
    for (const run of runsAtItem.get(itemId) ?? []) {
      if (seenRuns.has(run.id)) continue;
      seenRuns.add(run.id);
      queue.push(run.from.itemId === itemId ? run.to.itemId : run.from.itemId);
    }
  }
  return false;
}

/** The two halves of a run cut at a share of its length, on a leg of its route. */
function divided(run: Run, share: number, leg: number): [Run, Run] {
  const rest = 1 - share;
  const half = (part: number, via: Run['via']): Run => ({
    ...run,
    via,
    slackM: toMm(run.slackM * part),
    measuredLengthM: run.measuredLengthM === null ? null : toMm(run.measuredLengthM * part),
    facts: dividedFacts(run.facts, part),
  });
  const first = half(share, run.via.slice(0, leg));
  const second = half(rest, run.via.slice(leg));
  // The second half is what is left over, so that the two always add up to the whole.
  const measuredLengthM =
    run.measuredLengthM === null ? null : toMm(run.measuredLengthM - (first.measuredLengthM ?? 0));
  return [first, { ...second, slackM: toMm(run.slackM - first.slackM), measuredLengthM }];
}

const DIVIDED_FACTS = ['coiledM', 'neededLengthM', 'powerCableAlongM', 'insideMetalM'] as const;

/** Lengths among the facts are shared out; conditions (wet, unsupported, a tight bend) are taken to hold for both halves. */
function dividedFacts(facts: RunFacts, part: number): RunFacts {
  const result = { ...facts };
  for (const key of DIVIDED_FACTS) {
    const lengthM = facts[key];
    if (lengthM !== undefined) result[key] = toMm(lengthM * part);
  }
  return result;
}

function joinedRun(project: Project, device: Item, a: Run, b: Run): Run {
  const towards = (run: Run): Run => (run.to.itemId === device.id ? run : turned(run));
  const [first, second] = [towards(a), turned(towards(b))];
  const isMeasured = a.measuredLengthM !== null || b.measuredLengthM !== null;
  const longer = runLengthM(project, b) > runLengthM(project, a) ? b : a;
  const joined: Run = {
    ...first,
    cableId: longer.cableId,
    to: second.to,
    connectorToId: second.connectorToId,
    via: [...first.via, { position: device.position, placeId: device.placeId }, ...second.via],
    slackM: toMm(a.slackM + b.slackM),
    measuredLengthM: isMeasured ? toMm(runLengthM(project, a) + runLengthM(project, b)) : null,
    facts: joinedFacts(a.facts, b.facts),
    notes: [a.notes, b.notes].filter((note) => note !== '').join(' '),
  };
  // As the first run was drawn: from its own far end, or towards it.
  return first === a ? joined : turned(joined);
}

function turned(run: Run): Run {
  const { from, to, connectorFromId, connectorToId } = run;
  const ends = { from: to, to: from, connectorFromId: connectorToId, connectorToId: connectorFromId };
  return { ...run, ...ends, via: run.via.toReversed() };
}

/** Lengths add up; of conditions the worse counts. */
function joinedFacts(a: RunFacts, b: RunFacts): RunFacts {
  const result: RunFacts = { ...b, ...a };
  for (const key of DIVIDED_FACTS) {
    if (a[key] !== undefined && b[key] !== undefined) result[key] = toMm(a[key] + b[key]);
  }
  if (a.wet || b.wet) result.wet = true;
  if (a.supported === false || b.supported === false) result.supported = false;
  for (const key of ['bendRadiusMm', 'powerCableGapMm'] as const) {
    if (a[key] !== undefined && b[key] !== undefined) result[key] = Math.min(a[key], b[key]);
  }
  return result;
}
