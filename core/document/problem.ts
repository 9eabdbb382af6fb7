import { valueAt } from '../model/issues.ts';

/** One thing wrong with a document: the place in the file, what is wrong there, how to mend it. Whole sentences. */
export interface Problem {
  readonly where: string;
  readonly what: string;
  readonly mend: string;
}

/** Keys by which an entry of a list is known to a person, best first. */
const NAME_KEYS = ['tag', 'number', 'name', 'label', 'findingKey', 'id'] as const;

/**
 * A path in a document as a person reads it: `runs[3] "W04" › to.portId`. Indices count from 0 as in the file.
 * @param root the document, to name entries by tag, number or name
 */
export function placeInFile(path: readonly PropertyKey[], root: unknown): string {
  if (path.length === 0) return 'the whole file';
  const steps: string[] = [];
  let step = '';
  path.forEach((key, index) => {
    if (typeof key !== 'number') {
      step += step === '' ? String(key) : `.${String(key)}`;
      return;
    }
    step += `[${key}]`;
    const name = nameOf(valueAt(root, path.slice(0, index + 1)));
    if (name === null) return;
    steps.push(`${step} "${name}"`);
    step = '';
  });
  return step === '' ? steps.join(' › ') : [...steps, step].join(' › ');
}

function nameOf(entry: unknown): string | null {
  for (const key of NAME_KEYS) {
    const name = valueAt(entry, [key]);
    if (typeof name === 'string' && name !== '') return name.length > 40 ? `${name.slice(0, 40)}…` : name;
  }
  return null;
}
