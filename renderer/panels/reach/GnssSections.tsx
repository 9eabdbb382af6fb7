import type { Project } from '../../../core/model/project.ts';
import type { GnssResult } from '../../../core/reach/types.ts';
import { useAssessment } from '../../store/derived.ts';
import { amplifierGainDb } from '../pathLoss/paths.ts';
import { FactList } from './FactList.tsx';
import { GnssLevels } from './GnssLevels.tsx';
import { levelSteps } from './gnssLevels.ts';
import { gnssFigures } from './linkFigures.ts';
import { SkySection } from './SkySection.tsx';
import { Verdict } from './Verdict.tsx';
import './reach.css';

/** A receiver of positions: the gain its lead leaves it, how well it hears, and how much sky its antenna has. */
export function GnssSections({ project, result }: { project: Project; result: GnssResult }) {
  const figures = gnssFigures(result);
  return (
    <>
      <section className="panel-section">
        <Verdict text={result.verdict} isGood={result.isGood} />
        <Chain project={project} result={result} />
        {figures.length === 0 ? null : <FactList facts={figures} />}
      </section>
      <SkySection project={project} itemId={result.antennaId} orbit="medium" />
    </>
  );
}

function Chain({ project, result }: { project: Project; result: GnssResult }) {
  const path = useAssessment().paths.find(({ id }) => id === result.pathId);
  if (!path || result.netGainDb === null) return null;
  const steps = levelSteps(result.netGainDb, amplifierGainDb(project, path), path.elements);
  return (
    <>
      <h3 className="heading">Gain before the receiver</h3>
      <GnssLevels result={result} steps={steps} />
    </>
  );
}
