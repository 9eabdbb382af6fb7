import { useDeferredValue, useState } from 'react';
import { assess } from '../../../../core/assess.ts';
import { holdAgainst } from '../../../../core/rulePacks/holdAgainst.ts';
import { STANDING } from '../../../../core/rulePacks/packs.ts';
import { type PackResult, VERDICTS, type Verdict } from '../../../../core/rulePacks/types.ts';
import { useApp } from '../../../store/context.ts';
import { shownProject } from '../../../store/store.ts';
import { PackSection } from './PackSection.tsx';
import { PackSwitches } from './PackSwitches.tsx';
import { VerdictFilter } from './VerdictFilter.tsx';
import './rules.css';

const SHOWN_AT_FIRST: ReadonlySet<Verdict> = new Set(['met', 'not-met', 'cannot-tell']);

/** The boat held against the rule packs that are switched on: what is met, what is not, and what no drawing can tell. */
export function RulePacksView() {
  // The failure study behind the answers is dear: while something is dragged they may lag behind.
  const current = useApp(shownProject);
  const project = useDeferredValue(current);
  const [shown, setShown] = useState(SHOWN_AT_FIRST);
  const results = holdAgainst(project, assess(project));
  return (
    <>
      <section className="panel-section">
        <h3 className="heading">Held against rule packs</h3>
        <p className="note">{STANDING}</p>
        {results.length > 0 ? (
          <VerdictFilter counts={totals(results)} shown={shown} onShow={setShown} />
        ) : (
          <p className="small">
            No pack is on. Tick those that the boat’s use or her race asks about; each of their rules then says whether
            the drawing meets it, and why.
          </p>
        )}
        <PackSwitches project={current} />
      </section>
      {results.map((result) => (
        <PackSection key={result.pack.id} project={project} result={result} shown={shown} />
      ))}
    </>
  );
}

function totals(results: readonly PackResult[]): Readonly<Record<Verdict, number>> {
  const sum = { met: 0, 'not-met': 0, 'cannot-tell': 0, 'does-not-apply': 0 };
  for (const { counts } of results) for (const verdict of VERDICTS) sum[verdict] += counts[verdict];
  return sum;
}
