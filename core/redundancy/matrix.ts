import type { ServiceId } from '../model/services.ts';
import type { Build, BuiltWay } from './build.ts';
import { hasDrawnSupply, supplyGate } from './supply.ts';
import type { Columns } from './tree.ts';
import { addColumn, downColumns, emptyColumns, hasColumn } from './tree.ts';
import type { FailureEvent, MatrixRow, ServiceState } from './types.ts';

/** A way with what it hangs on, ready to be tried against every event at once. */
export interface TriedWay extends BuiltWay {
  readonly hangsOn: readonly string[];
}

/** The failure matrix: every event against every shown service, worked out in one pass over the gates. */
export function failureMatrix(
  build: Build,
  services: readonly ServiceId[],
  ways: readonly TriedWay[],
  events: readonly FailureEvent[],
): readonly MatrixRow[] {
  const columnsOf = downColumns(build.gates, downBy(events), events.length);
  const byService = new Map(services.map((id) => [id, ways.filter((way) => way.serviceId === id)]));
  return events.map((event, column) => {
    const trial: Trial = { build, event, column, columnsOf };
    return { event, states: services.map((id) => stateOf(trial, id, byService.get(id) ?? [])) };
  });
}

function downBy(events: readonly FailureEvent[]): ReadonlyMap<string, Columns> {
  const down = new Map<string, Columns>();
  events.forEach((event, column) => {
    for (const id of event.downIds) {
      const columns = down.get(id) ?? emptyColumns(events.length);
      addColumn(columns, column);
      down.set(id, columns);
    }
  });
  return down;
}

interface Trial {
  readonly build: Build;
  readonly event: FailureEvent;
  readonly column: number;
  readonly columnsOf: (node: string) => Columns;
}

function stateOf(trial: Trial, serviceId: ServiceId, ways: readonly TriedWay[]): ServiceState {
  const isDown = (gate: string): boolean => hasColumn(trial.columnsOf(gate), trial.column);
  const standing = ways.filter((way) => !isDown(way.gate));
  const live = standing
    .filter((way) => !way.carried || isCarried(trial, way, isDown))
    .map((way) => inEvent(trial, way));
  const best = live.find((way) => way.grade === 'full') ?? live[0];
  const liveWayIds = live.map((way) => way.id);
  if (!best) {
    const onMount = standing.filter((way) => way.carried);
    return { serviceId, grade: 'lost', reason: lostReason(trial, serviceId, ways, onMount), liveWayIds };
  }
  const reason = best.grade === 'full' ? `By ${best.label}.` : `By ${best.label}: ${best.reason}.`;
  return { serviceId, grade: best.grade, reason, liveWayIds };
}

/**
 * Whether an event makes somebody take a portable set off its mount: it has lost the ship's supply, it was unplugged for
 * a storm, or the crew take to the raft. A set whose supply is not drawn is taken to hang on the boat's banks.
 */
function isCarried(trial: Trial, way: BuiltWay, isDown: (gate: string) => boolean): boolean {
  const { build, event } = trial;
  if (event.kind === 'abandon') return true;
  if (event.kind === 'lightning') return build.index.items.get(way.itemId)?.facts.unpluggedInStorms === true;
  if (hasDrawnSupply(build, way.itemId)) return isDown(supplyGate(build, way.itemId));
  return event.downIds.some((id) => build.components.get(id)?.kind === 'bank');
}

/** In the raft, what was neither in the grab bag nor floats free has to be picked up on the way out. */
function inEvent({ build, event }: Trial, way: TriedWay): TriedWay {
  if (event.kind !== 'abandon' || way.grade === 'reduced') return way;
  const facts = build.index.items.get(way.itemId)?.facts;
  if (facts?.inGrabBag || facts?.bracket === 'float-free') return way;
  return { ...way, grade: 'reduced', reason: 'it has to be picked up by hand on the way out' };
}

const MOST_REASONS = 3;

function lostReason(
  trial: Trial,
  serviceId: ServiceId,
  ways: readonly TriedWay[],
  onMount: readonly TriedWay[],
): string {
  const reasons = [...deadWays(trial, ways)];
  for (const noWay of trial.build.noWays) if (noWay.serviceId === serviceId) reasons.push(noWay.reason);
  const distinct = [...new Set(reasons)];
  if (distinct.length === 0) distinct.push('nothing aboard is made for it');
  const shown = distinct.slice(0, MOST_REASONS).join('; ');
  const more = distinct.length > MOST_REASONS ? `; and ${distinct.length - MOST_REASONS} more` : '';
  const sentences = [sentence(`${shown}${more}`)];
  for (const way of onMount) sentences.push(sentence(`${way.label}, it would still serve, reduced`));
  return sentences.join(' ');
}

function deadWays(trial: Trial, ways: readonly TriedWay[]): readonly string[] {
  const down = new Set(trial.event.downIds);
  return ways
    .filter((way) => !way.carried)
    .map((way) => {
      const culprit = way.hangsOn.find((id) => down.has(id));
      const label = culprit === undefined ? undefined : trial.build.components.get(culprit)?.label;
      return label === undefined || label === way.label ? `${way.label} is gone` : `${way.label} goes with ${label}`;
    });
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
