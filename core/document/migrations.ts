import { PROJECT_VERSION } from '../model/project.ts';

/** A document as raw JSON, before its shape is known. */
export type RawDocument = Readonly<Record<string, unknown>>;

/** Makes a document of version N into one of version N + 1; sees only raw JSON, sets no version, changes nothing in place. */
export type Migration = (document: RawDocument) => RawDocument;

/**
 * The chain: entry 0 takes version 1 to 2, entry 1 takes 2 to 3. Version 1 is the first, so there is nothing to migrate
 * yet. How to add one: docs/format.md.
 */
export const MIGRATIONS: readonly Migration[] = [];

/**
 * Takes a document of an older version up to `target`, one version at a time.
 * @param version the document's version, 1 to `target`
 * @throws RangeError when the chain does not lead from `version` to `target`
 */
export function migrate(
  document: RawDocument,
  version: number,
  chain: readonly Migration[] = MIGRATIONS,
  target: number = PROJECT_VERSION,
): RawDocument {
  let current = document;
  for (let from = version; from < target; from += 1) {
    const step = chain[from - 1];
    if (!step) throw new RangeError(`There is no migration from version ${from}.`);
    current = { ...step(current), version: from + 1 };
  }
  return current;
}
