import type { Project } from '../../../core/model/project.ts';
import type { SatelliteResult } from '../../../core/reach/types.ts';
import { FactList } from './FactList.tsx';
import { linkFigures } from './linkFigures.ts';
import { SkySection } from './SkySection.tsx';
import { Verdict } from './Verdict.tsx';
import './reach.css';

/** A satellite terminal or messenger: whether its antenna and cable serve it, and how much sky it has. */
export function SatelliteSections({ project, result }: { project: Project; result: SatelliteResult }) {
  return (
    <>
      <section className="panel-section">
        <Verdict text={result.verdict} isGood={result.isGood} />
        <h3 className="heading">The link</h3>
        <FactList facts={linkFigures(result)} />
      </section>
      <SkySection project={project} itemId={result.antennaId} orbit={result.orbit} />
    </>
  );
}
