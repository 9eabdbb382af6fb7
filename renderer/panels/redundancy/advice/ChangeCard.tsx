import { Button } from 'react-aria-components';
import type { CutCount, Effect, RankedChange } from '../../../../core/advice/types.ts';
import { useAppStore } from '../../../store/context.ts';
import { useFormat } from '../../../ui/text.ts';
import { ServiceChips } from './ServiceChips.tsx';
import { listed, rescueGroups } from './words.ts';

/** Points named in one line of a card; the list by single point has them all. */
const MOST_NAMED = 6;

export type MakeChange = (change: RankedChange) => void;

/** One change: what it frees, what it takes, what to mind, what becomes worse, and the button that makes it. */
export function ChangeCard({
  change,
  labels,
  onMake,
}: {
  change: RankedChange;
  labels: ReadonlyMap<string, string>;
  onMake: MakeChange;
}) {
  const store = useAppStore();
  const { candidate, effect } = change;
  return (
    <article className="card advice-card" aria-label={candidate.title}>
      <header className="advice-head">
        <h4 className="heading">{candidate.title}</h4>
        {candidate.subjects.length > 0 ? (
          <Button
            className="button button--quiet"
            aria-label={`Show on the drawing what it is about: ${candidate.title}`}
            onPress={() => store.getState().select(candidate.subjects)}
          >
            Show
          </Button>
        ) : null}
      </header>
      <Rescues effect={effect} labels={labels} />
      <dl className="facts advice-facts">
        <Counts before={effect.before} after={effect.after} />
        <Cells effect={effect} />
        {effect.clears.length > 0 ? (
          <>
            <dt>Remarks gone</dt>
            <dd>
              {effect.clears.map(({ severity, title }) => (
                <p key={title}>
                  <span className={`badge badge--${severity.toLowerCase()}`}>{severity}</span> {title}
                </p>
              ))}
            </dd>
          </>
        ) : null}
        {effect.worsens.length > 0 ? (
          <>
            <dt>Gets worse</dt>
            <dd>
              {effect.worsens.map((sentence) => (
                <p key={sentence}>{sentence}</p>
              ))}
            </dd>
          </>
        ) : null}
      </dl>
      <Takes change={change} />
      <ul className="caution advice-cautions" aria-label="Mind">
        {candidate.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <Button
        className="button advice-make"
        aria-label={`Make this change: ${candidate.title}`}
        onPress={() => onMake(change)}
      >
        Make this change
      </Button>
    </article>
  );
}

function Rescues({ effect, labels }: { effect: Effect; labels: ReadonlyMap<string, string> }) {
  const groups = rescueGroups(effect.rescues, labels);
  if (groups.length === 0) return <p className="small soft">Frees no service of a single point, but see below.</p>;
  return (
    <ul className="advice-rescues">
      {groups.map((group) => (
        <li key={`${group.serviceIds.join()} ${group.labels[0]}`}>
          <ServiceChips serviceIds={group.serviceIds} />
          <span>
            {group.isFirstWay ? 'given a first way' : `no longer lost to ${listed(group.labels, MOST_NAMED)}`}
          </span>
        </li>
      ))}
    </ul>
  );
}

function Counts({ before, after }: { before: CutCount; after: CutCount }) {
  return (
    <>
      <dt>Single points</dt>
      <dd>
        <Change from={before.singles} to={after.singles} />
      </dd>
      <dt>Pairs</dt>
      <dd>
        <Change from={before.pairs} to={after.pairs} />
      </dd>
    </>
  );
}

function Change({ from, to }: { from: number; to: number }) {
  if (from === to) return <span className="mono-num">{from}, as before</span>;
  return (
    <span className="mono-num">
      {from} <span aria-hidden="true">→</span>
      <span className="sr-only">before,</span> {to}
      <span className="sr-only"> after</span>
    </span>
  );
}

function Cells({ effect: { cellsBetter, cellsWorse } }: { effect: Effect }) {
  if (cellsBetter === 0 && cellsWorse === 0) return null;
  const worse = cellsWorse > 0 ? `, ${cellsWorse} worse` : '';
  return (
    <>
      <dt>In the matrix</dt>
      <dd>
        {cellsBetter} {cellsBetter === 1 ? 'cell' : 'cells'} better{worse}
      </dd>
    </>
  );
}

/** What is bought and fitted, and what comes out. */
function Takes({ change: { material } }: { change: RankedChange }) {
  const { rich } = useFormat();
  return (
    <details className="more">
      <summary>What it takes</summary>
      <ul className="advice-list">
        {material.adds.map((text) => (
          <li key={rich(text)}>{rich(text)}</li>
        ))}
        {material.takesOut.map((text) => (
          <li key={rich(text)}>Comes out: {rich(text)}</li>
        ))}
      </ul>
    </details>
  );
}
