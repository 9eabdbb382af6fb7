import { type Place, type Position, placeSchema, positionSchema } from '../model/boat.ts';
import { nextId } from '../model/ids.ts';
import type { Alternative, Project } from '../model/project.ts';
import { type Change, changed, edited, entryOf, isSame, withNewEntry, withoutEntries } from './change.ts';
import { moved, type Offset, offsetBetween, tidy } from './geometry.ts';
import { withoutOrphans } from './orphans.ts';
import { RefusedEdit, requireValid } from './refused.ts';

export type NewPlace = Omit<Place, 'id'>;

/** Adds a named spot. @throws RefusedEdit for an unknown structure or compartment, or a position off the drawing */
export function addPlace(project: Project, input: NewPlace): Project {
  const place: Place = { ...input, id: nextId(project, 'place'), position: tidy(input.position) };
  requireValid(placeSchema, place, place.name);
  requireKnown(project, place);
  return withNewEntry(project, 'places', place);
}

/** Changes a place; what stands there, and bends that pass through it, move with it in every layout. */
export function setPlace(project: Project, placeId: string, change: Omit<Change<Place>, 'id'>): Project {
  const place = entryOf(project, 'places', placeId);
  const position = change.position && tidy(change.position);
  const after = changed(place, position ? { ...change, position } : change, placeSchema, place.name);
  requireKnown(project, after);
  return withPlaces(project, new Map([[placeId, after]]));
}

/** @throws RefusedEdit while an item stands there, in this layout or an alternative. Bends stay where they are. */
export function removePlace(project: Project, placeId: string): Project {
  const place = entryOf(project, 'places', placeId);
  for (const [name, layout] of layouts(project)) {
    const tags = layout.items.filter((item) => item.placeId === placeId).map((item) => item.tag);
    if (tags.length === 0) continue;
    throw new RefusedEdit(
      `${place.name} is in use by ${listed(tags)}${name}: move them elsewhere or delete them first.`,
    );
  }
  const detached = eachLayout(project, (layout) => ({
    ...layout,
    runs: layout.runs.map((run) =>
      run.via.some((bend) => bend.placeId === placeId)
        ? { ...run, via: run.via.map((bend) => (bend.placeId === placeId ? { ...bend, placeId: null } : bend)) }
        : run,
    ),
  }));
  return withoutOrphans(project, withoutEntries(detached, 'places', new Set([placeId])));
}

/** Takes a mast or fitting away with its places. @throws RefusedEdit while something stands on it */
export function removeStructure(project: Project, structureId: string): Project {
  const { masts, fittings } = project.boat;
  const name = [...masts, ...fittings].find((structure) => structure.id === structureId)?.name;
  if (name === undefined) throw new RefusedEdit(`There is no mast or fitting "${structureId}" on this boat.`);
  const places = project.places.filter((place) => place.structureId === structureId);
  const ids = new Set(places.map((place) => place.id));
  for (const [layoutName, layout] of layouts(project)) {
    const tags = layout.items.filter((item) => item.placeId !== null && ids.has(item.placeId)).map((item) => item.tag);
    if (tags.length === 0) continue;
    throw new RefusedEdit(`${name} carries ${listed(tags)}${layoutName}: move them elsewhere or delete them first.`);
  }
  const bare = places.reduce((current, place) => removePlace(current, place.id), project);
  const without = edited(bare, (draft) => {
    draft.boat.masts = draft.boat.masts.filter((mast) => mast.id !== structureId);
    draft.boat.fittings = draft.boat.fittings.filter((fitting) => fitting.id !== structureId);
  });
  return withoutOrphans(project, without);
}

/** @throws RefusedEdit while a place is in it */
export function removeCompartment(project: Project, compartmentId: string): Project {
  const compartment = project.boat.compartments.find((candidate) => candidate.id === compartmentId);
  if (!compartment) throw new RefusedEdit(`There is no compartment "${compartmentId}" in this boat.`);
  const names = project.places.filter((place) => place.compartmentId === compartmentId).map((place) => place.name);
  if (names.length > 0) {
    throw new RefusedEdit(
      `${compartment.name} contains ${listed(names)}: put those places into another compartment first.`,
    );
  }
  const without = edited(project, (draft) => {
    draft.boat.compartments = draft.boat.compartments.filter((candidate) => candidate.id !== compartmentId);
  });
  return withoutOrphans(project, without);
}

/** The project with other places of the same ids; items and bends on a place that moved go with it, in every layout. */
export function withPlaces(project: Project, places: ReadonlyMap<string, Place>): Project {
  const shifts = new Map<string, Offset>();
  const current = project.places.map((place) => {
    const after = places.get(place.id);
    if (!after || isSame(after, place)) return place;
    requireValid(positionSchema, after.position, `${place.name} would leave the drawing`);
    if (!isSame(after.position, place.position)) shifts.set(place.id, offsetBetween(place.position, after.position));
    return after;
  });
  if (current.every((place, index) => place === project.places[index])) return project;
  const withNew = edited(project, (draft) => {
    draft.places = current;
  });
  return shifts.size === 0 ? withNew : eachLayout(withNew, (layout) => shifted(layout, shifts));
}

type Layout = Pick<Alternative, 'items' | 'runs' | 'feeds' | 'dataLinks'>;

function shifted(layout: Layout, shifts: ReadonlyMap<string, Offset>): Layout {
  const shiftOf = (placeId: string | null) => (placeId === null ? undefined : shifts.get(placeId));
  return {
    ...layout,
    items: layout.items.map((item) => {
      const by = shiftOf(item.placeId);
      if (!by) return item;
      const endPosition = item.endPosition && carried(item.endPosition, by, item.tag);
      return { ...item, position: carried(item.position, by, item.tag), endPosition };
    }),
    runs: layout.runs.map((run) => {
      if (!run.via.some((bend) => shiftOf(bend.placeId))) return run;
      const via = run.via.map((bend) => {
        const by = shiftOf(bend.placeId);
        return by ? { ...bend, position: carried(bend.position, by, run.number) } : bend;
      });
      return { ...run, via };
    }),
  };
}

function carried(position: Position, by: Offset, label: string): Position {
  const after = moved(position, by);
  requireValid(positionSchema, after, `${label} would leave the drawing`);
  return after;
}

function* layouts(project: Project): Generator<readonly [string, Layout]> {
  yield ['', project];
  for (const alternative of project.alternatives) yield [` (in the alternative "${alternative.name}")`, alternative];
}

/** Applies a change to the current layout and every alternative, writing only lists that have a changed entry. */
function eachLayout(project: Project, change: (layout: Layout) => Layout): Project {
  return edited(project, (draft) => {
    for (const [index, before] of [project, ...project.alternatives].entries()) {
      const target = index === 0 ? draft : draft.alternatives[index - 1];
      const after = change(before);
      if (!target) continue;
      if (after.items.some((item, at) => item !== before.items[at])) target.items = after.items;
      if (after.runs.some((run, at) => run !== before.runs[at])) target.runs = after.runs;
    }
  });
}

function requireKnown(project: Project, place: Place): void {
  const { masts, fittings, compartments } = project.boat;
  if (place.structureId !== null && ![...masts, ...fittings].some(({ id }) => id === place.structureId)) {
    throw new RefusedEdit(`${place.name}: there is no mast or fitting "${place.structureId}" on this boat.`);
  }
  if (place.compartmentId !== null && !compartments.some(({ id }) => id === place.compartmentId)) {
    throw new RefusedEdit(`${place.name}: there is no compartment "${place.compartmentId}" in this boat.`);
  }
}

/** `A1, L1 and 3 more`. */
function listed(names: readonly string[]): string {
  const shown = names.slice(0, 4).join(', ');
  return names.length > 4 ? `${shown} and ${names.length - 4} more` : shown;
}
