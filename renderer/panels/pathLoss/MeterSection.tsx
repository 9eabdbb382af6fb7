import type { PathBudget } from '../../../core/links/types.ts';
import type { Project } from '../../../core/model/project.ts';
import { useFormat } from '../../ui/text.ts';
import { expectedAtRadio, expectedOpenEnd, measuredCheck, meterRows, vswrNote } from './meter.ts';

/** What a meter should show, what it showed, and what that proves. */
export function MeterSection({ project, path }: { project: Project; path: PathBudget }) {
  const { rich } = useFormat();
  if (path.elements.length === 0 || path.service === 'mf-hf') return null;
  const tagOf = (id: string): string =>
    project.items.find((item) => item.id === id)?.tag ?? project.runs.find((run) => run.id === id)?.number ?? id;
  const rows = meterRows(project, path, tagOf);
  const note = vswrNote(path);
  const check = measuredCheck(path);
  return (
    <section className="panel-section">
      <h3 className="heading">On the meter</h3>
      {check === null ? null : (
        <p className={check.isUnexplained ? 'caution' : 'note'}>
          <span className={`grade grade--${check.isUnexplained ? 'lost' : 'full'}`}>
            {check.isUnexplained ? '✕ Unexplained loss' : '✓ Explained'}
          </span>{' '}
          {rich(check.text)}
        </p>
      )}
      <dl className="facts">
        <dt>Open end, expected</dt>
        <dd>{rich(expectedOpenEnd(path))}</dd>
        <dt>Antenna on, expected</dt>
        <dd>{rich(expectedAtRadio(path))}</dd>
        {rows.map((row) => (
          <div key={row.key} className="facts-row">
            <dt>{row.label}</dt>
            <dd>
              {rich(row.text)} <span className="soft">({row.when})</span>
            </dd>
          </div>
        ))}
      </dl>
      {rows.length === 0 ? <p className="small soft">Nothing has been measured on this path yet.</p> : null}
      {note === null ? null : <p className="caution">{rich(note)}</p>}
      <p className="small soft">
        Open end: the reading at the set with the antenna taken off, by an antenna analyser only. Never transmit without
        an antenna.
      </p>
    </section>
  );
}
