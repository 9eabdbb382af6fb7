import { indexProject } from '../../../core/catalogue/lookup.ts';
import type { PathBudget } from '../../../core/links/types.ts';
import type { Project } from '../../../core/model/project.ts';
import { LIKE_STATION_ID } from '../../../core/reach/strongSignals.ts';
import type { StrongSignal } from '../../../core/reach/types.ts';
import { itemTag } from '../../../core/report/words.ts';
import { q, type RichText } from '../../../core/units/quantity.ts';
import { watts } from '../pathLoss/figures.ts';

type Limit = StrongSignal['limits'][number];

/** Another station at one power: how far off it must lie for each limit. */
export interface NearRow {
  readonly id: string;
  readonly name: RichText;
  readonly clearM: readonly (number | null)[];
}

/** Other stations by name, strongest first, against the limits that any of them has, in the order they come. */
export interface NearTable {
  readonly limits: readonly Limit[];
  readonly rows: readonly NearRow[];
}

/** What comes in at the receiver of one radio, by the path that is shown, and what it does itself to a boat near by. */
export function signalsInto(
  signals: readonly StrongSignal[],
  itemId: string,
  pathId: string | null,
): readonly StrongSignal[] {
  return signals.filter(
    ({ kind, fromId, toItemId, toPathId }) =>
      (toItemId === itemId && (pathId === null || toPathId === pathId)) ||
      (kind === 'near-station' && fromId === pathId),
  );
}

/** The near stations as a table: distance to keep, limit by limit. */
export function nearTable(project: Project, signals: readonly StrongSignal[]): NearTable {
  const near = signals.filter(({ kind }) => kind === 'near-station');
  const limits = new Map<string, Limit>();
  for (const { limits: each } of near)
    for (const limit of each) if (!limits.has(limit.key)) limits.set(limit.key, limit);
  const rows = near.map(({ id, fromId, toItemId, powerW, limits: own }) => ({
    id,
    name:
      toItemId === LIKE_STATION_ID
        ? ['your ', watts(powerW), ' at her receiver']
        : [`${sourceName(project, [], fromId)}, `, watts(powerW)],
    clearM: [...limits.keys()].map((key) => own.find((limit) => limit.key === key)?.clearM ?? null),
  }));
  return { limits: [...limits.values()], rows };
}

/** Own antennas, the one that comes nearest to a limit first; those too near for a level at the end. */
export function ownSignals(signals: readonly StrongSignal[]): readonly StrongSignal[] {
  const least = ({ limits }: StrongSignal): number =>
    Math.min(Number.POSITIVE_INFINITY, ...limits.flatMap(({ marginDb }) => (marginDb === null ? [] : [marginDb])));
  return signals.filter(({ kind }) => kind === 'own-antenna').toSorted((a, b) => least(a) - least(b));
}

/** A station, a set aboard, or a path of one, by name. */
export function sourceName(project: Project, paths: readonly PathBudget[], fromId: string): string {
  if (fromId === LIKE_STATION_ID) return 'a boat like yours';
  const station = project.stations.find(({ id }) => id === fromId);
  if (station) return station.name;
  const path = paths.find(({ id }) => id === fromId);
  if (path) return `${itemTag(project, path.radioId)} by ${itemTag(project, path.antennaId)}`;
  return indexProject(project).items.has(fromId) ? itemTag(project, fromId) : fromId;
}

/** A distance to keep: metres near by, miles or kilometres farther off. */
export const clearWords = (clearM: number): RichText => [clearM < 1000 ? q(clearM, 'm', 0) : q(clearM / 1000, 'km')];

/** Whether a limit is kept, in words with its sign. */
export function marginWords(marginDb: number): { readonly isKept: boolean; readonly text: RichText } {
  const isKept = marginDb >= 0;
  return { isKept, text: [isKept ? '✓ kept by ' : '✕ exceeded by ', q(Math.abs(marginDb), 'dB', 0)] };
}
