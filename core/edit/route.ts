import { runRoute } from '../links/route.ts';
import type { Position } from '../model/boat.ts';
import { type Project, type Run, runSchema } from '../model/project.ts';
import { changed, entryOf, withEntry } from './change.ts';
import { nearestOnRoute, tidy } from './geometry.ts';
import { RefusedEdit } from './refused.ts';

export interface Bend {
  readonly position: Position;
  /** The place the cable passes through there; its position replaces the one given. Null or left out for none. */
  readonly placeId?: string | null;
}

/**
 * Adds a bend to a run's route, on the leg nearest to it or at `index` among the bends.
 * @throws RefusedEdit for an unknown place or a position off the drawing
 */
export function addBend(project: Project, runId: string, bend: Bend, index?: number): Project {
  const run = entryOf(project, 'runs', runId);
  const at = index ?? nearestOnRoute(runRoute(project, run), bend.position).leg;
  return withVia(project, run, run.via.toSpliced(at, 0, settled(project, bend)));
}

/** Moves a bend. @throws RefusedEdit when there is no such bend, or as `addBend` */
export function moveBend(project: Project, runId: string, index: number, bend: Bend): Project {
  const run = entryOf(project, 'runs', runId);
  requireBend(run, index);
  return withVia(project, run, run.via.with(index, settled(project, bend)));
}

/** Takes a bend out; the route goes straight there. @throws RefusedEdit when there is no such bend */
export function removeBend(project: Project, runId: string, index: number): Project {
  const run = entryOf(project, 'runs', runId);
  requireBend(run, index);
  return withVia(project, run, run.via.toSpliced(index, 1));
}

function settled(project: Project, { position, placeId }: Bend): Run['via'][number] {
  if (typeof placeId !== 'string') return { position: tidy(position), placeId: null };
  return { position: entryOf(project, 'places', placeId).position, placeId };
}

function withVia(project: Project, run: Run, via: Run['via']): Project {
  return withEntry(project, 'runs', changed(run, { via }, runSchema, run.number));
}

function requireBend(run: Run, index: number): void {
  if (run.via[index] !== undefined) return;
  throw new RefusedEdit(
    run.via.length === 0
      ? `${run.number} has no bends yet: add one first.`
      : `${run.number} has ${run.via.length} bend${run.via.length === 1 ? '' : 's'}; there is no bend ${index + 1}.`,
  );
}
