import type { Project } from '../../../../core/model/project.ts';
import { countWords } from '../../../../core/report/sectionRulePacks.ts';
import type { PackResult, RuleResult, Verdict } from '../../../../core/rulePacks/types.ts';
import { RuleEntry } from './RuleEntry.tsx';

/** One pack: whose it is, how its rules stand, and the rules under their themes. */
export function PackSection({
  project,
  result,
  shown,
}: {
  project: Project;
  result: PackResult;
  shown: ReadonlySet<Verdict>;
}) {
  const { pack, results } = result;
  const themes = byTheme(results.filter(({ verdict }) => shown.has(verdict)));
  const hidden = results.filter(({ verdict }) => !shown.has(verdict)).length;
  return (
    <section className="panel-section pack" aria-label={pack.name}>
      <h3 className="heading">{pack.name}</h3>
      <p className="small soft">
        {pack.edition}. {pack.binds}
      </p>
      <p className="small">
        {countWords(result)}
        {hidden > 0 ? <span className="soft"> ({hidden} hidden)</span> : null}
      </p>
      {themes.map(([theme, rules]) => (
        <div key={theme} className="pack-theme">
          <h4 className="heading">{theme}</h4>
          <ul className="plain-list rules">
            {rules.map((rule) => (
              <RuleEntry key={rule.rule.id} project={project} result={rule} />
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}

function byTheme(results: readonly RuleResult[]): readonly (readonly [string, readonly RuleResult[]])[] {
  const themes = new Map<string, RuleResult[]>();
  for (const result of results) {
    const known = themes.get(result.rule.theme);
    if (known) known.push(result);
    else themes.set(result.rule.theme, [result]);
  }
  return [...themes];
}
