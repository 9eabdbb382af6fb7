import type { Common } from './define.ts';

export const SUBPART_W: Common = {
  edition: '47 CFR part 80 subpart W, text of 2008 to 2021',
  source: '47 CFR 80 subpart W, the US enactment of SOLAS IV, in mirrored copies of 2008 to 2021',
  strength: 'law',
  basis: 'read',
  appliesTo: 'ships of 300 GT and over and passenger ships on international voyages, US flag; the GT is from memory',
};
