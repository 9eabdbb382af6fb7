import { geostationarySight } from '../../../core/propagation/satellite.ts';
import { BLOCKED_DB, COUNTED_FROM_DEG } from '../../../core/siting/skyShares.ts';
import type { SkyObstacle, SkyView } from '../../../core/siting/types.ts';
import { q, type RichText } from '../../../core/units/quantity.ts';
import type { Direction } from './skyLayout.ts';

/** How much of the sky is gone, in one sentence. */
export function skySummary(view: SkyView): RichText {
  if (view.isShut) return ['No sky at all: it stands below metal or carbon.'];
  if (view.obstacles.length === 0) return ['Nothing stands in the way: the whole sky is open.'];
  return [
    percentOf(view.blockedPercent),
    ' of the sky above ',
    q(COUNTED_FROM_DEG, 'degree'),
    ' is blocked, ',
    percentOf(view.weakenedPercent),
    ' blocked or weakened.',
  ];
}

const percentOf = (value: number) => q(value, 'percent', value > 0 && value < 1 ? 1 : 0);

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

/** On how many headings of the circle something blocks the satellite, per cent. */
export function hiddenHeadingsPercent(elevationDeg: number, lossDb: (at: Direction) => number): number {
  const STEPS = 180;
  let hidden = 0;
  for (let step = 0; step < STEPS; step += 1) {
    if (lossDb({ azimuthDeg: (step * 360) / STEPS, elevationDeg }) >= BLOCKED_DB) hidden += 1;
  }
  return (100 * hidden) / STEPS;
}
