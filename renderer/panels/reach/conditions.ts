import type { Conditions } from '../../../core/model/project.ts';
import type { Unit } from '../../../core/units/quantity.ts';

export const NOISE_CHOICES: readonly {
  readonly id: Conditions['noise'];
  readonly name: string;
  readonly note: string;
}[] = [
  { id: 'city', name: 'City', note: 'beside a port or a town; also the noise of an untidy boat of one’s own' },
  { id: 'residential', name: 'Residential', note: 'a marina with shore power' },
  { id: 'rural', name: 'Rural', note: 'at anchor, own chargers and screens off' },
  { id: 'quiet-rural', name: 'Quiet rural', note: 'out at sea with everything noisy switched off' },
];

export const LIGHTNING_CHOICES: readonly {
  readonly id: Conditions['lightning'];
  readonly name: string;
  readonly note: string;
}[] = [
  { id: 'none', name: 'None', note: 'the man-made floor alone' },
  { id: 'moderate', name: 'Moderate', note: 'temperate waters by day' },
  { id: 'strong', name: 'Strong', note: 'temperate summer nights, the tropics by day' },
  { id: 'severe', name: 'Severe', note: 'tropical nights, storms within some hundred miles' },
];

export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

export type ConditionNumber = 'foF2DayMhz' | 'foF2NightMhz' | 'm3000' | 'sunspotNumber' | 'latitudeDeg';

/** The figures of the ionosphere with their spans, which are those of the document, and where one gets them. */
export const CONDITION_FIELDS: readonly {
  readonly key: ConditionNumber;
  readonly label: string;
  readonly unit: Unit;
  readonly digits: number;
  readonly min: number;
  readonly max: number;
  readonly hint: string;
}[] = [
  {
    key: 'foF2DayMhz',
    label: 'foF2 by day, its highest',
    unit: 'MHz',
    digits: 1,
    min: 0.5,
    max: 25,
    hint: 'Usual: 5 to 14. From an ionosonde’s page or a map of a public space-weather service.',
  },
  {
    key: 'foF2NightMhz',
    label: 'foF2 by night, its lowest',
    unit: 'MHz',
    digits: 1,
    min: 0.5,
    max: 25,
    hint: 'Usual: 2 to 6, lowest just before dawn.',
  },
  {
    key: 'm3000',
    label: 'M(3000)F2',
    unit: 'ratio',
    digits: 2,
    min: 2,
    max: 4,
    hint: 'Usual: 2.5 to 3.5. The same pages give it; 3.0 where they do not.',
  },
  {
    key: 'sunspotNumber',
    label: 'Sunspot number R12',
    unit: 'count',
    digits: 0,
    min: 0,
    max: 300,
    hint: 'Mean of twelve months: 10 in a quiet year, 150 in a busy one. Decides the E layer.',
  },
  {
    key: 'latitudeDeg',
    label: 'Latitude, south negative',
    unit: 'degree',
    digits: 0,
    min: -90,
    max: 90,
    hint: 'For the height of the sun and of a geostationary satellite.',
  },
];

/** What is set, in one line. */
export function conditionsSummary(conditions: Conditions): string {
  const noise = NOISE_CHOICES.find(({ id }) => id === conditions.noise)?.name.toLowerCase() ?? conditions.noise;
  const lightning = conditions.lightning === 'none' ? 'no lightning' : `${conditions.lightning} lightning`;
  return `${noise} noise, ${lightning}, ${MONTHS[conditions.month - 1] ?? ''}`;
}
