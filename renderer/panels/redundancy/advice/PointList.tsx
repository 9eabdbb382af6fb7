import { Button } from 'react-aria-components';
import type { PointAdvice, RankedChange } from '../../../../core/advice/types.ts';
import { useAppStore } from '../../../store/context.ts';
import type { MakeChange } from './ChangeCard.tsx';
import { ServiceChips } from './ServiceChips.tsx';

/** Changes shown for one point; the rest are said to be there. */
const MOST_CHANGES = 4;

/** Every single point of failure with the changes that free a service of it, or why there are none. */
export function PointList({ points, onMake }: { points: readonly PointAdvice[]; onMake: MakeChange }) {
  return (
    <ul className="advice-points">
      {points.map((point) => (
        <li key={point.pointId}>
          <PointRow point={point} onMake={onMake} />
        </li>
      ))}
    </ul>
  );
}

function PointRow({ point, onMake }: { point: PointAdvice; onMake: MakeChange }) {
  const { changes, serviceIds, why } = point;
  const rest = changes.length - MOST_CHANGES;
  return (
    <details className="more advice-point">
      <summary>
        <span className="advice-point-name">{point.label}</span>
        <ServiceChips serviceIds={serviceIds} />
        <span className="soft advice-count">{countWords(changes.length)}</span>
      </summary>
      <Where point={point} />
      {why === null ? (
        <ol className="advice-changes">
          {changes.slice(0, MOST_CHANGES).map((change) => (
            <ChangeRow key={change.candidate.id} change={change} pointId={point.pointId} onMake={onMake} />
          ))}
        </ol>
      ) : (
        <p className="small">{why}</p>
      )}
      {rest > 0 ? <p className="small soft">{rest} more that help less, or are another way to the same.</p> : null}
    </details>
  );
}

function countWords(count: number): string {
  if (count === 0) return 'none';
  return count === 1 ? '1 change' : `${count} changes`;
}

function Where({ point: { subject, label } }: { point: PointAdvice }) {
  const store = useAppStore();
  if (subject === null) return null;
  return (
    <Button className="button link small" onPress={() => store.getState().select([subject])}>
      Show {label} on the drawing
    </Button>
  );
}

function ChangeRow({ change, pointId, onMake }: { change: RankedChange; pointId: string; onMake: MakeChange }) {
  const { candidate, effect } = change;
  const freed = effect.rescues.find((rescue) => rescue.pointId === pointId)?.serviceIds ?? [];
  return (
    <li>
      <p>
        {candidate.title} <ServiceChips serviceIds={freed} />
      </p>
      {effect.worsens.map((sentence) => (
        <p key={sentence} className="small soft">
          Gets worse: {sentence}
        </p>
      ))}
      <p className="small soft">Mind: {candidate.cautions.join(' ')}</p>
      <Button className="button" aria-label={`Make this change: ${candidate.title}`} onPress={() => onMake(change)}>
        Make this change
      </Button>
    </li>
  );
}
