import { AIM_SUMS } from './aimSums.ts';
import { COUPLING_SUMS } from './couplingSums.ts';
import { FEEDER_SUMS } from './feederSums.ts';
import { HF_SUMS } from './hfSums.ts';
import { PATH_SUMS } from './pathSums.ts';
import { REACH_SUMS } from './reachSums.ts';
import { RECEIVER_SUMS } from './receiverSums.ts';
import type { Given, Parameter, Reckoned, Sum } from './types.ts';
import { WIRE_SUMS } from './wireSums.ts';

/** Every sum of the bench. */
export const SUMS: readonly Sum[] = [
  ...FEEDER_SUMS,
  ...AIM_SUMS,
  ...HF_SUMS,
  ...PATH_SUMS,
  ...COUPLING_SUMS,
  ...REACH_SUMS,
  ...RECEIVER_SUMS,
  ...WIRE_SUMS,
];

/**
 * Does one sum from text, as typed on a command line or in a table. Numbers may have a decimal point or comma. Never
 * throws for what a person typed: it answers with the sentence that names the key, the allowed span and an example.
 */
export function reckon(sumId: string, typed: Readonly<Record<string, string>>): Reckoned {
  const sum = SUMS.find(({ id }) => id === sumId);
  if (!sum) return wrong(`There is no sum "${sumId}": take one of ${SUMS.map(({ id }) => id).join(', ')}.`);
  const unknown = Object.keys(typed).find((key) => !sum.parameters.some((parameter) => parameter.key === key));
  if (unknown !== undefined) return wrong(`${sum.id} knows no "${unknown}": it takes ${keysOf(sum)}.`);
  const values = new Map<string, number | string>();
  for (const parameter of sum.parameters) {
    const read = readValue(parameter, typed[parameter.key], sum);
    if (typeof read === 'object') return wrong(read.message);
    if (read !== undefined) values.set(parameter.key, read);
  }
  const choice = choiceFault(sum, values);
  if (choice !== null) return wrong(choice);
  try {
    return { ok: true, sum, answers: sum.reckon(givenOf(values)) };
  } catch (error) {
    if (error instanceof RangeError) return wrong(error.message);
    throw error;
  }
}

const wrong = (message: string): Reckoned => ({ ok: false, message });

function readValue(
  parameter: Parameter,
  text: string | undefined,
  sum: Sum,
): number | string | undefined | { readonly message: string } {
  const { key, fallback, choices } = parameter;
  if (text === undefined || text.trim() === '') {
    if (fallback !== undefined || sum.oneOf?.includes(key)) return fallback;
    return { message: `${sum.id} needs ${key}, ${inWords(parameter)}, e.g. ${key}=${parameter.example}.` };
  }
  if (parameter.kind === 'text') {
    if (!choices || choices.includes(text)) return text;
    return { message: `${key}=${text} must be one of ${choices.join(', ')}, e.g. ${key}=${parameter.example}.` };
  }
  const value = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i.test(text.trim())
    ? Number(text.trim().replace(',', '.'))
    : Number.NaN;
  if (value >= (parameter.min ?? -Infinity) && value <= (parameter.max ?? Infinity)) return value;
  return { message: `${key}=${text} must be ${inWords(parameter)}, e.g. ${key}=${parameter.example}.` };
}

/** What a parameter is, in words: `the length, 0 to 2000 m`. */
export function inWords(parameter: Parameter): string {
  const { label, unit, min, max, choices } = parameter;
  if (choices) return `the ${label}: ${choices.join(', ')}`;
  if (min === undefined || max === undefined) return `the ${label}`;
  return `the ${label}, ${min} to ${max}${unit === '' ? '' : ` ${unit}`}`;
}

function choiceFault(sum: Sum, values: ReadonlyMap<string, unknown>): string | null {
  if (!sum.oneOf) return null;
  const count = sum.oneOf.filter((key) => values.has(key)).length;
  if (count === 1) return null;
  const examples = sum.oneOf.map((key) => `${key}=${sum.parameters.find((p) => p.key === key)?.example ?? ''}`);
  return `${sum.id} takes exactly one of ${sum.oneOf.join(' and ')}, e.g. ${examples.join(' or ')}.`;
}

const keysOf = (sum: Sum): string => sum.parameters.map(({ key }) => key).join(', ');

function givenOf(values: ReadonlyMap<string, number | string>): Given {
  const numberOf = (key: string): number => {
    const value = values.get(key);
    if (typeof value !== 'number') throw new TypeError(`${key} is not a number of this sum.`);
    return value;
  };
  return { number: numberOf, text: (key) => String(values.get(key) ?? ''), has: (key) => values.has(key) };
}
