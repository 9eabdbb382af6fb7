import { addDataLink } from '../../edit/feeds.ts';
import { wayAlongM } from '../../edit/geometry.ts';
import { RefusedEdit } from '../../edit/refused.ts';
import type { Item } from '../../model/project.ts';
import { stands } from '../../redundancy/build.ts';
import { ownFix, positionGate } from '../../redundancy/fix.ts';
import { POSITION_TALKS } from '../cautions.ts';
import { dataEnd } from '../ends.ts';
import { fittedOf, type Survey } from '../survey.ts';
import type { Candidate } from '../types.ts';

/** Sources tried for a set without a position, and for one that has one already. */
const MOST_FIRST = 2;
const MOST_FURTHER = 1;

/** A position into each set whose alert carries none, and a second source into those that have but one. */
export function positionCandidates(survey: Survey): readonly Candidate[] {
  const sources = positionSources(survey);
  const isShort = alertLosesPosition(survey);
  return fittedOf(survey, 'radio').flatMap(({ item, part }) => {
    const wants = part.traits.dsc || part.radioClass === 'ais-class-a';
    if (!wants || !dataEnd(survey.project, item.id)) return [];
    const joined = new Set(reachedFrom(survey, item.id));
    const free = sources
      .filter((source) => source.id !== item.id && !joined.has(source.id))
      .toSorted((a, b) => wayAlongM(a.position, item.position) - wayAlongM(b.position, item.position));
    const hasOne = positionGate(survey.build, item).gate !== null;
    if (hasOne && !isShort) return [];
    return free.slice(0, hasOne ? MOST_FURTHER : MOST_FIRST).map((source) => linked(survey, item, source, hasOne));
  });
}

/** Whether any failure leaves the digital alert worse than it is: else a second source has nothing to mend. */
function alertLosesPosition({ assessment: { redundancy } }: Survey): boolean {
  const column = redundancy.services.indexOf('digital-alert');
  const grades = redundancy.matrix.map(({ states }) => states[column]?.grade);
  return grades[0] === 'full' && grades.some((grade) => grade !== 'full');
}

/** What has a fix, and the buses that carry one. */
export function positionSources(survey: Survey): readonly Item[] {
  return survey.project.items.filter((item) => {
    if (!stands(item) || !dataEnd(survey.project, item.id)) return false;
    if (ownFix(survey.build, item).gate !== null) return true;
    return isBus(survey, item.id) && neighbours(survey, item.id).some((id) => hasFix(survey, id));
  });
}

function hasFix(survey: Survey, itemId: string): boolean {
  const item = survey.index.items.get(itemId);
  return item !== undefined && stands(item) && ownFix(survey.build, item).gate !== null;
}

function isBus({ index }: Survey, itemId: string): boolean {
  const part = index.effective.get(itemId);
  return part?.kind === 'equipment' && ['data-bus', 'display', 'router'].includes(part.equipmentClass);
}

function neighbours(survey: Survey, itemId: string): readonly string[] {
  return (survey.index.linksAtItem.get(itemId) ?? [])
    .filter((link) => stands(link) && link.carries.includes('position'))
    .map(({ from, to }) => (from.itemId === itemId ? to.itemId : from.itemId));
}

/** Everything whose position reaches an item already, directly or over buses. */
function reachedFrom(survey: Survey, itemId: string): readonly string[] {
  const reached = new Set<string>();
  const queue = [itemId];
  for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
    for (const next of neighbours(survey, id)) {
      if (reached.has(next) || next === itemId) continue;
      reached.add(next);
      if (isBus(survey, next)) queue.push(next);
    }
  }
  return [...reached];
}

function linked(survey: Survey, set: Item, source: Item, hasOne: boolean): Candidate {
  const standard = isBus(survey, source.id) ? 'nmea-2000' : 'nmea-0183';
  return {
    id: `position-link:${set.id}:${source.id}`,
    kind: 'position-link',
    question: `position:${set.id}`,
    title: `Lead position from ${source.tag} to ${set.tag}${hasOne ? ' as well' : ''}`,
    cautions: [POSITION_TALKS],
    subjects: [set, source].map(({ id }) => ({ kind: 'item', id })),
    apply: (project) => {
      const [from, to] = [dataEnd(project, source.id), dataEnd(project, set.id)];
      if (!from || !to) throw new RefusedEdit(`${set.tag} or ${source.tag} has no data port.`);
      return addDataLink(project, { from, to, standard });
    },
  };
}
