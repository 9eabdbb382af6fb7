import { fieldWords, type IssueText, issueText, shown } from '../model/issues.ts';
import { type Part, partSchema } from '../model/part.ts';
import type { Item } from '../model/project.ts';
import { figureRange } from '../model/ranges.ts';

/** One thing wrong with a part or with an item's own values for it; `path` leads to it. */
export interface PartProblem extends IssueText {
  readonly path: readonly PropertyKey[];
}

/**
 * What is wrong with an item's overrides of its part: a figure or trait the part does not have, a value of the wrong
 * type, or a figure outside its believable span. Paths start at the overrides (`figures`, `traits`).
 */
export function overrideProblems(part: Part, overrides: Item['overrides']): PartProblem[] {
  const problems: PartProblem[] = [];
  for (const key of Object.keys(overrides.figures)) {
    if (!isFigureOf(part, key)) problems.push(unknownKey(part, 'figures', key, Object.keys(part.figures)));
  }
  for (const key of Object.keys(overrides.traits)) {
    if (!Object.hasOwn(part.traits, key)) problems.push(unknownKey(part, 'traits', key, Object.keys(part.traits)));
  }
  if (problems.length > 0) return problems;
  const merged = {
    ...part,
    figures: { ...part.figures, ...overrides.figures },
    traits: { ...part.traits, ...overrides.traits },
  };
  const result = partSchema.safeParse(merged);
  if (!result.success) {
    return result.error.issues.map((issue) => ({ path: issue.path, ...issueText(issue, merged, partSchema) }));
  }
  return figureProblems(overrides.figures, ['figures']);
}

/** Figures outside the span of their key. */
export function figureProblems(
  figures: Readonly<Record<string, unknown>>,
  path: readonly PropertyKey[],
): PartProblem[] {
  return Object.entries(figures).flatMap(([key, figure]) => {
    const value = (figure as { readonly value?: unknown } | undefined)?.value;
    if (typeof value !== 'number') return [];
    const { min, max } = figureRange(key);
    if (value >= min && value <= max) return [];
    const { words, unit } = fieldWords(key);
    const inUnit = unit === '' ? '' : ` ${unit}`;
    return [
      {
        path: [...path, key, 'value'],
        what: `The ${words} is ${shown(value)}${inUnit}, which no such part has.`,
        mend: `Put in a value from ${shown(min)} to ${shown(max)}${inUnit}.`,
      },
    ];
  });
}

/** Whether an item may have its own value of this figure: one the part has, may have, or gives as a table. */
export function isFigureOf(part: Part, key: string): boolean {
  if (Object.hasOwn(part.figures, key)) return true;
  if (part.kind === 'inline') return Object.hasOwn(part.lossTables, key);
  if (part.kind === 'antenna') return key === 'amplifierGainDb';
  if (part.kind === 'power') return key === 'ratingA' || key === 'capacityAh';
  return false;
}

function unknownKey(part: Part, group: 'figures' | 'traits', key: string, known: readonly string[]): PartProblem {
  const list = known.length === 0 ? 'none' : known.map((name) => `"${name}"`).join(', ');
  return {
    path: [group, key],
    what: `"${key}" is not one of the ${group} of ${part.name}.`,
    mend: `Take it out, or use one it has: ${list}.`,
  };
}

/** What is wrong inside a part that its schema cannot see: ports, ways through it, tables and spans. Paths start at the part. */
export function partProblems(part: Part): PartProblem[] {
  const problems = figureProblems(part.figures, ['figures']);
  const seen = new Set<string>();
  part.ports.forEach((port, index) => {
    if (seen.has(port.id)) {
      problems.push({
        path: ['ports', index, 'id'],
        what: `Two ports of ${part.name} have the id "${port.id}".`,
        mend: 'Give each port an id of its own.',
      });
    }
    seen.add(port.id);
  });
  if (part.kind === 'inline') problems.push(...wayProblems(part), ...tableProblems(part.lossTables));
  if (part.kind === 'connector') problems.push(...rowProblems(part.lossTable.rows, ['lossTable', 'rows']));
  if (part.kind === 'coax' && part.figures.minFrequencyMhz.value >= part.figures.maxFrequencyMhz.value) {
    problems.push({
      path: ['figures', 'maxFrequencyMhz'],
      what: 'The greatest frequency is not above the least.',
      mend: 'Put in the span the loss figures are good for.',
    });
  }
  return problems;
}

type InlinePart = Extract<Part, { kind: 'inline' }>;

function wayProblems(part: InlinePart): PartProblem[] {
  const sockets = new Set(part.ports.filter((port) => port.medium === 'rf').map((port) => port.id));
  return part.throughs.flatMap((way, index) => {
    const problems: PartProblem[] = [];
    for (const key of ['fromPortId', 'toPortId'] as const) {
      if (sockets.has(way[key])) continue;
      problems.push({
        path: ['throughs', index, key],
        what: `${part.name} has no antenna socket "${way[key]}".`,
        mend: `Name one of its sockets: ${[...sockets].map((id) => `"${id}"`).join(', ') || 'there are none yet'}.`,
      });
    }
    if (!Object.hasOwn(part.figures, way.lossKey) && !Object.hasOwn(part.lossTables, way.lossKey)) {
      problems.push({
        path: ['throughs', index, 'lossKey'],
        what: `The loss "${way.lossKey}" is neither among the figures nor the loss tables of ${part.name}.`,
        mend: 'Add that figure or table, or name one that is there.',
      });
    }
    return problems;
  });
}

function tableProblems(tables: InlinePart['lossTables']): PartProblem[] {
  return Object.entries(tables).flatMap(([key, table]) => rowProblems(table.rows, ['lossTables', key, 'rows']));
}

function rowProblems(rows: readonly { readonly frequencyMhz: number }[], path: readonly PropertyKey[]): PartProblem[] {
  return rows.flatMap((row, index) => {
    const before = rows[index - 1];
    if (!before || before.frequencyMhz < row.frequencyMhz) return [];
    return [
      {
        path: [...path, index, 'frequencyMhz'],
        what: `The frequency ${row.frequencyMhz} MHz does not come after ${before.frequencyMhz} MHz.`,
        mend: 'Put the rows in rising order of frequency, each once.',
      },
    ];
  });
}
