import type { z } from 'zod';

/** One thing wrong with a value, in two sentences: what it is and how to mend it. */
export interface IssueText {
  readonly what: string;
  readonly mend: string;
}

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

const UNITS: readonly (readonly [RegExp, string])[] = [
  [/Percent$/, '%'],
  [/GPerM$/, 'g/m'],
  [/OhmPerKm$|ohmPerKm$/, 'ohm/km'],
  [/Dbm$/, 'dBm'],
  [/Dbi$/, 'dBi'],
  [/Db$/, 'dB'],
  [/Mhz$/, 'MHz'],
  [/Mm2$/, 'mm²'],
  [/Mm$/, 'mm'],
  [/Deg$/, '°'],
  [/Ohm$/, 'ohm'],
  [/Kn$/, 'kn'],
  [/Ah$/, 'Ah'],
  [/M$/, 'm'],
  [/W$/, 'W'],
  [/V$/, 'V'],
  [/A$/, 'A'],
];

const SPECIAL_WORDS: Readonly<Record<string, string>> = {
  loaM: 'length over all',
  lwlM: 'waterline length',
  hpbwDeg: 'half-power beamwidth',
  vswr: 'VSWR',
  dsc: 'DSC',
  internalGnss: 'internal GNSS',
  txPowerW: 'transmit power',
  txCurrentA: 'current on transmit',
  rxCurrentA: 'current on receive',
  rxSensitivityDbm: 'receiver sensitivity',
  xM: 'x (aft of the stem)',
  yM: 'y (port +, starboard −)',
  zM: 'z (above the waterline)',
  lossK1: 'loss factor k1',
  lossK2: 'loss factor k2',
};

/** What a key of the document is called in a sentence, and its unit (`''` for none): `measuredLengthM` is a "measured length" in m. */
export function fieldWords(key: string): { readonly words: string; readonly unit: string } {
  const unit = UNITS.find(([pattern]) => pattern.test(key));
  const special = SPECIAL_WORDS[key];
  if (special !== undefined) return { words: special, unit: unit?.[1] ?? '' };
  const bare = unit ? key.replace(unit[0], '') : key;
  const words = bare.replaceAll(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase();
  // x, y and z name axes and stay apart from the word they end.
  return { words: words === '' ? key : words, unit: unit?.[1] ?? '' };
}

/** A value as it is quoted in a sentence: short, never a whole object. */
export function shown(value: unknown): string {
  if (value === undefined) return 'missing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'a group of entries';
  if (typeof value === 'string') return `"${value.length > 40 ? `${value.slice(0, 40)}…` : value}"`;
  return String(value).replace(/^-/, '−');
}

/** The value at a path, or undefined. */
export function valueAt(root: unknown, path: Path): unknown {
  let value = root;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Readonly<Record<PropertyKey, unknown>>)[key];
  }
  return value;
}

/**
 * A schema issue in words a boat owner understands: what is wrong with which entry, what is allowed, how to mend it.
 * @param root the value that was parsed, to quote from
 * @param schema what it was parsed with, to name the whole allowed range
 */
export function issueText(issue: Issue, root: unknown, schema: z.ZodType): IssueText {
  const { words, unit } = fieldWords(namingKey(issue.path));
  const name = words.charAt(0).toUpperCase() + words.slice(1);
  const value = valueAt(root, issue.path);
  switch (issue.code) {
    case 'too_small':
    case 'too_big':
      return issue.origin === 'number' || issue.origin === 'int'
        ? rangeText(issue, { name, words, unit }, value, boundsAt(schema, issue.path, root))
        : emptyText(issue, name);
    case 'invalid_type':
      return typeText(issue, name, words, unit, value);
    case 'invalid_value':
      return choiceText(name, value, issue.values.map(String));
    case 'invalid_union':
      return 'options' in issue && Array.isArray(issue.options)
        ? choiceText(name, value, issue.options.map(String))
        : {
            what: `${name} is ${shown(value)}, which cannot be used here.`,
            mend: 'Put in plain text, a number, or yes/no.',
          };
    case 'unrecognized_keys':
      return {
        what: `${issue.keys.length === 1 ? 'The entry' : 'The entries'} ${issue.keys.map((key) => `"${key}"`).join(', ')} ${issue.keys.length === 1 ? 'is' : 'are'} not known here.`,
        mend: 'Check the spelling, or take it out.',
      };
    default:
      return { what: `${name} is ${shown(value)}, which is not allowed here.`, mend: 'Correct it, or take it out.' };
  }
}

/** Entries like `figures.gainDbi.value` are named after the figure, not after `value`. */
function namingKey(path: Path): string {
  const keys = path.filter((key): key is string => typeof key === 'string');
  const last = keys.at(-1) ?? 'document';
  if (last !== 'value' && last !== 'tolerance') return last;
  const figureKey = keys.at(-2) ?? last;
  return figureKey === 'measurements' ? last : figureKey;
}

interface Field {
  readonly name: string;
  readonly words: string;
  readonly unit: string;
}
interface Bounds {
  readonly min: number | null;
  readonly max: number | null;
}

function rangeText(
  issue: Extract<Issue, { code: 'too_small' | 'too_big' }>,
  field: Field,
  value: unknown,
  bounds: Bounds,
): IssueText {
  const isSmall = issue.code === 'too_small';
  const limit = issue.code === 'too_small' ? Number(issue.minimum) : Number(issue.maximum);
  const unit = field.unit === '' ? '' : ` ${field.unit}`;
  const rule = isSmall
    ? issue.inclusive
      ? `the least allowed is ${shown(limit)}${unit}`
      : `it must be above ${shown(limit)}${unit}`
    : `the most allowed is ${shown(limit)}${unit}`;
  return {
    what: `${field.name} is ${shown(value)}${unit}; ${rule}.`,
    mend: `${rangeWords(unit, bounds, !isSmall || issue.inclusive !== false)}`,
  };
}

function rangeWords(unit: string, { min, max }: Bounds, isInclusive: boolean): string {
  const from = min === null ? null : `${isInclusive ? 'from' : 'above'} ${shown(min)}`;
  if (from !== null && max !== null)
    return `Put in a value ${from} ${isInclusive ? 'to' : 'and up to'} ${shown(max)}${unit}.`;
  if (from !== null) return `Put in a value ${from}${unit}${isInclusive ? ' upward' : ''}.`;
  return max === null ? `Put in another value.` : `Put in a value of at most ${shown(max)}${unit}.`;
}

function emptyText(issue: Extract<Issue, { code: 'too_small' | 'too_big' }>, name: string): IssueText {
  if (issue.code === 'too_big') return { what: `${name} is too long.`, mend: `Keep it to ${issue.maximum}.` };
  return issue.origin === 'string'
    ? { what: `${name} is empty.`, mend: 'Write it out.' }
    : { what: `${name} is an empty list.`, mend: 'Put in at least one entry.' };
}

const TYPE_WORDS: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'text in quotation marks',
  boolean: 'true or false',
  array: 'a list in [ ]',
  object: 'a group of entries in { }',
  record: 'a group of entries in { }',
  null: 'null',
};

function typeText(
  issue: Extract<Issue, { code: 'invalid_type' }>,
  name: string,
  words: string,
  unit: string,
  value: unknown,
): IssueText {
  const wanted = TYPE_WORDS[issue.expected] ?? issue.expected;
  if (value === undefined) {
    return {
      what: `${name} is missing.`,
      mend: `Put in ${issue.expected === 'number' ? `the ${words} as a number${unit === '' ? '' : ` in ${unit}`}` : wanted}.`,
    };
  }
  if (typeof value === 'number' && !Number.isFinite(value)) {
    return { what: `${name} is ${Number.isNaN(value) ? 'not a number' : 'infinite'}.`, mend: 'Put in a number.' };
  }
  const isNumber = issue.expected === 'number' || issue.expected === 'int';
  const inUnit = isNumber && unit !== '' ? `, in ${unit}` : '';
  return {
    what: `${name} is ${shown(value)}; it has to be ${wanted}${inUnit}.`,
    mend: isNumber ? `Put in ${wanted} without quotation marks.` : `Put in ${wanted}.`,
  };
}

function choiceText(name: string, value: unknown, options: readonly string[]): IssueText {
  const list = options.map((option) => `"${option}"`).join(', ');
  const what =
    value === undefined ? `${name} is missing.` : `${name} is ${shown(value)}, which is not one of the choices.`;
  return { what, mend: options.length === 1 ? `It has to be ${list}.` : `Choose one of ${list}.` };
}

/** The least and greatest number the schema allows at a path; null where there is no bound. */
export function boundsAt(schema: z.ZodType, path: Path, root: unknown): Bounds {
  const found = schemaAt(schema, path, root);
  const { minValue, maxValue } = (found ?? {}) as { minValue?: number | null; maxValue?: number | null };
  return { min: finite(minValue), max: finite(maxValue) };
}

const finite = (value: number | null | undefined): number | null =>
  value !== undefined && value !== null && Number.isFinite(value) ? value : null;

/** Only what a walk down a schema needs to know of zod's definitions. */
interface Definition {
  readonly type: string;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly element?: z.ZodType;
  readonly innerType?: z.ZodType;
  readonly valueType?: z.ZodType;
  readonly options?: readonly z.ZodType[];
  readonly discriminator?: string;
}

function schemaAt(schema: z.ZodType | undefined, path: Path, value: unknown): z.ZodType | null {
  if (!schema) return null;
  const definition = schema.def as unknown as Definition;
  if (definition.innerType) return schemaAt(definition.innerType, path, value);
  const [key, ...rest] = path;
  if (key === undefined) return schema;
  if (definition.options) {
    const tag = definition.discriminator === undefined ? undefined : valueAt(value, [definition.discriminator]);
    const option = definition.options.find((candidate) => {
      const literal = (candidate.def as unknown as Definition).shape?.[definition.discriminator ?? ''];
      return literal?.safeParse(tag).success;
    });
    return schemaAt(option, path, value);
  }
  const next = definition.shape?.[String(key)] ?? definition.element ?? definition.valueType;
  return schemaAt(next, rest, valueAt(value, [key]));
}
