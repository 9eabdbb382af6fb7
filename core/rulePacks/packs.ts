import { GMDSS_EQUIPMENT } from './packs/gmdssEquipment.ts';
import { GMDSS_FUNCTIONS } from './packs/gmdssFunctions.ts';
import { GMDSS_UPKEEP } from './packs/gmdssUpkeep.ts';
import { AUSTRALIAN_RACING, OSR_CATEGORY_2, OSR_LATER } from './packs/offshoreRacing.ts';
import { UK_CODES } from './packs/ukCodes.ts';
import { US_SMALL_VESSELS } from './packs/usSmallVessels.ts';
import type { RulePack } from './types.ts';

/** What stands beside every list of verdicts. */
export const STANDING =
  'A reading aid, no verdict on the boat. It reads the drawing to rules whose editions are old, partial or second-hand. What binds, and whether it is kept, is for the flag state, the notice of race and the surveyor to say.';

const NO_PLEASURE_BOAT = 'Binds no private pleasure boat.';

/** Every rule pack, in the order they are shown. */
export const PACKS: readonly RulePack[] = [
  {
    id: 'gmdss',
    name: 'GMDSS by sea area',
    edition: '47 CFR part 80 subpart W, text of 2008 to 2021',
    binds: `Ships of 300 GT and over and passenger ships on international voyages (from memory). ${NO_PLEASURE_BOAT}`,
    source:
      '47 CFR part 80 subpart W, which enacts SOLAS IV; SOLAS IV/13 and III/6.2 as restated; a Hong Kong schedule',
    asksSeaArea: true,
    rules: [...GMDSS_FUNCTIONS, ...GMDSS_EQUIPMENT, ...GMDSS_UPKEEP],
  },
  {
    id: 'us-small-vessels',
    name: 'US small commercial vessels',
    edition: '47 CFR part 80 and 46 CFR part 28, mirrored text, years not noted',
    binds: `The US commercial vessels that each rule names. ${NO_PLEASURE_BOAT}`,
    source: 'US FCC and Coast Guard rules',
    asksSeaArea: true,
    rules: US_SMALL_VESSELS,
  },
  {
    id: 'uk-codes',
    name: 'UK codes for small vessels',
    edition: 'MGN 280, Workboat Code edition 2, MGN 673, LY3, SI 1999/3210',
    binds: `UK vessels in commercial use, workboats and fishing vessels. ${NO_PLEASURE_BOAT}`,
    source: 'UK MCA codes and notices in published copies; UK legislation site',
    asksSeaArea: true,
    rules: UK_CODES,
  },
  {
    id: 'osr-2012-category-2',
    name: 'Offshore racing, category 2',
    edition: 'Offshore Special Regulations 2012-13',
    binds: 'Those who enter a race that says so, and no one else. The edition is old: the race’s own counts.',
    source: 'Offshore Special Regulations 2012-13, 3.29, as quoted word for word in a sailing forum',
    asksSeaArea: false,
    rules: OSR_CATEGORY_2,
  },
  {
    id: 'osr-later',
    name: 'Offshore racing, later editions in part',
    edition: 'Offshore Special Regulations, about 2017 and 2022',
    binds: 'Those who enter a race that says so, and no one else. Only fragments were seen, second-hand.',
    source: 'Quotations in the sailing press and a forum',
    asksSeaArea: false,
    rules: OSR_LATER,
  },
  {
    id: 'australia-2021',
    name: 'Offshore racing, Australia',
    edition: 'Australian Special Regulations 2021',
    binds: 'Those who enter an Australian race of category 1 or 2, and no one else.',
    source: 'The national authority’s correction notice of 8 July 2021, and one notice of race',
    asksSeaArea: false,
    rules: AUSTRALIAN_RACING,
  },
];
