import type { RichText } from '../../../core/units/quantity.ts';
import { useFormat } from '../../ui/text.ts';
import { firstSentence } from './linkFigures.ts';

/** The verdict: its first sentence large, with the sign, and what is behind it below. */
export function Verdict({ text, isGood }: { text: RichText; isGood: boolean }) {
  const { rich } = useFormat();
  const [first, rest] = firstSentence(text);
  return (
    <div className="outcome">
      <p className="outcome-text">
        {rich(first)} <Sign isGood={isGood} />
      </p>
      {rest.length === 0 ? null : <p>{rich(rest)}</p>}
    </div>
  );
}

function Sign({ isGood }: { isGood: boolean }) {
  return isGood ? (
    <span className="grade grade--full">✓ Serves</span>
  ) : (
    <span className="grade grade--lost">✕ Look at this</span>
  );
}
