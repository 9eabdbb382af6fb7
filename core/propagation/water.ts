/** Water a path runs over. */
export type Water = 'sea' | 'fresh-water';

export interface WaterConstants {
  readonly permittivity: number;
  readonly conductivitySPerM: number;
}

/**
 * Electrical constants. Sea: as Rec. ITU-R P.1812, P.452 and P.2001 take them. Fresh water: from memory; published sets run
 * from 80 and 0.003 S/m to 81 and 0.01 S/m, which at VHF and above is the same loss to a hundredth of a decibel.
 */
export const WATERS: Readonly<Record<Water, WaterConstants>> = {
  sea: { permittivity: 80, conductivitySPerM: 5 },
  'fresh-water': { permittivity: 80, conductivitySPerM: 0.01 },
};
