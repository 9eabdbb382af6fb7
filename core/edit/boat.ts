import type { z } from 'zod';
import { boatProblems } from '../document/boatChecks.ts';
import {
  type Boat,
  boatSchema,
  type Compartment,
  compartmentSchema,
  type Fitting,
  fittingSchema,
  type Mast,
  mastSchema,
  type Place,
} from '../model/boat.ts';
import { nextId } from '../model/ids.ts';
import type { Project } from '../model/project.ts';
import { type Change, changed, edited } from './change.ts';
import { toMm } from './geometry.ts';
import { withPlaces } from './places.ts';
import { RefusedEdit, requireValid } from './refused.ts';

export type BoatChange = Omit<Change<Boat>, 'masts' | 'fittings' | 'compartments'>;

/**
 * Changes the boat's particulars; `deckhouses` is replaced as a whole.
 * @throws RefusedEdit for a value out of range, or numbers that contradict each other
 */
export function setBoat(project: Project, change: BoatChange): Project {
  return withBoat(project, changed(project.boat, change, boatSchema, 'Boat'));
}

/** Adds a mast. @throws RefusedEdit as `setBoat` */
export function addMast(project: Project, mast: Omit<Mast, 'id'>): Project {
  return withStructure(project, 'masts', mastSchema, { ...mast, id: nextId(project, 'mast') });
}

/**
 * Changes a mast. Its places and (unless given) spreaders go with it: up and down in proportion between foot and truck.
 * @throws RefusedEdit as `setBoat`
 */
export function setMast(project: Project, mastId: string, change: Omit<Change<Mast>, 'id'>): Project {
  const mast = structureOf(project.boat.masts, mastId, 'mast');
  const plain = changed(mast, change, mastSchema, mast.name);
  if (plain === mast) return project;
  const spreaderZM = change.spreaderZM ?? mast.spreaderZM.map((zM) => toMm(stretchedZM(zM, mast, plain)));
  const after = { ...plain, spreaderZM };
  const withMast = withStructure(project, 'masts', mastSchema, after);
  const stretched = project.places
    .filter((place) => place.structureId === mastId)
    .map((place) => [place.id, onMast(place, mast, after)] as const);
  return withPlaces(withMast, new Map(stretched));
}

/** Adds an arch, pulpit, wheelhouse or other fitting. @throws RefusedEdit as `setBoat` */
export function addFitting(project: Project, fitting: Omit<Fitting, 'id'>): Project {
  return withStructure(project, 'fittings', fittingSchema, { ...fitting, id: nextId(project, 'fitting') });
}

/** Changes a fitting; its places move as far as its forward end and its top do. @throws RefusedEdit as `setBoat` */
export function setFitting(project: Project, fittingId: string, change: Omit<Change<Fitting>, 'id'>): Project {
  const fitting = structureOf(project.boat.fittings, fittingId, 'fitting');
  const after = changed(fitting, change, fittingSchema, fitting.name);
  const [dxM, dzM] = [after.xForeM - fitting.xForeM, after.zTopM - fitting.zTopM];
  const carried = project.places
    .filter((place) => place.structureId === fittingId && (dxM !== 0 || dzM !== 0))
    .map((place) => [place.id, at(place, place.position.xM + dxM, place.position.zM + dzM)] as const);
  return withPlaces(withStructure(project, 'fittings', fittingSchema, after), new Map(carried));
}

/** Adds a compartment. @throws RefusedEdit as `setBoat` */
export function addCompartment(project: Project, compartment: Omit<Compartment, 'id'>): Project {
  return withStructure(project, 'compartments', compartmentSchema, {
    ...compartment,
    id: nextId(project, 'compartment'),
  });
}

/** Changes a compartment. @throws RefusedEdit as `setBoat` */
export function setCompartment(
  project: Project,
  compartmentId: string,
  change: Omit<Change<Compartment>, 'id'>,
): Project {
  const compartment = structureOf(project.boat.compartments, compartmentId, 'compartment');
  return withStructure(
    project,
    'compartments',
    compartmentSchema,
    changed(compartment, change, compartmentSchema, compartment.name),
  );
}

type StructureKey = 'masts' | 'fittings' | 'compartments';

/** The project with a structure put in place of the one with its id, or added. */
function withStructure<K extends StructureKey>(
  project: Project,
  key: K,
  schema: z.ZodType,
  entry: Boat[K][number],
): Project {
  requireValid(schema, entry, entry.name === '' ? 'The new one' : entry.name);
  const list: readonly Boat[K][number][] = project.boat[key];
  const index = list.findIndex((known) => known.id === entry.id);
  if (list[index] === entry) return project;
  const after = index < 0 ? [...list, entry] : list.with(index, entry);
  return withBoat(project, { ...project.boat, [key]: after });
}

function withBoat(project: Project, boat: Boat): Project {
  if (boat === project.boat) return project;
  const known = new Set(boatProblems(project.boat).map(({ what }) => what));
  // Only what this change made wrong refuses it: a contradiction already there must not lock the other fields.
  const fresh = boatProblems(boat).filter(({ what }) => !known.has(what));
  if (fresh.length > 0) throw new RefusedEdit(fresh.map(({ what, mend }) => `${what} ${mend}`).join(' '));
  return edited(project, (draft) => {
    draft.boat = boat;
  });
}

function structureOf<T extends { readonly id: string }>(list: readonly T[], id: string, word: string): T {
  const found = list.find((entry) => entry.id === id);
  if (!found) throw new RefusedEdit(`There is no ${word} "${id}" on this boat.`);
  return found;
}

function onMast(place: Place, before: Mast, after: Mast): Place {
  return at(place, place.position.xM + after.xM - before.xM, stretchedZM(place.position.zM, before, after));
}

/**
 * A height on a mast after the mast became longer, shorter, higher or lower: in proportion between foot and truck, as far
 * from the nearer of the two outside them.
 */
function stretchedZM(zM: number, before: Mast, after: Mast): number {
  if (zM >= before.truckZM) return after.truckZM + zM - before.truckZM;
  if (zM <= before.footZM) return after.footZM + zM - before.footZM;
  const share = (zM - before.footZM) / (before.truckZM - before.footZM);
  return after.footZM + share * (after.truckZM - after.footZM);
}

function at(place: Place, xM: number, zM: number): Place {
  return { ...place, position: { xM: toMm(xM), yM: place.position.yM, zM: toMm(zM) } };
}
