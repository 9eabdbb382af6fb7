import { indexProject } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import type { FindingOverride, Project } from '../model/project.ts';
import type { FeedResult } from '../power/types.ts';
import type { GnssResult, HfResult, RangeResult, SatelliteResult, StrongSignal } from '../reach/types.ts';
import { startBuild } from '../redundancy/build.ts';
import type { Redundancy } from '../redundancy/types.ts';
import type { AuditInput, Remark, Rule } from './rule.ts';
import { sortItems } from './rule.ts';
import { RULES } from './rules.ts';
import type { Finding, Severity } from './types.ts';

/** What the stages before found. */
export interface StageResults {
  readonly paths: readonly PathBudget[];
  readonly ranges: readonly RangeResult[];
  readonly hf: readonly HfResult[];
  readonly satellites: readonly SatelliteResult[];
  readonly gnss: readonly GnssResult[];
  readonly strongSignals: readonly StrongSignal[];
  readonly feeds: readonly FeedResult[];
  readonly redundancy: Redundancy;
}

const SEVERITIES: readonly Severity[] = ['A', 'B', 'C'];

/**
 * The findings of a project, gravest first, then in the order of the rules; marks run A1, A2, B1 and so on. An overruled
 * finding keeps its place and its mark. Pure. What each rule looks for: docs/rules.md.
 */
export function audit(project: Project, results: StageResults): readonly Finding[] {
  const build = startBuild(project, results.paths);
  const paths = [...build.pathsOf.values()].flat().filter((path) => path.switchIds.length === 0);
  const index = indexProject(project);
  const input: AuditInput = { ...results, project, index, byKind: sortItems(project, index), paths, build };
  const overrides = new Map(project.findingOverrides.map((override) => [override.findingKey, override]));
  const found = RULES.flatMap((rule) => rule.check(input).map((remark) => ({ rule, remark })));
  return SEVERITIES.flatMap((severity) =>
    found
      .filter(({ rule, remark }) => (remark.severity ?? rule.severity) === severity)
      .map(({ rule, remark }, index) => findingOf(rule, remark, `${severity}${index + 1}`, overrides)),
  );
}

function findingOf(rule: Rule, remark: Remark, mark: string, overrides: ReadonlyMap<string, FindingOverride>): Finding {
  const key = `${rule.id}:${remark.subjects.map(({ id }) => id).join('+')}`;
  const override = overrides.get(key);
  return {
    key,
    ruleId: rule.id,
    severity: remark.severity ?? rule.severity,
    mark,
    title: remark.title,
    subjects: remark.subjects,
    measured: remark.measured,
    limit: remark.limit,
    authority: remark.authority ?? rule.authority,
    action: remark.action,
    overruled: override ? { reason: override.reason, by: override.by } : null,
  };
}
