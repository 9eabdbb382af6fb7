import { distanceM, wayAlongM } from '../edit/geometry.ts';
import type { Place, Position } from '../model/boat.ts';
import type { Part } from '../model/part.ts';
import { stands } from '../redundancy/build.ts';
import { seesSky } from '../redundancy/fix.ts';
import type { Survey } from './survey.ts';

/** Lowest terminals of a battery that floods spare, m above the waterline: water inside stands no higher than outside. */
export const DRY_ZM = 0.3;
/** Highest a battery is put above the sole of its space, m: beyond it is overhead. Own rule, no source. */
const HIGHEST_OVER_SOLE_M = 1.5;
/** Free height a whip wants above the middle of the hull's side, m. Own rule, no source. */
const OVER_DECK_M = 1;
/** Nearer than this another antenna or a radar stands in the way, m. Own rule, no source. */
const ANTENNA_ROOM_M = 1.5;
const SKY_ROOM_M = 0.6;

const byScore =
  (score: (place: Place) => number) =>
  (a: Place, b: Place): number =>
    score(b) - score(a);

/**
 * A dry place for a small battery near a set: under cover, above the flood line, not overhead; a shelf of its own before
 * a place where radios are, the other side of the boat before that of the batteries there are, low before high.
 */
export function dryPlace(survey: Survey, near: Position, besides: readonly Position[]): Place | null {
  const soles = new Map(survey.project.boat.compartments.map(({ id, soleZM }) => [id, soleZM]));
  const places = survey.project.places.filter(({ outdoors, structureId, position, compartmentId }) => {
    const soleZM = compartmentId === null ? 0 : (soles.get(compartmentId) ?? 0);
    return !outdoors && structureId === null && position.zM >= DRY_ZM && position.zM - soleZM <= HIGHEST_OVER_SOLE_M;
  });
  const score = (place: Place): number =>
    -wayAlongM(place.position, near) -
    2 * place.position.zM -
    2 * countAt(survey, place, 'radio') -
    (besides.some(({ yM }) => Math.sign(Math.round(yM)) === Math.sign(Math.round(place.position.yM))) ? 1 : 0);
  return places.toSorted(byScore(score))[0] ?? null;
}

/** How many things of a kind stand at a place. */
export function countAt({ project, index }: Survey, place: Place, kind: Part['kind']): number {
  return project.items.filter(({ id, placeId }) => placeId === place.id && index.effective.get(id)?.kind === kind)
    .length;
}

/** The highest free place in the open for a whip, off the structures it is to be independent of; null where there is none. */
export function antennaPlace(survey: Survey, offStructures: readonly string[]): Place | null {
  const deckZM = survey.project.boat.freeboardMidM;
  const places = survey.project.places.filter(
    (place) =>
      isOpen(place) &&
      (place.structureId === null || !offStructures.includes(place.structureId)) &&
      place.position.zM >= deckZM + OVER_DECK_M &&
      countAt(survey, place, 'radio') === 0 &&
      !isCrowded(survey, place, ANTENNA_ROOM_M) &&
      !isAtMast(survey, place, offStructures),
  );
  return places.toSorted(byScore(({ position }) => position.zM))[0] ?? null;
}

/** The nearest free place under the sky, not aloft: a GNSS or satellite antenna gains nothing from height. */
export function skyPlace(survey: Survey, near: Position): Place | null {
  const masts = new Set(survey.project.boat.masts.map(({ id }) => id));
  const places = survey.project.places.filter(
    (place) =>
      isOpen(place) &&
      (place.structureId === null || !masts.has(place.structureId)) &&
      place.position.zM >= survey.project.boat.freeboardMidM &&
      !isAtMast(survey, place, [...masts]) &&
      !isCrowded(survey, place, SKY_ROOM_M),
  );
  return places.toSorted(byScore(({ position }) => -wayAlongM(position, near)))[0] ?? null;
}

/** What a rail counts as farther than the deck beside it, m: a lead lashed to one is more trouble. Own rule, no source. */
const RAIL_PENALTY_M = 5;

/** Where an emergency antenna is rigged: in the open, off the masts, as near to the set as may be, on deck before on a rail. */
export function deckPlace(survey: Survey, near: Position): Place | null {
  const masts = survey.project.boat.masts.map(({ id }) => id);
  const places = survey.project.places.filter(
    (place) =>
      place.outdoors &&
      (place.structureId === null || !masts.includes(place.structureId)) &&
      !isAtMast(survey, place, masts),
  );
  const score = ({ position, structureId }: Place): number =>
    -distanceM(position, near) - (structureId === null ? 0 : RAIL_PENALTY_M);
  return places.toSorted(byScore(score))[0] ?? null;
}

const isOpen = ({ outdoors, overhead }: Place): boolean => outdoors && overhead === 'open' && seesSky(overhead);

/** Whether another antenna, a radar, a lamp aloft or a set with its antenna inside is so near that it would be in the way. */
function isCrowded({ project, index }: Survey, { position }: Place, roomM: number): boolean {
  return project.items.some((item) => {
    const part = index.effective.get(item.id);
    const isInWay =
      part?.kind === 'antenna' ||
      (part?.kind === 'equipment' && (part.equipmentClass === 'radar' || part.equipmentClass === 'wind-generator')) ||
      (part?.kind === 'radio' && part.traits.integralAntenna);
    return isInWay && stands(item) && distanceM(item.position, position) < roomM;
  });
}

/** Whether a place on the hull is at the foot of a mast that is to be done without: it would be swept with it. */
function isAtMast({ project }: Survey, { position, structureId }: Place, mastIds: readonly string[]): boolean {
  return (
    structureId === null &&
    project.boat.masts.some((mast) => mastIds.includes(mast.id) && Math.hypot(mast.xM - position.xM, position.yM) < 1)
  );
}
