import { expect } from 'vitest';
import { parseProject } from '../../../core/document/load.ts';
import { serialiseProject } from '../../../core/document/save.ts';
import { RefusedEdit } from '../../../core/edit/refused.ts';
import type { Project } from '../../../core/model/project.ts';

/** Freezes a value all through, so that a command that writes into its input fails. */
export function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const entry of Object.values(value)) frozen(entry);
  }
  return value;
}

/** The sentence an edit is refused with; fails when it is done, or fails otherwise. */
export function refusal(edit: () => unknown): string {
  try {
    edit();
  } catch (error) {
    if (error instanceof RefusedEdit) return error.message;
    throw error;
  }
  throw new Error('the edit was not refused');
}

/** Asserts that a project loads again as it is. */
export function expectSound(project: Project): void {
  const result = parseProject(serialiseProject(project));
  if (!result.ok) expect(result.problems).toEqual([]);
  else expect(result.project).toEqual(project);
}

/** An entry of a list by id, for assertions. */
export function byId<T extends { readonly id: string }>(list: readonly T[], id: string): T {
  const found = list.find((entry) => entry.id === id);
  if (!found) throw new Error(`no ${id}`);
  return found;
}

export function last<T>(list: readonly T[]): T {
  const entry = list.at(-1);
  if (entry === undefined) throw new Error('an empty list has no last entry');
  return entry;
}
