import type { PartOf } from '../../model/part.ts';
import type { Feed, Item } from '../../model/project.ts';
import { isCounted, isDistribution } from '../../power/circuit.ts';
import type { PackInput } from '../types.ts';

/** A battery with its part. */
export interface Battery {
  readonly item: Item;
  readonly part: PartOf<'power'>;
  readonly isStarter: boolean;
}

/** What an item is fed from. */
export interface Sources {
  readonly batteries: readonly Battery[];
  /** A converter or inverter stands between: what is drawn behind it is not what leaves the battery. */
  readonly isConverted: boolean;
  /** No feed into the item is drawn. */
  readonly isUndrawn: boolean;
}

/** Batteries behind an item, over panels, breakers and fuses. */
export function sourcesOf(input: PackInput, itemId: string): Sources {
  const batteries = new Map<string, Battery>();
  const visited = new Set<string>();
  let isConverted = false;
  const visit = (id: string): void => {
    if (visited.has(id)) return;
    visited.add(id);
    for (const feed of countedInto(input, id)) {
      const sourceId = feed.from.itemId;
      const part = input.index.effective.get(sourceId);
      const battery = batteryAt(input, sourceId);
      if (battery) batteries.set(sourceId, battery);
      else if (isDistribution(part)) visit(sourceId);
      else if (part?.kind === 'power' && (part.powerClass === 'converter' || part.powerClass === 'inverter'))
        isConverted = true;
    }
  };
  visit(itemId);
  return { batteries: [...batteries.values()], isConverted, isUndrawn: countedInto(input, itemId).length === 0 };
}

/** Batteries with a way into an item that no other battery feeds: their current needs no panel or breaker of another. */
export function ownWayBatteries(input: PackInput, itemId: string): readonly Battery[] {
  const own = countedInto(input, itemId).flatMap(({ from }) => {
    const battery = batteryAt(input, from.itemId);
    if (battery) return [battery];
    if (!isDistribution(input.index.effective.get(from.itemId))) return [];
    const { batteries } = sourcesOf(input, from.itemId);
    return batteries.length === 1 ? batteries : [];
  });
  return [...new Map(own.map((battery) => [battery.item.id, battery])).values()];
}

const countedInto = ({ index }: PackInput, itemId: string): readonly Feed[] =>
  (index.feedsInto.get(itemId) ?? []).filter((feed) => isCounted(index, feed));

export const countedFrom = ({ index }: PackInput, itemId: string): readonly Feed[] =>
  (index.feedsFrom.get(itemId) ?? []).filter((feed) => isCounted(index, feed));

function batteryAt({ index }: PackInput, itemId: string): Battery | undefined {
  const item = index.items.get(itemId);
  const part = index.effective.get(itemId);
  if (!item || part?.kind !== 'power') return undefined;
  if (part.powerClass !== 'battery-bank' && part.powerClass !== 'starter-battery') return undefined;
  return { item, part, isStarter: part.powerClass === 'starter-battery' };
}

/** Chargers drawn onto a battery, directly or over breakers and fuses. */
export function chargersOf(input: PackInput, batteryId: string): readonly { item: Item; part: PartOf<'power'> }[] {
  const found: { item: Item; part: PartOf<'power'> }[] = [];
  const visited = new Set<string>();
  const visit = (id: string): void => {
    if (visited.has(id)) return;
    visited.add(id);
    for (const feed of countedInto(input, id)) {
      const item = input.index.items.get(feed.from.itemId);
      const part = input.index.effective.get(feed.from.itemId);
      if (item && part?.kind === 'power' && part.powerClass === 'charger') found.push({ item, part });
      else if (isDistribution(part)) visit(feed.from.itemId);
    }
  };
  visit(batteryId);
  return found;
}

/** Everything that hangs on a battery, beyond panels and breakers. */
export function loadsOf(input: PackInput, batteryId: string): readonly Item[] {
  const found = new Map<string, Item>();
  const visited = new Set<string>();
  const visit = (id: string): void => {
    if (visited.has(id)) return;
    visited.add(id);
    for (const feed of countedFrom(input, id)) {
      const item = input.index.items.get(feed.to.itemId);
      if (isDistribution(input.index.effective.get(feed.to.itemId))) visit(feed.to.itemId);
      else if (item) found.set(item.id, item);
    }
  };
  visit(batteryId);
  return [...found.values()];
}
