import type { Project } from './project.ts';

/**
 * A maker of new ids for one edit: `make('run')` gives `run-7` when `run-6` is the highest anywhere in the project,
 * alternatives included, so that an id never comes to mean another thing when a layout is swapped in. No randomness: the
 * same project gives the same ids.
 */
export function idMaker(project: Project): (prefix: string) => string {
  const highest = highestNumbers(project);
  return (prefix) => {
    const next = (highest.get(prefix) ?? 0) + 1;
    highest.set(prefix, next);
    return `${prefix}-${next}`;
  };
}

/** The next free id with this prefix; for an edit that needs only one. */
export function nextId(project: Project, prefix: string): string {
  return idMaker(project)(prefix);
}

function highestNumbers(project: Project): Map<string, number> {
  const highest = new Map<string, number>();
  for (const id of allIds(project)) {
    const match = /^(.*)-(\d{1,9})$/s.exec(id);
    const prefix = match?.[1];
    if (prefix === undefined) continue;
    highest.set(prefix, Math.max(highest.get(prefix) ?? 0, Number(match?.[2])));
  }
  return highest;
}

function* allIds(project: Project): Generator<string> {
  const { boat } = project;
  const lists: readonly (readonly { readonly id: string }[])[] = [
    boat.masts,
    boat.fittings,
    boat.compartments,
    project.places,
    project.parts,
    project.stations,
    project.measurements,
    project.settings.margin,
    project.settings.redundancy.events,
    project.alternatives,
    project.pictures ?? [],
    project.photos ?? [],
  ];
  for (const list of lists) for (const { id } of list) yield id;
  for (const layout of [project, ...project.alternatives]) {
    for (const list of [layout.items, layout.runs, layout.feeds, layout.dataLinks]) for (const { id } of list) yield id;
  }
}
