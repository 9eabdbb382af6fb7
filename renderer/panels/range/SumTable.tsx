import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { SumLine, WaySum } from '../../../core/reach/types.ts';
import { BASIS_WORDS } from '../../../core/report/words.ts';
import { useApp, useAppStore } from '../../store/context.ts';
import { useFormat } from '../../ui/text.ts';
import { isSameSubject } from '../pathLoss/elements.ts';
import { bareNumber } from '../pathLoss/figures.ts';
import { type RunningLine, runningLines, signed } from './sums.ts';

/** One direction line by line, from transmitter to receiver, with what it comes to so far. */
export function SumTable({ way }: { way: WaySum }) {
  const preferences = useApp((state) => state.preferences);
  return (
    <div className="table-scroll">
      <table className="table sum-table">
        <thead>
          <tr>
            <th scope="col">What, and how it is known</th>
            <th scope="col" className="num">
              Adds
            </th>
            <th scope="col" className="num">
              So far
            </th>
          </tr>
        </thead>
        <tbody>
          {runningLines(way.lines).map((running) => (
            <LineRows key={running.line.key} running={running} />
          ))}
          <tr className="is-total">
            <th scope="row">May lie between the antennas</th>
            <td />
            <td className="num">{bareNumber(way.maxLossDb, 'dB', preferences, 1)} dB</td>
          </tr>
        </tbody>
      </table>
    </div>
  );
}

function LineRows({ running: { line, sumDb } }: { running: RunningLine }) {
  const preferences = useApp((state) => state.preferences);
  const { rich } = useFormat();
  const [isOpen, setOpen] = useState(false);
  const { subject } = line;
  const isSelected = useApp(
    ({ selection }) => subject !== null && selection.some((one) => isSameSubject(one, subject)),
  );
  const chosen = isSelected ? ' is-selected' : '';
  return (
    <>
      <tr className={chosen}>
        <th scope="row">
          <LineName line={line} />
          <span className="basis">
            {BASIS_WORDS[line.basis]} ·{' '}
            <button type="button" className="why" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
              formula and source<span className="sr-only">: {rich(line.label)}</span>
            </button>
          </span>
        </th>
        <td className="num">
          {signed(line.value, 1, preferences)} {line.unit}
          {line.toleranceDb > 0 ? (
            <span className="tolerance">± {bareNumber(line.toleranceDb, 'dB', preferences, 1)}</span>
          ) : null}
        </td>
        <td className="num">{signed(sumDb, 1, preferences)}</td>
      </tr>
      {isOpen ? <WhyRow line={line} className={`why-row${chosen}`} /> : null}
    </>
  );
}

/** What is aboard is shown on the drawing when its name is pressed. */
function LineName({ line: { label, subject } }: { line: SumLine }) {
  const store = useAppStore();
  const { rich } = useFormat();
  if (!subject) return <>{rich(label)}</>;
  return (
    <Button className="button link" onPress={() => store.getState().select([subject])}>
      {rich(label)}
    </Button>
  );
}

function WhyRow({ line, className }: { line: SumLine; className: string }) {
  const { rich } = useFormat();
  return (
    <tr className={className}>
      <td colSpan={3}>
        <dl className="facts">
          <dt>Sum</dt>
          <dd>{rich(line.formula)}</dd>
          <dt>Known by</dt>
          <dd>{BASIS_WORDS[line.basis]}</dd>
          <dt>Source</dt>
          <dd>{line.source || 'not stated'}</dd>
        </dl>
      </td>
    </tr>
  );
}
