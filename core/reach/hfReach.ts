import type { Conditions } from '../model/project.ts';
import { combineTolerances } from '../rf/decibels.ts';
import {
  type ExternalNoise,
  externalNoise,
  type NoiseEnvironment,
  noiseFieldDbuvPerM,
  systemNoiseFigureDb,
} from '../rf/noise.ts';
import type { HfService, ShoreStation } from './hfBands.ts';
import { groundWaveReachKm } from './hfGroundWave.ts';
import type { HfReach } from './types.ts';

/** Tolerance of the ground wave, dB: swell, a coast in between, a wire that is no short rod (judgement). */
const MODEL_TOLERANCE_DB = 2;
/** What stands around the other end: another boat with its electronics off, and a receiving site chosen for quiet. */
const BOAT_NOISE: NoiseEnvironment = 'rural';
const SHORE_NOISE: NoiseEnvironment = 'quiet-rural';

/** What the own end brings on one band. */
export interface HfEnd {
  readonly frequencyMhz: number;
  /** Null for a receiver. */
  readonly radiatedW: number | null;
  /** Of the radiated power, down and up, dB. */
  readonly downDb: number;
  readonly upDb: number;
  /** Feeder, tuner and antenna before the receiver, dB. */
  readonly lossDb: number;
  readonly receiverNoiseFigureDb: number;
}

/** One way of a link. */
interface Way {
  readonly direction: 'transmit' | 'receive';
  readonly radiatedW: number;
  readonly downDb: number;
  readonly upDb: number;
  readonly noiseDb: number;
  readonly spread: ExternalNoise;
}

/** Noise from outside at a place by day: the galaxy is heard above the day's critical frequency only. */
export function dayNoise(environment: NoiseEnvironment, frequencyMhz: number, conditions: Conditions): ExternalNoise {
  return externalNoise({
    environment,
    frequencyMhz,
    foF2Mhz: conditions.foF2DayMhz,
    atmospheric: conditions.lightning,
  });
}

/** By ground wave to another boat with the same installation. Nothing for a receiver: boats do not send what it hears. */
export function reachToLike(own: HfEnd, service: HfService, conditions: Conditions): readonly HfReach[] {
  const { radiatedW } = own;
  if (radiatedW === null) return [];
  const there = dayNoise(BOAT_NOISE, own.frequencyMhz, conditions);
  const power = { radiatedW, downDb: own.downDb, upDb: own.upDb };
  const out: Way = { direction: 'transmit', ...power, noiseDb: heard(own, there), spread: there };
  const back: Way = { direction: 'receive', ...power, ...hereOf(own, conditions) };
  return [reachOf('like-set', 'Boat with the same set', own.frequencyMhz, service, [out, back])];
}

/** By ground wave to and from a station ashore. */
export function reachToShore(
  own: HfEnd,
  service: HfService,
  shore: ShoreStation,
  conditions: Conditions,
): readonly HfReach[] {
  const there = dayNoise(SHORE_NOISE, own.frequencyMhz, conditions);
  const { toleranceDb } = shore;
  const back: Way = {
    direction: 'receive',
    radiatedW: shore.powerW * shore.efficiency,
    downDb: toleranceDb,
    upDb: toleranceDb,
    ...hereOf(own, conditions),
  };
  const { radiatedW, downDb, upDb } = own;
  const out: Way[] =
    radiatedW === null
      ? []
      : [{ direction: 'transmit', radiatedW, downDb, upDb, noiseDb: there.medianDb, spread: there }];
  return [reachOf(shore.key, shore.name, own.frequencyMhz, service, [...out, back])];
}

function hereOf(own: HfEnd, conditions: Conditions): Pick<Way, 'noiseDb' | 'spread'> {
  const spread = dayNoise(conditions.noise, own.frequencyMhz, conditions);
  return { noiseDb: heard(own, spread), spread };
}

/** Noise from outside with what a lossy antenna, feeder and receiver add, dB above kT0B at the lossless antenna. */
function heard({ lossDb, receiverNoiseFigureDb }: HfEnd, { medianDb }: ExternalNoise): number {
  return systemNoiseFigureDb({ externalDb: medianDb, lineLossDb: lossDb, receiverNoiseFigureDb });
}

function reachOf(key: string, name: string, frequencyMhz: number, service: HfService, ways: readonly Way[]): HfReach {
  const { bandwidthHz, signalToNoiseDb, meanBelowPeakDb, fadingDb } = service;
  const overDb = signalToNoiseDb + meanBelowPeakDb + fadingDb;
  const reaches = ways.map((way) => {
    const fieldDb = noiseFieldDbuvPerM(way.noiseDb, frequencyMhz, bandwidthHz, 'short-monopole') + overDb;
    const reach = (byDb: number): number => groundWaveReachKm(frequencyMhz, way.radiatedW, fieldDb + byDb);
    const down = combineTolerances([way.downDb, way.spread.upperDecileDb, MODEL_TOLERANCE_DB]);
    const up = combineTolerances([way.upDb, way.spread.lowerDecileDb, MODEL_TOLERANCE_DB]);
    const band = { nominalKm: reach(0), lowKm: reach(down), highKm: reach(-up) };
    return { key, name, reach: band, limitedBy: way.direction };
  });
  return reaches.reduce((least, next) => (next.reach.nominalKm < least.reach.nominalKm ? next : least));
}
