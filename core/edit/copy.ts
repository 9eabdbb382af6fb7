import { indexProject } from '../catalogue/lookup.ts';
import { idMaker } from '../model/ids.ts';
import { isPlaceable } from '../model/placeable.ts';
import type { Endpoint, Item, Project, Subject } from '../model/project.ts';
import { itemSchema, runSchema } from '../model/project.ts';
import { edited, entryOf } from './change.ts';
import { keptPlaceId, moved, type Offset } from './geometry.ts';
import { requireValid } from './refused.ts';
import { freeTag, numberMaker, tagsOf } from './tags.ts';

const ASIDE: Offset = { dxM: 0.5, dyM: 0, dzM: 0 };

/**
 * Copies items with the runs, feeds and links wholly between them; copies get new ids, tags and numbers and stand half a
 * metre further aft unless told otherwise.
 * @throws RefusedEdit when a copy would leave the drawing
 */
export function copyItems(project: Project, ids: readonly string[], by: Offset = ASIDE): Project {
  const make = idMaker(project);
  const taken = tagsOf(project);
  const chosen = new Set(ids);
  for (const id of chosen) entryOf(project, 'items', id);
  const copies = new Map<string, Item>();
  for (const item of project.items) {
    if (chosen.has(item.id)) copies.set(item.id, copyOf(project, item, make('item'), taken, by));
  }
  const between = <T extends { readonly from: Endpoint; readonly to: Endpoint }>(lines: readonly T[]): T[] =>
    lines.flatMap((line) => {
      const [from, to] = [copies.get(line.from.itemId), copies.get(line.to.itemId)];
      if (!from || !to) return [];
      return [{ ...line, from: { ...line.from, itemId: from.id }, to: { ...line.to, itemId: to.id } }];
    });
  const [runNumber, feedNumber, linkNumber] = (['W', 'F', 'D'] as const).map((letter) => numberMaker(project, letter));
  return edited(project, (draft) => {
    draft.items.push(...copies.values());
    for (const run of between(project.runs)) {
      const via = run.via.map((bend) => ({ position: moved(bend.position, by), placeId: null }));
      const copy = { ...run, via, id: make('run'), number: runNumber?.() ?? run.number };
      requireValid(runSchema, copy, `A copy of ${run.number}`);
      draft.runs.push(copy);
    }
    for (const feed of between(project.feeds))
      draft.feeds.push({ ...feed, id: make('feed'), number: feedNumber?.() ?? feed.number });
    for (const link of between(project.dataLinks)) {
      draft.dataLinks.push({ ...link, id: make('link'), number: linkNumber?.() ?? link.number });
    }
  });
}

/** What an edit added, for selecting it: items, runs, feeds and links of `after` that `before` does not have. */
export function addedSubjects(before: Project, after: Project): Subject[] {
  const lists = [
    ['item', 'items'],
    ['run', 'runs'],
    ['feed', 'feeds'],
    ['link', 'dataLinks'],
  ] as const;
  return lists.flatMap(([kind, key]) => {
    const known = new Set(before[key].map(({ id }) => id));
    return after[key].filter(({ id }) => !known.has(id)).map(({ id }) => ({ kind, id }));
  });
}

function copyOf(project: Project, item: Item, id: string, taken: Set<string>, by: Offset): Item {
  const part = indexProject(project).parts.get(item.partId);
  const position = moved(item.position, by);
  const copy: Item = {
    ...item,
    id,
    tag: part && isPlaceable(part) ? freeTag(part, taken) : copiedTag(item.tag, taken),
    position,
    endPosition: item.endPosition && moved(item.endPosition, by),
    placeId: keptPlaceId(project, item.placeId, position),
  };
  requireValid(itemSchema, copy, `A copy of ${item.tag}`);
  return copy;
}

/** A tag for the copy of a part nobody knows: the old one with the next free number behind it. */
function copiedTag(tag: string, taken: Set<string>): string {
  for (let number = 2; ; number += 1) {
    const free = `${tag}-${number}`;
    if (taken.has(free)) continue;
    taken.add(free);
    return free;
  }
}
