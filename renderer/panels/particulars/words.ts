import type { Boat, Compartment, Fitting, Mast, Overhead } from '../../../core/model/boat.ts';
import type { DataLink, Measurement, Status } from '../../../core/model/project.ts';
import type { FeedProtection } from '../../../core/power/types.ts';
import { BASIS_WORDS, CARRIES_WORDS, LINK_STANDARD_WORDS } from '../../../core/report/words.ts';
import type { Unit } from '../../../core/units/quantity.ts';
import type { Option } from '../../app/Choice.tsx';

/** The entries of a choice from a table of words. */
export function optionsOf<K extends string>(words: Readonly<Record<K, string>>): readonly (Option & { id: K })[] {
  return Object.entries<string>(words).map(([id, name]) => ({ id: id as K, name }));
}

export const BOAT_KINDS: Readonly<Record<Boat['kind'], string>> = {
  sloop: 'Sloop',
  cutter: 'Cutter',
  ketch: 'Ketch',
  schooner: 'Schooner',
  catamaran: 'Catamaran',
  'motor-yacht': 'Motor yacht',
  trawler: 'Trawler',
  'open-boat': 'Open boat',
};

export const MATERIALS: Readonly<Record<Boat['hullMaterial'], string>> = {
  grp: 'GRP',
  wood: 'Wood',
  steel: 'Steel',
  aluminium: 'Aluminium',
  carbon: 'Carbon fibre',
  ferrocement: 'Ferrocement',
  fabric: 'Fabric',
};

export const FITTING_KINDS: Readonly<Record<Fitting['kind'], string>> = {
  arch: 'Arch',
  hardtop: 'Hardtop',
  'radar-pole': 'Radar pole',
  pulpit: 'Pulpit',
  pushpit: 'Pushpit',
  wheelhouse: 'Wheelhouse',
  flybridge: 'Flybridge',
  bowsprit: 'Bowsprit',
  pole: 'Pole',
};

export const STEPPED: Readonly<Record<Mast['stepped'], string>> = { deck: 'On deck', keel: 'On the keel' };

export const SIDES: Readonly<Record<Compartment['side'], string>> = {
  centre: 'Amidships',
  port: 'Port',
  starboard: 'Starboard',
};

export const OVERHEADS: Readonly<Record<Overhead, string>> = {
  open: 'Open sky',
  grp: 'GRP',
  wood: 'Wood',
  fabric: 'Fabric',
  metal: 'Metal',
  carbon: 'Carbon fibre',
};

export const STATUSES: Readonly<Record<Status, string>> = {
  keep: 'Keep',
  new: 'New',
  remove: 'Remove',
  unknown: 'Unknown',
  'not-accessible': 'Not accessible',
};

export const BASES = BASIS_WORDS;
export const CARRIES = CARRIES_WORDS;
export const LINK_STANDARDS = LINK_STANDARD_WORDS;
export type Carries = DataLink['carries'][number];

export const POLARISATIONS = { vertical: 'Vertical', horizontal: 'Horizontal', circular: 'Circular' } as const;

/** Traits that are yes or no, as a person would tick them. */
export const TRAIT_WORDS: Readonly<Record<string, string>> = {
  dsc: 'Can send a distress alert (DSC)',
  internalGnss: 'Has its own GNSS receiver',
  needsFixToTransmit: 'Transmits only with a fix',
  ownBattery: 'Runs on a battery of its own',
  portable: 'Can be taken off its mount',
  integralAntenna: 'Antenna inside',
  needsSupply: 'Needs a supply',
  transmitRated: 'Carries transmit power',
  display: 'Shows the position itself',
};

interface MeasurementWords {
  readonly name: string;
  readonly unit: Unit;
  readonly digits: number;
}

export const MEASUREMENTS: Readonly<Record<Measurement['kind'], MeasurementWords>> = {
  vswr: { name: 'VSWR', unit: 'ratio', digits: 2 },
  'open-end-vswr': { name: 'VSWR, far end open', unit: 'ratio', digits: 2 },
  'insertion-loss-db': { name: 'Insertion loss', unit: 'dB', digits: 2 },
  'forward-power-w': { name: 'Forward power', unit: 'W', digits: 1 },
  'reflected-power-w': { name: 'Reflected power', unit: 'W', digits: 2 },
  'supply-idle-v': { name: 'Supply at rest', unit: 'V', digits: 2 },
  'supply-transmit-v': { name: 'Supply on transmit', unit: 'V', digits: 2 },
};

/** What the engine says of a feed's fuse or breaker, as a sentence. */
export const VERDICTS: Readonly<Record<FeedProtection['verdict'], string>> = {
  good: 'Protected: the right size, close to the source.',
  missing: 'No fuse or breaker protects this feed.',
  'too-large': 'The fuse or breaker is larger than the conductor may have.',
  'too-far': 'The fuse or breaker sits too far from the source.',
  'too-small-for-load': 'The fuse or breaker is smaller than the load draws.',
};
