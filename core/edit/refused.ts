import type { z } from 'zod';
import { checkReferences } from '../document/references.ts';
import { issueText } from '../model/issues.ts';
import type { Project } from '../model/project.ts';

/** An edit that cannot be done, with a plain sentence why and what to do instead. The project is left as it was. */
export class RefusedEdit extends Error {
  override readonly name = 'RefusedEdit';
}

/**
 * Refuses a value its schema does not accept.
 * @param label what the sentence calls the thing, e.g. a tag or cable number
 * @throws RefusedEdit with every reason
 */
export function requireValid(schema: z.ZodType, value: unknown, label: string): void {
  const result = schema.safeParse(value);
  if (result.success) return;
  const sentences = result.error.issues.map((issue) => {
    const { what, mend } = issueText(issue, value, schema);
    return `${what} ${mend}`;
  });
  throw new RefusedEdit(`${label}: ${sentences.join(' ')}`);
}

/**
 * Refuses a project that would not load again: for edits whose effects reach beyond what they touch, as when a part that
 * many items are made of gets other ports or figures. A whole check, so not for gestures.
 * @throws RefusedEdit with the first reason
 */
export function requireSound(project: Project, label: string): Project {
  const [first] = checkReferences(project).problems;
  if (first) throw new RefusedEdit(`${label} cannot be changed so. ${first.what} ${first.mend}`);
  return project;
}
