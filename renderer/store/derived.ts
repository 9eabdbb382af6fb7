import { useMemo } from 'react';
import { type Assessment, assess } from '../../core/assess.ts';
import { type FailureView, failureView } from '../../core/redundancy/failureView.ts';
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
