import { audit } from './audit/audit.ts';
import type { Finding } from './audit/types.ts';
import { budgetPaths } from './links/budget.ts';
import { solveRanges } from './links/ranges.ts';
import type { PathBudget, RangeResult } from './links/types.ts';
import type { Project } from './model/project.ts';
import { assessFeeds } from './power/feeds.ts';
import type { FeedResult } from './power/types.ts';
import { assessRedundancy } from './redundancy/redundancy.ts';
import type { Redundancy } from './redundancy/types.ts';

/** Everything the engine says about one project. */
export interface Assessment {
  readonly paths: readonly PathBudget[];
  readonly ranges: readonly RangeResult[];
  readonly feeds: readonly FeedResult[];
  readonly redundancy: Redundancy;
  readonly findings: readonly Finding[];
}

const cache = new WeakMap<Project, Assessment>();

/**
 * The face of the engine: budgets, ranges, feeds, redundancy and findings of a valid project. Pure; the same project
 * object gives the same assessment object, so a project must never be changed in place.
 */
export function assess(project: Project): Assessment {
  const known = cache.get(project);
  if (known) return known;
  const paths = budgetPaths(project);
  const ranges = solveRanges(project, paths);
  const feeds = assessFeeds(project);
  const redundancy = assessRedundancy(project, { paths, ranges });
  const findings = audit(project, { paths, ranges, feeds, redundancy });
  const assessment: Assessment = { paths, ranges, feeds, redundancy, findings };
  cache.set(project, assessment);
  return assessment;
}
