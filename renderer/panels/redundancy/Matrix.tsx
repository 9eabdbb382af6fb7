import { type FocusEvent, type KeyboardEvent, useState } from 'react';
import { Button } from 'react-aria-components';
import { setEventExcluded } from '../../../core/edit/redundancy.ts';
import type { MeansFinder, MeansLeft } from '../../../core/redundancy/meansLeft.ts';
import type { MatrixRow, Redundancy } from '../../../core/redundancy/types.ts';
import { serviceOf } from '../../../core/report/words.ts';
import { shownQuantity } from '../../../core/units/format.ts';
import { q } from '../../../core/units/quantity.ts';
import { eventSentence } from '../../canvas/eventSentence.ts';
import { useApp, useAppStore } from '../../store/context.ts';
import { useFarEnd, useMeansLeft } from '../../store/derived.ts';
import { FarEndChoice } from './FarEndChoice.tsx';
import { MeansList } from './MeansList.tsx';
import { movedSpot, type Spot } from './spot.ts';
import { GRADE_SIGNS } from './words.ts';

/**
 * Failure events against services. One stop for the Tab key; the arrow keys go from cell to cell, and under the table
 * stands the reason of the cell in focus, or of the whole row when that is the event.
 */
export function Matrix({ redundancy }: { redundancy: Redundancy }) {
  const { matrix, services } = redundancy;
  const eventId = useApp((state) => state.eventId);
  const shownRow = Math.max(
    0,
    matrix.findIndex(({ event }) => event.id === eventId),
  );
  const [spot, setSpot] = useSpot(eventId, matrix.length, shownRow);
  const row = matrix[spot.row];
  const meansIn = useMeansLeft();
  return (
    <section className="panel-section">
      <h3 className="heading">What one failure takes away</h3>
      <p className="small soft">
        Choose an event to see on the drawing what is left alive; choose a cell for its reason. The small figure is the
        dependable reach of the best means left.
      </p>
      <FarEndChoice />
      <div className="table-scroll">
        <table
          className="table matrix"
          // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table whose cells take the focus is a grid
          role="grid"
          aria-label="Failures and services"
          onKeyDown={(event) => moveFocus(event, matrix.length, services.length + 1)}
          onFocus={(event) => setSpot(spotOf(event) ?? spot)}
        >
          <Heads redundancy={redundancy} />
          <tbody>
            {matrix.map((each, index) => (
              <MatrixLine
                key={each.event.id}
                row={each}
                index={index}
                isShown={index === shownRow}
                spot={spot}
                meansIn={meansIn}
              />
            ))}
          </tbody>
        </table>
      </div>
      <Legend />
      {row ? <Reasons redundancy={redundancy} row={row} column={spot.column} meansIn={meansIn} /> : null}
    </section>
  );
}

/** The cell looked at; another event shown on the drawing takes it to that event's row. */
function useSpot(eventId: string | null, rows: number, shownRow: number): [Spot, (spot: Spot) => void] {
  const [held, setHeld] = useState({ eventId, spot: { row: shownRow, column: 0 } });
  const isStale = held.eventId !== eventId || held.spot.row >= rows;
  const spot = isStale ? { row: shownRow, column: 0 } : held.spot;
  return [spot, (next) => setHeld({ eventId, spot: next })];
}

function spotOf({ target }: FocusEvent): Spot | null {
  const cell = target.closest<HTMLElement>('[data-row]');
  return cell ? { row: Number(cell.dataset.row), column: Number(cell.dataset.column) } : null;
}

function moveFocus(event: KeyboardEvent<HTMLTableElement>, rows: number, columns: number): void {
  const from = event.target instanceof HTMLElement ? event.target.closest<HTMLElement>('[data-row]') : null;
  if (!from) return;
  const spot = { row: Number(from.dataset.row), column: Number(from.dataset.column) };
  const next = movedSpot(spot, event.key, rows, columns);
  if (!next) return;
  event.preventDefault();
  event.currentTarget.querySelector<HTMLElement>(`[data-row="${next.row}"][data-column="${next.column}"]`)?.focus();
}

function Heads({ redundancy }: { redundancy: Redundancy }) {
  return (
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
  );
}

function MatrixLine({
  row,
  index,
  isShown,
  spot,
  meansIn,
}: {
  row: MatrixRow;
  index: number;
  isShown: boolean;
  spot: Spot;
  meansIn: MeansFinder;
}) {
  const store = useAppStore();
  const { event, states } = row;
  const means = meansIn(row);
  const reachText = useReachText();
  const isAt = (column: number): boolean => spot.row === index && spot.column === column;
  const place = (column: number) => ({
    'data-row': index,
    'data-column': column,
    tabIndex: isAt(column) ? 0 : -1,
  });
  const show = (): void => store.getState().showEvent(event.kind === 'none' || isShown ? null : event.id);
  return (
    <tr className={isShown ? 'is-selected' : ''}>
      <th scope="row">
        <button type="button" className="link" aria-pressed={isShown} onClick={show} {...place(0)}>
          {event.label}
        </button>
      </th>
      {states.map(({ serviceId, grade, reason }, i) => {
        const { sign, word, className } = GRADE_SIGNS[grade];
        const { name } = serviceOf(serviceId);
        const reach = reachText(means.get(serviceId)?.[0]);
        return (
          <td key={serviceId}>
            <button
              type="button"
              className={`grade grade--${className}${isAt(i + 1) ? ' is-chosen' : ''}`}
              title={`${name}: ${word}. ${reason}`}
              {...place(i + 1)}
            >
              <span aria-hidden="true">
                {sign}
                {reach ? <span className="cell-reach">{reach.figure}</span> : null}
              </span>
              <span className="sr-only">{`${event.label}, ${name}: ${word}${reach ? `, ${reach.words}` : ''}`}</span>
            </button>
          </td>
        );
      })}
    </tr>
  );
}

/** The dependable reach of a means, as a figure for the cell and in words. */
function useReachText(): (means: MeansLeft | undefined) => { figure: string; words: string } | null {
  const preferences = useApp((state) => state.preferences);
  return (means) => {
    const km = means?.reach?.dependable.nominalKm;
    if (km === undefined) return null;
    const { value, symbol } = shownQuantity(q(km, 'km', 0), preferences);
    const figure = String(Math.round(value));
    return { figure, words: `dependable ${figure} ${symbol}` };
  };
}

function Legend() {
  const farEnd = useFarEnd();
  const preferences = useApp((state) => state.preferences);
  const { symbol } = shownQuantity(q(1, 'km', 0), preferences);
  return (
    <p className="small soft legend">
      {Object.values(GRADE_SIGNS).map(({ sign, word, className }) => (
        <span key={word}>
          <span className={`grade grade--${className}`}>{sign}</span> {word}
        </span>
      ))}
      {farEnd ? (
        <span>
          {symbol} to: {farEnd.name}
        </span>
      ) : null}
    </p>
  );
}

function Reasons({
  redundancy,
  row,
  column,
  meansIn,
}: {
  redundancy: Redundancy;
  row: MatrixRow;
  column: number;
  meansIn: MeansFinder;
}) {
  const store = useAppStore();
  const { event } = row;
  const means = meansIn(row);
  const states = column === 0 ? row.states : row.states.slice(column - 1, column);
  return (
    <div className={`card reasons${column === 0 ? '' : ' reasons--cell'}`} aria-live="polite">
      <h4 className="heading">{event.label}</h4>
      <p className="small">{event.kind === 'none' ? event.note : `${event.note} ${eventSentence(redundancy, row)}`}</p>
      <ul>
        {states.map(({ serviceId, grade, reason }) => (
          <li key={serviceId}>
            <span className={`grade grade--${GRADE_SIGNS[grade].className}`}>{GRADE_SIGNS[grade].sign}</span>
            <span className="code">{serviceOf(serviceId).code}</span>
            <span>
              <strong>{serviceOf(serviceId).name}:</strong> {reason}
              {column === 0 ? null : <MeansList means={means.get(serviceId) ?? []} />}
            </span>
          </li>
        ))}
      </ul>
      {event.kind !== 'none' && column === 0 ? (
        <div className="row">
          <Button
            className="button"
            onPress={() =>
              store.getState().edit(`${event.label}: left out`, (project) => setEventExcluded(project, event.id, true))
            }
          >
            Leave this event out
          </Button>
        </div>
      ) : null}
    </div>
  );
}
