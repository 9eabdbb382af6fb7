import { useState } from 'react';
import { Button } from 'react-aria-components';
import { assess } from '../../core/assess.ts';
import type { Project } from '../../core/model/project.ts';
import { SERVICES, type ServiceId } from '../../core/model/services.ts';
import type { MatrixRow, Redundancy, ServiceState } from '../../core/redundancy/types.ts';
import { eventSentence } from '../canvas/eventSentence.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { useAssessment } from '../store/derived.ts';
import { shownProject } from '../store/store.ts';
import { GRADE_SIGNS, lostAndReduced, sharedWays } from './redundancyWords.ts';
import './redundancy.css';

const serviceOf = (id: ServiceId) => SERVICES.find((service) => service.id === id) ?? SERVICES[0];

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
      <SinglePoints redundancy={redundancy} />
      {project.alternatives.length > 0 ? <Layouts project={project} /> : null}
    </div>
  );
}

interface Cell {
  readonly eventId: string;
  readonly serviceId: ServiceId;
}

function Matrix({ redundancy }: { redundancy: Redundancy }) {
  const shownEvent = useApp((state) => state.eventId);
  const [cell, setCell] = useState<Cell | null>(null);
  const chosenRow = redundancy.matrix.find(({ event }) => event.id === (cell?.eventId ?? shownEvent ?? 'none'));
  return (
    <section className="panel-section">
      <h3 className="heading">What one failure takes away</h3>
      <p className="small soft">
        Choose an event to see on the drawing what is left alive; choose a cell for its reason.
      </p>
      <div className="table-scroll">
        <table className="table matrix">
          <thead>
            <tr>
              <th scope="col">Event</th>
              {redundancy.services.map((id) => (
                <th key={id} scope="col" title={serviceOf(id).name}>
                  <abbr title={serviceOf(id).name}>{serviceOf(id).code}</abbr>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {redundancy.matrix.map((row) => (
              <MatrixLine key={row.event.id} row={row} shownEvent={shownEvent} cell={cell} onCell={setCell} />
            ))}
          </tbody>
        </table>
      </div>
      <p className="small soft legend">
        {Object.values(GRADE_SIGNS).map(({ sign, word, className }) => (
          <span key={word}>
            <span className={`grade grade--${className}`}>{sign}</span> {word}
          </span>
        ))}
      </p>
      {chosenRow ? <Reasons redundancy={redundancy} row={chosenRow} cell={cell} /> : null}
    </section>
  );
}

function MatrixLine({
  row,
  shownEvent,
  cell,
  onCell,
}: {
  row: MatrixRow;
  shownEvent: string | null;
  cell: Cell | null;
  onCell: (cell: Cell | null) => void;
}) {
  const store = useAppStore();
  const { event } = row;
  const isShown = event.id === (shownEvent ?? 'none');
  const show = (): void => {
    onCell(null);
    store.getState().showEvent(event.kind === 'none' || isShown ? null : event.id);
  };
  return (
    <tr className={isShown ? 'is-selected' : ''}>
      <th scope="row">
        <Button className="button link" aria-pressed={isShown} onPress={show}>
          {event.label}
        </Button>
      </th>
      {row.states.map((state) => (
        <td key={state.serviceId}>
          <GradeButton
            state={state}
            eventLabel={event.label}
            isChosen={cell?.eventId === event.id && cell.serviceId === state.serviceId}
            onChoose={() => onCell({ eventId: event.id, serviceId: state.serviceId })}
          />
        </td>
      ))}
    </tr>
  );
}

function GradeButton({
  state,
  eventLabel,
  isChosen,
  onChoose,
}: {
  state: ServiceState;
  eventLabel: string;
  isChosen: boolean;
  onChoose: () => void;
}) {
  const { sign, word, className } = GRADE_SIGNS[state.grade];
  const name = `${eventLabel}, ${serviceOf(state.serviceId).name}: ${word}`;
  return (
    <button
      type="button"
      className={`grade grade--${className}${isChosen ? ' is-chosen' : ''}`}
      aria-label={name}
      title={`${serviceOf(state.serviceId).name}: ${word}. ${state.reason}`}
      onClick={onChoose}
    >
      {sign}
    </button>
  );
}

function Reasons({ redundancy, row, cell }: { redundancy: Redundancy; row: MatrixRow; cell: Cell | null }) {
  const states = cell === null ? row.states : row.states.filter(({ serviceId }) => serviceId === cell.serviceId);
  return (
    <div className="card reasons" aria-live="polite">
      <h4 className="heading">{row.event.label}</h4>
      <p className="small">
        {row.event.kind === 'none' ? row.event.note : `${row.event.note} ${eventSentence(redundancy, row)}`}
      </p>
      <ul>
        {states.map((state) => (
          <li key={state.serviceId}>
            <span className={`grade grade--${GRADE_SIGNS[state.grade].className}`}>
              {GRADE_SIGNS[state.grade].sign}
            </span>{' '}
            <span>
              <strong>{serviceOf(state.serviceId).name}:</strong> {state.reason}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}

function SinglePoints({ redundancy }: { redundancy: Redundancy }) {
  const store = useAppStore();
  const shared = sharedWays(redundancy);
  return (
    <section className="panel-section">
      <h3 className="heading">Single points of failure</h3>
      <p className="small soft">Each of these alone takes away the services beside it; what takes most comes first.</p>
      {shared.length === 0 ? <p className="small">None: every service has a second way.</p> : null}
      <table className="table">
        <tbody>
          {shared.map(({ component, serviceIds }) => (
            <tr key={component.id}>
              <th scope="row">
                <Button className="button link" onPress={() => store.getState().select([component.subject])}>
                  {component.label}
                </Button>
              </th>
              <td>
                {serviceIds.map((id) => (
                  <abbr key={id} className="chip" title={serviceOf(id).name}>
                    {serviceOf(id).code}
                  </abbr>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Layouts({ project }: { project: Project }) {
  const others = project.alternatives.map(({ name, items, runs, feeds, dataLinks }) => ({
    name,
    result: assess({ ...project, items, runs, feeds, dataLinks }),
  }));
  const layouts = [{ name: project.layoutName, result: assess(project) }, ...others];
  return (
    <section className="panel-section">
      <h3 className="heading">Layouts side by side</h3>
      <p className="small soft">Services lost and reduced over all events, single points and open remarks.</p>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">Layout</th>
            <th scope="col" className="num">
              Lost
            </th>
            <th scope="col" className="num">
              Reduced
            </th>
            <th scope="col" className="num">
              Single points
            </th>
            <th scope="col" className="num">
              A / B / C
            </th>
          </tr>
        </thead>
        <tbody>
          {layouts.map(({ name, result }) => {
            const { lost, reduced } = lostAndReduced(result.redundancy);
            const open = result.findings.filter(({ overruled }) => overruled === null);
            const count = (severity: string): number => open.filter((finding) => finding.severity === severity).length;
            return (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td className="num">{lost}</td>
                <td className="num">{reduced}</td>
                <td className="num">{sharedWays(result.redundancy).length}</td>
                <td className="num">
                  {count('A')} / {count('B')} / {count('C')}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
