import { parseArgs } from 'node:util';
import type { Severity } from '../../core/audit/types.ts';
import { METRIC_PREFERENCES, type UnitPreferences } from '../../core/units/preferences.ts';

export const AUDIT_USAGE = `Usage: npm run -s audit -- FILE [options]

Assesses a boat's radio installation and prints paths, ranges, failures and findings.

  --out DIR            also write install-sheet.pdf, cable-schedule.csv, path-losses.csv,
                       profile.svg and assessment.json into DIR
  --json               print the whole assessment as JSON instead of the report
  --fail-on A|B|C      exit with 1 when a finding of this class or a graver one stands
  --paper A4|Letter    paper of the sheet (A4)
  --units metric|feet  metres and mm2, or feet and AWG (metric)
  --decimal point|comma  decimal mark; a comma makes the CSV separator a semicolon (point)
  --alternative NAME   assess a kept layout instead of the current one
  --help               print this

Exit status: 0 done, 1 findings at or above --fail-on, 2 bad input.
`;

export interface AuditArguments {
  readonly file: string;
  readonly out: string | null;
  readonly json: boolean;
  readonly failOn: Severity | null;
  readonly paper: 'A4' | 'Letter';
  readonly preferences: UnitPreferences;
  readonly alternative: string | null;
}

/**
 * Reads the command line. `null` means that help was asked for.
 * @throws Error with a sentence for the user when something is wrong with it
 */
export function parseAuditArguments(argv: readonly string[]): AuditArguments | null {
  const { values, positionals } = parseArgs({
    args: [...argv],
    allowPositionals: true,
    options: {
      out: { type: 'string' },
      json: { type: 'boolean', default: false },
      'fail-on': { type: 'string' },
      paper: { type: 'string', default: 'A4' },
      units: { type: 'string', default: 'metric' },
      decimal: { type: 'string', default: 'point' },
      alternative: { type: 'string' },
      help: { type: 'boolean', default: false },
    },
  });
  if (values.help) return null;
  const [file, second] = positionals;
  if (file === undefined) throw new Error('Name the document to audit: npm run -s audit -- boat.backstay');
  if (second !== undefined) throw new Error(`One document at a time: "${second}" is one too many.`);
  const feet = oneOf('--units', values.units, ['metric', 'feet']) === 'feet';
  const comma = oneOf('--decimal', values.decimal, ['point', 'comma']) === 'comma';
  return {
    file,
    out: values.out ?? null,
    json: values.json,
    failOn: values['fail-on'] === undefined ? null : oneOf<Severity>('--fail-on', values['fail-on'], ['A', 'B', 'C']),
    paper: oneOf('--paper', values.paper, ['A4', 'Letter']),
    preferences: {
      ...METRIC_PREFERENCES,
      ...(feet ? { length: 'ft', wire: 'awg' } : {}),
      decimal: comma ? ',' : '.',
    },
    alternative: values.alternative ?? null,
  };
}

function oneOf<T extends string>(option: string, value: string, allowed: readonly T[]): T {
  const found = allowed.find((each) => each.toLowerCase() === value.toLowerCase());
  if (found === undefined) throw new Error(`${option} is ${allowed.join(' or ')}, not "${value}".`);
  return found;
}
