import type { Project } from '../../core/model/project.ts';

/** One undoable step: what it is called and the project before it. Projects share their unchanged parts, so a step is small. */
export interface Step {
  readonly label: string;
  readonly project: Project;
  /** Edits that follow one another with the same key are one step: holding an arrow key is one move. */
  readonly mergeKey?: string;
}

export interface History {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

export const EMPTY_HISTORY: History = { past: [], future: [] };

const LIMIT = 500;

/** History after `label` turned `before` into something else. */
export function recorded(history: History, label: string, before: Project, mergeKey?: string): History {
  const last = history.past.at(-1);
  if (last && mergeKey !== undefined && last.mergeKey === mergeKey) {
    return { past: [...history.past.slice(0, -1), { ...last, label }], future: [] };
  }
  const step: Step = { label, project: before, ...(mergeKey === undefined ? {} : { mergeKey }) };
  return { past: [...history.past.slice(-LIMIT + 1), step], future: [] };
}

/** One step back from `current`, or null when there is none. */
export function undone(
  history: History,
  current: Project,
): { project: Project; history: History; label: string } | null {
  const step = history.past.at(-1);
  if (!step) return null;
  return {
    project: step.project,
    label: step.label,
    history: { past: history.past.slice(0, -1), future: [{ label: step.label, project: current }, ...history.future] },
  };
}

/** One step forward again, or null when there is none. */
export function redone(
  history: History,
  current: Project,
): { project: Project; history: History; label: string } | null {
  const [step, ...rest] = history.future;
  if (!step) return null;
  return {
    project: step.project,
    label: step.label,
    history: { past: [...history.past, { label: step.label, project: current }], future: rest },
  };
}
