import type { NewPlace } from '../../../core/edit/places.ts';
import type { Boat, Compartment, Fitting, Mast } from '../../../core/model/boat.ts';
import type { Project } from '../../../core/model/project.ts';

const toCm = (valueM: number): number => Math.round(valueM * 100) / 100;

/** A first name for one more of a kind: `Mast`, then `Mast 2`, `Mast 3`. */
export function freeName(word: string, taken: readonly { readonly name: string }[]): string {
  const names = new Set(taken.map(({ name }) => name));
  if (!names.has(word)) return word;
  let number = 2;
  while (names.has(`${word} ${number}`)) number += 1;
  return `${word} ${number}`;
}

// Starting figures of what is added: in the middle of the boat, where it is seen at once and can be put right.

export function newMast(boat: Boat): Omit<Mast, 'id'> {
  const footZM = boat.freeboardMidM;
  return {
    name: freeName('Mast', boat.masts),
    xM: toCm(boat.loaM / 2),
    footZM,
    truckZM: toCm(Math.max(footZM + 1, 0.8 * boat.airDraughtM)),
    sectionMm: 120,
    material: 'aluminium',
    stepped: 'deck',
    spreaderZM: [],
    boomZM: null,
    boomLengthM: 0,
  };
}

export function newDeckhouse(boat: Boat): Boat['deckhouses'][number] {
  return {
    xForeM: toCm(0.35 * boat.loaM),
    xAftM: toCm(0.65 * boat.loaM),
    zTopM: toCm(boat.freeboardMidM + 0.6),
    material: boat.deckMaterial,
  };
}

export function newFitting(boat: Boat): Omit<Fitting, 'id'> {
  return {
    name: freeName('Arch', boat.fittings),
    kind: 'arch',
    xForeM: toCm(0.9 * boat.loaM),
    xAftM: toCm(0.95 * boat.loaM),
    zBaseM: boat.freeboardAftM,
    zTopM: toCm(boat.freeboardAftM + 2),
    material: 'aluminium',
  };
}

export function newCompartment(boat: Boat): Omit<Compartment, 'id'> {
  return {
    name: freeName('Compartment', boat.compartments),
    side: 'centre',
    xForeM: toCm(0.4 * boat.loaM),
    xAftM: toCm(0.6 * boat.loaM),
    soleZM: toCm(-0.2 * boat.draughtM),
  };
}

export function newPlace({ boat, places }: Project): NewPlace {
  return {
    name: freeName('Place', places),
    position: { xM: toCm(boat.loaM / 2), yM: 0, zM: boat.freeboardMidM },
    structureId: null,
    compartmentId: null,
    outdoors: true,
    overhead: 'open',
  };
}
