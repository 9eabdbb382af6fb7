import { indexProject, overheadOf } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import type { Overhead } from '../model/boat.ts';
import type { Figure } from '../model/figure.ts';
import type { PartOf } from '../model/part.ts';
import type { Item, Project } from '../model/project.ts';
import { cascade, type Stage } from '../rf/cascade.ts';
import { combineTolerances } from '../rf/decibels.ts';
import { carrierToNoiseDbHz, type GainWindow, LEAST_SIGNAL_DBM, passiveRunOverDb } from '../rf/gnssChain.ts';
import { isShutUnder } from '../siting/skyView.ts';
import { builtInVerdict, chainVerdict } from './gnssWords.ts';
import { rememberer } from './remember.ts';
import type { GnssResult } from './types.ts';

/** What an element hears of sky, sea and deck under an open sky, K. Common practice, no source. */
const ANTENNA_K = 130;
/** Of a receiver that states none, and of an amplifier that states only its gain, dB. Common practice, no source. */
const RECEIVER_NOISE_DB = 4;
const AMPLIFIER_NOISE_DB = 2;

type Receiver = PartOf<'radio'> | PartOf<'position-source'>;

const remembered = rememberer<GnssResult>();

/**
 * Every GNSS receiver by each antenna it is connected to: net gain before its socket against what it asks for, noise figure of the
 * whole chain, and carrier to noise for the least signal a satellite promises under an open sky. One without an outside antenna
 * is judged by what is over it. What is to be removed is left out, and so are hand-held sets, which are used in the open, and
 * satellite terminals: many get their fix by their one outside antenna, which no figure tells.
 * Amplifiers on the way (splitters) count; what an active antenna throws back is loss behind its amplifier.
 * Results are the same objects as before where nothing they depend on changed.
 * @throws RangeError where a figure is outside what the sums are for
 */
export function assessGnss(project: Project, paths: readonly PathBudget[]): readonly GnssResult[] {
  const { effective } = indexProject(project);
  return project.items.flatMap((item): readonly GnssResult[] => {
    const part = effective.get(item.id);
    if (item.status === 'remove' || !part || (part.kind !== 'radio' && part.kind !== 'position-source')) return [];
    const lines = paths.filter(
      (path) => path.service === 'gnss' && path.radioId === item.id && path.antennaId !== item.id,
    );
    if (lines.length > 0) return lines.flatMap((path) => chainResult(project, path, item, part));
    return hasOwnAntenna(part) ? [ownResult(project, item)] : [];
  });
}

/** A receiver with a socket alone gets nothing without an antenna; one inside another set is taken to have its antenna there. */
function hasOwnAntenna(part: Receiver): boolean {
  if (part.kind === 'position-source' || part.radioClass === 'gnss-receiver') return part.traits.integralAntenna;
  return part.traits.internalGnss && !/^(l-band|broadband)-/.test(part.radioClass);
}

function ownResult(project: Project, item: Item): GnssResult {
  const over = overheadOf(project, item);
  return remembered(item, item.id, [over], () => ({
    id: item.id,
    itemId: item.id,
    pathId: null,
    antennaId: item.id,
    netGainDb: null,
    noiseFigureDb: null,
    carrierToNoiseDbHz: null,
    window: null,
    ...builtInVerdict(item, over),
  }));
}

function chainResult(project: Project, path: PathBudget, item: Item, part: Receiver): readonly GnssResult[] {
  const { items, effective } = indexProject(project);
  const antenna = items.get(path.antennaId);
  const antennaPart = effective.get(path.antennaId);
  if (!antenna || antennaPart?.kind !== 'antenna') return [];
  const over = overheadOf(project, antenna);
  const chain = { path, item, part, antenna, antennaPart, over };
  return [remembered(item, path.id, [part, antenna, antennaPart, path, over], () => reckoned(chain))];
}

interface Chain {
  readonly path: PathBudget;
  readonly item: Item;
  readonly part: Receiver;
  readonly antenna: Item;
  readonly antennaPart: PartOf<'antenna'>;
  readonly over: Overhead;
}

function reckoned({ path, item, part, antenna, antennaPart, over }: Chain): GnssResult {
  const { amplifierGainDb, gainDbi } = antennaPart.figures;
  const { gainMinDb, gainMaxDb, noiseFigureDb: stated } = part.figures;
  const receiver = { gainDb: 0, noiseFigureDb: Math.max(0, stated?.value ?? RECEIVER_NOISE_DB) };
  const amplifier = amplifierOf(antennaPart);
  const { gainDb, noiseFigureDb } = cascade([...(amplifier ? [amplifier] : []), path.reception, receiver]);
  const passive = {
    beforeLossDb: 0,
    amplifier,
    afterLossDb: path.lossDb,
    receiverNoiseFigureDb: receiver.noiseFigureDb,
  };
  const window = windowOf(gainMinDb, gainMaxDb);
  const toleranceDb = combineTolerances([path.toleranceDb, amplifierGainDb?.tolerance ?? 0]);
  return {
    id: path.id,
    itemId: item.id,
    pathId: path.id,
    antennaId: antenna.id,
    netGainDb: gainDb,
    noiseFigureDb,
    carrierToNoiseDbHz: isShutUnder(over)
      ? null
      : carrierToNoiseDbHz(LEAST_SIGNAL_DBM, gainDbi.value, noiseFigureDb, ANTENNA_K),
    window,
    ...chainVerdict({
      antenna,
      over,
      netGainDb: gainDb,
      window,
      leastToleranceDb: combineTolerances([toleranceDb, gainMinDb?.tolerance ?? 0]),
      mostToleranceDb: combineTolerances([toleranceDb, gainMaxDb?.tolerance ?? 0]),
      passiveOverDb: passiveRunOverDb(passive),
    }),
  };
}

function amplifierOf({ figures: { amplifierGainDb, amplifierNoiseFigureDb } }: PartOf<'antenna'>): Stage | null {
  if (!amplifierGainDb) return null;
  return {
    gainDb: amplifierGainDb.value,
    noiseFigureDb: Math.max(0, amplifierNoiseFigureDb?.value ?? AMPLIFIER_NOISE_DB),
  };
}

/** What the receiver states; null where it states neither end. A window upside down is read as its least alone. */
function windowOf(least: Figure | undefined, most: Figure | undefined): GainWindow | null {
  if (!least && !most) return null;
  const minDb = least?.value ?? null;
  const maxDb = most?.value ?? null;
  return minDb !== null && maxDb !== null && maxDb < minDb ? { minDb, maxDb: null } : { minDb, maxDb };
}
