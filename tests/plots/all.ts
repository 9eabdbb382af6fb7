import { ANTENNA_FIGURES } from './antennaFigures.ts';
import type { Figure } from './figures.ts';
import { OTHER_FIGURES } from './otherFigures.ts';
import { SEA_FIGURES } from './seaFigures.ts';

export const PICTURES = 'docs/pictures/methods';
export const ALL_FIGURES: readonly Figure[] = [...SEA_FIGURES, ...ANTENNA_FIGURES, ...OTHER_FIGURES];
