import type { z } from 'zod';
import { issueText } from '../model/issues.ts';

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
