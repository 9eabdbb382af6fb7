import type { Project } from '../../../../core/model/project.ts';
import { RULE_BASIS_WORDS } from '../../../../core/report/sectionRulePacks.ts';
import { subjectLabel } from '../../../../core/report/words.ts';
import type { PackRule, RuleResult } from '../../../../core/rulePacks/types.ts';
import { useAppStore } from '../../../store/context.ts';
import { useFormat } from '../../../ui/text.ts';
import { VerdictSign } from './VerdictSign.tsx';

const STRENGTH_WORDS: Readonly<Record<PackRule['strength'], string>> = {
  law: 'law for those it names',
  guide: 'an authority’s guidance',
  race: 'race safety rule',
};

/** One rule with its verdict, why, what it is about, and where it comes from. */
export function RuleEntry({ project, result }: { project: Project; result: RuleResult }) {
  const { rich } = useFormat();
  const { rule, verdict, because, subjects } = result;
  return (
    <li className="rule">
      <div className="rule-head">
        <span className="rule-title">{rule.title}</span>
        <VerdictSign verdict={verdict} />
      </div>
      <p className="small">{rich(because)}</p>
      {subjects.length > 0 ? <Subjects project={project} result={result} /> : null}
      <details className="rule-origin">
        <summary className="small soft">
          {rule.clause}; <Basis rule={rule} />
        </summary>
        <dl className="facts small">
          <dt>Edition</dt>
          <dd>{rule.edition}</dd>
          <dt>Whom it names</dt>
          <dd>
            {rule.appliesTo} <span className="soft">({STRENGTH_WORDS[rule.strength]})</span>
          </dd>
          <dt>Seen in</dt>
          <dd>{rule.source}</dd>
          <dt>Not on a drawing</dt>
          <dd>{rule.unseen}</dd>
        </dl>
      </details>
    </li>
  );
}

/** A rule that nobody looked up says so where it cannot be overlooked. */
function Basis({ rule }: { rule: PackRule }) {
  if (rule.basis === 'read') return <>{RULE_BASIS_WORDS.read}</>;
  return <span className="rule-doubt">{RULE_BASIS_WORDS[rule.basis]}</span>;
}

function Subjects({ project, result }: { project: Project; result: RuleResult }) {
  const store = useAppStore();
  return (
    <ul className="chip-list small" aria-label={`Things it is about: ${result.rule.title}`}>
      {result.subjects.map((subject) => (
        <li key={`${subject.kind}:${subject.id}`}>
          <button type="button" className="link" onClick={() => store.getState().select([subject])}>
            {subjectLabel(project, subject)}
          </button>
        </li>
      ))}
    </ul>
  );
}
