import { useMemo } from 'react';
import { type Assessment, assess } from '../../core/assess.ts';
import type { Station } from '../../core/model/project.ts';
import { type FailureView, failureView } from '../../core/redundancy/failureView.ts';
import { type MeansFinder, meansFinder, usualFarEnd } from '../../core/redundancy/meansLeft.ts';
import { studyFailures } from '../../core/redundancy/study.ts';
import type { FailureStudy } from '../../core/redundancy/types.ts';
import { useApp } from './context.ts';
import { shownProject } from './store.ts';

/** The assessment of what is shown now. `assess` caches by project, so every panel shares one result. */
export function useAssessment(): Assessment {
  return assess(useApp(shownProject));
}

/** What the chosen failure event takes away and leaves; null for the intact boat, or when an edit took the event away. */
export function useFailureView(): FailureView | null {
  const project = useApp(shownProject);
  const eventId = useApp((state) => state.eventId);
  return useMemo(() => {
    const { redundancy } = assess(project);
    const isKnown = redundancy.matrix.some(({ event }) => event.id === eventId);
    return eventId !== null && isKnown ? failureView(project, redundancy, eventId) : null;
  }, [project, eventId]);
}

/** The study of what is shown now; only the pages that show it pay for it. */
export function useStudy(): FailureStudy {
  const project = useApp(shownProject);
  return studyFailures(project, assess(project).paths);
}

/** The far end that reaches are quoted to: the one chosen, else the usual one. */
export function useFarEnd(): Station | undefined {
  const farEndId = useApp((state) => state.farEndId);
  const project = useApp(shownProject);
  return project.stations.find(({ id }) => id === farEndId) ?? usualFarEnd(project);
}

/** What is left in a row of the matrix, with its reach to the far end. */
export function useMeansLeft(): MeansFinder {
  const project = useApp(shownProject);
  const farEnd = useFarEnd();
  return useMemo(() => meansFinder(project, assess(project), farEnd), [project, farEnd]);
}
