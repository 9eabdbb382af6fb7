import type { ProjectIndex } from '../catalogue/lookup.ts';
import { indexProject } from '../catalogue/lookup.ts';
import type { Gate } from '../faultTree/types.ts';
import type { PathBudget } from '../links/types.ts';
import type { Item, Project, Subject } from '../model/project.ts';
import type { Grade, ServiceId } from '../model/services.ts';
import type { Names } from './components.ts';
import { componentFor } from './components.ts';
import type { Component } from './types.ts';

/** A success path as built: what it is for people, and the gate that is true when it is gone. */
export interface BuiltWay {
  readonly id: string;
  readonly serviceId: ServiceId;
  readonly label: string;
  readonly grade: Exclude<Grade, 'lost'>;
  readonly reason: string;
  readonly gate: string;
  /** The set it is a use of. */
  readonly itemId: string;
  readonly carried: boolean;
  /** Signal path it goes by, if it goes by one; its switches decide who has an antenna that two sets can use. */
  readonly path?: PathBudget;
  readonly emergencyAntennaId?: string;
  readonly subjects: readonly Subject[];
}

/** Why something aboard that is made for a service does not give it. */
export interface NoWay {
  readonly serviceId: ServiceId;
  readonly reason: string;
}

/** What the failure model is made from, and what it has become so far. Lives only while one project is assessed. */
export interface Build extends Names {
  readonly pathsOf: ReadonlyMap<string, readonly PathBudget[]>;
  readonly components: Map<string, Component>;
  readonly gates: Map<string, Gate>;
  readonly ways: BuiltWay[];
  readonly noWays: NoWay[];
}

/** Gate of a thing that cannot fail: `or` of nothing. */
export const NEVER = 'never';
/** Gate of a thing that is not there: `and` of nothing. */
export const ALWAYS = 'always';

/** Starts a build. Paths over anything that is to be removed do not count. */
export function startBuild(project: Project, paths: readonly PathBudget[]): Build {
  const index = indexProject(project);
  const pathsOf = new Map<string, PathBudget[]>();
  for (const path of paths) {
    if (!pathStands(index, path)) continue;
    const known = pathsOf.get(path.radioId);
    if (known) known.push(path);
    else pathsOf.set(path.radioId, [path]);
  }
  const gates = new Map<string, Gate>([
    [NEVER, { op: 'or', inputs: [] }],
    [ALWAYS, { op: 'and', inputs: [] }],
  ]);
  const feeds = new Map(project.feeds.map((feed) => [feed.id, feed]));
  const links = new Map(project.dataLinks.map((link) => [link.id, link]));
  return { project, index, feeds, links, pathsOf, components: new Map(), gates, ways: [], noWays: [] };
}

function pathStands(index: ProjectIndex, path: PathBudget): boolean {
  const itemIds = [path.radioId, path.antennaId, ...path.deviceIds];
  return itemIds.every((id) => stands(index.items.get(id))) && path.runIds.every((id) => stands(index.runs.get(id)));
}

/** Whether a thing counts: it is in the document and not marked for removal. */
export function stands(thing: { readonly status: Item['status'] } | undefined): boolean {
  return thing !== undefined && thing.status !== 'remove';
}

/** The component of a physical thing, made on first use: one node per thing, whoever asks. */
export function use(build: Build, kind: Subject['kind'], id: string): string {
  const key = `${kind}:${id}`;
  if (!build.components.has(key)) build.components.set(key, componentFor(build, { kind, id }));
  return key;
}

/** Adds a gate and gives its id back. */
export function addGate(build: Build, id: string, op: 'and' | 'or', inputs: readonly string[]): string {
  build.gates.set(id, { op, inputs });
  return id;
}

/** Adds a way that hangs on everything in `inputs`. */
export function addWay(build: Build, way: Omit<BuiltWay, 'gate'>, inputs: readonly string[]): void {
  build.ways.push({ ...way, gate: addGate(build, `way:${way.id}`, 'or', inputs) });
}
