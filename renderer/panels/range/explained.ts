import { useMemo } from 'react';
import { indexProject } from '../../../core/catalogue/lookup.ts';
import type { PathBudget } from '../../../core/links/types.ts';
import type { Project } from '../../../core/model/project.ts';
import { explainRange } from '../../../core/reach/explain.ts';
import type { RangeExplanation, RangeResult, TrialState } from '../../../core/reach/types.ts';

/** Whether a radio has a low setting to turn down to. */
export function hasLowPower(project: Project, itemId: string): boolean {
  const part = indexProject(project).effective.get(itemId);
  return (part?.kind === 'radio' || part?.kind === 'standalone') && part.figures.lowTxPowerW !== undefined;
}

/** What is tried as far as this radio can do it: a set without a low setting stays on its one power. */
export function triedState(project: Project, itemId: string, wanted: TrialState): TrialState {
  return wanted.power === 'low' && !hasLowPower(project, itemId) ? { ...wanted, power: 'full' } : wanted;
}

/** The explanation of a range as the boat is tried, remembered while nothing it depends on changes. */
export function useExplained(
  project: Project,
  paths: readonly PathBudget[],
  range: RangeResult,
  state: TrialState,
): RangeExplanation {
  return useMemo(() => explainRange(project, paths, range, state), [project, paths, range, state]);
}
