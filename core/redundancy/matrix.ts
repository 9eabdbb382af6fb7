import type { Columns } from '../faultTree/scenarios.ts';
import { addColumn, addColumns, downColumns, emptyColumns, hasColumn } from '../faultTree/scenarios.ts';
import type { ServiceId } from '../model/services.ts';
import type { Build, BuiltWay } from './build.ts';
import { hasDrawnSupply, supplyGate } from './supply.ts';
import type { FailureEvent, MatrixRow, ServiceState } from './types.ts';

/** A way with what it hangs on, ready to be tried against every event at once. */
export interface TriedWay extends BuiltWay {
  readonly hangsOn: readonly string[];
}

/**
 * The failure matrix: every event against every shown service, worked out in one pass over the gates. The first event is
 * the one in which nothing has failed; a cell that an event does not touch is the same object as there.
 */
export function failureMatrix(
  build: Build,
  services: readonly ServiceId[],
  ways: readonly TriedWay[],
  events: readonly FailureEvent[],
): readonly MatrixRow[] {
  const columnsOf = downColumns(build.gates, downBy(events), events.length);
  const tried = services.map((id) => tryService(build, id, ways, columnsOf, events.length));
  const asDrawn: ServiceState[] = [];
  return events.map((event, column) => {
    const setOver = switchesSetOver(tried, column);
    const trial: Trial = { build, event, down: new Set(event.downIds), column, columnsOf, setOver };
    const states = tried.map((service, index) => {
      const before = asDrawn[index];
      const state = before && isUntouched(trial, service) ? before : stateOf(trial, service);
      if (column === 0) asDrawn.push(state);
      return state;
    });
    return { event, states };
  });
}

function tryService(
  build: Build,
  serviceId: ServiceId,
  ways: readonly TriedWay[],
  columnsOf: (node: string) => Columns,
  width: number,
): Tried {
  const ofService = ways.filter((way) => way.serviceId === serviceId);
  const columns = ofService.map((way) => columnsOf(way.gate));
  const touched = emptyColumns(width);
  for (const each of columns) {
    if (!hasColumn(each, 0)) addColumns(touched, each);
  }
  const missing = build.noWays.filter((noWay) => noWay.serviceId === serviceId).map((noWay) => noWay.reason);
  const carried = ofService.some((way) => way.carried);
  const byHand = ofService.some((way) => way.path !== undefined && way.path.switchIds.length > 0);
  return { serviceId, ways: ofService, columns, touched, carried, byHand, missing };
}

/** Whether an event leaves a service as it was: none of its ways is touched, and nothing about the event changes a grade. */
function isUntouched({ event, column, setOver }: Trial, { touched, carried }: Tried): boolean {
  if (event.kind === 'abandon' || event.kind === 'lightning' || carried || setOver.size > 0) return false;
  return !hasColumn(touched, column);
}

function downBy(events: readonly FailureEvent[]): ReadonlyMap<string, Columns> {
  const down = new Map<string, Columns>();
  events.forEach((event, column) => {
    for (const id of event.downIds) {
      let columns = down.get(id);
      if (!columns) {
        columns = emptyColumns(events.length);
        down.set(id, columns);
      }
      addColumn(columns, column);
    }
  });
  return down;
}

/** A service with its ways, the events each is down in, and what else aboard is made for it but has no way. */
interface Tried {
  readonly serviceId: ServiceId;
  readonly ways: readonly TriedWay[];
  readonly columns: readonly Columns[];
  /** Events in which any of the ways that work as drawn is down. */
  readonly touched: Columns;
  readonly carried: boolean;
  /** Any of the ways needs a switch set over. */
  readonly byHand: boolean;
  readonly missing: readonly string[];
}

interface Trial {
  readonly build: Build;
  readonly event: FailureEvent;
  readonly down: ReadonlySet<string>;
  readonly column: number;
  readonly columnsOf: (node: string) => Columns;
  /** Switches that voice needs set otherwise than they stand. */
  readonly setOver: ReadonlySet<string>;
}

/**
 * Switches set over for voice: those of every set whose voice lives only by way of a switch that stands otherwise. Voice
 * goes before whatever else used the antenna.
 */
function switchesSetOver(tried: readonly Tried[], column: number): ReadonlySet<string> {
  const voice = tried.find((service) => service.serviceId === 'voice-fixed');
  if (!voice?.byHand) return NOTHING;
  const ready = new Set<string>();
  const byHand = new Map<string, readonly string[]>();
  voice.ways.forEach((way, index) => {
    if (hasColumn(voice.columns[index] ?? ALWAYS_UP, column)) return;
    const switchIds = way.path?.switchIds ?? [];
    if (switchIds.length === 0) ready.add(way.itemId);
    else if (!byHand.has(way.itemId)) byHand.set(way.itemId, switchIds);
  });
  return new Set([...byHand].flatMap(([itemId, switchIds]) => (ready.has(itemId) ? [] : switchIds)));
}

function stateOf(trial: Trial, service: Tried): ServiceState {
  const { serviceId } = service;
  const onMount: TriedWay[] = [];
  const liveWayIds: string[] = [];
  let best: TriedWay | undefined;
  for (let index = 0; index < service.ways.length; index++) {
    const way = service.ways[index];
    if (!way || hasColumn(service.columns[index] ?? ALWAYS_UP, trial.column)) continue;
    if (way.carried && !isCarried(trial, way)) {
      onMount.push(way);
      continue;
    }
    const live = inEvent(trial, way);
    liveWayIds.push(live.id);
    if (!best || (best.grade === 'reduced' && live.grade === 'full')) best = live;
  }
  if (!best) return { serviceId, grade: 'lost', reason: lostReason(trial, service, onMount), liveWayIds };
  const reason = best.grade === 'full' ? `By ${best.label}.` : `By ${best.label}: ${best.reason}.`;
  return { serviceId, grade: best.grade, reason, liveWayIds };
}

const ALWAYS_UP = emptyColumns(0);
const NOTHING: ReadonlySet<string> = new Set();

/**
 * Whether an event makes somebody take a portable set off its mount: it has lost the ship's supply, it was unplugged for
 * a storm, or the crew take to the raft. A set whose supply is not drawn is taken to hang on the boat's banks.
 */
function isCarried(trial: Trial, way: BuiltWay): boolean {
  const { build, event, column, columnsOf } = trial;
  if (event.kind === 'abandon') return true;
  if (event.kind === 'lightning') return build.index.items.get(way.itemId)?.facts.unpluggedInStorms === true;
  if (hasDrawnSupply(build, way.itemId)) return hasColumn(columnsOf(supplyGate(build, way.itemId)), column);
  return event.downIds.some((id) => build.components.get(id)?.kind === 'bank');
}

/** What an event makes of a way that lives: picked up on the way to the raft, or its antenna lent to voice. */
function inEvent({ build, event, setOver }: Trial, way: TriedWay): TriedWay {
  if (way.grade === 'reduced') return way;
  if (event.kind === 'abandon') {
    const facts = build.index.items.get(way.itemId)?.facts;
    const atHand = facts?.inGrabBag === true || facts?.bracket === 'float-free';
    return atHand ? way : { ...way, grade: 'reduced', reason: 'it has to be picked up by hand on the way out' };
  }
  if (setOver.size === 0) return way;
  const { path } = way;
  const lent = path?.switchIds.length === 0 && path.deviceIds.some((id) => setOver.has(id));
  return lent ? { ...way, grade: 'reduced', reason: 'only while its antenna is not switched over to voice' } : way;
}

const MOST_REASONS = 3;
/** Dead ways looked into for a reason: enough for a reader, and no more work than that in a boat full of sets. */
const MOST_LOOKED_INTO = 12;

function lostReason(trial: Trial, { ways, missing }: Tried, onMount: readonly TriedWay[]): string {
  const dead = ways.filter((way) => !way.carried);
  const looked = dead.slice(0, MOST_LOOKED_INTO).map((way) => deathOf(trial, way));
  const reasons = [...new Set([...looked, ...missing])];
  const shown = reasons.slice(0, MOST_REASONS);
  if (shown.length === 0) shown.push('nothing aboard is made for it');
  if (reasons.length > MOST_REASONS || dead.length > MOST_LOOKED_INTO) shown.push('and others');
  const carried = onMount.map((way) => sentence(`${way.label}, it would still serve, reduced`));
  return [sentence(shown.join('; ')), ...carried].join(' ');
}

function deathOf({ build, down }: Trial, way: TriedWay): string {
  const set = `item:${way.itemId}`;
  const tag = build.components.get(set)?.label ?? way.label;
  const culprit = down.has(set) ? undefined : way.hangsOn.find((id) => down.has(id));
  const label = culprit === undefined ? undefined : build.components.get(culprit)?.label;
  return label === undefined ? `${tag} is gone` : `${tag} goes with ${label}`;
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
