import { nextId } from '../model/ids.ts';
import { type Alternative, alternativeSchema, type Project } from '../model/project.ts';
import { type Change, changed, edited, entryOf, withEntry, withNewEntry, withoutEntries } from './change.ts';
import { withoutOrphans } from './orphans.ts';
import { RefusedEdit } from './refused.ts';

/** Keeps a copy of the current layout under a name, to compare with later. @throws RefusedEdit for an empty or taken name */
export function keepAsAlternative(project: Project, name: string, note = project.layoutNote ?? ''): Project {
  requireFreeName(project, null, name);
  const alternative: Alternative = { id: nextId(project, 'layout'), name, note, ...layoutOf(project) };
  return withNewEntry(project, 'alternatives', alternative);
}

/**
 * Makes an alternative the current layout and keeps the current one in its stead, names and notes swapped with them.
 * Done twice it changes nothing.
 */
export function swapAlternative(project: Project, alternativeId: string): Project {
  const chosen = entryOf(project, 'alternatives', alternativeId);
  const kept: Alternative = {
    id: chosen.id,
    name: project.layoutName,
    note: project.layoutNote ?? '',
    ...layoutOf(project),
  };
  const swapped = withEntry(project, 'alternatives', kept);
  return edited(swapped, (draft) => {
    Object.assign(draft, layoutOf(chosen));
    draft.layoutName = chosen.name;
    if (chosen.note === '') delete draft.layoutNote;
    else draft.layoutNote = chosen.note;
  });
}

/** Changes the name or note of an alternative. @throws RefusedEdit for an empty or taken name */
export function setAlternative(
  project: Project,
  alternativeId: string,
  change: Pick<Change<Alternative>, 'name' | 'note'>,
): Project {
  const alternative = entryOf(project, 'alternatives', alternativeId);
  if (change.name !== undefined && change.name !== alternative.name)
    requireFreeName(project, alternativeId, change.name);
  return withEntry(project, 'alternatives', changed(alternative, change, alternativeSchema, alternative.name));
}

/** Throws an alternative away, with the records of what only it had. */
export function removeAlternative(project: Project, alternativeId: string): Project {
  entryOf(project, 'alternatives', alternativeId);
  return withoutOrphans(project, withoutEntries(project, 'alternatives', new Set([alternativeId])));
}

function layoutOf(layout: Pick<Alternative, 'items' | 'runs' | 'feeds' | 'dataLinks'>) {
  return { items: layout.items, runs: layout.runs, feeds: layout.feeds, dataLinks: layout.dataLinks };
}

function requireFreeName(project: Project, ownId: string | null, name: string): void {
  if (name.trim() === '')
    throw new RefusedEdit('The alternative needs a name, so that it can be told from the others.');
  if (project.alternatives.some((other) => other.id !== ownId && other.name === name)) {
    throw new RefusedEdit(`There is already an alternative "${name}": choose another name.`);
  }
}
