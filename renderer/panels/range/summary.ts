import type { LevelCurve } from '../../../core/reach/levelCurve.ts';
import type { RangeResult } from '../../../core/reach/types.ts';
import { q, type RichText } from '../../../core/units/quantity.ts';
import { LIMIT_WORDS } from './groups.ts';

/** The level curve in words, for those who do not see it. */
export function curveSummary(result: RangeResult, curve: LevelCurve, stationName: string): RichText {
  const { typical, dependable } = result;
  const near = curve.points[0];
  const far = curve.points.at(-1);
  const listener = result.limitedBy === 'transmit' ? stationName : 'your own set';
  const ends: RichText =
    near && far
      ? [
          'Median level at ',
          listener,
          ' falls from ',
          q(near.levelDbm, 'dBm', 0),
          ' at ',
          q(near.distanceKm, 'km'),
          ' to ',
          q(far.levelDbm, 'dBm', 0),
          ' at ',
          q(far.distanceKm, 'km'),
          '. ',
        ]
      : [];
  return [
    ...ends,
    'It meets the margin above the sensitivity, ',
    q(curve.dependableDbm, 'dBm', 0),
    ', at the dependable range, ',
    q(dependable.nominalKm, 'km'),
    ', and the sensitivity itself, ',
    q(curve.sensitivityDbm, 'dBm', 0),
    ', at the typical range, ',
    q(typical.nominalKm, 'km'),
    '. The horizon is at ',
    q(result.horizonKm, 'km'),
    `. Beyond the range ${LIMIT_WORDS[result.limitedBy]} first.`,
  ];
}

/** One station's ranges in words, as the title of its bar. */
export function barSummary(result: RangeResult, stationName: string): RichText {
  const { dependable, typical, horizonKm } = result;
  return [
    `${stationName}: dependable `,
    q(dependable.nominalKm, 'km'),
    ' (',
    q(dependable.lowKm, 'km'),
    ' to ',
    q(dependable.highKm, 'km'),
    '), typical ',
    q(typical.nominalKm, 'km'),
    ' (',
    q(typical.lowKm, 'km'),
    ' to ',
    q(typical.highKm, 'km'),
    '), horizon ',
    q(horizonKm, 'km'),
  ];
}
