import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { PathBudget, PathElement } from '../../../core/links/types.ts';
import type { Project } from '../../../core/model/project.ts';
import { useApp, useAppStore } from '../../store/context.ts';
import { BASIS_WORDS, useFormat } from '../../ui/text.ts';
import { elementSum, isSameSubject, KIND_WORDS, numbered } from './elements.ts';
import { bareNumber, percent, wattDigits } from './figures.ts';

/** Every element of a path in order, with what it takes and how that is known. */
export function ElementTable({ project, path }: { project: Project; path: PathBudget }) {
  const isSending = path.txPowerW !== null;
  return (
    <section className="panel-section">
      <h3 className="heading">Element by element</h3>
      <div className="table-scroll">
        <table className="table element-table">
          <Heads isSending={isSending} />
          <tbody>
            {numbered(path.elements).map(({ element, number, key }) => (
              <ElementRows key={key} project={project} path={path} element={element} number={number} />
            ))}
            <Total path={path} />
          </tbody>
        </table>
      </div>
    </section>
  );
}

function Heads({ isSending }: { isSending: boolean }) {
  return (
    <thead>
      <tr>
        <th scope="col" className="num">
          No.
        </th>
        <th scope="col">What, and how it is known</th>
        <th scope="col" className="num">
          dB
        </th>
        <th scope="col" className="num">
          Total dB
        </th>
        {isSending ? (
          <th scope="col" className="num">
            W left
          </th>
        ) : null}
        <th scope="col" className="num">
          Lost
        </th>
      </tr>
    </thead>
  );
}

function Total({ path }: { path: PathBudget }) {
  const preferences = useApp((state) => state.preferences);
  const { rich } = useFormat();
  return (
    <tr className="is-total">
      <td />
      <th scope="row">Whole path</th>
      <td className="num">
        {bareNumber(path.lossDb, 'dB', preferences, 2)}
        <Tolerance db={path.toleranceDb} />
      </td>
      <td />
      {path.txPowerW !== null ? (
        <td className="num">
          {path.wattsAtAntenna === null
            ? ''
            : bareNumber(path.wattsAtAntenna, 'W', preferences, wattDigits(path.wattsAtAntenna))}
        </td>
      ) : null}
      <td className="num">{rich([percent(path.lostPercent)])}</td>
    </tr>
  );
}

function Tolerance({ db }: { db: number }) {
  const preferences = useApp((state) => state.preferences);
  return <span className="tolerance">± {bareNumber(db, 'dB', preferences, 2)}</span>;
}

function ElementRows({
  project,
  path,
  element,
  number,
}: {
  project: Project;
  path: PathBudget;
  element: PathElement;
  number: number;
}) {
  const store = useAppStore();
  const preferences = useApp((state) => state.preferences);
  const { rich } = useFormat();
  const [isOpen, setOpen] = useState(false);
  const isSelected = useApp(({ selection }) => selection.some((subject) => isSameSubject(subject, element.subject)));
  const select = (): void => store.getState().select([element.subject]);
  const isSending = path.txPowerW !== null;
  return (
    <>
      <tr className={`is-pickable${isSelected ? ' is-selected' : ''}`} onClick={select}>
        <td className="num">{number}</td>
        <th scope="row">
          <Button className="button link" onPress={select}>
            {element.label}
          </Button>
          {/* biome-ignore lint/a11y/noStaticElementInteractions: keeps a press on the button from choosing the row */}
          {/* biome-ignore lint/a11y/useKeyWithClickEvents: keeps a press on the button from choosing the row */}
          <span className="basis" onClick={(event) => event.stopPropagation()}>
            {BASIS_WORDS[element.basis]} ·{' '}
            <button type="button" className="why" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
              Why this number
              <span className="sr-only">
                : {number}, {element.label}
              </span>
            </button>
          </span>
        </th>
        <td className="num">
          {bareNumber(element.lossDb, 'dB', preferences, 2)}
          <Tolerance db={element.toleranceDb} />
        </td>
        <td className="num">{bareNumber(element.runningLossDb, 'dB', preferences, 2)}</td>
        {isSending ? (
          <td className="num">
            {element.wattsOut === null
              ? ''
              : bareNumber(element.wattsOut, 'W', preferences, Math.max(1, wattDigits(element.wattsOut)))}
          </td>
        ) : null}
        <td className="num">{rich([percent(element.shareLostPercent)])}</td>
      </tr>
      {isOpen ? (
        <tr className={`why-row${isSelected ? ' is-selected' : ''}`}>
          <td />
          <td colSpan={isSending ? 5 : 4}>
            <dl className="facts">
              <dt>What it is</dt>
              <dd>{KIND_WORDS[element.kind]}</dd>
              <dt>Sum</dt>
              <dd>{rich(elementSum(project, element, path.frequencyMhz, preferences))}</dd>
              <dt>Known by</dt>
              <dd>{BASIS_WORDS[element.basis]}</dd>
              <dt>Source</dt>
              <dd>{element.source || 'not stated'}</dd>
            </dl>
          </td>
        </tr>
      ) : null}
    </>
  );
}
