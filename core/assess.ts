import { audit } from './audit/audit.ts';
import type { Finding } from './audit/types.ts';
import { budgetPaths } from './links/budget.ts';
import type { PathBudget } from './links/types.ts';
import type { Alternative, Project } from './model/project.ts';
import { assessFeeds } from './power/feeds.ts';
import type { FeedResult } from './power/types.ts';
import { assessGnss } from './reach/gnss.ts';
import { solveHf } from './reach/hf.ts';
import { solveRanges } from './reach/ranges.ts';
import { assessSatellites } from './reach/satellite.ts';
import { findStrongSignals } from './reach/strongSignals.ts';
import type { GnssResult, HfResult, RangeResult, SatelliteResult, StrongSignal } from './reach/types.ts';
import { assessRedundancy } from './redundancy/redundancy.ts';
import type { Redundancy } from './redundancy/types.ts';

/** Everything the engine says about one project. */
export interface Assessment {
  readonly paths: readonly PathBudget[];
  readonly ranges: readonly RangeResult[];
  readonly hf: readonly HfResult[];
  readonly satellites: readonly SatelliteResult[];
  readonly gnss: readonly GnssResult[];
  readonly strongSignals: readonly StrongSignal[];
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
  const hf = solveHf(project, paths);
  const satellites = assessSatellites(project, paths);
  const gnss = assessGnss(project, paths);
  const strongSignals = findStrongSignals(project, paths);
  const feeds = assessFeeds(project);
  const redundancy = assessRedundancy(project, { paths, ranges });
  const findings = audit(project, { paths, ranges, hf, satellites, gnss, strongSignals, feeds, redundancy });
  const assessment: Assessment = { paths, ranges, hf, satellites, gnss, strongSignals, feeds, redundancy, findings };
  cache.set(project, assessment);
  return assessment;
}

const alternatives = new WeakMap<Alternative, Project>();

/**
 * The assessment of another layout of the same boat. The project made for it is kept while boat, parts and settings stay
 * what they were, so that editing the current layout costs the others nothing.
 */
export function assessAlternative(project: Project, alternative: Alternative): Assessment {
  const { items, runs, feeds, dataLinks, name } = alternative;
  const made: Project = { ...project, layoutName: name, items, runs, feeds, dataLinks, alternatives: [] };
  const known = alternatives.get(alternative);
  const isSame =
    known &&
    (Object.keys(made) as (keyof Project)[]).every((key) => key === 'alternatives' || made[key] === known[key]);
  if (!isSame) alternatives.set(alternative, made);
  return assess(isSame ? known : made);
}
