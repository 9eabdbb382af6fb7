import { useApp } from '../../store/context.ts';
import { useAssessment } from '../../store/derived.ts';
import { shownProject } from '../../store/store.ts';
import { EventsSection } from './EventsSection.tsx';
import { IndependenceSection } from './IndependenceSection.tsx';
import { Layouts } from './Layouts.tsx';
import { Matrix } from './Matrix.tsx';
import { SinglePoints } from './SinglePoints.tsx';

/** What one failure takes away: the matrix, the single points behind it, and how the other layouts compare. */
export function OneFailure() {
  const { redundancy } = useAssessment();
  const project = useApp(shownProject);
  return (
    <>
      <Matrix redundancy={redundancy} />
      <EventsSection project={project} redundancy={redundancy} />
      <IndependenceSection />
      <SinglePoints project={project} redundancy={redundancy} />
      {project.alternatives.length > 0 ? <Layouts project={project} /> : null}
    </>
  );
}
