import type { Project, Subject } from '../model/project.ts';
import { edited, withoutEntries } from './change.ts';
import { isAbout } from './findings.ts';
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
  result = withoutRecords(result, gone);
  // After the items, so that a place can be removed together with what stands there.
  for (const id of ids('place')) result = removePlace(result, id);
  for (const id of ids('structure')) result = removeStructure(result, id);
  for (const id of ids('compartment')) result = removeCompartment(result, id);
  return result;
}

interface Line {
  readonly id: string;
  readonly from: { readonly itemId: string };
  readonly to: { readonly itemId: string };
}

type Gone = Readonly<Record<'item' | 'run' | 'feed' | 'link', ReadonlySet<string>>>;

/** The project without measurements of and overrides about what is gone from every layout. */
function withoutRecords(project: Project, gone: Gone): Project {
  const lists = { item: 'items', run: 'runs', feed: 'feeds', link: 'dataLinks' } as const;
  const lost = new Set<string>();
  for (const kind of ['item', 'run', 'feed', 'link'] as const) {
    for (const id of gone[kind]) {
      const livesOn = project.alternatives.some((layout) => layout[lists[kind]].some((entry) => entry.id === id));
      if (!livesOn) lost.add(`${kind} ${id}`);
    }
  }
  const isLost = ({ kind, id }: Subject): boolean => lost.has(`${kind} ${id}`);
  const lostIds = [...lost].map((name) => name.slice(name.indexOf(' ') + 1));
  const measurements = project.measurements.filter(({ subject }) => !isLost(subject));
  const overrides = project.findingOverrides.filter(({ findingKey }) => !lostIds.some((id) => isAbout(findingKey, id)));
  if (measurements.length === project.measurements.length && overrides.length === project.findingOverrides.length) {
    return project;
  }
  return edited(project, (draft) => {
    draft.measurements = measurements;
    draft.findingOverrides = overrides;
  });
}
