import type { Project, Subject } from '../model/project.ts';

/** Whether a subject exists in the current layout or an alternative. */
export function isKnownSubject(project: Project, { kind, id }: Subject): boolean {
  const layouts = [project, ...project.alternatives];
  const has = (list: readonly { readonly id: string }[]) => list.some((entry) => entry.id === id);
  switch (kind) {
    case 'boat':
      return id === 'boat';
    case 'item':
      return layouts.some((layout) => has(layout.items));
    case 'run':
      return layouts.some((layout) => has(layout.runs));
    case 'feed':
      return layouts.some((layout) => has(layout.feeds));
    case 'link':
      return layouts.some((layout) => has(layout.dataLinks));
    case 'place':
      return has(project.places);
    case 'structure':
      return has(project.boat.masts) || has(project.boat.fittings);
    case 'compartment':
      return has(project.boat.compartments);
  }
}
