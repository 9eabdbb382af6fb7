import { indexProject } from '../catalogue/lookup.ts';
import type { Part, PartOf } from '../model/part.ts';
import type { Feed, Item, Project } from '../model/project.ts';
import { chainTo, isDistribution, loadCurrents } from '../power/circuit.ts';
import { voltageDropV } from '../power/drop.ts';

/** Ratings fuses and breakers come in, A: those of the parts list. */
const RATINGS_A = [3, 5, 10, 15, 20, 30] as const;
/** A fuse is chosen this much above the load's current, so that it does not blow in use. Common practice, no source. */
const FUSE_OVER_LOAD = 1.25;
/** How far from the source the fuse of a new feed sits, m: within the 0.2 m of ISO 10133 (from memory). */
const FUSE_FROM_SOURCE_M = 0.15;
/** Thinnest pair for a new feed, mm²: mechanical strength. Common practice, no source. */
const THINNEST_MM2 = 1.5;
/** Share of the allowed drop a new pair may use: some is left for joints and a sagging battery. Own rule, no source. */
const SHARE_OF_DROP = 0.8;

/** The fuse for a load: the next rating above its current; null for a load no listed rating carries. */
export function ratingFor(project: Project, load: Item): (typeof RATINGS_A)[number] | null {
  const { peakA } = loadCurrents(indexProject(project).effective.get(load.id));
  return RATINGS_A.find((ratingA) => ratingA >= peakA * FUSE_OVER_LOAD) ?? null;
}

/** Pair and fuse of a new feed. */
export interface Wire {
  readonly conductorId: string;
  readonly lengthM: number;
  readonly fuse: NonNullable<Feed['fuse']>;
}

/**
 * The thinnest pair whose drop stays within four fifths of the project's limit and that its fuse protects; null where the
 * load's current is beyond the listed fuses or no pair is thick enough.
 * @param supplyV voltage of the battery it comes from, V, > 0
 */
export function wireFor(project: Project, load: Item, lengthM: number, supplyV: number): Wire | null {
  const index = indexProject(project);
  const ratingA = ratingFor(project, load);
  if (ratingA === null || !(supplyV > 0)) return null;
  const { peakA } = loadCurrents(index.effective.get(load.id));
  const allowedV = (SHARE_OF_DROP * project.settings.voltageDropLimitPercent * supplyV) / 100;
  const fits = ({ figures }: PartOf<'conductor'>): boolean =>
    figures.areaMm2.value >= THINNEST_MM2 &&
    figures.ampacityA.value >= ratingA &&
    voltageDropV(peakA, lengthM, figures.ohmPerKm.value) <= allowedV;
  const conductor = [...index.parts.values()]
    .filter((part): part is PartOf<'conductor'> => part.kind === 'conductor' && part.traits.awg === null)
    .filter(fits)
    .sort((a, b) => a.figures.areaMm2.value - b.figures.areaMm2.value)[0];
  if (!conductor) return null;
  return { conductorId: conductor.id, lengthM, fuse: { ratingA, fromSourceM: FUSE_FROM_SOURCE_M } };
}

/** Voltages within this of each other, relative, are one system: 12.6 and 13.2 V are, 24 V is not. Own rule, no source. */
const SAME_VOLTAGE_SHARE = 0.25;

/** Whether a battery can feed a load as it stands. */
export function sameVoltage(project: Project, battery: Item | PartOf<'power'>, load: Item): boolean {
  const index = indexProject(project);
  const bank = 'partId' in battery ? index.effective.get(battery.id) : battery;
  const part = index.effective.get(load.id);
  return bank?.kind === 'power' && part !== undefined && takesVoltage(part, bank.figures.voltageV.value);
}

/** Whether a part is made for a supply of this voltage, V; one that states none is taken to be for 12 V. */
export function takesVoltage(part: Part, supplyV: number): boolean {
  const wantedV =
    part.kind === 'radio' || part.kind === 'position-source' ? part.figures.supplyVoltageV.value : NOMINAL_V;
  return Math.abs(supplyV - wantedV) <= SAME_VOLTAGE_SHARE * wantedV;
}

/**
 * Voltage of what a feed comes from, V: of the battery or converter in front of all panels and breakers, whose own figure says
 * what they are made for and not what they carry. Null where nothing is drawn in front of them.
 */
export function supplyVoltageV(project: Project, feed: Feed): number | null {
  const index = indexProject(project);
  const source = index.effective.get(chainTo(index, feed)[0]?.from.itemId ?? '');
  return source?.kind === 'power' && !isDistribution(source) ? source.figures.voltageV.value : null;
}

/** A charged 12 V battery at rest, for loads that state no voltage. Common practice, no source. */
const NOMINAL_V = 12.6;
