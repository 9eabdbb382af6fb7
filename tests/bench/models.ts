import { freeSpaceLossDb } from '../../core/propagation/freeSpace.ts';
import { groundWaveCurve, groundWaveLossDb } from '../../core/propagation/groundWave.ts';
import { satellitePathLossDb } from '../../core/propagation/satellite.ts';
import { f2BasicMuf, f2MirrorHeightKm, hopGeometry } from '../../core/propagation/skyWave.ts';
import { type SeaPath, seaPathLossDb } from '../../core/propagation/sphericalEarth.ts';
import { seaMedianLoss } from '../../core/propagation/troposcatter.ts';
import { twoRayPathLossDb } from '../../core/propagation/twoRay.ts';
import { halfWaveIsolation, mutualImpedanceOhm } from '../../core/siting/coupling.ts';
import { grouped, ratePerSecond } from './timing.ts';

/** One model: a sum that differs from call to call, and how many sums make a round of some ten milliseconds. */
interface Model {
  readonly name: string;
  readonly sum: (call: number) => number;
  readonly sums: number;
  readonly aimPerSecond?: number;
}

const VHF_MHZ = 156.8;
const MIRROR_KM = f2MirrorHeightKm(3);

/** Over the sea from half a kilometre to 120 km: clear, interpolated and beyond the horizon, heights of yachts and ships. */
const overSea = (call: number): SeaPath => ({
  frequencyMhz: VHF_MHZ,
  distanceKm: 0.5 + (call % 1000) * 0.12,
  h1M: 2 + (call % 17),
  h2M: 4 + (call % 13),
});

/** The same by callers that name more, and in another order: paths of many shapes take longer to read. */
const SHAPES: readonly ((call: number) => SeaPath)[] = [
  overSea,
  (call) => ({ ...overSea(call), polarisation: 'vertical' }),
  (call) => ({ ...overSea(call), water: 'sea', effectiveRadiusKm: 8500 }),
  (call) => ({ effectiveRadiusKm: 12_000, ...overSea(call) }),
  (call) => ({ ...overSea(call), polarisation: 'horizontal', water: 'fresh-water' }),
];

/** Made beforehand, so that only the sum is timed. */
const PATHS = Array.from({ length: 10_000 }, (_, call) => overSea(call));
const MIXED_PATHS = PATHS.map((path, call) => SHAPES[call % SHAPES.length]?.(call) ?? path);
const pathAt = (paths: readonly SeaPath[], call: number): SeaPath => paths[call % paths.length] ?? overSea(call);

const groundWave2Mhz = groundWaveCurve({ frequencyMhz: 2.182 });

// Within each model's own span; the two rays from 1 to 3 km between 17 and 10 m, where they hold.
const MODELS: readonly Model[] = [
  {
    name: 'free space',
    sum: (call) => freeSpaceLossDb(VHF_MHZ, 0.5 + (call % 1000) * 0.12),
    sums: 200_000,
  },
  {
    name: 'smooth sea',
    sum: (call) => seaPathLossDb(pathAt(PATHS, call)),
    sums: 100_000,
    aimPerSecond: 1e6,
  },
  {
    name: 'sea median with scatter',
    sum: (call) => seaMedianLoss(pathAt(PATHS, call)).lossDb,
    sums: 50_000,
  },
  {
    name: 'smooth sea, paths of five shapes',
    sum: (call) => seaPathLossDb(pathAt(MIXED_PATHS, call)),
    sums: 50_000,
    aimPerSecond: 1e6,
  },
  {
    name: 'two-ray with surface wave',
    sum: (call) => twoRayPathLossDb({ frequencyMhz: VHF_MHZ, distanceKm: 1 + (call % 100) * 0.02, h1M: 17, h2M: 10 }),
    sums: 20_000,
  },
  {
    name: 'ground wave, one distance',
    sum: (call) => groundWaveLossDb({ frequencyMhz: 2.182, distanceKm: 5 + (call % 200) * 5 }),
    sums: 500,
  },
  {
    name: 'ground wave, many distances of one frequency',
    sum: (call) => groundWave2Mhz(5 + (call % 200) * 5).attenuationDb,
    sums: 20_000,
  },
  {
    name: 'sky hop with its highest frequency',
    sum: (call) => {
      const hopKm = 200 + (call % 100) * 20;
      const sounding = { foF2Mhz: 5 + (call % 5), foEMhz: 2.5, m3000: 3, gyrofrequencyMhz: 1.2 };
      const { mufMhz } = f2BasicMuf(sounding, hopKm);
      return mufMhz + hopGeometry(hopKm, MIRROR_KM).takeoffDeg;
    },
    sums: 50_000,
  },
  {
    name: 'satellite slant loss',
    sum: (call) => satellitePathLossDb(1621, 780, call % 90),
    sums: 50_000,
  },
  {
    name: 'mutual impedance of two antennas',
    sum: (call) => mutualImpedanceOhm(0.2 + (call % 100) * 0.05, 0.3).re,
    sums: 500,
  },
  {
    name: 'isolation of two antennas',
    sum: (call) => halfWaveIsolation({ frequencyMhz: VHF_MHZ, sideM: 1 + (call % 100) * 0.05, upM: 0.3 }).isolationDb,
    sums: 500,
  },
];

/** Evaluations per second of every path-loss and coupling model on one core. */
export function modelRows(): readonly Record<string, string>[] {
  return MODELS.map(({ name, sum, sums, aimPerSecond }) => {
    const { median, best } = ratePerSecond(sum, sums);
    return {
      model: name,
      'a second, median': grouped(median),
      'a second, best': grouped(best),
      aim: aimPerSecond === undefined ? '' : `${grouped(aimPerSecond)}: ${median >= aimPerSecond ? 'kept' : 'missed'}`,
    };
  });
}
