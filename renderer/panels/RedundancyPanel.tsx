import { useApp } from '../store/context.ts';
import { useAssessment } from '../store/derived.ts';
import { shownProject } from '../store/store.ts';
import { Layouts } from './redundancy/Layouts.tsx';
import { Matrix } from './redundancy/Matrix.tsx';
import { SinglePoints } from './redundancy/SinglePoints.tsx';
import './redundancy.css';

/** What one failure takes away: the matrix, the single points behind it, and how the other layouts compare. */
export function RedundancyPanel() {
  const { redundancy } = useAssessment();
  const project = useApp(shownProject);
  if (redundancy.ways.length === 0) {
    return (
      <div className="panel">
        <p className="empty">
          Nothing to lose yet. Place a radio and an antenna, join them with a cable and give the radio a supply; this
          page then shows what each failure takes away.
        </p>
      </div>
    );
  }
  return (
    <div className="panel redundancy">
      <Matrix redundancy={redundancy} />
      <SinglePoints project={project} redundancy={redundancy} />
      {project.alternatives.length > 0 ? <Layouts project={project} /> : null}
    </div>
  );
}
