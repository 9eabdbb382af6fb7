import { readFileSync } from 'node:fs';
import { assess } from '../../../core/assess.ts';
import { parseProject } from '../../../core/document/load.ts';
import type { FaultModel } from '../../../core/faultTree/types.ts';
import type { Project } from '../../../core/model/project.ts';
import { studyFailures } from '../../../core/redundancy/study.ts';
import type { FailureStudy, Redundancy } from '../../../core/redundancy/types.ts';
import { readableTree } from '../../../core/treeDiagram/readableTree.ts';
import type { ReadableTree } from '../../../core/treeDiagram/types.ts';

export const DEMOS = ['brannoch-tern', 'pelluna', 'vessarine'] as const;

export function demo(name: (typeof DEMOS)[number]): Project {
  const loaded = parseProject(readFileSync(new URL(`../../../assets/demo/${name}.backstay`, import.meta.url), 'utf8'));
  if (!loaded.ok) throw new Error(`${name} does not load.`);
  return loaded.project;
}

export interface Studied {
  readonly study: FailureStudy;
  readonly redundancy: Redundancy;
  readonly trees: readonly ReadableTree[];
}

/** The trees of all services of a boat. */
export function treesOf(project: Project): Studied {
  const { paths, redundancy } = assess(project);
  const study = studyFailures(project, paths);
  return { study, redundancy, trees: redundancy.services.map((id) => readableTree(study, redundancy, id)) };
}

/** A study of a model alone, its top the voice service: all that a tree is made from. */
export function studyOf(model: FaultModel): { readonly study: FailureStudy; readonly redundancy: Redundancy } {
  const nothing = { components: [], ways: [], singlePoints: [], matrix: [], excluded: [], services: [] };
  const bare = { model, tops: new Map([['voice-fixed', 'service:voice-fixed']]), labels: new Map() };
  // A tree reads nothing else of a study.
  return { study: bare as unknown as FailureStudy, redundancy: nothing };
}

/** Whether a gate or event is down, straight from the gates: the plainest evaluation there is. */
export function isDownIn({ gates, causes }: FaultModel, top: string, down: ReadonlySet<string>): boolean {
  const hit = new Set(down);
  for (const cause of causes) if (down.has(cause.id)) for (const id of cause.hits) hit.add(id);
  const known = new Map<string, boolean>();
  const isDown = (id: string): boolean => {
    if (hit.has(id)) return true;
    const gate = gates.get(id);
    if (!gate) return false;
    const before = known.get(id);
    if (before !== undefined) return before;
    const states = gate.inputs.map(isDown);
    const count = states.filter((each) => each).length;
    const least = gate.op === 'and' ? states.length : gate.op === 'or' ? 1 : (gate.k ?? 0);
    known.set(id, count >= least);
    return count >= least;
  };
  return isDown(top);
}

/** What is down with causes put in: a tree is shown with everything that its causes take. */
export function withHits({ causes }: FaultModel, down: readonly string[]): ReadonlySet<string> {
  return new Set([...down, ...causes.filter(({ id }) => down.includes(id)).flatMap(({ hits }) => hits)]);
}
