import { useEffect, useState } from 'react';
import { adviceSteps, knownAdvice } from '../../../../core/advice/advise.ts';
import type { Advice, AdviceProgress } from '../../../../core/advice/types.ts';
import type { Project } from '../../../../core/model/project.ts';

/** The trying starts only when the drawing has stood still for so long, ms: a row of quick edits pays for one trial. */
const START_AFTER_MS = 150;
/** No more at a time than this, ms, so that typing and dragging stay smooth; one single trial may take a little longer. */
const SLICE_MS = 12;

export interface AdviceState {
  /** Null while the changes are still being tried. */
  readonly advice: Advice | null;
  readonly progress: AdviceProgress | null;
}

const WAITING: AdviceState = { advice: null, progress: null };

/** The advice for a project, worked out in slices between frames, and left off when the project changes. */
export function useAdvice(project: Project): AdviceState {
  const [found, setFound] = useState<{ readonly project: Project; readonly state: AdviceState } | null>(null);
  useEffect(() => {
    if (knownAdvice(project)) return;
    const steps = adviceSteps(project);
    const workOn = (): void => {
      const until = performance.now() + SLICE_MS;
      let step = steps.next();
      while (!step.done && performance.now() < until) step = steps.next();
      const state = step.done ? { advice: step.value, progress: null } : { advice: null, progress: step.value };
      setFound({ project, state });
      if (!step.done) timer = setTimeout(workOn, 0);
    };
    let timer = setTimeout(workOn, START_AFTER_MS);
    return () => clearTimeout(timer);
  }, [project]);
  const known = knownAdvice(project);
  if (known) return { advice: known, progress: null };
  return found?.project === project ? found.state : WAITING;
}
