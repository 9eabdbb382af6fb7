import type { LevelCurve } from '../../../core/reach/levelCurve.ts';
import type { LevelPoint } from '../../../core/reach/types.ts';
import { q, type RichText } from '../../../core/units/quantity.ts';

/** Median level at a distance, dBm, read between the points of a curve; its ends hold beyond it. */
export function levelAtDbm(points: readonly LevelPoint[], distanceKm: number): number | null {
  const [first] = points;
  const last = points.at(-1);
  if (!first || !last) return null;
  if (distanceKm <= first.distanceKm) return first.levelDbm;
  const index = points.findIndex((point) => point.distanceKm >= distanceKm);
  const [before, after] = [points[index - 1], points[index]];
  if (!before || !after) return last.levelDbm;
  const share = (distanceKm - before.distanceKm) / (after.distanceKm - before.distanceKm);
  return before.levelDbm + share * (after.levelDbm - before.levelDbm);
}

/** A level at a distance in words: `At 10.0 NM: −92 dBm ± 5 dB, 15 dB over the sensitivity, 5 dB short of the margin`. */
export function readingWords(curve: LevelCurve, distanceKm: number): RichText {
  const levelDbm = levelAtDbm(curve.points, distanceKm);
  if (levelDbm === null) return [];
  const over = levelDbm - curve.sensitivityDbm;
  const spare = levelDbm - curve.dependableDbm;
  return [
    'At ',
    q(distanceKm, 'km'),
    ': ',
    q(levelDbm, 'dBm', 0),
    ' ± ',
    q(curve.bandDb, 'dB', 0),
    ', ',
    q(Math.abs(over), 'dB', 0),
    over >= 0 ? ' over the sensitivity' : ' under the sensitivity',
    ...(over >= 0
      ? [', ', q(Math.abs(spare), 'dB', 0), spare >= 0 ? ' more than the margin asks' : ' short of the margin']
      : []),
  ];
}
