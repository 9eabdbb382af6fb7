import { useMemo } from 'react';
import type { PathBudget } from '../../core/links/types.ts';
import type { Project } from '../../core/model/project.ts';
import { Choice } from '../app/Choice.tsx';
import { useApp } from '../store/context.ts';
import { useAssessment } from '../store/derived.ts';
import { shownProject } from '../store/store.ts';
import { useFormat } from '../ui/text.ts';
import { CableTable } from './pathLoss/CableTable.tsx';
import { ElementTable } from './pathLoss/ElementTable.tsx';
import { MeterSection } from './pathLoss/MeterSection.tsx';
import { measuredOutcome } from './pathLoss/meter.ts';
import { amplifierGainDb, headline, pathName, pathsTouched, switchNote, worstPath } from './pathLoss/paths.ts';
import { SupplySection } from './pathLoss/SupplySection.tsx';
import { Taper } from './pathLoss/Taper.tsx';
import { useFollowed } from './range/followed.ts';
import './pathLoss.css';

/** What one path loses, element by element, and everything that bears on it: meter, supply and other cables. */
export function PathLossPanel() {
  const project = useApp(shownProject);
  const { paths } = useAssessment();
  const worst = useMemo(() => worstPath(paths), [paths]);
  const [id, choose] = useFollowed(
    paths.map((path) => path.id),
    (selection) => pathsTouched(project, paths, selection).map((path) => path.id),
    worst?.id ?? null,
  );
  const path = paths.find((each) => each.id === id);
  if (!path) {
    return (
      <div className="panel">
        <p className="empty">
          No path yet. Place a radio and an antenna and draw a cable between their sockets; this page then shows what
          the signal loses on the way.
        </p>
      </div>
    );
  }
  return (
    <div className="panel path-loss">
      <section className="panel-section">
        <PathChoice project={project} paths={paths} path={path} onChoose={choose} />
        <Outcome project={project} path={path} />
        {path.elements.length > 0 ? <Taper project={project} path={path} /> : null}
      </section>
      {path.elements.length > 0 ? <ElementTable project={project} path={path} /> : null}
      <MeterSection project={project} path={path} />
      <SupplySection project={project} radioId={path.radioId} />
      <CableTable project={project} path={path} />
    </div>
  );
}

function PathChoice({
  project,
  paths,
  path,
  onChoose,
}: {
  project: Project;
  paths: readonly PathBudget[];
  path: PathBudget;
  onChoose: (id: string) => void;
}) {
  const { rich } = useFormat();
  const options = paths.map((each) => {
    const note = switchNote(project, each);
    return { id: each.id, name: rich(pathName(project, each)), ...(note === null ? {} : { note }) };
  });
  return <Choice label="Path" options={options} value={path.id} onChange={onChoose} />;
}

function Outcome({ project, path }: { project: Project; path: PathBudget }) {
  const { rich, quantity } = useFormat();
  const { text, verdict } = headline(path, project.settings.feederLossLimitDb);
  const amplifierDb = amplifierGainDb(project, path);
  const note = switchNote(project, path);
  const measured = measuredOutcome(path, project.settings.feederLossLimitDb);
  return (
    <div className="outcome">
      <p className="outcome-text">
        {rich(text)} {verdict === null ? null : <LimitSign verdict={verdict} />}
      </p>
      {measured === null ? null : (
        <p className="caution">
          {rich(measured.text)} <LimitSign verdict={measured.isOver ? 'over' : 'within'} />
        </p>
      )}
      {note === null ? null : <p className="small">This path works {note}.</p>}
      {amplifierDb === null ? null : (
        <p className="small soft">The antenna’s own amplifier puts {quantity(amplifierDb, 'dB', 0)} in front of it.</p>
      )}
      {path.eirpDbm === null || path.elements.length === 0 ? null : (
        <p className="small soft">
          With the antenna’s {quantity(path.antennaGainDbi, 'dBi')} it radiates {quantity(path.eirpDbm, 'dBm')} EIRP
          from {quantity(path.antennaHeightM, 'm')} above the water. Tolerance of the loss: ±{' '}
          {quantity(path.toleranceDb, 'dB')}.
        </p>
      )}
    </div>
  );
}

function LimitSign({ verdict }: { verdict: 'within' | 'over' }) {
  return verdict === 'over' ? (
    <span className="grade grade--lost">✕ Over the limit</span>
  ) : (
    <span className="grade grade--full">✓ Within the limit</span>
  );
}
