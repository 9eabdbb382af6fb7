import type { ProjectIndex } from '../catalogue/lookup.ts';
import type { Part } from '../model/part.ts';
import type { Feed } from '../model/project.ts';

/** Current a load draws, A. */
export interface LoadCurrents {
  /** While it transmits, or its steady current where it never does: what the drop is reckoned with. */
  readonly peakA: number;
  /** While others transmit. */
  readonly restA: number;
  /** What a fuse feels: AIS bursts of 27 ms are averaged, other transmissions are not. */
  readonly sustainedA: number;
}

/** Share of time an AIS set transmits at the most: 1800 pulses of 26.6 ms an hour (class A installation manual). */
const AIS_TRANSMIT_SHARE = (1800 * 0.0266) / 3600;
const NO_LOAD: LoadCurrents = { peakA: 0, restA: 0, sustainedA: 0 };

/** Currents of a part as its figures state them; nothing for a part that states none. */
export function loadCurrents(part: Part | undefined): LoadCurrents {
  if (part?.kind === 'radio') {
    const { txCurrentA, rxCurrentA } = part.figures;
    const restA = rxCurrentA.value;
    const peakA = Math.max(txCurrentA.value, restA);
    const isAis = part.radioClass.startsWith('ais-');
    return { peakA, restA, sustainedA: isAis ? restA + AIS_TRANSMIT_SHARE * (peakA - restA) : peakA };
  }
  if (part?.kind === 'position-source') return steady(part.figures.currentA.value);
  if (part?.kind === 'equipment' || part?.kind === 'inline') return steady(part.figures.currentA?.value ?? 0);
  return NO_LOAD;
}

const steady = (currentA: number): LoadCurrents => ({ peakA: currentA, restA: currentA, sustainedA: currentA });

/** Power things current only passes through on its way from the source. */
export function isDistribution(part: Part | undefined): boolean {
  return part?.kind === 'power' && ['panel', 'breaker', 'fuse-holder'].includes(part.powerClass);
}

/** Feeds from the source down to and including this one, source first; ends at the first source or where nothing feeds. */
export function chainTo(index: ProjectIndex, feed: Feed): readonly Feed[] {
  const chain: Feed[] = [feed];
  const visited = new Set<string>([feed.to.itemId]);
  let at = feed.from.itemId;
  while (!visited.has(at) && isDistribution(index.effective.get(at))) {
    visited.add(at);
    const upstream = (index.feedsInto.get(at) ?? []).find((candidate) => isCounted(index, candidate));
    if (!upstream) break;
    chain.unshift(upstream);
    at = upstream.from.itemId;
  }
  return chain;
}

/** What hangs on a feed, summed up. */
export interface Behind {
  /** Sum of all loads at rest, A. */
  readonly restA: number;
  /** What the transmission that adds most adds, A. */
  readonly transmitExtraA: number;
  /** The same as a fuse feels it, A. */
  readonly sustainedExtraA: number;
}

/** Share of its input an inverter or converter hands on. Common practice, no source. */
const CONVERSION_EFFICIENCY = 0.85;

/**
 * The loads a feed serves: the item at its end, or whatever hangs on it beyond panels and breakers. What hangs on an
 * inverter or converter counts by the power it takes from the supply in front.
 * @param voltageV of the supply this feed comes from
 */
export function behindFeed(index: ProjectIndex, feed: Feed, voltageV: number): Behind {
  const loads: LoadCurrents[] = [];
  const visited = new Set<string>();
  const visit = (itemId: string, inputV: number, factor: number): void => {
    if (visited.has(itemId)) return;
    visited.add(itemId);
    const part = index.effective.get(itemId);
    const outputV = convertedV(part);
    if (outputV === null && !isDistribution(part)) {
      loads.push(scaled(loadCurrents(part), factor));
      return;
    }
    const [nextV, nextFactor] =
      outputV === null ? [inputV, factor] : [outputV, (factor * outputV) / inputV / CONVERSION_EFFICIENCY];
    for (const next of index.feedsFrom.get(itemId) ?? []) {
      if (isCounted(index, next)) visit(next.to.itemId, nextV, nextFactor);
    }
  };
  visit(feed.to.itemId, voltageV, 1);
  return {
    restA: loads.reduce((sum, load) => sum + load.restA, 0),
    transmitExtraA: Math.max(0, ...loads.map((load) => load.peakA - load.restA)),
    sustainedExtraA: Math.max(0, ...loads.map((load) => load.sustainedA - load.restA)),
  };
}

/** Output voltage of an inverter or converter; null for anything else, and where none is stated. */
function convertedV(part: Part | undefined): number | null {
  const isConverter = part?.kind === 'power' && (part.powerClass === 'inverter' || part.powerClass === 'converter');
  return isConverter && part.figures.voltageV.value > 0 ? part.figures.voltageV.value : null;
}

const scaled = (load: LoadCurrents, factor: number): LoadCurrents => ({
  peakA: load.peakA * factor,
  restA: load.restA * factor,
  sustainedA: load.sustainedA * factor,
});

/** Whether a feed is in place: neither it nor what it joins is to be removed. */
export function isCounted(index: ProjectIndex, feed: Feed): boolean {
  const ends = [index.items.get(feed.from.itemId), index.items.get(feed.to.itemId)];
  return feed.status !== 'remove' && ends.every((item) => item !== undefined && item.status !== 'remove');
}
