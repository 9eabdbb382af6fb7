import type { Conditions, Project } from '../model/project.ts';
import {
  E_LAYER_HEIGHT_KM,
  eLayerMufMhz,
  eLayerScreeningMhz,
  f2BasicMuf,
  f2MirrorHeightKm,
  hopGeometry,
  longestHopKm,
  workingFrequencyMhz,
} from '../propagation/skyWave.ts';
import { type SkyHour, skyOfDay } from './hfSky.ts';
import type { HfBand, HfDay, HfHour, HfResult } from './types.ts';

/** Distances a day is worked out for, km. */
export const MIN_SKY_KM = 50;
export const MAX_SKY_KM = 8000;
/** Longest hop, and the lowest ray that counts, as P.533 has them. */
const LONGEST_HOP_KM = 4000;
const LEAST_TAKEOFF_DEG = 3;
/** Gyrofrequency of middle latitudes, MHz: 0.7 to 1.2 over the seas of the world; it moves a short hop by 0.2 MHz. */
const GYROFREQUENCY_MHZ = 1.1;

/** Hops tried beyond the fewest: the ray goes up more steeply and so through an E layer that would screen a lower one. */
const FURTHER_HOPS = 2;

/** What one hop carries in one hour. */
interface HopSky {
  readonly f2MufMhz: number;
  /** 0 where the hop is too long for the E layer. */
  readonly eMufMhz: number;
  readonly screeningMhz: number;
  readonly takeoffDeg: number;
}

/** What the sky needs to know of a band. */
export type SkyBand = Pick<HfBand, 'id' | 'frequencyMhz' | 'groundWave'>;

type State = HfHour['state'];

const NOTES = [
  'Where the rays go if the ionosphere is as stated, and no more: no level, no noise, no storms, no sporadic E.',
  'By day the lower ionosphere absorbs what lies far below the working frequency; open does not mean strong there.',
  'One sky over the whole path, by the local solar time at its middle; hour by hour, the median of a month.',
] as const;

/**
 * Over the hours of a day, which bands of an HF set come back from the sky to a distance: the least number of hops, the highest
 * frequency each carries by the F2 or the E layer, and the state of every band, which up to two further hops may open where
 * the E layer screens the fewest. Near-vertical hops included.
 * @param distanceKm 50 to 8000, over ground
 * @throws RangeError outside
 * Source: P.533 and P.1240 for hop and MUF, P.1239 for foE; foF2 over the day by a law of our own (hfSky.ts). What it is not is
 * said in its notes. Checked by: tests/published/skyWave.test.ts, tests/published/eLayer.test.ts
 */
export function hfDay(project: Project, result: HfResult, distanceKm: number): HfDay {
  return skyDay(project.settings.conditions, result.bands, distanceKm);
}

/** `hfDay` for any bands under a stated sky. @throws RangeError for a distance outside 50 to 8000 km */
export function skyDay(conditions: Conditions, bands: readonly SkyBand[], distanceKm: number): HfDay {
  if (!(distanceKm >= MIN_SKY_KM && distanceKm <= MAX_SKY_KM))
    throw new RangeError(`A distance by the sky must be ${MIN_SKY_KM} to ${MAX_SKY_KM} km, not ${distanceKm}.`);
  const { m3000 } = conditions;
  const hops = leastHops(distanceKm, m3000);
  const skies = skyOfDay(conditions);
  const hours = skies.map((sky) => {
    const { f2MufMhz, eMufMhz, takeoffDeg } = hopSky(sky, distanceKm / hops, m3000);
    const workingMhz = Math.max(workingFrequencyMhz(f2MufMhz), eMufMhz);
    return { ...sky, mufMhz: Math.max(f2MufMhz, eMufMhz), workingMhz, takeoffDeg };
  });
  const cells = skies.flatMap((sky) => cellsOf(sky.hour, waysOf(sky, distanceKm, hops, m3000), bands, distanceKm));
  return { distanceKm, hops, hours, cells, notes: NOTES };
}

/** Fewest equal hops by the F2 layer that stay above the lowest ray. */
function leastHops(distanceKm: number, m3000: number): number {
  const longest = Math.min(LONGEST_HOP_KM, longestHopKm(f2MirrorHeightKm(m3000), LEAST_TAKEOFF_DEG));
  return Math.ceil(distanceKm / longest);
}

function hopSky({ foF2Mhz, foEMhz }: SkyHour, hopKm: number, m3000: number): HopSky {
  const ionosphere = { foF2Mhz, foEMhz, m3000, gyrofrequencyMhz: GYROFREQUENCY_MHZ };
  const { takeoffDeg } = hopGeometry(hopKm, f2MirrorHeightKm(m3000));
  const reachesByE = hopKm <= longestHopKm(E_LAYER_HEIGHT_KM, LEAST_TAKEOFF_DEG);
  return {
    f2MufMhz: f2BasicMuf(ionosphere, hopKm).mufMhz,
    eMufMhz: (reachesByE ? eLayerMufMhz(foEMhz, hopKm) : null) ?? 0,
    screeningMhz: eLayerScreeningMhz(foEMhz, takeoffDeg),
    takeoffDeg,
  };
}

/** The fewest hops by either layer, and a few more by the F2: by the E layer each hop more is lost in absorption (judgement). */
function waysOf(sky: SkyHour, distanceKm: number, hops: number, m3000: number): readonly HopSky[] {
  return Array.from({ length: FURTHER_HOPS + 1 }, (_, more) => {
    const way = hopSky(sky, distanceKm / (hops + more), m3000);
    return more === 0 ? way : { ...way, eMufMhz: 0 };
  });
}

function cellsOf(
  hour: number,
  ways: readonly HopSky[],
  bands: readonly SkyBand[],
  distanceKm: number,
): readonly HfHour[] {
  const states = bands.map((band) => ({ band, state: stateOf(ways, band, distanceKm) }));
  const open = states.filter(({ state }) => state === 'open').map(({ band }) => band.frequencyMhz);
  const best = Math.max(...open);
  return states.map(({ band, state }) => ({
    hour,
    bandId: band.id,
    state,
    isBest: state === 'open' && band.frequencyMhz === best,
  }));
}

const BEST_FIRST: readonly State[] = ['open', 'edge', 'screened', 'shut'];

function stateOf(ways: readonly HopSky[], { frequencyMhz, groundWave }: SkyBand, distanceKm: number): State {
  if (groundWave.length > 0 && groundWave.every(({ reach }) => reach.nominalKm >= distanceKm)) return 'ground';
  const states = ways.map((way) => stateBy(way, frequencyMhz));
  return BEST_FIRST.find((state) => states.includes(state)) ?? 'shut';
}

/** The E layer varies little from day to day, so what it carries counts as open to its very maximum. */
function stateBy({ eMufMhz, f2MufMhz, screeningMhz }: HopSky, frequencyMhz: number): State {
  if (frequencyMhz <= eMufMhz) return 'open';
  if (frequencyMhz > f2MufMhz) return 'shut';
  if (frequencyMhz <= screeningMhz) return 'screened';
  return frequencyMhz <= workingFrequencyMhz(f2MufMhz) ? 'open' : 'edge';
}
