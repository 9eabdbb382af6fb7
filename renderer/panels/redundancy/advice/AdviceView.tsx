import { useRef, useState } from 'react';
import { Button, ProgressBar } from 'react-aria-components';
import type { Advice, AdviceProgress } from '../../../../core/advice/types.ts';
import { useApp, useAppStore } from '../../../store/context.ts';
import { ChangeCard, type MakeChange } from './ChangeCard.tsx';
import { PointList } from './PointList.tsx';
import { useAdvice } from './useAdvice.ts';
import { triedWords } from './words.ts';
import './advice.css';

/** Cards shown at first. */
const FIRST_CARDS = 5;

/** The changes that would free the boat of its single points of failure: each tried on the model, made by one press. */
export function AdviceView() {
  const store = useAppStore();
  const project = useApp((state) => state.project);
  const { advice, progress } = useAdvice(project);
  const top = useRef<HTMLHeadingElement>(null);
  const make: MakeChange = ({ candidate }) => {
    // The card that was pressed goes, so the focus has to be taken somewhere that stays.
    if (store.getState().edit(candidate.title, candidate.apply)) top.current?.focus();
  };
  return (
    <>
      <section className="panel-section">
        <h3 className="heading" ref={top} tabIndex={-1}>
          What would help most
        </h3>
        <p className="small soft">
          Each change was made to a copy of the boat and everything reckoned anew. First stands what frees most services
          of single points of failure, then what leaves fewest of them. Pairs may grow as single points go: what one
          failure did then takes two. Only the drawing is known, not cost, space or weight. Undo takes a change back.
        </p>
        {advice ? <Best advice={advice} onMake={make} /> : <Trying progress={progress} />}
      </section>
      {advice && advice.points.length > 0 ? (
        <section className="panel-section">
          <h3 className="heading">By single point of failure</h3>
          <p className="small soft">Open one to see what would free a service of it, best first.</p>
          <PointList points={advice.points} onMake={make} />
        </section>
      ) : null}
    </>
  );
}

function Trying({ progress }: { progress: AdviceProgress | null }) {
  const { done, total } = progress ?? { done: 0, total: 0 };
  const words = total === 0 ? 'Looking for changes to try' : `Trying changes: ${done} of ${total}`;
  return (
    <ProgressBar value={done} maxValue={Math.max(1, total)} valueLabel={words} aria-label={words}>
      {({ percentage }) => (
        <>
          <p className="small">{words}</p>
          <div className="advice-bar">
            <div className="advice-bar-done" style={{ width: `${percentage ?? 0}%` }} />
          </div>
        </>
      )}
    </ProgressBar>
  );
}

function Best({ advice, onMake }: { advice: Advice; onMake: MakeChange }) {
  const [isWhole, setIsWhole] = useState(false);
  const { best, tried, changes, points } = advice;
  const labels = new Map(points.map(({ pointId, label }) => [pointId, label]));
  if (best.length === 0) return <p className="small">{emptyWords(advice)}</p>;
  const shown = isWhole ? best : best.slice(0, FIRST_CARDS);
  return (
    <>
      <p className="small" role="status">
        {triedWords(tried)}, {changes.length} help{changes.length === 1 ? 's' : ''}. Of several ways to the same end the
        best is shown here.
      </p>
      {shown.map((change) => (
        <ChangeCard key={change.candidate.id} change={change} labels={labels} onMake={onMake} />
      ))}
      {best.length > FIRST_CARDS ? (
        <Button className="button" onPress={() => setIsWhole(!isWhole)}>
          {isWhole ? `Show the first ${FIRST_CARDS} only` : `Show all ${best.length}`}
        </Button>
      ) : null}
    </>
  );
}

function emptyWords({ points, tried }: Advice): string {
  if (points.length === 0) return 'No single thing takes a service away, so there is nothing here to remove.';
  if (tried === 0) {
    return 'There are single points of failure, but nothing on the drawing gave a change to try: below it says why.';
  }
  return `${triedWords(tried)}, and none frees a service of a single point: below it says why.`;
}
