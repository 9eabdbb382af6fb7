import { addFeed } from '../../edit/feeds.ts';
import { addItem } from '../../edit/items.ts';
import { RefusedEdit } from '../../edit/refused.ts';
import { removeSubjects } from '../../edit/remove.ts';
import type { Feed, Item, Project } from '../../model/project.ts';
import { BY_ELECTRICIAN } from '../cautions.ts';
import { dcEnd, newest } from '../ends.ts';
import { feedsOf, fittedOf, isBattery, type Survey } from '../survey.ts';
import type { Candidate } from '../types.ts';
import { ratingFor, sameVoltage, wireFor } from '../wires.ts';

/** A breaker of its own, straight from the battery, for each set that shares one with other loads. */
export function breakerCandidates(survey: Survey): readonly Candidate[] {
  return fittedOf(survey, 'radio').flatMap(({ item }) => {
    const shared = sharedBreaker(survey, item);
    return shared ? [ownBreaker(survey, item, shared)].filter((each) => each !== null) : [];
  });
}

interface Shared {
  readonly breaker: Item;
  /** From the battery to the breaker, and from the breaker to the set. */
  readonly into: Feed;
  readonly out: Feed;
}

/** The breaker of a set where it is the set's only supply, a single point, and shared; null elsewhere. */
function sharedBreaker(survey: Survey, set: Item): Shared | null {
  const [out, more] = feedsOf(survey, set.id);
  const breaker = out && survey.index.items.get(out.from.itemId);
  const part = breaker && survey.index.effective.get(breaker.id);
  if (!out || more || !breaker || part?.kind !== 'power' || part.powerClass !== 'breaker') return null;
  const [into, other] = feedsOf(survey, breaker.id);
  if (!into || other || !isBattery(survey.index.effective.get(into.from.itemId))) return null;
  const isShared = (survey.index.feedsFrom.get(breaker.id) ?? []).length > 1;
  return isShared && survey.singles.has(`item:${breaker.id}`) ? { breaker, into, out } : null;
}

function ownBreaker(survey: Survey, set: Item, { breaker, into, out }: Shared): Candidate | null {
  const ratingA = ratingFor(survey.project, set);
  const battery = survey.index.items.get(into.from.itemId);
  const bank = survey.index.effective.get(into.from.itemId);
  const partId = `breaker-${ratingA}a`;
  if (ratingA === null || !battery || bank?.kind !== 'power' || !survey.index.parts.has(partId)) return null;
  if (!sameVoltage(survey.project, battery, set)) return null;
  const apply = (project: Project): Project => {
    const bare = removeSubjects(project, [{ kind: 'feed', id: out.id }]);
    const fitted = addItem(bare, { partId, position: breaker.position, placeId: breaker.placeId });
    const { id } = newest(fitted);
    const [from, to] = [dcEnd(fitted, id, 'in'), dcEnd(fitted, id, 'out')];
    // The lead there is may be thick for all it feeds, or have no fuse: the new one is sized for this set.
    const wire = wireFor(fitted, set, into.lengthM, bank.figures.voltageV.value);
    if (!from || !to || !wire)
      throw new RefusedEdit(`No breaker, fuse and pair for ${set.tag} over ${into.lengthM} m was found.`);
    const { conductorId, lengthM, fuse } = out;
    const fed = addFeed(fitted, { from: into.from, to: from, ...wire });
    return addFeed(fed, { from: to, to: out.to, conductorId, lengthM, fuse });
  };
  return {
    id: `own-breaker:${set.id}`,
    kind: 'own-breaker',
    question: `supply:${set.id}`,
    title: `Give ${set.tag} a breaker of its own beside ${breaker.tag}, straight from ${battery.tag}`,
    cautions: [BY_ELECTRICIAN],
    subjects: [set, breaker, battery].map(({ id }) => ({ kind: 'item', id })),
    apply,
  };
}
