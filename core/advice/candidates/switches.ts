import { indexProject } from '../../catalogue/lookup.ts';
import { addItem } from '../../edit/items.ts';
import { RefusedEdit } from '../../edit/refused.ts';
import { addRun, reconnectRun, setRun } from '../../edit/runs.ts';
import type { Endpoint, Project } from '../../model/project.ts';
import { newest } from '../ends.ts';
import { cableFor } from '../feeder.ts';

const SWITCH_ID = 'switch-coax-2-way';
/** Slack of a short lead between a switch and what it stands beside, m. Common practice, no source. */
const LEAD_SLACK_M = 0.3;
const VHF_MHZ = 156.8;

/**
 * Puts a changeover switch into the run on a port, beside what the port is on: at a set its common socket faces the set, so
 * that the set can be put on either of two antennas; with `faces` feeder it faces the feeder, so that the antenna can be
 * lent to another. As it stands the switch passes what passed before.
 */
export function switchAt(
  project: Project,
  end: Endpoint,
  faces: 'set' | 'feeder' = 'set',
): { readonly project: Project; readonly switchId: string } {
  const { items, runsAtItem } = indexProject(project);
  const item = items.get(end.itemId);
  const isHere = (other: Endpoint): boolean => other.itemId === end.itemId && other.portId === end.portId;
  const run = (runsAtItem.get(end.itemId) ?? []).find(({ from, to }) => isHere(from) || isHere(to));
  if (!item || !run) throw new RefusedEdit(`${item?.tag ?? end.itemId} has no cable to put a switch into.`);
  const position = { ...item.position, xM: item.position.xM + 0.2 };
  const fitted = addItem(project, { partId: SWITCH_ID, position, placeId: item.placeId });
  const { id: switchId } = newest(fitted);
  const [feeder, near] = faces === 'set' ? (['a', 'set'] as const) : (['set', 'a'] as const);
  const moved = reconnectRun(fitted, run.id, isHere(run.from) ? 'from' : 'to', { itemId: switchId, portId: feeder });
  return { project: addLead(moved, { itemId: switchId, portId: near }, end), switchId };
}

/** A short lead between two sockets near each other. @throws RefusedEdit as `addRun` */
export function addLead(project: Project, from: Endpoint, to: Endpoint): Project {
  const cableId = cableFor(project, LEAD_SLACK_M, VHF_MHZ);
  const drawn = addRun(project, { from, to, ...(cableId === undefined ? {} : { cableId }) });
  return setRun(drawn, drawn.runs.at(-1)?.id ?? '', { slackM: LEAD_SLACK_M });
}
