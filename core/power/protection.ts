import type { ProjectIndex } from '../catalogue/lookup.ts';
import type { PartOf } from '../model/part.ts';
import type { Feed } from '../model/project.ts';
import { chainTo } from './circuit.ts';
import type { FeedProtection } from './types.ts';

/**
 * How far along the wire from its source a fuse or breaker may sit, m. 33 CFR 183.455(b) says 7 in (178 mm); ISO 10133
 * says 200 mm (from memory), the figure taken here. Sheathed or enclosed wire is allowed more by some (40 in by the same
 * section, 72 in or 1.8 m from a battery post by trade standards); the drawing does not know the sheath, so the short
 * distance is used and the finding can be overruled.
 */
export const MAX_FUSE_DISTANCE_M = 0.2;
/** Largest rating over ampacity below 50 V (33 CFR 183.455(c)); at 50 V and above the ampacity itself. */
const LOW_VOLTAGE_SHARE = 1.5;
const LOW_VOLTAGE_V = 50;

type PowerPart = PartOf<'power'>;

interface Device {
  readonly ratingA: number | null;
  readonly fromSourceM: number;
}

/** What protects one feed, and whether that is right for its conductor, its place and its load. */
export function protectionOf(
  index: ProjectIndex,
  feed: Feed,
  ampacityA: number,
  voltageV: number,
  sustainedA: number,
): FeedProtection {
  const largestRatingA = voltageV < LOW_VOLTAGE_V ? LOW_VOLTAGE_SHARE * ampacityA : ampacityA;
  const device = deviceOf(index, feed);
  const common = { ampacityA, largestRatingA };
  if (!device) return { ...common, present: false, ratingA: null, fromSourceM: null, verdict: 'missing' };
  const { ratingA, fromSourceM } = device;
  const verdict = verdictOf(device, largestRatingA, sustainedA);
  return { ...common, present: true, ratingA, fromSourceM, verdict };
}

function verdictOf(device: Device, largestRatingA: number, sustainedA: number): FeedProtection['verdict'] {
  const { ratingA, fromSourceM } = device;
  if (fromSourceM > MAX_FUSE_DISTANCE_M) return 'too-far';
  if (ratingA === null) return 'good';
  if (ratingA > largestRatingA) return 'too-large';
  return ratingA < sustainedA ? 'too-small-for-load' : 'good';
}

/**
 * The device that opens this wire: its own, or the next one upstream of a panel that has no breakers of its own and so
 * hands on whatever opens the wire that feeds it.
 */
function deviceOf(index: ProjectIndex, feed: Feed): Device | null {
  for (const link of [...chainTo(index, feed)].reverse()) {
    const device = ownDevice(index, link);
    if (device) return link === feed ? device : { ratingA: device.ratingA, fromSourceM: 0 };
    if (powerPartAt(index, link.from.itemId)?.powerClass !== 'panel') return null;
  }
  return null;
}

/**
 * A fuse in the feed, a breaker, fuse holder or rated panel it starts from, or a breaker it ends at (as far from the
 * source as the wire is long). An inverter or converter limits its own output.
 */
function ownDevice(index: ProjectIndex, feed: Feed): Device | null {
  if (feed.fuse) return { ratingA: feed.fuse.ratingA, fromSourceM: feed.fuse.fromSourceM };
  const source = powerPartAt(index, feed.from.itemId);
  if (source && isBreaker(source)) return { ratingA: ratingOf(source), fromSourceM: 0 };
  if (source?.powerClass === 'inverter' || source?.powerClass === 'converter') return { ratingA: null, fromSourceM: 0 };
  if (source?.powerClass === 'panel' && ratingOf(source) !== null) return { ratingA: ratingOf(source), fromSourceM: 0 };
  const target = powerPartAt(index, feed.to.itemId);
  return target && isBreaker(target) ? { ratingA: ratingOf(target), fromSourceM: feed.lengthM } : null;
}

function powerPartAt(index: ProjectIndex, itemId: string): PowerPart | null {
  const part = index.effective.get(itemId);
  return part?.kind === 'power' ? part : null;
}

const isBreaker = (part: PowerPart): boolean => part.powerClass === 'breaker' || part.powerClass === 'fuse-holder';
const ratingOf = (part: PowerPart): number | null => part.figures.ratingA?.value ?? null;
