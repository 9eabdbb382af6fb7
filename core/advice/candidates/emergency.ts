import { distanceM } from '../../edit/geometry.ts';
import { addItem, setItem } from '../../edit/items.ts';
import type { Position } from '../../model/boat.ts';
import { CONNECTOR_WORDS } from '../../model/fit.ts';
import type { Item } from '../../model/project.ts';
import { emergencyAntennas, emergencyFit } from '../../redundancy/emergency.ts';
import { TRY_EMERGENCY } from '../cautions.ts';
import { newest } from '../ends.ts';
import { deckPlace } from '../spots.ts';
import { fittedOf, placeWords, type Survey, tagsOf } from '../survey.ts';
import type { Candidate } from '../types.ts';

/** Lead over the straight distance: it goes round corners. Common practice, no source. */
const LEAD_OVER_STRAIGHT = 1.15;
/** Longest lead offered, m: beyond it another place must be found to rig the antenna. Own rule, no source. */
const LONGEST_LEAD_M = 15;
const PART_ID = 'antenna-vhf-emergency';

/** An emergency antenna that reaches a set and plugs into it: a lead for one that is aboard, or a new one. */
export function emergencyCandidates(survey: Survey): readonly Candidate[] {
  const sets = fittedOf(survey, 'radio')
    .filter(({ part }) => part.radioClass === 'vhf-fixed')
    .map(({ item }) => item);
  const aboard = emergencyAntennas(survey.project);
  if (sets.length === 0) return [];
  if (aboard.length === 0) return newAntenna(survey, sets);
  return aboard.flatMap((antenna) => {
    const misfits = sets.filter((set) => emergencyFit(survey.project, antenna, set).verdict !== 'fits');
    return misfits.length === 0 ? [] : newLead(survey, antenna, sets);
  });
}

/** A lead for all sets where it is not too long, else for the nearest. */
function leadFor(
  survey: Survey,
  from: Position,
  sets: readonly Item[],
): { lengthM: number; sets: readonly Item[] } | null {
  const byDistance = sets.toSorted((a, b) => distanceM(a.position, from) - distanceM(b.position, from));
  const reached = byDistance.filter((set) => {
    const isSamePlug = socketOf(survey, set) === socketOf(survey, byDistance[0] ?? set);
    return isSamePlug && leadM(set.position, from) <= LONGEST_LEAD_M;
  });
  const last = reached.at(-1);
  return last ? { lengthM: leadM(last.position, from), sets: reached } : null;
}

const leadM = (a: Position, b: Position): number => Math.ceil(distanceM(a, b) * LEAD_OVER_STRAIGHT);

/** Plug for a set's socket as people write it. */
function socketOf(survey: Survey, set: Item): string {
  const port = survey.index.effective
    .get(set.id)
    ?.ports.find((each) => each.medium === 'rf' && each.bands.includes('vhf-marine'));
  const type = port?.medium === 'rf' ? port.connector : 'uhf';
  return type === 'uhf' ? 'PL-259' : CONNECTOR_WORDS[type];
}

function newLead(survey: Survey, antenna: Item, sets: readonly Item[]): readonly Candidate[] {
  const lead = leadFor(survey, antenna.position, sets);
  const [first] = lead?.sets ?? [];
  if (!lead || !first) return [];
  const plug = socketOf(survey, first);
  return [
    {
      id: `emergency-antenna:${antenna.id}`,
      kind: 'emergency-antenna',
      question: 'emergency-antenna',
      title: `Give ${antenna.tag} a lead of ${lead.lengthM} m with a ${plug} plug, that reaches ${tagsOf(lead.sets)}`,
      cautions: [TRY_EMERGENCY],
      subjects: [antenna, ...lead.sets].map(({ id }) => ({ kind: 'item', id })),
      apply: (project) => setItem(project, antenna.id, { facts: { leadLengthM: lead.lengthM, leadConnector: plug } }),
    },
  ];
}

function newAntenna(survey: Survey, sets: readonly Item[]): readonly Candidate[] {
  const [first] = sets;
  const place = first && deckPlace(survey, first.position);
  const lead = place && leadFor(survey, place.position, sets);
  const [reached] = lead?.sets ?? [];
  if (!place || !lead || !reached) return [];
  const plug = socketOf(survey, reached);
  return [
    {
      id: 'emergency-antenna:new',
      kind: 'emergency-antenna',
      question: 'emergency-antenna',
      title: `Keep an emergency antenna to rig at ${placeWords(place.name)}, with a lead of ${lead.lengthM} m and a ${plug} plug for ${tagsOf(lead.sets)}`,
      cautions: [TRY_EMERGENCY],
      subjects: lead.sets.map(({ id }) => ({ kind: 'item', id })),
      apply: (project) => {
        const fitted = addItem(project, { partId: PART_ID, placeId: place.id });
        const facts = { leadLengthM: lead.lengthM, leadConnector: plug };
        return setItem(fitted, newest(fitted).id, { facts });
      },
    },
  ];
}
