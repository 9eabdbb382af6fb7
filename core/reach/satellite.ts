import { indexProject, overheadOf } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import type { Orbit, PartOf } from '../model/part.ts';
import type { Item, Project } from '../model/project.ts';
import { geostationarySight, gOverTDbPerK, marginChange } from '../propagation/satellite.ts';
import { combineTolerances, wattsToDbm } from '../rf/decibels.ts';
import { overheadLossDb } from '../siting/skyLoss.ts';
import { isShutUnder } from '../siting/skyView.ts';
import { rememberer } from './remember.ts';
import {
  beaconVerdict,
  handVerdict,
  type Judged,
  type LineLimit,
  lineVerdict,
  ownVerdict,
  type Weighed,
} from './satelliteWords.ts';
import type { SatelliteResult } from './types.ts';

/** What an antenna hears of sky, sea and deck, K. Common practice, no source; a narrow beam at the sky hears less. */
const ANTENNA_K = 130;
/** Of a terminal whose noise figure nobody states, dB; only what a line changes hangs on it. Common practice, no source. */
const NOISE_FIGURE_DB = 3;
/** What may lie between a low-orbit L-band module and its antenna (developer's guide, table 13, read). */
const LOW_ORBIT_LINE: LineLimit = { cableDb: 2, allDb: 3 };
/** Gains are believed up to this, dBi: what G/T is for. */
const MOST_GAIN_DBI = 60;
/** Lowest elevation at which a geostationary satellite is counted on, degrees. Common practice, no source. */
const LEAST_ELEVATION_DEG = 5;

type RadioPart = PartOf<'radio'>;
type StandalonePart = PartOf<'standalone'>;

const remembered = rememberer<SatelliteResult>();

/**
 * Every satellite terminal and messenger by each outside antenna it is connected to, or by its own; hand-held satellite sets and 406
 * MHz beacons, which are used in the open. What is to be removed is left out. A measured feeder loss counts before the computed one.
 * Only what is overhead is looked at here; `skyView` has the rest of the sky. Amplifiers in an L-band line are not reckoned.
 * Results are the same objects as before where nothing they depend on changed.
 * @throws RangeError where a figure is outside what the sums are for
 */
export function assessSatellites(project: Project, paths: readonly PathBudget[]): readonly SatelliteResult[] {
  const { effective } = indexProject(project);
  return project.items.flatMap((item): readonly SatelliteResult[] => {
    const part = effective.get(item.id);
    if (item.status === 'remove') return [];
    if (part?.kind === 'radio' && isTerminal(part)) return terminalResults(project, item, part, paths);
    if (part?.kind === 'standalone' && isSatelliteSet(part)) return [standaloneResult(project, item, part)];
    return [];
  });
}

/** Where geostationary satellites stand, as far as the latitude decides. */
export interface GeostationaryArc {
  /** Elevation of one due south or north of the boat, degrees; null where none rises. */
  readonly highestDeg: number | null;
  /** Lowest elevation counted on. */
  readonly lowestDeg: number;
}

/**
 * The belt a geostationary terminal has to see from a latitude: from 5 degrees, or from nowhere, up to that of a satellite on the
 * boat's own meridian.
 * @param latitudeDeg -90 to 90
 * @throws RangeError outside that
 */
export function geostationaryArc(latitudeDeg: number): GeostationaryArc {
  return { highestDeg: geostationarySight(latitudeDeg, 0)?.elevationDeg ?? null, lowestDeg: LEAST_ELEVATION_DEG };
}

const isTerminal = ({ radioClass }: RadioPart): boolean => /^(l-band|broadband)-/.test(radioClass);
const isBeacon = ({ standaloneClass }: StandalonePart): boolean =>
  standaloneClass === 'beacon-406' || standaloneClass === 'personal-beacon';
const isSatelliteSet = (part: StandalonePart): boolean =>
  isBeacon(part) || part.standaloneClass === 'handheld-satellite';

const ownGainDbi = ({ figures }: RadioPart): number | null =>
  figures.ownAntennaGainDbi ? Math.min(MOST_GAIN_DBI, figures.ownAntennaGainDbi.value) : null;

/** A terminal that does not say works by low orbit, as nearly all of its class do. */
const orbitOf = (part: RadioPart): Orbit => part.traits.orbit ?? 'low';

function terminalResults(
  project: Project,
  item: Item,
  part: RadioPart,
  paths: readonly PathBudget[],
): readonly SatelliteResult[] {
  const lines = paths.filter(
    (path) => path.radioId === item.id && path.service !== 'gnss' && path.antennaId !== item.id,
  );
  if (lines.length === 0) return part.figures.ownAntennaGainDbi ? [ownResult(project, item, part)] : [];
  const { items, effective } = indexProject(project);
  return lines.flatMap((path) => {
    const antenna = items.get(path.antennaId);
    const antennaPart = effective.get(path.antennaId);
    if (!antenna || antennaPart?.kind !== 'antenna') return [];
    const line = { path, item, part, antenna, antennaPart, ...overheads(project, item, antenna) };
    const inputs = [part, antenna, antennaPart, path, line.over, line.antennaOver];
    return [remembered(item, path.id, inputs, () => lineResult(line))];
  });
}

const overheads = (project: Project, item: Item, antenna: Item) => ({
  over: overheadOf(project, item),
  antennaOver: overheadOf(project, antenna),
});

interface Line extends ReturnType<typeof overheads> {
  readonly path: PathBudget;
  readonly item: Item;
  readonly part: RadioPart;
  readonly antenna: Item;
  readonly antennaPart: PartOf<'antenna'>;
}

function lineResult(line: Line): SatelliteResult {
  const { path, item, part, antenna, antennaOver } = line;
  const ofKind = (isWanted: (kind: string) => boolean): number =>
    path.elements.reduce((sum, element) => sum + (isWanted(element.kind) ? element.lossDb : 0), 0);
  const lineLossDb = path.measuredLossDb ?? ofKind((kind) => kind !== 'mismatch');
  // What the antenna throws back makes it a weaker antenna; the line's limit is not about that.
  const gainDbi = Math.max(
    -MOST_GAIN_DBI,
    Math.min(MOST_GAIN_DBI, path.antennaGainDbi) - ofKind((kind) => kind === 'mismatch'),
  );
  const limit = limitOf(part, path.frequencyMhz);
  const weighed = weigh(line, lineLossDb, gainDbi);
  const found = { antenna, overhead: antennaOver, limit, weighed, allDb: lineLossDb };
  return {
    id: path.id,
    itemId: item.id,
    pathId: path.id,
    antennaId: antenna.id,
    orbit: orbitOf(part),
    frequencyMhz: path.frequencyMhz,
    lineLossDb,
    antennaGainDbi: path.antennaGainDbi,
    eirpDbm: path.txPowerW === null ? null : wattsToDbm(path.txPowerW) - lineLossDb + gainDbi,
    gOverTDbPerK: qualityOf(part, gainDbi, lineLossDb),
    change: weighed?.change ?? null,
    lineLimitDb: limit?.allDb ?? null,
    ...lineVerdict({
      ...found,
      cableDb: Math.min(
        lineLossDb,
        ofKind((kind) => kind === 'cable'),
      ),
    }),
  };
}

function limitOf(part: RadioPart, frequencyMhz: number): LineLimit | null {
  return orbitOf(part) === 'low' && frequencyMhz < 2000 ? LOW_ORBIT_LINE : null;
}

/**
 * The outside antenna against the terminal's own. That is where the terminal stands, under what is overhead there; a portable one that
 * has no sky there is taken to be carried on deck, for that is what one would do without an outside antenna.
 */
function weigh({ path, part, antennaPart, over }: Line, lineLossDb: number, gainDbi: number): Weighed | null {
  const own = ownGainDbi(part);
  if (own === null) return null;
  const isCarried = part.traits.portable && isShutUnder(over);
  const { transmitDb, receiveDb, breakEvenLossDb } = marginChange({
    outsideGainDbi: gainDbi,
    lineLossDb,
    ownGainDbi: own,
    ownObstructionDb: isCarried ? 0 : overheadLossDb(over, path.frequencyMhz),
    receiverNoiseFigureDb: Math.max(0, part.figures.noiseFigureDb?.value ?? NOISE_FIGURE_DB),
    antennaTemperatureK: ANTENNA_K,
  });
  return {
    change: { transmitDb, receiveDb, breakEvenLossDb },
    ownIs: isCarried ? 'carried on deck' : 'where it stands',
    toleranceDb: combineTolerances([
      part.figures.ownAntennaGainDbi?.tolerance ?? 0,
      antennaPart.figures.gainDbi.tolerance,
      path.toleranceDb,
    ]),
  };
}

function qualityOf(part: RadioPart, antennaGainDbi: number, lineLossDb: number): number | null {
  const noise = part.figures.noiseFigureDb;
  if (!noise) return null;
  return gOverTDbPerK({
    antennaGainDbi,
    lineLossDb,
    receiverNoiseFigureDb: Math.max(0, noise.value),
    antennaTemperatureK: ANTENNA_K,
  });
}

/** A terminal that works by the antenna built into it. */
function ownResult(project: Project, item: Item, part: RadioPart): SatelliteResult {
  const over = overheadOf(project, item);
  return remembered(item, item.id, [part, over], () => {
    const { frequencyMhz, txPowerW } = part.figures;
    const gainDbi = ownGainDbi(part) ?? 0;
    const throughDb = overheadLossDb(over, frequencyMhz.value);
    return builtIn(
      item,
      {
        orbit: orbitOf(part),
        frequencyMhz: frequencyMhz.value,
        antennaGainDbi: gainDbi,
        eirpDbm: txPowerW.value > 0 ? wattsToDbm(txPowerW.value) + gainDbi : null,
        gOverTDbPerK: qualityOf(part, gainDbi, 0),
      },
      ownVerdict(item, over, throughDb, part.traits.portable),
    );
  });
}

/**
 * Hand-held sets and beacons. The 406 MHz system hears beacons by satellites in all three orbits; those in medium orbit see the whole
 * earth at once and are what it now counts on (from memory).
 */
function standaloneResult(project: Project, item: Item, part: StandalonePart): SatelliteResult {
  const over = overheadOf(project, item);
  return remembered(item, item.id, [part, over], () => {
    const { frequencyMhz, txPowerW, gainDbi } = part.figures;
    const signal = {
      orbit: isBeacon(part) ? 'medium' : 'low',
      frequencyMhz: frequencyMhz.value,
      antennaGainDbi: gainDbi.value,
      eirpDbm: txPowerW.value > 0 ? wattsToDbm(txPowerW.value) + gainDbi.value : null,
      gOverTDbPerK: null,
    } as const;
    return builtIn(item, signal, isBeacon(part) ? beaconVerdict(item, over) : handVerdict(over));
  });
}

type Signal = Pick<SatelliteResult, 'orbit' | 'frequencyMhz' | 'antennaGainDbi' | 'eirpDbm' | 'gOverTDbPerK'>;

function builtIn(item: Item, signal: Signal, judged: Judged): SatelliteResult {
  const none = { pathId: null, lineLossDb: 0, change: null, lineLimitDb: null };
  return { id: item.id, itemId: item.id, antennaId: item.id, ...none, ...signal, ...judged };
}
