import { indexProject } from '../catalogue/lookup.ts';
import { findFeedLoop, findRunLoop } from '../document/loops.ts';
import { type Fit, type FitEnd, portFit } from '../model/fit.ts';
import type { Endpoint, Project } from '../model/project.ts';
import { RefusedEdit } from './refused.ts';

/**
 * Whether a run, feed or link may be drawn between two ports of a project: the ports fit each other (`portFit`), neither
 * is taken, and no loop closes. The reason of a refusal and any caution are sentences for the user.
 */
export function canConnect(project: Project, from: Endpoint, to: Endpoint): Fit {
  const [a, b] = [fitEnd(project, from), fitEnd(project, to)];
  if (typeof a === 'string') return { fits: false, reason: a };
  if (typeof b === 'string') return { fits: false, reason: b };
  const fit = portFit(a, b);
  if (!fit.fits) return fit;
  const reason = obstacle(project, from, to, a.port.medium, a.port.medium === 'dc' && a.port.role === 'in');
  return reason === null ? fit : { fits: false, reason };
}

/** @throws RefusedEdit with the reason of `canConnect` */
export function requireConnectable(project: Project, from: Endpoint, to: Endpoint): void {
  const fit = canConnect(project, from, to);
  if (!fit.fits) throw new RefusedEdit(fit.reason);
}

function fitEnd(project: Project, end: Endpoint): FitEnd | string {
  const { items, effective } = indexProject(project);
  const item = items.get(end.itemId);
  if (!item) return `There is no item "${end.itemId}" in this project.`;
  const part = effective.get(item.id);
  if (!part)
    return `${item.tag} is a part this program does not know ("${item.partId}"): choose a known part for it first.`;
  const port = part.ports.find((candidate) => candidate.id === end.portId);
  if (!port) return `${item.tag} (${part.name}) has no port "${end.portId}".`;
  return { part, port, itemId: item.id, tag: item.tag };
}

function obstacle(
  project: Project,
  from: Endpoint,
  to: Endpoint,
  medium: 'rf' | 'dc' | 'data',
  isBackwards: boolean,
): string | null {
  if (medium === 'rf') return takenBy(project, from) ?? takenBy(project, to) ?? runLoopReason(project, from, to);
  const lines = medium === 'dc' ? project.feeds : project.dataLinks;
  const same = lines.find((line) => isSameEnds(line, from, to));
  if (same) return `${same.number} already joins these two: change that one instead.`;
  if (medium === 'data') return null;
  const loop = findFeedLoop(project, isBackwards ? { from: to, to: from } : { from, to });
  return loop === null ? null : `This would feed the supply back into itself: ${loop}. Leave one of these feeds out.`;
}

function takenBy(project: Project, end: Endpoint): string | null {
  const { runsAtItem, items, effective } = indexProject(project);
  const run = runsAtItem.get(end.itemId)?.find((candidate) => isAt(candidate.from, end) || isAt(candidate.to, end));
  if (!run) return null;
  const port = effective.get(end.itemId)?.ports.find((candidate) => candidate.id === end.portId);
  const tag = items.get(end.itemId)?.tag ?? end.itemId;
  return `${tag}, ${port?.label ?? end.portId}, already has run ${run.number}: take that off first, or put a splitter or switch into it.`;
}

function runLoopReason(project: Project, from: Endpoint, to: Endpoint): string | null {
  const loop = findRunLoop(project, { from, to });
  return loop === null ? null : `This would close a loop of coax: ${loop}. Leave one of these runs out.`;
}

const isAt = (a: Endpoint, b: Endpoint): boolean => a.itemId === b.itemId && a.portId === b.portId;

function isSameEnds(line: { readonly from: Endpoint; readonly to: Endpoint }, from: Endpoint, to: Endpoint): boolean {
  return (isAt(line.from, from) && isAt(line.to, to)) || (isAt(line.from, to) && isAt(line.to, from));
}
