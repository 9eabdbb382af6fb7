import type { Columns } from '../faultTree/scenarios.ts';
import { addColumn, downColumns, emptyColumns, hasColumn } from '../faultTree/scenarios.ts';
import type { Compartment } from '../model/boat.ts';
import type { Project, Subject } from '../model/project.ts';
import type { Build } from './build.ts';
import { stands, startBuild } from './build.ts';
import { structuresUnder } from './components.ts';
import { supplyGate } from './supply.ts';
import type { MatrixRow, Redundancy } from './types.ts';

/** What one event takes away and what still carries a service, as keys `${subject.kind}:${subject.id}`. */
export interface FailureView {
  readonly lost: ReadonlySet<string>;
  readonly live: ReadonlySet<string>;
  /** Water inside, for a flood. */
  readonly water?: {
    readonly levelZM: number;
    readonly spans: readonly Pick<Compartment, 'xForeM' | 'xAftM' | 'soleZM'>[];
  };
}

/**
 * The drawing's view of one event. Lost is what the event itself takes, everything that stands on a lost structure or
 * has no supply left, and what now carries no service because its antenna, run, set or supply is gone. Live is all that a
 * service still hangs on. The two never overlap; what never served is in neither.
 * @throws RangeError for an event the redundancy does not have
 */
export function failureView(project: Project, redundancy: Redundancy, eventId: string): FailureView {
  const row = redundancy.matrix.find((each) => each.event.id === eventId);
  if (!row) throw new RangeError(`There is no failure event ${eventId}`);
  const live = carrying(redundancy, row);
  const lost = new Set<string>(row.event.downIds);
  for (const key of withoutHold(project, lost)) lost.add(key);
  const [asDrawn] = redundancy.matrix;
  if (asDrawn) for (const key of onAir(redundancy, asDrawn)) lost.add(key);
  if (asDrawn === row) lost.clear();
  for (const key of live) lost.delete(key);
  const { water } = row.event;
  if (!water) return { lost, live };
  const spans = project.boat.compartments.filter(({ id }) => water.compartmentIds.includes(id));
  return { lost, live, water: { levelZM: water.levelZM, spans } };
}

function keyOf(subject: Subject): string {
  return `${subject.kind}:${subject.id}`;
}

function liveWays(redundancy: Redundancy, row: MatrixRow): Redundancy['ways'] {
  const ids = new Set(row.states.flatMap((state) => state.liveWayIds));
  return redundancy.ways.filter((way) => ids.has(way.id));
}

/** Sets, runs, devices and antennas of the ways that live in a row. */
function onAir(redundancy: Redundancy, row: MatrixRow): ReadonlySet<string> {
  return new Set(liveWays(redundancy, row).flatMap((way) => way.subjects.map(keyOf)));
}

function carrying(redundancy: Redundancy, row: MatrixRow): ReadonlySet<string> {
  const ways = liveWays(redundancy, row);
  return new Set([...ways.flatMap((way) => way.subjects.map(keyOf)), ...ways.flatMap((way) => way.hangsOn)]);
}

/** Items on a lost structure, runs that end on them, and items and feeds whose every supply is gone. */
function withoutHold(project: Project, lost: ReadonlySet<string>): readonly string[] {
  const found: string[] = [];
  const fallen = new Set<string>();
  const build = startBuild(project, []);
  const isDown = supplyTrial(build, lost);
  for (const item of project.items) {
    const falls = structuresUnder(project, item).some((id) => lost.has(`structure:${id}`));
    if (falls) fallen.add(item.id);
    if (falls || isDown(supplyGate(build, item.id))) found.push(`item:${item.id}`);
  }
  for (const run of project.runs) {
    if (fallen.has(run.from.itemId) || fallen.has(run.to.itemId)) found.push(`run:${run.id}`);
  }
  for (const feed of project.feeds) {
    const source = `item:${feed.from.itemId}`;
    if (stands(feed) && (lost.has(source) || isDown(supplyGate(build, feed.from.itemId))))
      found.push(`feed:${feed.id}`);
  }
  return found;
}

/** Tries supply gates against one set of lost things. */
function supplyTrial(build: Build, lost: ReadonlySet<string>): (gate: string) => boolean {
  const down = new Map<string, Columns>();
  for (const id of lost) {
    const columns = emptyColumns(1);
    addColumn(columns, 0);
    down.set(id, columns);
  }
  const columnsOf = downColumns(build.gates, down, 1);
  return (gate) => hasColumn(columnsOf(gate), 0);
}
