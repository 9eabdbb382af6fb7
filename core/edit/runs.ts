import { portOf } from '../catalogue/lookup.ts';
import { nextId } from '../model/ids.ts';
import { type Endpoint, type Project, type Run, type RunFacts, runSchema } from '../model/project.ts';
import { defaultCableId, defaultConnectorId, requireKind } from './cables.ts';
import {
  type Change,
  changed,
  entryOf,
  isSame,
  mergedInto,
  withEntry,
  withNewEntry,
  withoutEntries,
} from './change.ts';
import { requireConnectable } from './connect.ts';
import { RefusedEdit, requireValid } from './refused.ts';
import { numberMaker } from './tags.ts';

export interface AddRun {
  readonly from: Endpoint;
  readonly to: Endpoint;
  /** The usual cable for the band when left out. */
  readonly cableId?: string;
}

/**
 * Draws a coaxial run between two antenna sockets, with the next cable number and plugs that fit.
 * @throws RefusedEdit with the reason of `canConnect`
 */
export function addRun(project: Project, { from, to, cableId }: AddRun): Project {
  requireConnectable(project, from, to);
  const run = newRun(project, from, to, cableId, nextId(project, 'run'), numberMaker(project, 'W')());
  return withNewEntry(project, 'runs', run);
}

/** A run between two sockets that are known to fit; not yet part of the project. */
export function newRun(
  project: Project,
  from: Endpoint,
  to: Endpoint,
  cableId: string | undefined,
  id: string,
  number: string,
): Run {
  const [a, b] = [portOf(project, from), portOf(project, to)];
  if (a?.medium !== 'rf' || b?.medium !== 'rf') {
    throw new RefusedEdit('A cable run joins two antenna sockets: draw a DC feed or a data link between these.');
  }
  if (cableId !== undefined) requireKind(project, cableId, 'coax');
  return {
    id,
    number,
    cableId: cableId ?? defaultCableId(project, a, b),
    from,
    to,
    via: [],
    slackM: 0,
    measuredLengthM: null,
    connectorFromId: defaultConnectorId(project, a),
    connectorToId: defaultConnectorId(project, b),
    labelText: null,
    status: 'new',
    facts: {},
    notes: '',
  };
}

export type RunChange = Omit<Change<Run>, 'id' | 'from' | 'to' | 'via' | 'facts'> & {
  /** Facts to set; a fact given as undefined is forgotten. */
  readonly facts?: Change<RunFacts>;
};

/**
 * Changes a run: cable, measured length, slack, connectors, status, number, facts, notes.
 * @throws RefusedEdit for a taken number, a part that is not a cable or connector, or a value out of range
 */
export function setRun(project: Project, runId: string, change: RunChange): Project {
  const run = entryOf(project, 'runs', runId);
  const { facts, ...rest } = change;
  if (rest.number !== undefined) requireFreeNumber(project.runs, run, rest.number);
  if (rest.cableId !== undefined) requireKind(project, rest.cableId, 'coax');
  for (const connectorId of [rest.connectorFromId, rest.connectorToId]) {
    if (typeof connectorId === 'string') requireKind(project, connectorId, 'connector');
  }
  const withFacts = facts ? { ...rest, facts: mergedInto(run.facts, facts) } : rest;
  return withEntry(project, 'runs', changed(run, withFacts, runSchema, run.number));
}

/**
 * Takes one end of a run to another port; its plug there becomes the one that fits.
 * @throws RefusedEdit with the reason of `canConnect`
 */
export function reconnectRun(project: Project, runId: string, end: 'from' | 'to', endpoint: Endpoint): Project {
  const run = entryOf(project, 'runs', runId);
  if (isSame(run[end], endpoint)) return project;
  const without = withoutEntries(project, 'runs', new Set([runId]));
  const after: Run = { ...run, [end]: endpoint };
  requireConnectable(without, after.from, after.to);
  const port = portOf(project, endpoint);
  if (port?.medium !== 'rf') {
    throw new RefusedEdit(`${run.number} is coax and goes to an antenna socket: draw a DC feed or a data link there.`);
  }
  const plug = end === 'from' ? 'connectorFromId' : 'connectorToId';
  const plugged: Run = { ...after, [plug]: defaultConnectorId(project, port) };
  requireValid(runSchema, plugged, run.number);
  return withEntry(project, 'runs', plugged);
}

/** @throws RefusedEdit when a number is empty or on another line of the same list */
export function requireFreeNumber(
  lines: readonly { readonly id: string; readonly number: string }[],
  own: { readonly id: string; readonly number: string },
  number: string,
): void {
  if (number === own.number) return;
  if (number.trim() === '') throw new RefusedEdit(`${own.number} needs a number: it stands on both of its labels.`);
  if (lines.some((line) => line.id !== own.id && line.number === number)) {
    throw new RefusedEdit(
      `The number ${number} is taken: choose another. Text of a wrong label goes into the label text.`,
    );
  }
}
