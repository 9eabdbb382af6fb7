import type { Rescue } from '../../../../core/advice/types.ts';
import type { ServiceId } from '../../../../core/model/services.ts';

/** Points that free the same services, told together. */
export interface RescueGroup {
  readonly serviceIds: readonly ServiceId[];
  readonly labels: readonly string[];
  /** The services had no way as drawn. */
  readonly isFirstWay: boolean;
}

/** Rescues by the services they free, those with most services first. */
export function rescueGroups(rescues: readonly Rescue[], labels: ReadonlyMap<string, string>): readonly RescueGroup[] {
  const groups = new Map<string, { serviceIds: readonly ServiceId[]; labels: string[]; isFirstWay: boolean }>();
  for (const { pointId, serviceIds } of rescues) {
    const isFirstWay = pointId.startsWith('lost:');
    const key = isFirstWay ? pointId : serviceIds.join();
    const group = groups.get(key) ?? { serviceIds, labels: [], isFirstWay };
    group.labels.push(labels.get(pointId) ?? pointId);
    groups.set(key, group);
  }
  return [...groups.values()].toSorted((a, b) => b.serviceIds.length - a.serviceIds.length);
}

/** `1 change tried`, `12 changes tried`. */
export const triedWords = (count: number): string => `${count} ${count === 1 ? 'change' : 'changes'} tried`;

/** `B7, F1, F2 and 3 more`. */
export function listed(labels: readonly string[], most: number): string {
  if (labels.length <= most) return labels.join(', ');
  return `${labels.slice(0, most).join(', ')} and ${labels.length - most} more`;
}
