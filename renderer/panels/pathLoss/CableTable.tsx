import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import { setRun } from '../../../core/edit/runs.ts';
import type { PathBudget } from '../../../core/links/types.ts';
import type { Project } from '../../../core/model/project.ts';
import { useApp, useAppStore } from '../../store/context.ts';
import { useFormat } from '../../ui/text.ts';
import { type CableRow, compareCables } from './cables.ts';
import { bareNumber, symbolOf, wattDigits } from './figures.ts';

/** What every other cable would do in the longest run of a path. */
export function CableTable({ project, path }: { project: Project; path: PathBudget }) {
  const { quantity } = useFormat();
  const limitDb = project.settings.feederLossLimitDb;
  const comparison = useMemo(() => compareCables(project, path, limitDb), [project, path, limitDb]);
  if (!comparison) return null;
  const { run, lengthM, rows } = comparison;
  const isSending = path.txPowerW !== null;
  return (
    <section className="panel-section">
      <h3 className="heading">
        Other cable for {run.number}, {quantity(lengthM, 'm')}
      </h3>
      <p className="small soft">
        The longest run of this path in every coax, all else as it is. Plugs, glands and bends must suit the new
        diameter.
      </p>
      <div className="table-scroll">
        <table className="table cable-table">
          <Heads isSending={isSending} />
          <tbody>
            {rows.map((row) => (
              <CableLine key={row.cableId} row={row} isSending={isSending} runId={run.id} runNumber={run.number} />
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function Heads({ isSending }: { isSending: boolean }) {
  const preferences = useApp((state) => state.preferences);
  return (
    <thead>
      <tr>
        <th scope="col">Cable</th>
        <th scope="col" className="num">
          Run dB
        </th>
        <th scope="col" className="num">
          {isSending ? 'W at antenna' : 'Path dB'}
        </th>
        <th scope="col" className="num">
          Outside {symbolOf('mm', preferences)}
        </th>
        <th scope="col" className="num">
          Bend {symbolOf('mm', preferences)}
        </th>
        {isSending ? <th scope="col">Limit</th> : null}
        <td />
      </tr>
    </thead>
  );
}

function CableLine({
  row,
  isSending,
  runId,
  runNumber,
}: {
  row: CableRow;
  isSending: boolean;
  runId: string;
  runNumber: string;
}) {
  const store = useAppStore();
  const preferences = useApp((state) => state.preferences);
  const use = (): void => {
    store.getState().edit(`${runNumber} in ${row.name}`, (project) => setRun(project, runId, { cableId: row.cableId }));
  };
  return (
    <tr className={row.isFitted ? 'is-selected' : ''}>
      <th scope="row">
        {row.name}
        {row.caution === '' ? null : <span className="basis">{row.caution}</span>}
      </th>
      <td className="num">{bareNumber(row.runLossDb, 'dB', preferences, 2)}</td>
      <td className="num">
        {row.wattsAtAntenna === null
          ? bareNumber(row.pathLossDb, 'dB', preferences, 2)
          : bareNumber(row.wattsAtAntenna, 'W', preferences, Math.max(1, wattDigits(row.wattsAtAntenna)))}
      </td>
      <td className="num">{bareNumber(row.outsideDiameterMm, 'mm', preferences, 1)}</td>
      <td className="num">{bareNumber(row.bendMm, 'mm', preferences, 0)}</td>
      {isSending ? <td className="passes">{row.isWithinLimit ? '✓ yes' : '✕ no'}</td> : null}
      <td className="num">
        {row.isFitted ? (
          <span className="chip">fitted</span>
        ) : (
          <Button className="button use-cable" aria-label={`Use this cable: ${row.name}`} onPress={use}>
            Use
          </Button>
        )}
      </td>
    </tr>
  );
}
