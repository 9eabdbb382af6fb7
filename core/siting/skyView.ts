import { indexProject, overheadOf } from '../catalogue/lookup.ts';
import type { Overhead, Position } from '../model/boat.ts';
import type { Part } from '../model/part.ts';
import type { Item, Project } from '../model/project.ts';
import { boatThings, type Eye, type Thing } from './skyBodies.ts';
import { outline } from './skyGeometry.ts';
import { itemThings } from './skyItems.ts';
import { overheadLossDb } from './skyLoss.ts';
import { BLOCKED_DB, skyShares, spansAt } from './skyShares.ts';
import { type RigState, SAILS_DOWN, type SkyObstacle, type SkyView } from './types.ts';

/** What takes less than this is not listed, dB. */
const LEAST_DB = 0.2;
const GNSS_MHZ = 1575.42;
/** The zenith itself is one point of every ring around it. */
const HIGHEST_DEG = 89.999;
/** The horizon all round, up to the zenith. */
const WHOLE_SKY = [
  { azimuthDeg: 0, elevationDeg: 0 },
  { azimuthDeg: 360, elevationDeg: 0 },
  { azimuthDeg: 360, elevationDeg: 90 },
  { azimuthDeg: 0, elevationDeg: 90 },
] as const;

/**
 * What an antenna, or a set with its antenna inside, sees of the sky with the rig as said: outlines of what stands in the way in the
 * boat's own axes (azimuth from the bow clockwise, elevation above the horizon), each with its loss at the frequency the
 * item works on; what takes less than 0.2 dB is left out. Outlines are rings whose last point joins the first, above the horizon, with
 * azimuths that run on (below 0, beyond 360) so that no ring jumps; a thing overhead is closed through the zenith.
 * Not in it: people, rails, stays, spreaders, the boat's own hull, sails of carbon (the model does not know them), and whatever
 * the antenna stands in or on without a gap.
 * @throws RangeError for an item that is not there or whose part is unknown, heel beyond 60 degrees, a boom beyond 90
 */
export function skyView(project: Project, itemId: string, rig: RigState = SAILS_DOWN): SkyView {
  requireWithin('A heel', rig.heelDeg, 60);
  requireWithin('The angle of a boom', rig.boomDeg, 90);
  const { items, effective } = indexProject(project);
  const item = items.get(itemId);
  if (!item) throw new RangeError(`There is no item "${itemId}".`);
  const part = effective.get(itemId);
  if (!part)
    throw new RangeError(`${item.tag} is a part nobody knows ("${item.partId}"), so its view cannot be reckoned.`);
  const eye = { at: eyeOf(item, part), frequencyMhz: skyFrequencyMhz(part) };
  const things = [...boatThings(project.boat, eye, rig), ...itemThings(project, item, eye)];
  const overhead = overheadOf(project, item);
  const obstacles = [...overheadObstacle(overhead, eye), ...things.flatMap((thing) => obstacleOf(thing, rig.heelDeg))];
  return { obstacles, ...skyShares(obstacles), isShut: isShutUnder(overhead) };
}

/**
 * What stands in one direction: the obstacle that takes most, and its loss, dB; 0 and null under open sky.
 * @param azimuthDeg from the bow clockwise, any finite angle
 * @param elevationDeg above the horizon, 0 to 90
 * @throws RangeError outside those spans
 */
export function sightAt(
  view: SkyView,
  azimuthDeg: number,
  elevationDeg: number,
): { readonly lossDb: number; readonly obstacle: SkyObstacle | null } {
  if (!Number.isFinite(azimuthDeg)) throw new RangeError(`An azimuth must be a finite angle, not ${azimuthDeg}.`);
  if (!(elevationDeg >= 0 && elevationDeg <= 90)) {
    throw new RangeError(`An elevation must be 0 to 90 degrees, not ${elevationDeg}.`);
  }
  const azimuth = azimuthDeg - 360 * Math.floor(azimuthDeg / 360);
  let worst: SkyObstacle | null = null;
  for (const obstacle of view.obstacles) {
    const spans = spansAt(obstacle.outline, Math.min(HIGHEST_DEG, elevationDeg));
    const isThere = spans.some(([from, to]) => azimuth >= from && azimuth <= to);
    if (isThere && obstacle.lossDb > (worst?.lossDb ?? 0)) worst = obstacle;
  }
  return { lossDb: worst?.lossDb ?? 0, obstacle: worst };
}

/** Whether what is overhead shuts out the whole sky: metal and carbon do. */
export function isShutUnder(overhead: Overhead): boolean {
  return overhead === 'metal' || overhead === 'carbon';
}

const kindOf = (lossDb: number): SkyObstacle['kind'] => (lossDb >= BLOCKED_DB ? 'blocks' : 'weakens');

function obstacleOf({ body, key, label, subject, lossDb }: Thing, heelDeg: number): readonly SkyObstacle[] {
  if (lossDb < LEAST_DB) return [];
  const ring = outline(body, heelDeg);
  return ring ? [{ key, label, subject, kind: kindOf(lossDb), lossDb, outline: ring }] : [];
}

const OVERHEAD_WORDS: Readonly<Record<Overhead, string>> = {
  open: '',
  grp: 'GRP overhead',
  wood: 'Wood overhead',
  fabric: 'Cloth overhead',
  metal: 'Metal overhead',
  carbon: 'Carbon overhead',
};

function overheadObstacle(overhead: Overhead, eye: Eye): readonly SkyObstacle[] {
  const lossDb = overheadLossDb(overhead, eye.frequencyMhz);
  if (lossDb === 0) return [];
  const label = OVERHEAD_WORDS[overhead];
  return [{ key: 'overhead', label, subject: null, kind: kindOf(lossDb), lossDb, outline: WHOLE_SKY }];
}

/** The feed of an antenna; a set with its antenna inside, where it stands. */
function eyeOf(item: Item, part: Part): Position {
  if (part.kind !== 'antenna') return item.position;
  return { ...item.position, zM: item.position.zM + part.figures.feedHeightM.value };
}

/** What an item looks at the sky with, MHz; GNSS for what uses no satellite of its own. */
function skyFrequencyMhz(part: Part): number {
  if (part.kind === 'antenna') {
    return part.antennaClass === 'l-band' || part.antennaClass === 'dome' ? 1621 : GNSS_MHZ;
  }
  const isSatellite =
    (part.kind === 'radio' && /^(l-band|broadband)-/.test(part.radioClass)) ||
    (part.kind === 'standalone' &&
      ['beacon-406', 'personal-beacon', 'handheld-satellite'].includes(part.standaloneClass));
  return isSatellite ? (part.figures.frequencyMhz?.value ?? GNSS_MHZ) : GNSS_MHZ;
}

function requireWithin(what: string, angleDeg: number, limitDeg: number): void {
  if (!(Math.abs(angleDeg) <= limitDeg)) {
    throw new RangeError(`${what} must be -${limitDeg} to ${limitDeg} degrees, not ${angleDeg}.`);
  }
}
