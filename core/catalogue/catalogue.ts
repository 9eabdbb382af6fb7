import type { Part } from '../model/part.ts';

/** Every part the program ships with: generic classes, each figure with its tolerance and source. */
export const CATALOGUE: readonly Part[] = [];
