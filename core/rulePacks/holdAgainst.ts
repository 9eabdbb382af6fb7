import { indexProject } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import type { Project } from '../model/project.ts';
import type { FeedResult } from '../power/types.ts';
import { startBuild } from '../redundancy/build.ts';
import { studyFailures } from '../redundancy/study.ts';
import type { Redundancy } from '../redundancy/types.ts';
import { doesNotApply, listInWords, verb } from './answers.ts';
import { PACKS } from './packs.ts';
import type { PackInput, PackResult, PackRule, RulePack, RuleResult, Verdict } from './types.ts';

/** What the stages before found about the same project. */
export interface PackStages {
  readonly paths: readonly PathBudget[];
  readonly feeds: readonly FeedResult[];
  readonly redundancy: Redundancy;
}

const cache = new WeakMap<Project, { readonly stages: PackStages; readonly results: readonly PackResult[] }>();

/**
 * The boat held against the rule packs that the project has switched on, in the order of `PACKS`; ids that no pack has are passed
 * over. Pure, and the same list for the same project and stages. It reads the drawing to each rule and says what it finds; it is no
 * verdict on the boat. What each rule looks at: docs/rule-packs.md.
 */
export function holdAgainst(project: Project, { paths, feeds, redundancy }: PackStages): readonly PackResult[] {
  const known = cache.get(project);
  const isSame =
    known && known.stages.paths === paths && known.stages.feeds === feeds && known.stages.redundancy === redundancy;
  if (isSame) return known.results;
  const input = packInput(project, { paths, feeds, redundancy });
  const results = PACKS.filter(({ id }) => project.settings.redundancy.rulePacks.includes(id)).map((pack) =>
    packResult(pack, input),
  );
  cache.set(project, { stages: { paths, feeds, redundancy }, results });
  return results;
}

/** What the rules look at. */
export function packInput(project: Project, { paths, feeds, redundancy }: PackStages): PackInput {
  const build = startBuild(project, paths);
  return {
    project,
    index: indexProject(project),
    seaArea: project.settings.redundancy.seaArea,
    paths: [...build.pathsOf.values()].flat(),
    feeds,
    redundancy,
    build,
    study: () => studyFailures(project, paths),
  };
}

function packResult(pack: RulePack, input: PackInput): PackResult {
  const results = pack.rules.map((rule) => holdAgainstRule(rule, input));
  const count = (verdict: Verdict): number => results.filter((result) => result.verdict === verdict).length;
  return {
    pack,
    results,
    counts: {
      met: count('met'),
      'not-met': count('not-met'),
      'cannot-tell': count('cannot-tell'),
      'does-not-apply': count('does-not-apply'),
    },
  };
}

/** One rule; one for other sea areas than the boat's says so and looks no further. */
export function holdAgainstRule(rule: PackRule, input: PackInput): RuleResult {
  if (rule.seaAreas && !rule.seaAreas.includes(input.seaArea)) {
    return {
      rule,
      ...doesNotApply(
        `For sea ${verb(rule.seaAreas, 'area', 'areas')} ${listInWords(rule.seaAreas)}; this boat is set for ${input.seaArea}.`,
      ),
    };
  }
  return { rule, ...rule.check(input) };
}
