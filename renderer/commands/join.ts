import { indexProject, portOf } from '../../core/catalogue/lookup.ts';
import { canConnect } from '../../core/edit/connect.ts';
import { addDataLink, addFeed } from '../../core/edit/feeds.ts';
import { RefusedEdit } from '../../core/edit/refused.ts';
import { addRun } from '../../core/edit/runs.ts';
import type { Fit } from '../../core/model/fit.ts';
import type { Port } from '../../core/model/part.ts';
import type { Endpoint, Project, Subject } from '../../core/model/project.ts';
import type { AppStore } from '../store/store.ts';
import { portWords } from './words.ts';

/** One port a connection could end on, and whether it fits there. */
export interface PortChoice {
  readonly endpoint: Endpoint;
  readonly port: Port;
  readonly fit: Fit;
}

/** Every port of every item. */
export function allPorts(project: Project): { readonly endpoint: Endpoint; readonly port: Port }[] {
  const { effective } = indexProject(project);
  return project.items.flatMap((item) =>
    (effective.get(item.id)?.ports ?? []).map((port) => ({ endpoint: { itemId: item.id, portId: port.id }, port })),
  );
}

/** Every port of every other item, in document order, with whether a connection from `from` may end there or why not. */
export function portChoices(project: Project, from: Endpoint): readonly PortChoice[] {
  return allPorts(project)
    .filter(({ endpoint }) => endpoint.itemId !== from.itemId)
    .map((choice) => ({ ...choice, fit: canConnect(project, from, choice.endpoint) }));
}

/** Joins two ports by what their medium asks for: a coax run, a DC feed or a data link. */
export function joined(project: Project, from: Endpoint, to: Endpoint, cableId?: string): Project {
  switch (portOf(project, from)?.medium) {
    case 'rf':
      return addRun(project, { from, to, ...(cableId === undefined ? {} : { cableId }) });
    case 'dc':
      return addFeed(project, { from, to });
    case 'data':
      return addDataLink(project, { from, to });
    default:
      throw new RefusedEdit(`${portWords(project, from)} is not a port of this drawing any more.`);
  }
}

const NOUNS = { rf: 'Cable run', dc: 'DC feed', data: 'Data link' } as const;

/** Joins two ports as one undo step, selects what was drawn and says so. Returns whether it was done. */
export function joinPorts(store: AppStore, from: Endpoint, to: Endpoint, cableId?: string): boolean {
  const before = store.getState().project;
  const medium = portOf(before, from)?.medium ?? 'rf';
  const label = `${NOUNS[medium]} drawn from ${portWords(before, from)} to ${portWords(before, to)}`;
  if (!store.getState().edit(label, (project) => joined(project, from, to, cableId))) return false;
  const line = newLine(store.getState().project, medium);
  if (line) store.getState().select([line]);
  return true;
}

function newLine(project: Project, medium: Port['medium']): Subject | null {
  const lists = {
    rf: ['run', project.runs],
    dc: ['feed', project.feeds],
    data: ['link', project.dataLinks],
  } as const;
  const [kind, lines] = lists[medium];
  const last = lines.at(-1);
  return last ? { kind, id: last.id } : null;
}
