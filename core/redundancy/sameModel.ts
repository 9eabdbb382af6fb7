import type { BuiltWay } from './build.ts';
import type { RedundancyModel } from './model.ts';
import type { FailureEvent } from './types.ts';

/** A failure model with the events it is tried against: all that the results are read from. */
export interface Posed {
  readonly model: RedundancyModel;
  readonly events: readonly FailureEvent[];
  /** Left out by the user. */
  readonly excluded: readonly FailureEvent[];
}

/**
 * Whether two models must give the same results, so that the old ones can stand: same components, gates, ways with their
 * grades, events, and facts of the items. Most steps of a drag change no more than a position, and so pass.
 */
export function isSameModel(a: Posed, b: Posed): boolean {
  const [one, other] = [a.model.build, b.model.build];
  return (
    sameList(a.model.services, b.model.services) &&
    sameMap(one.components, other.components, (x, y) => x.label === y.label && x.kind === y.kind) &&
    sameMap(one.gates, other.gates, (x, y) => x.op === y.op && sameList(x.inputs, y.inputs)) &&
    sameList(one.ways, other.ways, sameWay) &&
    sameList(one.noWays, other.noWays, (x, y) => x.serviceId === y.serviceId && x.reason === y.reason) &&
    sameList(a.events, b.events, sameEvent) &&
    sameList(a.excluded, b.excluded, sameEvent) &&
    sameList(one.project.items, other.project.items, (x, y) => x.id === y.id && x.facts === y.facts)
  );
}

function sameEvent(x: FailureEvent, y: FailureEvent): boolean {
  return (
    x.id === y.id &&
    x.label === y.label &&
    x.note === y.note &&
    x.water?.levelZM === y.water?.levelZM &&
    sameList(x.downIds, y.downIds)
  );
}

function sameWay(x: BuiltWay, y: BuiltWay): boolean {
  return (
    x.id === y.id &&
    x.grade === y.grade &&
    x.reason === y.reason &&
    x.label === y.label &&
    sameList(x.subjects, y.subjects, (s, t) => s.id === t.id && s.kind === t.kind) &&
    x.path?.id === y.path?.id &&
    sameList(x.path?.switchIds ?? [], y.path?.switchIds ?? []) &&
    sameList(x.path?.deviceIds ?? [], y.path?.deviceIds ?? [])
  );
}

function sameList<T>(a: readonly T[], b: readonly T[], same: (x: T, y: T) => boolean = Object.is): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) {
    // Both indices are inside lists of one length.
    if (!same(a[i] as T, b[i] as T)) return false;
  }
  return true;
}

function sameMap<T>(a: ReadonlyMap<string, T>, b: ReadonlyMap<string, T>, same: (x: T, y: T) => boolean): boolean {
  if (a.size !== b.size) return false;
  const others = b.entries();
  for (const [key, value] of a) {
    const other = others.next().value;
    if (!other || other[0] !== key || !same(value, other[1])) return false;
  }
  return true;
}
