import { indexProject } from '../../catalogue/lookup.ts';
import { addDataLink, addFeed } from '../../edit/feeds.ts';
import { wayAlongM } from '../../edit/geometry.ts';
import { addItem } from '../../edit/items.ts';
import { RefusedEdit } from '../../edit/refused.ts';
import type { Place } from '../../model/boat.ts';
import type { Feed, Item, Project } from '../../model/project.ts';
import { BY_ELECTRICIAN, OPEN_SKY, POSITION_TALKS } from '../cautions.ts';
import { dataEnd, dcEnd, newest } from '../ends.ts';
import { skyPlace } from '../spots.ts';
import { feedsOf, fittedOf, placeWords, type Survey } from '../survey.ts';
import type { Candidate } from '../types.ts';
import { supplyVoltageV, takesVoltage, wireFor } from '../wires.ts';
import { positionSources } from './position.ts';

const RECEIVER_ID = 'gnss-smart-antenna';

/** Where nothing aboard has a fix: a receiver in the open for a set whose alert could carry one, on that set's own supply. */
export function receiverCandidates(survey: Survey): readonly Candidate[] {
  if (positionSources(survey).length > 0) return [];
  return fittedOf(survey, 'radio').flatMap(({ item, part }): Candidate[] => {
    const [feed] = feedsOf(survey, item.id);
    const place = skyPlace(survey, item.position);
    if (!part.traits.dsc || !feed || !place || !dataEnd(survey.project, item.id)) return [];
    const supplyV = supplyVoltageV(survey.project, feed);
    const receiver = survey.index.parts.get(RECEIVER_ID);
    if (supplyV === null || !receiver || !takesVoltage(receiver, supplyV)) return [];
    return [
      {
        id: `receiver:${item.id}`,
        kind: 'position-link',
        question: `position:${item.id}`,
        title: `Fit a GNSS receiver at ${placeWords(place.name)} and lead its position to ${item.tag}`,
        cautions: [POSITION_TALKS, OPEN_SKY, BY_ELECTRICIAN],
        subjects: [{ kind: 'item', id: item.id }],
        apply: (project) => withReceiver(project, { set: item, feed, supplyV, place }),
      },
    ];
  });
}

interface Made {
  readonly set: Item;
  readonly feed: Feed;
  /** Of the set's supply, V. */
  readonly supplyV: number;
  readonly place: Place;
}

function withReceiver(project: Project, { set, feed, supplyV, place }: Made): Project {
  const fitted = addItem(project, { partId: RECEIVER_ID, placeId: place.id });
  const receiver = newest(fitted);
  const source = indexProject(fitted).items.get(feed.from.itemId);
  const into = dcEnd(fitted, receiver.id, 'in');
  const [from, to] = [dataEnd(fitted, receiver.id), dataEnd(fitted, set.id)];
  const wire = source && wireFor(fitted, receiver, wayAlongM(source.position, receiver.position), supplyV);
  if (!wire || !into || !from || !to)
    throw new RefusedEdit(`No supply for a receiver was found beside that of ${set.tag}.`);
  return addDataLink(addFeed(fitted, { from: feed.from, to: into, ...wire }), { from, to });
}
