import type { PathBudget } from '../../../core/links/types.ts';
import type { Project } from '../../../core/model/project.ts';
import type { StrongSignal } from '../../../core/reach/types.ts';
import { useFormat } from '../../ui/text.ts';
import { megahertz, watts } from '../pathLoss/figures.ts';
import { clearWords, marginWords, nearTable, ownSignals, sourceName } from './strong.ts';

/** What comes in too strong: from stations lying close by, and from the boat's own antennas. */
export function StrongSection({
  project,
  paths,
  signals,
}: {
  project: Project;
  paths: readonly PathBudget[];
  signals: readonly StrongSignal[];
}) {
  const own = ownSignals(signals);
  return (
    <>
      <p className="small soft">
        A receiver has a strongest signal as well as a weakest. Beyond it weaker calls are lost, on other channels too;
        far beyond it the input itself may be hurt. It works both ways: what another boat’s full power does to you in an
        anchorage, yours does to her. There the low setting reaches everybody who need hear.
      </p>
      <NearStations project={project} signals={signals} />
      {own.length > 0 ? (
        <div className="stack">
          <h4 className="heading">Own antennas</h4>
          {own.map((signal) => (
            <OwnAntenna key={signal.id} project={project} paths={paths} signal={signal} />
          ))}
        </div>
      ) : null}
    </>
  );
}

function NearStations({ project, signals }: { project: Project; signals: readonly StrongSignal[] }) {
  const { rich, quantity } = useFormat();
  const { limits, rows } = nearTable(project, signals);
  if (rows.length === 0) return null;
  return (
    <div className="stack">
      <h4 className="heading">In an anchorage: how far off the other must lie</h4>
      <div className="table-scroll">
        <table className="table near-table">
          <thead>
            <tr>
              <th scope="col">Sending</th>
              {limits.map(({ key, label, limitDbm }) => (
                <th key={key} scope="col" className="num">
                  {label}
                  <span className="band">{quantity(limitDbm, 'dBm', 0)}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ id, name, clearM }) => (
              <tr key={id}>
                <th scope="row">{rich(name)}</th>
                {clearM.map((metres, index) => (
                  <td key={limits[index]?.key ?? index} className="num">
                    {metres === null ? '–' : rich(clearWords(metres))}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <Sources limits={limits} />
    </div>
  );
}

function Sources({ limits }: { limits: StrongSignal['limits'] }) {
  return (
    <ul className="small soft sources">
      {limits.map(({ key, label, source }) => (
        <li key={key}>
          {label}: {source}
        </li>
      ))}
    </ul>
  );
}

function OwnAntenna({
  project,
  paths,
  signal,
}: {
  project: Project;
  paths: readonly PathBudget[];
  signal: StrongSignal;
}) {
  const { rich, quantity } = useFormat();
  const { fromId, powerW, frequencyMhz, isolationDb, levelDbm, validity, limits } = signal;
  return (
    <div className="own-signal">
      <p>
        <strong>{sourceName(project, paths, fromId)}</strong>, {rich([watts(powerW)])} on{' '}
        {rich([megahertz(frequencyMhz)])}
      </p>
      {validity === 'near-field' || levelDbm === null || isolationDb === null ? (
        <p className="small">
          So near that the formula does not hold: no level is given. Measure it, or move one of the two.
        </p>
      ) : (
        <p className="small soft">
          {quantity(isolationDb, 'dB', 0)} between the two antennas leave {quantity(levelDbm, 'dBm', 0)} at the socket
          {validity === 'unchecked' ? '; not checked against full-wave results at this spacing' : ''}.
        </p>
      )}
      <ul className="own-limits">
        {limits.map(({ key, label, limitDbm, marginDb, source }) => (
          <li key={key} className="small">
            <span title={source}>
              {label}, {quantity(limitDbm, 'dBm', 0)}
            </span>
            {marginDb === null ? null : <Kept marginDb={marginDb} />}
          </li>
        ))}
      </ul>
    </div>
  );
}

function Kept({ marginDb }: { marginDb: number }) {
  const { rich } = useFormat();
  const { isKept, text } = marginWords(marginDb);
  return <span className={`grade grade--${isKept ? 'full' : 'reduced'}`}>{rich(text)}</span>;
}
