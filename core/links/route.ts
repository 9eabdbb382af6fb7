import { indexProject } from '../catalogue/lookup.ts';
import type { Position } from '../model/boat.ts';
import type { Item, Project, Run } from '../model/project.ts';

interface KnownRoute {
  readonly from: Item | undefined;
  readonly to: Item | undefined;
  readonly route: readonly Position[];
  readonly lengthM: number;
}

const cache = new WeakMap<Run, KnownRoute>();

/**
 * The line a run takes: from its first item over its bends to its second item, in boat axes (m). An end whose item does
 * not exist is left out. Cached by run and the items at its ends.
 */
export function runRoute(project: Project, run: Run): readonly Position[] {
  return known(project, run).route;
}

/** Length of the drawn line in space plus the slack for service loops, m. */
export function routedLengthM(project: Project, run: Run): number {
  return known(project, run).lengthM;
}

/** Length of cable in a run, m: as measured on the boat where that is known, else the routed length. */
export function runLengthM(project: Project, run: Run): number {
  return run.measuredLengthM ?? routedLengthM(project, run);
}

function known(project: Project, run: Run): KnownRoute {
  const { items } = indexProject(project);
  const from = items.get(run.from.itemId);
  const to = items.get(run.to.itemId);
  const old = cache.get(run);
  if (old && old.from === from && old.to === to) return old;
  const route = [from?.position, ...run.via.map((bend) => bend.position), to?.position].filter((point) => !!point);
  const made = { from, to, route, lengthM: polylineLengthM(route) + run.slackM };
  cache.set(run, made);
  return made;
}

function polylineLengthM(points: readonly Position[]): number {
  let lengthM = 0;
  let previous: Position | undefined;
  for (const point of points) {
    if (previous) lengthM += Math.hypot(point.xM - previous.xM, point.yM - previous.yM, point.zM - previous.zM);
    previous = point;
  }
  return lengthM;
}
