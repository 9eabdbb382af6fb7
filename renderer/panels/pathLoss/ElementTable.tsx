import { type ReactNode, useState } from 'react';
import { Button } from 'react-aria-components';
import type { PathBudget, PathElement } from '../../../core/links/types.ts';
import type { Project } from '../../../core/model/project.ts';
import { BASIS_WORDS } from '../../../core/report/words.ts';
import { useApp, useAppStore } from '../../store/context.ts';
import { useFormat } from '../../ui/text.ts';
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

interface ElementProps {
  readonly project: Project;
  readonly path: PathBudget;
  readonly element: PathElement;
  readonly number: number;
}

function ElementRows(props: ElementProps) {
  const { element } = props;
  const [isOpen, setOpen] = useState(false);
  const isSelected = useApp(({ selection }) => selection.some((subject) => isSameSubject(subject, element.subject)));
  const chosen = isSelected ? ' is-selected' : '';
  return (
    <>
      <FiguresRow {...props} className={`is-pickable${chosen}`}>
        {BASIS_WORDS[element.basis]} ·{' '}
        <button type="button" className="why" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          Why this number
          <span className="sr-only">
            : {props.number}, {element.label}
          </span>
        </button>
      </FiguresRow>
      {isOpen ? <WhyRow {...props} className={`why-row${chosen}`} /> : null}
    </>
  );
}

function FiguresRow({
  path,
  element,
  number,
  className,
  children,
}: ElementProps & { className: string; children: ReactNode }) {
  const store = useAppStore();
  const preferences = useApp((state) => state.preferences);
  const { rich } = useFormat();
  const select = (): void => store.getState().select([element.subject]);
  const { wattsOut } = element;
  return (
    <tr className={className} onClick={select}>
      <td className="num">{number}</td>
      <th scope="row">
        <Button className="button link" onPress={select}>
          {element.label}
        </Button>
        {/* biome-ignore lint/a11y/noStaticElementInteractions: keeps a press on the button from choosing the row */}
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: keeps a press on the button from choosing the row */}
        <span className="basis" onClick={(event) => event.stopPropagation()}>
          {children}
        </span>
      </th>
      <td className="num">
        {bareNumber(element.lossDb, 'dB', preferences, 2)}
        <Tolerance db={element.toleranceDb} />
      </td>
      <td className="num">{bareNumber(element.runningLossDb, 'dB', preferences, 2)}</td>
      {path.txPowerW === null ? null : (
        <td className="num">
          {wattsOut === null ? '' : bareNumber(wattsOut, 'W', preferences, Math.max(1, wattDigits(wattsOut)))}
        </td>
      )}
      <td className="num">{rich([percent(element.shareLostPercent)])}</td>
    </tr>
  );
}

function WhyRow({ project, path, element, className }: ElementProps & { className: string }) {
  const preferences = useApp((state) => state.preferences);
  const { rich } = useFormat();
  return (
    <tr className={className}>
      <td />
      <td colSpan={path.txPowerW === null ? 4 : 5}>
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
  );
}
