import { placeOf } from '../catalogue/lookup.ts';
import type { Item, Subject } from '../model/project.ts';
import type { Build } from './build.ts';
import { findStructure } from './components.ts';
import { lostWith, type Placed } from './placed.ts';
import type { FailureEvent } from './types.ts';

/**
 * The failures the user has added. What such an event names is down with all that goes with it: a mast or arch takes what
 * stands on it, a place or compartment what is there. What this layout does not have is passed over, for another may.
 */
export function ownEvents(build: Build, placed: readonly Placed[]): readonly FailureEvent[] {
  return build.project.settings.redundancy.events.map(({ id, label, hits, note }): FailureEvent => {
    const downIds = [...new Set(hits.flatMap((hit) => downWith(build, placed, hit)))];
    const words = downIds.length > 0 ? note : `${note} This layout has nothing of what it hits.`.trim();
    return { id: `own:${id}`, label, kind: 'own', downIds, note: words };
  });
}

function downWith(
  { project, index, feeds, links }: Build,
  placed: readonly Placed[],
  { kind, id }: Subject,
): readonly string[] {
  const itemsOf = (isIn: (item: Item) => boolean): string[] =>
    project.items.filter(isIn).map((item) => `item:${item.id}`);
  switch (kind) {
    case 'structure':
      return findStructure(project, id) ? lostWith(placed, [id]) : [];
    case 'place':
      return itemsOf((item) => item.placeId === id);
    case 'compartment':
      return itemsOf((item) => placeOf(project, item)?.compartmentId === id);
    case 'item':
      return index.items.has(id) ? [`item:${id}`] : [];
    case 'run':
      return index.runs.has(id) ? [`run:${id}`] : [];
    case 'feed':
      return feeds.has(id) ? [`feed:${id}`] : [];
    case 'link':
      return links.has(id) ? [`link:${id}`] : [];
    case 'boat':
      return [...placed.map(({ component }) => component.id)];
  }
}
