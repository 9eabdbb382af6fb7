import type { Part } from '../../../core/model/part.ts';
import { type ItemFacts, itemFactsSchema, type RunFacts, runFactsSchema } from '../../../core/model/project.ts';
import type { Unit } from '../../../core/units/quantity.ts';
import { OVERHEADS } from './words.ts';

/** How one fact is asked for: as yes or no, from a list, as a number with a unit, or as a text. */
export type FactKind =
  | { readonly type: 'yes-no'; readonly yes?: string; readonly no?: string }
  | { readonly type: 'choice'; readonly words: Readonly<Record<string, string>> }
  | {
      readonly type: 'number';
      readonly unit: Unit;
      readonly digits: number;
      readonly min: number;
      readonly max: number;
    }
  | { readonly type: 'text' };
export type FactSpec = { readonly label: string } & FactKind;

const metres = (label: string, min = 0, max = 2000): FactSpec => ({
  label,
  type: 'number',
  unit: 'm',
  digits: 2,
  min,
  max,
});
const yesNo = (label: string, yes?: string, no?: string): FactSpec => ({
  label,
  type: 'yes-no',
  ...(yes === undefined ? {} : { yes }),
  ...(no === undefined ? {} : { no }),
});
const choice = (label: string, words: Readonly<Record<string, string>>): FactSpec => ({ label, type: 'choice', words });

export const ITEM_FACTS: Readonly<Record<keyof ItemFacts, FactSpec>> = {
  overhead: choice('What is overhead here', OVERHEADS),
  outdoors: yesNo('Outdoors'),
  wet: yesNo('Found wet or corroded', 'Yes, wet or corroded', 'No, dry'),
  seal: choice('Seal', { none: 'None', tape: 'Tape only', sealed: 'Self-amalgamating or heat-shrink' }),
  mount: choice('Mount', { metal: 'Metal', insulated: 'Insulated' }),
  charged: yesNo('Battery charged'),
  unpluggedInStorms: yesNo('Unplugged when lightning is about'),
  inGrabBag: yesNo('In or beside the grab bag'),
  registration: choice('Registered to', {
    'this-boat': 'This boat',
    'another-owner': 'Another owner',
    none: 'Nobody',
  }),
  bracket: choice('Bracket', { manual: 'Manual release', 'float-free': 'Float-free' }),
  leadLengthM: metres('Length of its lead'),
  leadConnector: { label: 'Plug on its lead', type: 'text' },
  lowerInsulatorAboveDeckM: metres('Lower insulator above deck'),
  insulatorSleeved: yesNo('Lower end sleeved'),
  earthTo: choice('Earth strap goes to', {
    'hull-stud': 'Hull stud',
    plate: 'Earth plate',
    seacock: 'Seacock',
    none: 'Nothing',
  }),
  nearestPersonM: metres('Nearest seat or standing place'),
  leadInInsideMetalM: metres('Lead-in inside a metal hull'),
  standingEyeZM: metres('Eye of a standing person, above water', -20, 150),
  nearestMetalM: metres('Nearest metal structure'),
  shadowPoleDiameterM: metres('Diameter of a pole before it', 0.01),
  shadowPoleDistanceM: metres('Distance of that pole', 0.01),
  foldsDown: yesNo('Folded down under way at times'),
};

export const RUN_FACTS: Readonly<Record<keyof RunFacts, FactSpec>> = {
  coiledM: metres('Surplus coiled up'),
  neededLengthM: metres('Length the route would need'),
  supported: yesNo('Supported along its way'),
  bendRadiusMm: { label: 'Tightest bend found (radius)', type: 'number', unit: 'mm', digits: 0, min: 1, max: 10_000 },
  powerCableGapMm: { label: 'Gap to a power cable', type: 'number', unit: 'mm', digits: 0, min: 0, max: 100_000 },
  powerCableAlongM: metres('Beside that power cable for'),
  insideMetalM: metres('Lead-in inside a metal hull'),
  wet: yesNo('Water in the cable', 'Yes, wet', 'No, dry'),
};

export type ItemFactKey = keyof ItemFacts;
export type RunFactKey = keyof RunFacts;
export const RUN_FACT_KEYS = Object.keys(runFactsSchema.shape) as RunFactKey[];

/**
 * The facts worth asking of an item: those that mean something for such a part, then any other that is already recorded,
 * so that nothing in the document is out of reach.
 */
export function itemFactKeys(part: Part | undefined, known: ItemFacts): ItemFactKey[] {
  const asked = part ? factsOf(part) : [];
  const recorded = (Object.keys(itemFactsSchema.shape) as ItemFactKey[]).filter((key) => known[key] !== undefined);
  return [...new Set([...asked, ...recorded])];
}

function factsOf(part: Part): readonly ItemFactKey[] {
  switch (part.kind) {
    case 'antenna':
      return antennaFacts(part);
    case 'inline':
      return inlineFacts(part);
    case 'radio': {
      const portable: ItemFactKey[] = part.traits.portable || part.traits.ownBattery ? ['charged', 'inGrabBag'] : [];
      const dome: ItemFactKey[] = part.traits.integralAntenna ? ['overhead', 'nearestPersonM'] : [];
      const sky: ItemFactKey[] = part.traits.internalGnss ? ['overhead'] : [];
      return ['unpluggedInStorms', ...portable, ...dome, ...sky];
    }
    case 'standalone': {
      const beacon: ItemFactKey[] = ['registration', 'bracket'];
      const isBeacon = part.standaloneClass === 'beacon-406' || part.standaloneClass === 'personal-beacon';
      return ['charged', 'inGrabBag', 'unpluggedInStorms', ...(isBeacon ? beacon : []), 'overhead'];
    }
    case 'position-source':
      return ['overhead', 'outdoors'];
    case 'equipment':
      return part.equipmentClass === 'radar' ? ['standingEyeZM', 'nearestPersonM'] : ['outdoors'];
    default:
      return [];
  }
}

function antennaFacts(part: Extract<Part, { kind: 'antenna' }>): readonly ItemFactKey[] {
  const siting: ItemFactKey[] = [
    'mount',
    'nearestMetalM',
    'nearestPersonM',
    'foldsDown',
    'shadowPoleDiameterM',
    'shadowPoleDistanceM',
  ];
  switch (part.antennaClass) {
    case 'hf-wire':
      return ['lowerInsulatorAboveDeckM', 'insulatorSleeved', 'nearestPersonM', 'nearestMetalM'];
    case 'hf-whip':
      return [...siting, 'lowerInsulatorAboveDeckM', 'insulatorSleeved'];
    case 'vhf-emergency':
      return ['leadLengthM', 'leadConnector'];
    case 'gnss':
    case 'l-band':
    case 'dome':
      return [...siting, 'overhead'];
    default:
      return siting;
  }
}

function inlineFacts(part: Extract<Part, { kind: 'inline' }>): readonly ItemFactKey[] {
  const wetness: ItemFactKey[] = ['wet', 'seal', 'outdoors'];
  return part.deviceClass === 'tuner' ? ['earthTo', 'leadInInsideMetalM', ...wetness] : wetness;
}
