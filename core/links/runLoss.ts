import type { PathBudget } from './types.ts';

/** What one run takes in one path, its plugs included, and the power into and out of it. */
export interface RunLoss {
  /** dB >= 0. */
  readonly lossDb: number;
  /** W; null on a receive-only path. */
  readonly wattsIn: number | null;
  readonly wattsOut: number | null;
}

/** The share of one run in a path, or null when the path does not go through it. */
export function lossInRun(path: PathBudget, runId: string): RunLoss | null {
  const own = path.elements.filter(({ subject }) => subject.kind === 'run' && subject.id === runId);
  if (own.length === 0) return null;
  return {
    lossDb: own.reduce((sum, { lossDb }) => sum + lossDb, 0),
    wattsIn: own[0]?.wattsIn ?? null,
    wattsOut: own.at(-1)?.wattsOut ?? null,
  };
}
