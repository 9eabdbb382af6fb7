import type { Part } from '../model/part.ts';
import { ANTENNAS } from './antennas.ts';
import { COAX } from './coax.ts';
import { CONDUCTORS } from './conductors.ts';
import { CONNECTORS } from './connectors.ts';
import { EQUIPMENT } from './equipment.ts';
import { INLINE_DEVICES } from './inlineDevices.ts';
import { POSITION_SOURCES } from './positionSources.ts';
import { POWER } from './power.ts';
import { RADIOS } from './radios.ts';
import { STANDALONE } from './standalone.ts';

/** Every part the program ships with: generic classes, each figure with its tolerance and source. */
export const CATALOGUE: readonly Part[] = [
  ...RADIOS,
  ...ANTENNAS,
  ...INLINE_DEVICES,
  ...POSITION_SOURCES,
  ...STANDALONE,
  ...POWER,
  ...EQUIPMENT,
  ...COAX,
  ...CONNECTORS,
  ...CONDUCTORS,
];
