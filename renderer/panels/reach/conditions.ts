import type { Conditions } from '../../../core/model/project.ts';
import { MONTHS, NOISE_CHOICES } from '../../../core/reach/conditionWords.ts';
import type { Unit } from '../../../core/units/quantity.ts';

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
