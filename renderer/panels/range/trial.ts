import { AT_REST, type RangeResult, type TrialState } from '../../../core/reach/types.ts';
import { q, type RichText } from '../../../core/units/quantity.ts';

/** Most heel and roll the controls offer, degrees; the engine takes more. */
export const MOST_HEEL_DEG = 45;
export const MOST_ROLL_DEG = 30;

/** Where the other station lies, as people say it. */
export const BEARINGS: readonly { readonly id: number; readonly name: string }[] = [
  { id: 0, name: 'ahead' },
  { id: 90, name: 'to starboard' },
  { id: 180, name: 'astern' },
  { id: 270, name: 'to port' },
];

export const TIMES: readonly { readonly id: TrialState['timePercent']; readonly name: string }[] = [
  { id: 50, name: '50 %' },
  { id: 90, name: '90 %' },
  { id: 99, name: '99 %' },
];

export const POWERS: readonly { readonly id: TrialState['power']; readonly name: string }[] = [
  { id: 'full', name: 'full' },
  { id: 'low', name: 'low' },
];

/** `12° to starboard`, `upright`. */
export function heelWords(heelDeg: number): RichText {
  if (heelDeg === 0) return ['upright'];
  return [q(Math.abs(heelDeg), 'degree'), heelDeg > 0 ? ' to starboard' : ' to port'];
}

/** `10° either way`, `none`. */
export function rollWords(rollDeg: number): RichText {
  return rollDeg === 0 ? ['none'] : [q(rollDeg, 'degree'), ' either way'];
}

/** Whether anything is tried that changes a range. Where the other one lies matters only once the boat leans. */
export function isTried(state: TrialState): boolean {
  return (
    state.heelDeg !== AT_REST.heelDeg ||
    state.rollDeg !== AT_REST.rollDeg ||
    state.power !== AT_REST.power ||
    state.timePercent !== AT_REST.timePercent
  );
}

/** What is tried, in words: `Heeled 20° to starboard, the other station abeam to starboard; low power`. */
export function trialWords(state: TrialState): RichText {
  const parts: RichText[] = [];
  if (state.heelDeg !== 0) parts.push(['heeled ', ...heelWords(state.heelDeg)]);
  if (state.rollDeg !== 0) parts.push(['rolling ', ...rollWords(state.rollDeg)]);
  if (parts.length > 0)
    parts.push([`the other station ${BEARINGS.find(({ id }) => id === state.bearingDeg)?.name ?? ''}`]);
  if (state.power === 'low') parts.push(['on low power']);
  if (state.timePercent !== 50) parts.push(['for ', q(state.timePercent, 'percent'), ' of the time']);
  const [first = ['at rest'], ...rest] = parts;
  const [word = '', ...others] = first;
  const start = typeof word === 'string' ? word.charAt(0).toUpperCase() + word.slice(1) : word;
  return [start, ...others, ...rest.flatMap((part) => [', ', ...part])];
}

/** What that did to the two ranges: `dependable 14.9 NM → 11.2 NM, typical …`. */
export function changeWords(upright: RangeResult, tried: RangeResult): RichText {
  const arrow = (name: string, from: number, to: number): RichText => [`${name} `, q(from, 'km'), ' → ', q(to, 'km')];
  return [
    ...arrow('dependable', upright.dependable.nominalKm, tried.dependable.nominalKm),
    ', ',
    ...arrow('typical', upright.typical.nominalKm, tried.typical.nominalKm),
  ];
}
