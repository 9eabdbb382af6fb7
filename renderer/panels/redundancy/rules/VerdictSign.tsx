import { VERDICT_WORDS } from '../../../../core/report/sectionRulePacks.ts';
import type { Verdict } from '../../../../core/rulePacks/types.ts';

/** Colour class of a verdict; the sign and the word say it without. */
export const VERDICT_CLASSES: Readonly<Record<Verdict, string>> = {
  met: 'grade--full',
  'not-met': 'grade--lost',
  'cannot-tell': 'grade--reduced',
  'does-not-apply': 'verdict--idle',
};

/** A verdict by sign and word. */
export function VerdictSign({ verdict }: { verdict: Verdict }) {
  const { sign, words } = VERDICT_WORDS[verdict];
  return (
    <span className={`grade verdict ${VERDICT_CLASSES[verdict]}`}>
      <span aria-hidden="true">{sign}</span> {words}
    </span>
  );
}
