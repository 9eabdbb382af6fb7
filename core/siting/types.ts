import type { Subject } from '../model/project.ts';

/** What stands in an antenna's view of the sky, in the boat's own axes. */
export interface SkyObstacle {
  readonly key: string;
  readonly label: string;
  readonly subject: Subject | null;
  /** Blocks altogether (metal, carbon, people), or only some (a wet sail, GRP). */
  readonly kind: 'blocks' | 'weakens';
  /** Loss where it stands in the way, dB; 20 or more counts as blocked. */
  readonly lossDb: number;
  /** Outline: azimuth from the bow clockwise, elevation above the horizon, degrees. A closed ring. */
  readonly outline: readonly { readonly azimuthDeg: number; readonly elevationDeg: number }[];
}

export interface SkyView {
  readonly obstacles: readonly SkyObstacle[];
  /** Share of the sky above 10 degrees that is blocked, and that is blocked or weakened, per cent. */
  readonly blockedPercent: number;
  readonly weakenedPercent: number;
  /** The whole sky is shut: below deck under metal or carbon. */
  readonly isShut: boolean;
}

/** What the rig does while the reader looks at the sky; never saved. */
export interface RigState {
  readonly mainsail: 'set' | 'stowed';
  readonly headsail: 'set' | 'furled';
  /** Angle of the boom from the centreline, degrees; above 0 out to starboard. */
  readonly boomDeg: number;
  readonly heelDeg: number;
}

export const SAILS_DOWN: RigState = { mainsail: 'stowed', headsail: 'furled', boomDeg: 0, heelDeg: 0 };
