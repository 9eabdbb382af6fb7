import type { Assessment } from '../assess.ts';
import type { PathBudget } from '../links/types.ts';
import type { Project } from '../model/project.ts';
import { shownQuantity } from '../units/format.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import type { Unit } from '../units/quantity.ts';
import { type CsvCell, csvText } from './csv.ts';
import { type CableRow, cableRows } from './scheduleRows.ts';
import { BASIS_WORDS, itemTag, PATH_SERVICE_WORDS } from './words.ts';

const KIND_WORDS = { coax: 'coax', dc: 'DC', data: 'data' } as const;

/** Number of a measurable kind in the reader's unit; the unit itself is in the column's header. */
function numberCell(value: number | null, unit: Unit, digits: number, preferences: UnitPreferences): CsvCell {
  if (value === null) return null;
  const shown = shownQuantity({ value, unit, digits }, preferences);
  return { value: shown.value, digits: shown.digits };
}

/** A column of the schedule: its head and what a cable has in it. */
type CsvColumn = readonly [head: string, cell: (row: CableRow) => CsvCell];

/**
 * The cable schedule for a spreadsheet or a label printer: coax, DC feeds and data cables, one line each, with the
 * reader's units in the header. See `csvText` for separator, decimal mark and formulas.
 */
export function cableScheduleCsv(project: Project, assessment: Assessment, preferences: UnitPreferences): string {
  const columns = cableColumns(preferences);
  const rows = cableRows(project, assessment, preferences).map((row) => columns.map(([, cell]) => cell(row)));
  return csvText(
    columns.map(([head]) => head),
    rows,
    preferences,
  );
}

function cableColumns(preferences: UnitPreferences): readonly CsvColumn[] {
  const { length } = preferences;
  const metres = (value: number | null): CsvCell => numberCell(value, 'm', 2, preferences);
  return [
    ['No.', (row) => row.number],
    ['Kind', (row) => KIND_WORDS[row.kind]],
    ['Service', (row) => row.service],
    ['From (unit / port)', (row) => row.from],
    ['To (unit / port)', (row) => row.to],
    ['Type', (row) => row.type],
    [
      `Outside diameter (${length === 'ft' ? 'in' : 'mm'})`,
      (row) => numberCell(row.outsideDiameterMm, 'mm', 1, preferences),
    ],
    ['Route', (row) => row.route],
    [`Length (${length})`, (row) => metres(row.lengthM)],
    ['Length known by', (row) => row.lengthBasis],
    [`Slack (${length})`, (row) => metres(row.slackM)],
    [`Cut (${length})`, (row) => metres(row.cutM)],
    ['Joints', (row) => row.joints],
    ['Connector A', (row) => row.connectorA],
    ['Connector B', (row) => row.connectorB],
    ['Gland', (row) => row.gland],
    ['Fuse', (row) => row.fuse],
    ['Label A', (row) => row.labelA],
    ['Label B', (row) => row.labelB],
    ['Status', (row) => row.status],
    ['Tested (Y/N)', () => ''],
  ];
}

const LOSS_HEADER = [
  'Radio',
  'Antenna',
  'Service',
  'Frequency (MHz)',
  'Step',
  'Element',
  'Kind',
  'Loss (dB)',
  'Tolerance (dB)',
  'Running loss (dB)',
  'Power in (W)',
  'Power out (W)',
  'Share of the radio power lost here (%)',
  'Known by',
  'Source',
  'Sum',
] as const;

/** Every path's losses for a spreadsheet: one line per element, in order from the radio's socket to the antenna. */
export function pathLossCsv(project: Project, assessment: Assessment, preferences: UnitPreferences): string {
  const rows = assessment.paths.flatMap((path) => elementRows(project, path));
  return csvText(LOSS_HEADER, rows, preferences);
}

function elementRows(project: Project, path: PathBudget): CsvCell[][] {
  return path.elements.map((element, index) => [
    itemTag(project, path.radioId),
    itemTag(project, path.antennaId),
    PATH_SERVICE_WORDS[path.service],
    { value: path.frequencyMhz, digits: 3 },
    { value: index + 1, digits: 0 },
    element.label,
    element.kind,
    { value: element.lossDb, digits: 3 },
    { value: element.toleranceDb, digits: 3 },
    { value: element.runningLossDb, digits: 3 },
    element.wattsIn === null ? null : { value: element.wattsIn, digits: 3 },
    element.wattsOut === null ? null : { value: element.wattsOut, digits: 3 },
    { value: element.shareLostPercent, digits: 1 },
    BASIS_WORDS[element.basis],
    element.source,
    element.formula,
  ]);
}
