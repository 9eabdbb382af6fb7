import type { Feed } from '../model/project.ts';
import type { Build } from './build.ts';
import { ALWAYS, addGate, NEVER, stands, use } from './build.ts';

/** Whether any DC feed into the item is drawn. */
export function hasDrawnSupply(build: Build, itemId: string): boolean {
  return feedsInto(build, itemId).length > 0;
}

/**
 * The gate that is true when an item has no ship's supply left: all of its feeds are gone. Two feeds are alternatives;
 * each hangs on its own conductor and fuse, on what it comes from, and on that thing's supply in turn, up to a battery.
 * A supply nobody has drawn is taken as good, for want of anything to say about it. A charger alone is no supply at sea.
 */
export function supplyGate(build: Build, itemId: string): string {
  return supplyOf(build, itemId, new Set()).gate;
}

interface Supply {
  readonly gate: string;
  /** A circle was cut on the way: the answer holds only for this way in, and must not be kept. */
  readonly cut: boolean;
}

function supplyOf(build: Build, itemId: string, above: ReadonlySet<string>): Supply {
  const id = `supply:${itemId}`;
  if (build.gates.has(id)) return { gate: id, cut: false };
  const feeds = feedsInto(build, itemId);
  if (feeds.length === 0) return { gate: NEVER, cut: false };
  const inside = new Set([...above, itemId]);
  const chains = feeds.map((feed) => feedChain(build, feed, inside));
  const cut = chains.some((chain) => chain.cut);
  const own = cut ? `${id}<${[...above].join('<')}` : id;
  const gate = addGate(
    build,
    own,
    'and',
    chains.map((chain) => chain.gate),
  );
  return { gate, cut };
}

function feedChain(build: Build, feed: Feed, inside: ReadonlySet<string>): Supply {
  const sourceId = feed.from.itemId;
  // Met again inside its own explanation: no help (docs/redundancy.md, circular supply).
  if (inside.has(sourceId)) return { gate: ALWAYS, cut: true };
  const part = build.index.effective.get(sourceId);
  const powerClass = part?.kind === 'power' ? part.powerClass : undefined;
  if (powerClass === 'charger') return { gate: ALWAYS, cut: false };
  const isBattery = powerClass === 'battery-bank' || powerClass === 'starter-battery';
  const upstream = isBattery ? { gate: NEVER, cut: false } : supplyOf(build, sourceId, inside);
  const inputs = [use(build, 'feed', feed.id), use(build, 'item', sourceId), upstream.gate];
  const id = upstream.cut ? `feed-chain:${feed.id}<${[...inside].join('<')}` : `feed-chain:${feed.id}`;
  return { gate: addGate(build, id, 'or', inputs), cut: upstream.cut };
}

function feedsInto(build: Build, itemId: string): readonly Feed[] {
  return (build.index.feedsInto.get(itemId) ?? []).filter(
    (feed) => stands(feed) && stands(build.index.items.get(feed.from.itemId)),
  );
}
