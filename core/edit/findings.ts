import { type FindingOverride, findingOverrideSchema, type Project } from '../model/project.ts';
import { edited, isSame } from './change.ts';
import { RefusedEdit, requireValid } from './refused.ts';

/**
 * Overrules a finding with a reason that is kept and printed; a second time replaces the reason.
 * @throws RefusedEdit without a reason
 */
export function overrideFinding(project: Project, findingKey: string, reason: string, by = ''): Project {
  if (reason.trim() === '') {
    throw new RefusedEdit(
      'Overruling a finding needs a reason: it is printed on the install sheet beside the finding.',
    );
  }
  const override: FindingOverride = { findingKey, reason: reason.trim(), by };
  requireValid(findingOverrideSchema, override, 'This override');
  const index = project.findingOverrides.findIndex((known) => known.findingKey === findingKey);
  if (isSame(project.findingOverrides[index], override)) return project;
  return edited(project, (draft) => {
    if (index < 0) draft.findingOverrides.push(override);
    else draft.findingOverrides[index] = override;
  });
}

/** Lets a finding count again. */
export function clearFindingOverride(project: Project, findingKey: string): Project {
  if (!project.findingOverrides.some((known) => known.findingKey === findingKey)) return project;
  return edited(project, (draft) => {
    draft.findingOverrides = draft.findingOverrides.filter((known) => known.findingKey !== findingKey);
  });
}

/**
 * Whether a finding is about a thing. A key is the rule's id, a colon, and the ids of its subjects; ids are matched whole,
 * so `item-1` is not found in `item-12`.
 */
export function isAbout(findingKey: string, id: string): boolean {
  const subjects = findingKey.slice(findingKey.indexOf(':') + 1);
  return subjects.split(/[\s,;:+|/>]+/).includes(id);
}
