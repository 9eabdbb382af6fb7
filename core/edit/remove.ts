import type { Project, Subject } from '../model/project.ts';
import { withoutEntries } from './change.ts';
import { withoutOrphans } from './orphans.ts';
import { removeCompartment, removePlace, removeStructure } from './places.ts';
import { RefusedEdit } from './refused.ts';

/**
 * Takes things off the boat: items with the runs, feeds and links on them, and single runs, feeds and links. Measurements
 * and overrides about them go too, unless the thing lives on in an alternative.
 * @throws RefusedEdit for the boat itself, and for a place, structure or compartment that is still in use
 */
export function removeSubjects(project: Project, subjects: readonly Subject[]): Project {
  const ids = (kind: Subject['kind']) =>
    new Set(subjects.filter((subject) => subject.kind === kind).map(({ id }) => id));
  if (ids('boat').size > 0)
    throw new RefusedEdit('The boat itself cannot be removed: start a new project for another boat.');
  const items = ids('item');
  const linesOff = (kind: 'run' | 'feed' | 'link', lines: readonly Line[]): Set<string> => {
    const own = ids(kind);
    const hanging = lines.filter((line) => items.has(line.from.itemId) || items.has(line.to.itemId));
    return new Set([...own, ...hanging.map((line) => line.id)]);
  };
  const gone = {
    item: items,
    run: linesOff('run', project.runs),
    feed: linesOff('feed', project.feeds),
    link: linesOff('link', project.dataLinks),
  };
  let result = withoutEntries(project, 'items', gone.item);
  result = withoutEntries(result, 'runs', gone.run);
  result = withoutEntries(result, 'feeds', gone.feed);
  result = withoutEntries(result, 'dataLinks', gone.link);
  // After the items, so that a place can be removed together with what stands there.
  for (const id of ids('place')) result = removePlace(result, id);
  for (const id of ids('structure')) result = removeStructure(result, id);
  for (const id of ids('compartment')) result = removeCompartment(result, id);
  return withoutOrphans(project, result);
}

interface Line {
  readonly id: string;
  readonly from: { readonly itemId: string };
  readonly to: { readonly itemId: string };
}
