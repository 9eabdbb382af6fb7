import type { MarginItem } from './project.ts';

/**
 * What real life takes from a VHF path between yachts that no budget on paper shows, item by item. It is the step from
 * the typical range (median level just at the receiver's stated sensitivity) to the dependable one. Editable per
 * project. The sizes are judgement; their sum of 20 dB is not: it brings 25 W between two 20 m masts from about 30 nm
 * typical to the about 15 nm that people count on (docs/methods.md, "From loss to range").
 */
export const DEFAULT_MARGIN: readonly MarginItem[] = [
  {
    id: 'own-noise',
    label: "Own boat's noise (chargers, LED lamps, displays)",
    lossDb: 7,
    source:
      'ITU-R P.372 residential man-made noise at 156.8 MHz behind 3 dB of cable: system noise figure 13.4 dB against 6.2 dB',
  },
  {
    id: 'structure-shadow',
    label: 'Shadow of mast, rigging and superstructure, here or there',
    lossDb: 3,
    source: 'common practice, no source',
  },
  {
    id: 'roll-heel',
    label: 'Roll and heel of both boats',
    lossDb: 3,
    source: 'common practice, no source; 2.2 dB for one whip of 35° beamwidth at 15° by 12(θ/HPBW)²',
  },
  {
    id: 'ageing',
    label: 'Ageing of plugs, cable and antennas',
    lossDb: 2,
    source: 'common practice, no source',
  },
  {
    id: 'fading',
    label: 'Fading and sea state: the level is below its median half the time',
    lossDb: 5,
    source: 'common practice, no source',
  },
];

/** Sum of a margin, dB. */
export function marginDb(margin: readonly MarginItem[]): number {
  return margin.reduce((sum, item) => sum + item.lossDb, 0);
}
