import { indexProject, type ProjectIndex } from '../catalogue/lookup.ts';
import type { PartOf } from '../model/part.ts';
import type { Feed, Project } from '../model/project.ts';
import { type Behind, behindFeed, chainTo, isCounted, isDistribution } from './circuit.ts';
import { voltageDropV } from './drop.ts';
import { protectionOf } from './protection.ts';
import type { FeedResult } from './types.ts';

/** Voltage of a charged 12 V battery at rest, the base of per cents where no source states one. Common practice, no source. */
const DEFAULT_VOLTAGE_V = 12.6;

/** What one assessment of all feeds looks up again and again. */
interface Circuit {
  readonly index: ProjectIndex;
  readonly conductors: readonly PartOf<'conductor'>[];
  readonly behind: Map<string, Behind>;
  readonly limitPercent: number;
}

interface Known {
  readonly inputs: readonly unknown[];
  readonly results: readonly FeedResult[];
}
const cache = new WeakMap<readonly Feed[], Known>();

/**
 * Every feed in place: the current it carries while its load transmits, the drop in it and from the battery down to its
 * end, what protects it, and the smallest listed conductor that would do. On a shared feed one set transmits (the load of
 * the feed in question, or the one that draws most behind it) while all others draw what they draw at rest. Per cents are
 * of the source's voltage. The same list as before where no feed and no part at a feed changed.
 */
export function assessFeeds(project: Project): readonly FeedResult[] {
  const index = indexProject(project);
  const limitPercent = project.settings.voltageDropLimitPercent;
  const inputs = [project.parts, limitPercent, ...project.feeds.flatMap((feed) => endsOf(index, feed))];
  const old = cache.get(project.feeds);
  if (old?.inputs.length === inputs.length && old.inputs.every((input, i) => input === inputs[i])) return old.results;
  const conductors = [...index.parts.values()].filter((part) => part.kind === 'conductor');
  const circuit: Circuit = { index, conductors, behind: new Map(), limitPercent };
  const results = project.feeds
    .filter((feed) => isCounted(index, feed))
    .flatMap((feed) => {
      const conductor = index.parts.get(feed.conductorId);
      return conductor?.kind === 'conductor' ? [assessFeed(circuit, feed, conductor)] : [];
    });
  cache.set(project.feeds, { inputs, results });
  return results;
}

function endsOf(index: ProjectIndex, feed: Feed): readonly unknown[] {
  return [feed.from.itemId, feed.to.itemId].flatMap((id) => [index.effective.get(id), index.items.get(id)?.status]);
}

function assessFeed(circuit: Circuit, feed: Feed, conductor: PartOf<'conductor'>): FeedResult {
  const { index, limitPercent } = circuit;
  const chain = chainTo(index, feed);
  const voltageV = sourceVoltageV(index, chain, feed);
  const here = behind(circuit, feed);
  const currentA = here.restA + here.transmitExtraA;
  const dropV = dropIn(index, feed, currentA);
  const upstreamV = chain
    .filter((link) => link !== feed)
    .reduce((sum, link) => sum + dropIn(index, link, behind(circuit, link).restA + here.transmitExtraA), 0);
  const totalDropV = upstreamV + dropV;
  const { areaMm2, ampacityA } = conductor.figures;
  return {
    feedId: feed.id,
    loadId: feed.to.itemId,
    currentA,
    lengthM: feed.lengthM,
    areaMm2: areaMm2.value,
    dropV,
    totalDropV,
    totalDropPercent: (100 * totalDropV) / voltageV,
    limitPercent,
    protection: protectionOf(index, feed, ampacityA.value, voltageV, here.restA + here.sustainedExtraA),
    smallestAreaMm2: smallestAreaMm2(circuit, conductor, feed, currentA, (limitPercent / 100) * voltageV - upstreamV),
  };
}

function behind(circuit: Circuit, feed: Feed): Behind {
  const known = circuit.behind.get(feed.id);
  if (known) return known;
  const made = behindFeed(circuit.index, feed, sourceVoltageV(circuit.index, chainTo(circuit.index, feed), feed));
  circuit.behind.set(feed.id, made);
  return made;
}

/** The source's own voltage, else the load's rated one, else that of a charged 12 V battery. */
function sourceVoltageV(index: ProjectIndex, chain: readonly Feed[], feed: Feed): number {
  const source = index.effective.get(chain[0]?.from.itemId ?? '');
  if (source?.kind === 'power' && !isDistribution(source) && source.figures.voltageV.value > 0) {
    return source.figures.voltageV.value;
  }
  const load = index.effective.get(feed.to.itemId);
  return load?.kind === 'radio' || load?.kind === 'position-source'
    ? load.figures.supplyVoltageV.value
    : DEFAULT_VOLTAGE_V;
}

function dropIn(index: ProjectIndex, feed: Feed, currentA: number): number {
  const conductor = index.parts.get(feed.conductorId);
  return conductor?.kind === 'conductor' ? voltageDropV(currentA, feed.lengthM, conductor.figures.ohmPerKm.value) : 0;
}

/** Smallest conductor of the same family (mm2 or AWG) whose drop stays within what is left for this feed, mm2. */
function smallestAreaMm2(
  circuit: Circuit,
  like: PartOf<'conductor'>,
  feed: Feed,
  currentA: number,
  allowedV: number,
): number | null {
  const isAwg = like.traits.awg !== null;
  const areas = circuit.conductors
    .filter((part) => (part.traits.awg !== null) === isAwg)
    .filter((part) => voltageDropV(currentA, feed.lengthM, part.figures.ohmPerKm.value) <= allowedV)
    .map((part) => part.figures.areaMm2.value);
  return areas.length === 0 ? null : Math.min(...areas);
}
