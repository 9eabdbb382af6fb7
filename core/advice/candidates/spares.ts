import { addItem, setItem } from '../../edit/items.ts';
import type { Place } from '../../model/boat.ts';
import type { StandaloneClass } from '../../model/part.ts';
import type { ItemFacts } from '../../model/project.ts';
import type { ServiceId } from '../../model/services.ts';
import { CHARGED, IN_DATE, REGISTER, SUBSCRIBED } from '../cautions.ts';
import { newest } from '../ends.ts';
import { countAt } from '../spots.ts';
import { fittedOf, type Survey } from '../survey.ts';
import type { Candidate } from '../types.ts';

interface Spare {
  readonly partId: string;
  readonly serviceId: ServiceId;
  readonly classes: readonly StandaloneClass[];
  readonly words: readonly [first: string, another: string];
  readonly caution: string;
}

const GRAB_BAG: ItemFacts = { inGrabBag: true };

/** What is carried for a service that hangs on one set or has none. */
const SPARES: readonly Spare[] = [
  {
    partId: 'handheld-vhf-dsc-5w',
    serviceId: 'voice-handheld',
    classes: ['handheld-vhf', 'handheld-vhf-dsc'],
    words: ['a handheld VHF with DSC and GNSS', 'a second handheld VHF (with DSC and GNSS)'],
    caution: CHARGED,
  },
  {
    partId: 'beacon-406-manual',
    serviceId: 'beacon',
    classes: ['beacon-406'],
    words: ['a 406 MHz beacon', 'a second 406 MHz beacon'],
    caution: REGISTER,
  },
  {
    partId: 'handheld-satellite',
    serviceId: 'long-range',
    classes: ['handheld-satellite'],
    words: ['a handheld satellite messenger', 'a second handheld satellite messenger'],
    caution: SUBSCRIBED,
  },
  {
    partId: 'sart-ais',
    serviceId: 'locating',
    classes: ['radar-sart', 'ais-sart'],
    words: ['an AIS-SART', 'a second SART (for AIS)'],
    caution: IN_DATE,
  },
  {
    partId: 'mob-ais',
    serviceId: 'person-overboard',
    classes: ['ais-mob', 'personal-beacon'],
    words: ['an AIS person-overboard device', 'a second person-overboard device (for AIS)'],
    caution: IN_DATE,
  },
];

/** A set with a battery of its own in the grab bag, for a service that is lost as drawn or that one thing takes. */
export function spareCandidates(survey: Survey): readonly Candidate[] {
  const inDanger = new Set([...survey.lost, ...[...survey.singles.values()].flat()]);
  return SPARES.filter(({ serviceId, partId }) => inDanger.has(serviceId) && survey.index.parts.has(partId)).map(
    (spare): Candidate => {
      const carried = fittedOf(survey, 'standalone');
      const isSecond = carried.some(({ part }) => spare.classes.includes(part.standaloneClass));
      const place = bagPlace(survey, carried);
      return {
        id: `spare:${spare.partId}`,
        kind: 'spare',
        question: `spare:${spare.serviceId}`,
        title: `Carry ${spare.words[isSecond ? 1 : 0]} in the grab bag`,
        cautions: [spare.caution],
        subjects: [],
        apply: (project) => {
          const fitted = addItem(project, { partId: spare.partId, ...(place ? { placeId: place.id } : {}) });
          return setItem(fitted, newest(fitted).id, { facts: GRAB_BAG });
        },
      };
    },
  );
}

/** Highest a bag hangs above the sole of its space, m: what a hand reaches. Own rule, no source. */
const IN_REACH_M = 1.6;

/** Where the grab bag is: with what goes into it already, else in reach under cover, away from batteries and sets. */
function bagPlace(
  survey: Survey,
  carried: readonly { item: { placeId: string | null; facts: ItemFacts } }[],
): Place | null {
  const bagged = carried.find(({ item }) => item.facts.inGrabBag && item.placeId !== null)?.item.placeId;
  const { project } = survey;
  const soles = new Map(project.boat.compartments.map(({ id, soleZM }) => [id, soleZM]));
  const indoors = project.places.filter(({ outdoors, structureId, compartmentId, position }) => {
    const soleZM = compartmentId === null ? 0 : (soles.get(compartmentId) ?? 0);
    return !outdoors && structureId === null && position.zM - soleZM <= IN_REACH_M;
  });
  const burden = (place: Place): number => 10 * countAt(survey, place, 'power') + countAt(survey, place, 'radio');
  const best = indoors.toSorted((a, b) => burden(a) - burden(b) || b.position.zM - a.position.zM)[0];
  return project.places.find(({ id }) => id === bagged) ?? best ?? null;
}
