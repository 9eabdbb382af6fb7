import { isKnownSubject } from '../document/subjects.ts';
import type { Project } from '../model/project.ts';
import { edited } from './change.ts';
import { isAbout } from './findings.ts';
import { withoutLostPhotos } from './pictures.ts';

/**
 * A project after something was removed, without the measurements and photos of and overrides about what is gone from every layout.
 * What lives on in an alternative keeps its records.
 */
export function withoutOrphans(before: Project, after: Project): Project {
  const left = subjectIds(after);
  const lost = [...subjectIds(before)].filter((id) => !left.has(id));
  if (lost.length === 0) return after;
  const measurements = after.measurements.filter(({ subject }) => isKnownSubject(after, subject));
  const overrides = after.findingOverrides.filter(({ findingKey }) => !lost.some((id) => isAbout(findingKey, id)));
  const withPhotos = withoutLostPhotos(after);
  if (measurements.length === after.measurements.length && overrides.length === after.findingOverrides.length) {
    return withPhotos;
  }
  return edited(withPhotos, (draft) => {
    draft.measurements = measurements;
    draft.findingOverrides = overrides;
  });
}

function subjectIds(project: Project): Set<string> {
  const { boat, places, alternatives } = project;
  const ids = new Set<string>();
  for (const list of [boat.masts, boat.fittings, boat.compartments, places]) for (const { id } of list) ids.add(id);
  for (const layout of [project, ...alternatives]) {
    for (const list of [layout.items, layout.runs, layout.feeds, layout.dataLinks])
      for (const { id } of list) ids.add(id);
  }
  return ids;
}
