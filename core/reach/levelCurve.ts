import { indexProject } from '../catalogue/lookup.ts';
import type { Project } from '../model/project.ts';
import { seaPathLossDb } from '../propagation/sphericalEarth.ts';
import type { LevelPoint, RangeResult } from './types.ts';

export interface LevelCurveOptions {
  /** First and last distance, km; 0.1 and a little beyond the typical range when left out. */
  readonly fromKm?: number;
  readonly toKm?: number;
  /** Number of points, 2 to 2000; 120 when left out. */
  readonly points?: number;
  readonly spacing?: 'linear' | 'logarithmic';
}

/** Median level against distance at whichever receiver gives out first, with what it is held against. */
export interface LevelCurve {
  readonly points: readonly LevelPoint[];
  /** The limiting receiver's stated sensitivity: the curve meets it at the typical range. */
  readonly sensitivityDbm: number;
  /** Sensitivity plus margin: the curve meets it at the dependable range. */
  readonly dependableDbm: number;
  readonly horizonKm: number;
}

/**
 * The level curve of one range.
 * @throws RangeError for distances that are not above 0 and rising, or a count of points out of span
 */
export function levelCurve(project: Project, range: RangeResult, options: LevelCurveOptions = {}): LevelCurve {
  const sensitivityDbm = limitingSensitivityDbm(project, range);
  const station = project.stations.find(({ id }) => id === range.stationId);
  const path = { frequencyMhz: range.frequencyMhz, h1M: range.ownHeightM, h2M: station?.antennaHeightM ?? 0 };
  const points = distancesKm(range, options).map((distanceKm) => ({
    distanceKm,
    levelDbm: sensitivityDbm + range.maxLossTypicalDb - seaPathLossDb({ ...path, distanceKm }),
  }));
  return { points, sensitivityDbm, dependableDbm: sensitivityDbm + range.marginDb, horizonKm: range.horizonKm };
}

function limitingSensitivityDbm(project: Project, range: RangeResult): number {
  if (range.limitedBy === 'transmit') {
    const station = project.stations.find(({ id }) => id === range.stationId);
    if (station) return station.sensitivityDbm;
  } else {
    const part = indexProject(project).effective.get(range.itemId);
    if (part?.kind === 'radio' || part?.kind === 'standalone') return part.figures.rxSensitivityDbm.value;
  }
  throw new RangeError('This range does not belong to this project.');
}

function distancesKm(range: RangeResult, options: LevelCurveOptions): number[] {
  const count = options.points ?? 120;
  const fromKm = options.fromKm ?? 0.1;
  const toKm = options.toKm ?? Math.max(2 * fromKm, 1.15 * Math.max(range.typical.highKm, range.horizonKm));
  if (!(fromKm > 0 && toKm > fromKm))
    throw new RangeError(`Distances must rise from above 0 km, not ${fromKm} to ${toKm}.`);
  if (!(Number.isInteger(count) && count >= 2 && count <= 2000)) {
    throw new RangeError(`A curve has 2 to 2000 points, not ${count}.`);
  }
  return Array.from({ length: count }, (_, i) => {
    const share = i / (count - 1);
    return options.spacing === 'logarithmic' ? fromKm * (toKm / fromKm) ** share : fromKm + share * (toKm - fromKm);
  });
}
