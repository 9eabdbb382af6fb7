import { Button } from 'react-aria-components';
import type { RangeExplanation, UncertaintyShare } from '../../../core/reach/types.ts';
import { useAppStore } from '../../store/context.ts';
import { useFormat } from '../../ui/text.ts';
import { percent } from '../pathLoss/figures.ts';

const SHOWN = 6;

/** Who owns the width of the band, largest first. */
export function UncertaintyBars({ explained: { bandDb, uncertainty } }: { explained: RangeExplanation }) {
  const { quantity } = useFormat();
  const shown = uncertainty.filter(({ toleranceDb }) => toleranceDb > 0).slice(0, SHOWN);
  if (shown.length === 0) return null;
  return (
    <div className="stack">
      <h4 className="heading">What makes the band wide</h4>
      <p className="small soft">
        All tolerances together, as the root of the sum of their squares: ± {quantity(bandDb, 'dB', 1)}.
      </p>
      <ul className="shares">
        {shown.map((share) => (
          <Share key={share.key} share={share} />
        ))}
      </ul>
    </div>
  );
}

function Share({ share: { label, subject, toleranceDb, sharePercent } }: { share: UncertaintyShare }) {
  const store = useAppStore();
  const { rich, quantity } = useFormat();
  return (
    <li>
      <span className="share-name">
        {subject ? (
          <Button className="button link small" onPress={() => store.getState().select([subject])}>
            {rich(label)}
          </Button>
        ) : (
          rich(label)
        )}
      </span>
      <span className="share-bar" aria-hidden="true">
        <span style={{ width: `${Math.max(1, sharePercent)}%` }} />
      </span>
      <span className="num">
        {rich([percent(sharePercent)])} <span className="soft">± {quantity(toleranceDb, 'dB', 1)}</span>
      </span>
    </li>
  );
}
