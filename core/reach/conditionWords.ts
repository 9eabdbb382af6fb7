import type { Conditions } from '../model/project.ts';

/** The surroundings a user states, in words: name and what it means aboard. */
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
