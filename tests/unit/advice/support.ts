import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { advise } from '../../../core/advice/advise.ts';
import type { Advice, RankedChange } from '../../../core/advice/types.ts';
import { parseProject } from '../../../core/document/load.ts';
import type { Project } from '../../../core/model/project.ts';
import type { ServiceId } from '../../../core/model/services.ts';

/** A demo boat as found. */
export function demo(name: 'brannoch-tern' | 'pelluna' | 'vessarine'): Project {
  const path = join(import.meta.dirname, '../../../assets/demo', `${name}.backstay`);
  const result = parseProject(readFileSync(path, 'utf8'));
  if (!result.ok) throw new Error(`${name} does not load`);
  return result.project;
}

/** Ids of all changes that help. */
export const idsOf = ({ changes }: Advice): readonly string[] => changes.map(({ candidate }) => candidate.id);

/** The change of an id. @throws Error when it is not offered, naming those that are */
export function changeOf(advice: Advice, id: string): RankedChange {
  const found = advice.changes.find(({ candidate }) => candidate.id === id);
  if (!found) throw new Error(`${id} is not offered, but ${idsOf(advice).join(', ')}`);
  return found;
}

/** Services a change of a project frees from a point. */
export function freed(project: Project, changeId: string, pointId: string): readonly ServiceId[] {
  const { rescues } = changeOf(advise(project), changeId).effect;
  return rescues.find((rescue) => rescue.pointId === pointId)?.serviceIds ?? [];
}
