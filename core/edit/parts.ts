import { indexProject } from '../catalogue/lookup.ts';
import { partProblems } from '../document/overrides.ts';
import { nextId } from '../model/ids.ts';
import { type Part, partSchema } from '../model/part.ts';
import type { Endpoint, Project } from '../model/project.ts';
import { entryOf, isSame, withEntry, withNewEntry, withoutEntries } from './change.ts';
import { RefusedEdit, requireSound, requireValid } from './refused.ts';

/**
 * Adds a part of the user's own. An empty id gets the next free one; a copy of a catalogue part needs a new id.
 * @throws RefusedEdit when the part is not valid or its id is taken
 */
export function addPart(project: Project, part: Part): Project {
  const own: Part = part.id === '' ? { ...part, id: nextId(project, 'own-part') } : part;
  if (indexProject(project).parts.has(own.id)) {
    throw new RefusedEdit(`There is already a part with the id "${own.id}": give the new one another.`);
  }
  requireGoodPart(own);
  return requireSound(withNewEntry(project, 'parts', own), own.name);
}

/**
 * Puts another description in place of a part of the user's own, under the same id.
 * @throws RefusedEdit when it is not valid, is another kind of part, or lacks a port that is in use
 */
export function setPart(project: Project, part: Part): Project {
  const known = entryOf(project, 'parts', part.id);
  if (isSame(known, part)) return project;
  if (known.kind !== part.kind && usersOf(project, part.id).length > 0) {
    throw new RefusedEdit(`${known.name} is in use as a ${known.kind}: make a new part for another kind of thing.`);
  }
  requireGoodPart(part);
  for (const [tag, end] of connectedEnds(project, part.id)) {
    const before = known.ports.find((port) => port.id === end.portId);
    if (!before) continue;
    const after = part.ports.find((port) => port.id === end.portId);
    if (after?.medium === before.medium) continue;
    throw new RefusedEdit(
      `The port "${before.label}" of ${known.name} is in use at ${tag}: take off what is connected there first.`,
    );
  }
  return requireSound(withEntry(project, 'parts', part), known.name);
}

/** @throws RefusedEdit while an item, run or feed of any layout uses the part */
export function removePart(project: Project, partId: string): Project {
  const part = entryOf(project, 'parts', partId);
  const users = usersOf(project, partId);
  if (users.length > 0) {
    const shown = users.slice(0, 4).join(', ');
    const more = users.length > 4 ? ` and ${users.length - 4} more` : '';
    throw new RefusedEdit(`${part.name} is in use by ${shown}${more}: choose another part there first.`);
  }
  return withoutEntries(project, 'parts', new Set([partId]));
}

function requireGoodPart(part: Part): void {
  const name = part.name.trim() === '' ? 'The new part' : part.name;
  if (part.name.trim() === '')
    throw new RefusedEdit('The part needs a name: it stands in the lists and on the install sheet.');
  requireValid(partSchema, part, name);
  const problems = partProblems(part);
  if (problems.length > 0) {
    throw new RefusedEdit(`${name}: ${problems.map(({ what, mend }) => `${what} ${mend}`).join(' ')}`);
  }
}

/** Tags and numbers of everything made of a part, over all layouts, each once. */
function usersOf(project: Project, partId: string): string[] {
  const names = new Set<string>();
  for (const layout of [project, ...project.alternatives]) {
    for (const item of layout.items) if (item.partId === partId) names.add(item.tag);
    for (const run of layout.runs) {
      if ([run.cableId, run.connectorFromId, run.connectorToId].includes(partId)) names.add(run.number);
    }
    for (const feed of layout.feeds) if (feed.conductorId === partId) names.add(feed.number);
  }
  return [...names];
}

/** Ends of runs, feeds and links at items made of a part, with the item's tag, over all layouts. */
function connectedEnds(project: Project, partId: string): [string, Endpoint][] {
  return [project, ...project.alternatives].flatMap((layout) => {
    const tags = new Map(layout.items.filter((item) => item.partId === partId).map((item) => [item.id, item.tag]));
    const ends = [...layout.runs, ...layout.feeds, ...layout.dataLinks].flatMap((line) => [line.from, line.to]);
    return ends.flatMap((end): [string, Endpoint][] => {
      const tag = tags.get(end.itemId);
      return tag === undefined ? [] : [[tag, end]];
    });
  });
}
