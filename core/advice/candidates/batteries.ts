import { setFeed } from '../../edit/feeds.ts';
import { wayAlongM } from '../../edit/geometry.ts';
import { snapToPlace } from '../../edit/items.ts';
import { RefusedEdit } from '../../edit/refused.ts';
import type { Item, Project } from '../../model/project.ts';
import { assessFeeds } from '../../power/feeds.ts';
import { BY_ELECTRICIAN, HEAVY } from '../cautions.ts';
import { DRY_ZM, dryPlace } from '../spots.ts';
import { fittedOf, isBattery, placeWords, type Survey } from '../survey.ts';
import type { Candidate } from '../types.ts';

/** Largest battery that is proposed to be moved up, Ah: some 30 kg of lead, what one person carries. Own rule, no source. */
const LARGEST_MOVED_AH = 120;

/** A battery that a flood takes and that is light enough, to a dry place. */
export function batteryCandidates(survey: Survey): readonly Candidate[] {
  const drowned = new Set(
    survey.study.model.causes
      .filter(({ id }) => id.startsWith('cause:flood:') && survey.singles.has(id))
      .flatMap(({ hits }) => hits),
  );
  return fittedOf(survey, 'power').flatMap(({ item, part }): Candidate[] => {
    const capacityAh = part.figures.capacityAh?.value ?? Number.POSITIVE_INFINITY;
    if (!isBattery(part) || !drowned.has(`item:${item.id}`) || capacityAh > LARGEST_MOVED_AH) return [];
    const place = item.position.zM < DRY_ZM ? dryPlace(survey, item.position, []) : null;
    if (!place) return [];
    return [
      {
        id: `battery-up:${item.id}`,
        kind: 'battery-up',
        question: `battery:${item.id}`,
        title: `Move ${item.tag} up to ${placeWords(place.name)}, above the flood line`,
        cautions: [BY_ELECTRICIAN, HEAVY],
        subjects: [{ kind: 'item', id: item.id }],
        apply: (project) => moved(project, item, place.id),
      },
    ];
  });
}

/** @throws RefusedEdit where a set would then read a lower voltage than the project allows */
function moved(project: Project, battery: Item, placeId: string): Project {
  const after = withLongerLeads(snapToPlace(project, battery.id, placeId), battery.id);
  const before = new Map(assessFeeds(project).map(({ feedId, totalDropV }) => [feedId, totalDropV]));
  const thin = assessFeeds(after).find(
    ({ feedId, totalDropV, totalDropPercent, limitPercent }) =>
      totalDropPercent > limitPercent && totalDropV > (before.get(feedId) ?? 0),
  );
  if (thin) {
    const number = after.feeds.find(({ id }) => id === thin.feedId)?.number ?? thin.feedId;
    throw new RefusedEdit(`The leads of ${battery.tag} are too thin to reach so far: ${number} would drop too much.`);
  }
  return after;
}

/** The leads of a battery that was moved, as long as the way along the boat now asks; none becomes shorter. */
function withLongerLeads(project: Project, itemId: string): Project {
  const positionOf = (id: string): Item['position'] | undefined =>
    project.items.find((item) => item.id === id)?.position;
  return project.feeds.reduce((current, feed) => {
    if (feed.from.itemId !== itemId && feed.to.itemId !== itemId) return current;
    const [a, b] = [positionOf(feed.from.itemId), positionOf(feed.to.itemId)];
    const neededM = a && b ? wayAlongM(a, b) : 0;
    return neededM > feed.lengthM ? setFeed(current, feed.id, { lengthM: neededM }) : current;
  }, project);
}
