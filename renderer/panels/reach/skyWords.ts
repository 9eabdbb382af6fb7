import { geostationarySight } from '../../../core/propagation/satellite.ts';
import { BLOCKED_DB, COUNTED_FROM_DEG } from '../../../core/siting/skyShares.ts';
import type { SkyObstacle, SkyView } from '../../../core/siting/types.ts';
import { q, type RichText } from '../../../core/units/quantity.ts';
import { percent } from '../pathLoss/figures.ts';
import type { Direction } from './skyLayout.ts';

/** How much of the sky is gone, in one sentence. */
export function skySummary(view: SkyView): RichText {
  if (view.isShut) return ['No sky at all: it stands below metal or carbon.'];
  if (view.obstacles.length === 0) return ['Nothing stands in the way: the whole sky is open.'];
  const { blockedPercent, weakenedPercent } = view;
  const sky: RichText = [' of the sky above ', q(COUNTED_FROM_DEG, 'degree')];
  if (blockedPercent === 0) return ['Nothing blocks it; ', percent(weakenedPercent), ...sky, ' is weakened.'];
  if (weakenedPercent - blockedPercent < 0.5) return [percent(blockedPercent), ...sky, ' is blocked.'];
  return [
    percent(blockedPercent),
    ...sky,
    ' is blocked, ',
    percent(weakenedPercent - blockedPercent),
    ' more is weakened.',
  ];
}

/** `dead ahead`, `35° to starboard of the bow`, `right astern`. */
export function bearingWords(azimuthDeg: number): RichText {
  const bearing = Math.round(azimuthDeg) % 360;
  if (bearing === 0) return ['dead ahead'];
  if (bearing === 180) return ['right astern'];
  if (bearing === 90) return ['on the starboard beam'];
  if (bearing === 270) return ['on the port beam'];
  const [side, angle] = bearing < 180 ? ['starboard', bearing] : ['port', 360 - bearing];
  return angle <= 90
    ? [q(angle, 'degree'), ` to ${side} of the bow`]
    : [q(180 - angle, 'degree'), ` to ${side} of the stern`];
}

/** What is found in one direction. */
export function sightReading({ azimuthDeg, elevationDeg }: Direction, sight: Sight): RichText {
  const where: RichText =
    Math.round(elevationDeg) >= 90
      ? ['Straight up: ']
      : [...capital(bearingWords(azimuthDeg)), ', ', q(elevationDeg, 'degree'), ' up: '];
  if (sight.obstacle === null) return [...where, 'open sky.'];
  const what: RichText =
    sight.lossDb >= BLOCKED_DB
      ? [' blocks it, ', q(BLOCKED_DB, 'dB', 0), ' or more.']
      : [' takes ', q(sight.lossDb, 'dB', 1), '.'];
  return [...where, sight.obstacle.label, ...what];
}

/** What lies in one direction: the obstacle that takes most, and how much, dB. */
export interface Sight {
  readonly lossDb: number;
  readonly obstacle: SkyObstacle | null;
}

function capital(text: RichText): RichText {
  const [first, ...rest] = text;
  return typeof first === 'string' ? [first.slice(0, 1).toUpperCase() + first.slice(1), ...rest] : text;
}

/** What the orbit makes of an obstacle. */
export const ORBIT_NOTES: Readonly<Record<'low' | 'geostationary' | 'medium', string>> = {
  low:
    'Low satellites cross the whole sky in some minutes. An obstacle breaks the link while one passes behind it, ' +
    'so the share that is blocked is about the share of the time.',
  geostationary:
    'The satellite stands still over the equator. As the boat turns it runs once round the dashed ring, so what the ' +
    'ring crosses shuts it off on those headings.',
  medium:
    'Many satellites are up at once, all over the sky. A mast costs one of them now and then; what spreads over a ' +
    'quarter of the sky, or overhead, costs the fix.',
};

/** Height of a geostationary satellite, degrees above the horizon; null where it is below it. */
export function standingDeg(latitudeDeg: number, eastOfBoatDeg: number): number | null {
  const sight = geostationarySight(latitudeDeg, eastOfBoatDeg);
  return sight && sight.elevationDeg >= 0 ? sight.elevationDeg : null;
}

/** On which share of the circle of headings something blocks the satellite, and something only weakens it, per cent. */
export function headingShares(
  elevationDeg: number,
  lossDb: (at: Direction) => number,
): { readonly blockedPercent: number; readonly weakenedPercent: number } {
  const STEPS = 360;
  const losses = Array.from({ length: STEPS }, (_, step) => lossDb({ azimuthDeg: (step * 360) / STEPS, elevationDeg }));
  const share = (pick: (db: number) => boolean): number => (100 * losses.filter(pick).length) / STEPS;
  return {
    blockedPercent: share((db) => db >= BLOCKED_DB),
    weakenedPercent: share((db) => db > 0 && db < BLOCKED_DB),
  };
}
