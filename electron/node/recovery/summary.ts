/** What a recovery copy holds, as far as it can be read. */
export interface Contents {
  /** Title in the document, empty where none can be read. */
  readonly title: string;
  /** One line for a person. */
  readonly summary: string;
}

/**
 * Says what a document's text holds without asking that it be valid: a recovery copy is offered whatever state it is in.
 * A text that is no JSON any more is counted by its keys. Never throws.
 */
export function summarise(text: string): Contents {
  if (text.trim() === '') return { title: '', summary: 'Nothing of it can be read.' };
  const document = parsed(text);
  if (document === null) return summariseDamaged(text);
  const { items, runs, alternatives, title } = document;
  const layouts = lengthOf(alternatives);
  const counts = [counted(lengthOf(items), 'item'), counted(lengthOf(runs), 'run')];
  if (layouts > 0) counts.push(counted(layouts, 'other layout'));
  return { title: typeof title === 'string' ? title : '', summary: `${counts.join(', ')}.` };
}

function parsed(text: string): Readonly<Record<string, unknown>> | null {
  try {
    const value: unknown = JSON.parse(text);
    const isGroup = typeof value === 'object' && value !== null && !Array.isArray(value);
    return isGroup ? (value as Readonly<Record<string, unknown>>) : null;
  } catch {
    return null;
  }
}

function summariseDamaged(text: string): Contents {
  const title = /"title"\s*:\s*"((?:[^"\\]|\\["\\/])*)"/.exec(text)?.[1]?.replaceAll(/\\(.)/g, '$1') ?? '';
  // Every item names its part, every run its cable; other layouts are counted with them.
  const items = text.match(/"partId"\s*:/g)?.length ?? 0;
  const runs = text.match(/"cableId"\s*:/g)?.length ?? 0;
  if (title === '' && items === 0 && runs === 0) {
    return { title, summary: 'Damaged: it does not read as a boat; its text can be looked at.' };
  }
  return { title, summary: `Damaged: about ${counted(items, 'item')} and ${counted(runs, 'run')} can be read.` };
}

const lengthOf = (value: unknown): number => (Array.isArray(value) ? value.length : 0);
const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
