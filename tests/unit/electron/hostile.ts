import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseProject } from '../../../core/document/load.ts';
import type { Project } from '../../../core/model/project.ts';

type Json = Record<string, unknown>;

/**
 * A demo boat with every free text of it replaced. Which texts are free is found out by trying: a key stays replaced when
 * the document still loads, so that a field added to the model later is tested by itself. Names of parts and ports are
 * left: the boat has to keep what is computed and drawn of it.
 * @param text what stands there instead; the index keeps texts that must be unlike each other apart
 */
export function hostileText(text: (index: number) => string, demo = 'pelluna'): string {
  const file = join(import.meta.dirname, `../../../assets/demo/${demo}.backstay`);
  let document = JSON.parse(readFileSync(file, 'utf8')) as Json;
  for (const key of keysOfTexts(document)) {
    let index = 0;
    const changed = replaced(document, key, () => text(index++)) as Json;
    if (parseProject(JSON.stringify(changed)).ok) document = changed;
  }
  return JSON.stringify(document);
}

/** The same, loaded. */
export function hostileDemo(text: (index: number) => string, demo?: string): Project {
  const loaded = parseProject(hostileText(text, demo));
  if (!loaded.ok) throw new Error('the hostile document does not load');
  return loaded.project;
}

function keysOfTexts(value: unknown, found = new Set<string>()): Set<string> {
  if (typeof value !== 'object' || value === null) return found;
  for (const [key, part] of Object.entries(value)) {
    if (typeof part === 'string' && !Array.isArray(value) && !key.endsWith('Id')) found.add(key);
    keysOfTexts(part, found);
  }
  return found;
}

function replaced(value: unknown, key: string, text: () => string): unknown {
  if (Array.isArray(value)) return value.map((part) => replaced(part, key, text));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([name, part]) => [
    name,
    name === key && typeof part === 'string' ? text() : replaced(part, key, text),
  ]);
  return Object.fromEntries(entries);
}
