import type { ProjectIndex } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import type { Part, PartKind, PartOf } from '../model/part.ts';
import type { Item, Project, Subject } from '../model/project.ts';
import type { FeedResult } from '../power/types.ts';
import type { GnssResult, HfResult, RangeResult, SatelliteResult, StrongSignal } from '../reach/types.ts';
import type { Build } from '../redundancy/build.ts';
import { stands } from '../redundancy/build.ts';
import type { Redundancy } from '../redundancy/types.ts';
import type { RichText } from '../units/quantity.ts';
import type { Authority, Severity } from './types.ts';

/** What the stages before found; everything a rule may look at. */
export interface AuditInput {
  readonly project: Project;
  readonly index: ProjectIndex;
  readonly byKind: ByKind;
  /** Paths that are ready: nothing on them is to be removed, no switch stands otherwise. */
  readonly paths: readonly PathBudget[];
  readonly ranges: readonly RangeResult[];
  readonly hf: readonly HfResult[];
  readonly satellites: readonly SatelliteResult[];
  readonly gnss: readonly GnssResult[];
  readonly strongSignals: readonly StrongSignal[];
  readonly feeds: readonly FeedResult[];
  readonly redundancy: Redundancy;
  /** A failure build, for what the redundancy stage knows about fixes and supplies. */
  readonly build: Build;
}

/** A finding before it has a key and a mark. Severity and authority are the rule's own where not given. */
export interface Remark {
  readonly subjects: readonly Subject[];
  readonly title: string;
  readonly measured: RichText;
  readonly limit: RichText;
  readonly action: RichText;
  readonly severity?: Severity;
  readonly authority?: Authority;
}

/** One rule: what it looks for in one sentence, how grave a breach is, whose rule it is, and the check itself. */
export interface Rule {
  readonly id: string;
  readonly summary: string;
  readonly severity: Severity;
  readonly authority: Authority;
  readonly check: (input: AuditInput) => readonly Remark[];
}

/** An item with its part, overrides applied. */
export type Placed<K extends PartKind> = readonly [Item, PartOf<K>];

type ByKind = { readonly [K in PartKind]?: Placed<K>[] };

/** Items that stand, by the kind of their part. */
export function sortItems(project: Project, index: ProjectIndex): ByKind {
  const sorted: Partial<Record<PartKind, (readonly [Item, Part])[]>> = {};
  for (const item of project.items) {
    const part = index.effective.get(item.id);
    if (!part || !stands(item)) continue;
    const known = sorted[part.kind];
    if (known) known.push([item, part]);
    else sorted[part.kind] = [[item, part]];
  }
  // Each list was filled under its part's own kind.
  return sorted as ByKind;
}

/** Items that stand and whose part is of one kind, with that part. */
export function itemsOf<K extends PartKind>(input: AuditInput, kind: K): readonly Placed<K>[] {
  return input.byKind[kind] ?? [];
}

export function itemSubject(id: string): Subject {
  return { kind: 'item', id };
}

export function runSubject(id: string): Subject {
  return { kind: 'run', id };
}

/** Designation of an item, its id where it is unknown. */
export function tagOf(input: AuditInput, itemId: string): string {
  return input.index.items.get(itemId)?.tag ?? itemId;
}

export function runNumber(input: AuditInput, runId: string): string {
  return input.index.runs.get(runId)?.number ?? runId;
}

/** `A`, `A and B`, `A, B and C`. */
export function listInWords(names: readonly string[]): string {
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** Straight distance between two points of the boat, m. */
export function distanceM(a: Item['position'], b: Item['position']): number {
  return Math.hypot(a.xM - b.xM, a.yM - b.yM, a.zM - b.zM);
}

/** Antennas of paths in the marine VHF band, each once, with a path that reaches it. */
export function vhfBandAntennas(input: AuditInput): ReadonlyMap<string, readonly PathBudget[]> {
  const found = new Map<string, PathBudget[]>();
  for (const path of input.paths) {
    if (path.service !== 'vhf-voice' && path.service !== 'ais') continue;
    const known = found.get(path.antennaId);
    if (known) known.push(path);
    else found.set(path.antennaId, [path]);
  }
  return found;
}
