import { type Assessment, assess } from '../../core/assess.ts';
import { type FailureView, failureView } from '../../core/redundancy/failureView.ts';
import { useApp } from './context.ts';
import { shownProject } from './store.ts';

/** The assessment of what is shown now. `assess` caches by project, so every panel shares one result. */
export function useAssessment(): Assessment {
  return assess(useApp(shownProject));
}

/** What the chosen failure event takes away and leaves, or null for the intact boat. */
export function useFailureView(): FailureView | null {
  const project = useApp(shownProject);
  const eventId = useApp((state) => state.eventId);
  return eventId === null ? null : failureView(project, assess(project).redundancy, eventId);
}
