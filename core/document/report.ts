import type { PartProblem } from './overrides.ts';
import { type Problem, placeInFile } from './problem.ts';

/** What the checks found, gathered as they go. */
export class Report {
  readonly problems: Problem[] = [];
  readonly notes: string[] = [];
  private readonly root: unknown;

  constructor(root: unknown) {
    this.root = root;
  }

  refuse(path: readonly PropertyKey[], what: string, mend: string): void {
    this.problems.push({ where: placeInFile(path, this.root), what, mend });
  }

  refuseAll(path: readonly PropertyKey[], problems: readonly PartProblem[]): void {
    for (const problem of problems) this.refuse([...path, ...problem.path], problem.what, problem.mend);
  }

  note(path: readonly PropertyKey[], text: string): void {
    this.notes.push(`${placeInFile(path, this.root)}: ${text}`);
  }

  /** Refuses ids that occur twice in lists that share one set of ids. */
  uniqueIds(lists: readonly IdList[]): void {
    const seen = new Map<string, string>();
    for (const { path, entries } of lists) {
      entries.forEach((entry, index) => {
        const where = placeInFile([...path, index], this.root);
        const first = seen.get(entry.id);
        if (first === undefined) seen.set(entry.id, where);
        else
          this.refuse(
            [...path, index, 'id'],
            `The id "${entry.id}" is already that of ${first}.`,
            'Give one of them another id.',
          );
      });
    }
  }
}

export interface IdList {
  readonly path: readonly PropertyKey[];
  readonly entries: readonly { readonly id: string }[];
}

/** A few ids for a sentence. */
export function quoted(ids: Iterable<string>): string {
  const all = [...ids];
  if (all.length === 0) return '(there are none)';
  const shownIds = all
    .slice(0, 8)
    .map((id) => `"${id}"`)
    .join(', ');
  return all.length > 8 ? `${shownIds} …` : shownIds;
}
