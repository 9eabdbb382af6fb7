import { indexProject } from '../catalogue/lookup.ts';
import { runLengthM } from '../links/route.ts';
import { lossInRun } from '../links/runLoss.ts';
import type { PathBudget } from '../links/types.ts';
import type { Project, Run } from '../model/project.ts';
import { formatText } from '../units/format.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { q } from '../units/quantity.ts';

/** What is written at a run, from full to bare. The first that finds room is used. */
export interface RunWords {
  readonly lines: readonly string[];
  readonly short: string;
  readonly bare: string;
}

/** The words of every run: number, type, length and what it loses at the frequency of the strongest path through it. */
export function runWords(
  project: Project,
  paths: readonly PathBudget[],
  preferences: UnitPreferences,
): ReadonlyMap<string, RunWords> {
  const strongest = strongestPaths(paths);
  return new Map(project.runs.map((run) => [run.id, wordsOf(project, run, strongest.get(run.id), preferences)]));
}

function strongestPaths(paths: readonly PathBudget[]): ReadonlyMap<string, PathBudget> {
  const strongest = new Map<string, PathBudget>();
  for (const budget of paths) {
    for (const runId of budget.runIds) {
      const known = strongest.get(runId);
      if (!known || (budget.txPowerW ?? 0) > (known.txPowerW ?? 0)) strongest.set(runId, budget);
    }
  }
  return strongest;
}

function wordsOf(project: Project, run: Run, budget: PathBudget | undefined, preferences: UnitPreferences): RunWords {
  const part = indexProject(project).parts.get(run.cableId);
  const lengthM = runLengthM(project, run);
  const type = part ? shortType(part.name) : run.cableId;
  const loss = budget ? lossInRun(budget, run.id) : null;
  const tail = loss === null ? [] : ['  ', q(loss.lossDb, 'dB')];
  const first = formatText([`${run.number}  ${type}  `, q(lengthM, 'm'), ...tail], preferences);
  const watts =
    loss === null || loss.wattsIn === null || loss.wattsOut === null
      ? []
      : [formatText([wattsText(loss.wattsIn), ' to ', wattsText(loss.wattsOut)], preferences)];
  return {
    lines: [first, ...watts],
    short: formatText([`${run.number}  `, q(lengthM, 'm')], preferences),
    bare: run.number,
  };
}

/** Two figures of power are all the eye takes in: 25 W, 7.4 W, 0.58 W. */
function wattsText(watts: number) {
  return q(watts, 'W', watts >= 9.95 ? 0 : watts >= 0.995 ? 1 : 2);
}

/** The type as the trade says it in passing: `400-class`, `RG-213/U`. */
export function shortType(name: string): string {
  return name.replace(/ foil\+braid| flex.*$|,.*$/, '').replace(/^Single-core /, '');
}
