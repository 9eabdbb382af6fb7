import { VERDICT_WORDS } from '../../../../core/report/sectionRulePacks.ts';
import { VERDICTS, type Verdict } from '../../../../core/rulePacks/types.ts';
import { VERDICT_CLASSES } from './VerdictSign.tsx';

/** How many rules of each verdict, each a switch for showing them. */
export function VerdictFilter({
  counts,
  shown,
  onShow,
}: {
  counts: Readonly<Record<Verdict, number>>;
  shown: ReadonlySet<Verdict>;
  onShow: (shown: ReadonlySet<Verdict>) => void;
}) {
  const turn = (verdict: Verdict): void => {
    const next = new Set(shown);
    if (!next.delete(verdict)) next.add(verdict);
    onShow(next);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a row of toggles, not a part of a form
    <div className="verdict-filter" role="group" aria-label="Verdicts shown">
      {VERDICTS.map((verdict) => {
        const { sign, words } = VERDICT_WORDS[verdict];
        return (
          <button
            key={verdict}
            type="button"
            className={`verdict-count ${VERDICT_CLASSES[verdict]}`}
            aria-pressed={shown.has(verdict)}
            onClick={() => turn(verdict)}
          >
            <span className="count">
              <span aria-hidden="true">{sign}</span> {counts[verdict]}
            </span>
            <span>{words}</span>
          </button>
        );
      })}
    </div>
  );
}
