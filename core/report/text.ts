import type { Assessment } from '../assess.ts';
import type { PathBudget } from '../links/types.ts';
import type { Project } from '../model/project.ts';
import type { RangeResult } from '../reach/types.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { GOVERNS } from './cautions.ts';
import { bandText, bare, distanceUnit, type SheetContext } from './context.ts';
import { sheetFinding, sortedFindings } from './sectionFindings.ts';
import { hasFeeder, openEndText, pathOutcome, pathTitle } from './sectionLosses.ts';
import { feederCost, rangeTitle, stationName } from './sectionRanges.ts';
import { textTable, wrapText } from './textTable.ts';
import { BASIS_WORDS, gradeLetter, itemTag, serviceOf } from './words.ts';

/** Columns of a plain terminal. */
const WIDTH = 100;

/** The assessment for a terminal: paths, ranges, feeds, failures and findings, no line longer than 100 columns. */
export function textReport(project: Project, assessment: Assessment, preferences: UnitPreferences): string {
  const context: SheetContext = { project, assessment, preferences, paper: 'A4', date: '' };
  const sections = [
    headLines(context),
    ...assessment.paths.filter(hasFeeder).map((path) => pathLines(context, path)),
    rangeLines(context),
    feedLines(context),
    matrixLines(context),
    singlePointLines(context),
    findingLines(context),
    wrapText(GOVERNS, WIDTH),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

function heading(text: string): string[] {
  const [first = '', ...rest] = wrapText(text, WIDTH);
  return [first, ...rest, '='.repeat(Math.max(...[first, ...rest].map((line) => line.length)))];
}

function headLines(context: SheetContext): string[] {
  const { project } = context;
  const { items, runs, boat } = project;
  return [
    ...heading(`${boat.name}: ${project.layoutName}, revision ${project.revision}`),
    ...wrapText(`${items.length} items, ${runs.length} cable runs. ${project.purpose}`, WIDTH),
  ];
}

function pathLines(context: SheetContext, path: PathBudget): string[] {
  const rows = path.elements.map((element) => [
    element.label,
    bare(context, element.lossDb, 'dB', 2),
    bare(context, element.runningLossDb, 'dB', 2),
    bare(context, element.wattsOut, 'W', 2),
    bare(context, element.shareLostPercent, 'percent', 0),
    BASIS_WORDS[element.basis],
  ]);
  return [
    ...heading(pathTitle(context, path)),
    ...wrapText(`${pathOutcome(context, path)}. Open-end VSWR ${openEndText(context, path)}.`, WIDTH),
    ...textTable(
      [
        'Element',
        { head: 'dB', end: true },
        { head: 'sum dB', end: true },
        { head: 'W out', end: true },
        { head: '% lost', end: true },
        'known by',
      ],
      rows,
      WIDTH,
    ),
  ];
}

function rangeLines(context: SheetContext): string[] {
  const { ranges } = context.assessment;
  if (ranges.length === 0) return [];
  const unit = distanceUnit(context);
  const row = (result: RangeResult): string[] => [
    rangeTitle(context, result),
    stationName(context, result),
    bare(context, result.dependable.nominalKm, 'km', 1),
    bandText(context, result.dependable),
    bare(context, result.typical.nominalKm, 'km', 1),
    bare(context, result.horizonKm, 'km', 1),
    feederCost(context, result, result.feederCostDependableKm),
  ];
  return [
    ...heading(`Ranges over open sea, ${unit}`),
    ...wrapText(
      'Dependable holds after the real-life margin: plan on it. Typical is the median level, half the time less. ' +
        'The horizon is a landmark, not a limit. Feeder: what the cable costs of the dependable range.',
      WIDTH,
    ),
    ...textTable(
      [
        'Radio',
        'To',
        { head: 'dependable', end: true },
        { head: 'band', end: true },
        { head: 'typical', end: true },
        { head: 'horizon', end: true },
        { head: 'feeder', end: true },
      ],
      ranges.map(row),
      WIDTH,
    ),
  ];
}

function feedLines(context: SheetContext): string[] {
  const { feeds } = context.assessment;
  if (feeds.length === 0) return [];
  return [
    ...heading('DC feeds'),
    ...textTable(
      [
        'Load',
        { head: 'A', end: true },
        { head: 'drop V', end: true },
        { head: 'drop %', end: true },
        { head: 'limit %', end: true },
        'protection',
      ],
      feeds.map((feed) => [
        itemTag(context.project, feed.loadId),
        bare(context, feed.currentA, 'A', 1),
        bare(context, feed.totalDropV, 'V', 2),
        bare(context, feed.totalDropPercent, 'percent', 1),
        bare(context, feed.limitPercent, 'percent', 1),
        feed.protection.verdict.replaceAll('-', ' '),
      ]),
      WIDTH,
    ),
  ];
}

function matrixLines(context: SheetContext): string[] {
  const { matrix, services } = context.assessment.redundancy;
  const codes = services.map(serviceOf);
  return [
    ...heading('What one failure takes away (F full, R reduced, – lost)'),
    ...textTable(
      ['When this fails', ...codes.map(({ code }) => code)],
      matrix.map((row) => [row.event.label, ...row.states.map((state) => gradeLetter(state.grade))]),
      WIDTH,
    ),
    ...wrapText(codes.map(({ code, name }) => `${code} ${name}`).join('; '), WIDTH),
  ];
}

function singlePointLines(context: SheetContext): string[] {
  const { singlePoints, components } = context.assessment.redundancy;
  if (singlePoints.length === 0) return [];
  const labels = new Map(components.map((component) => [component.id, component.label]));
  return [
    ...heading('Single things that each take a service away'),
    ...textTable(
      ['Thing', 'Services lost with it'],
      singlePoints.map((point) => [
        labels.get(point.componentId) ?? point.componentId,
        point.serviceIds.map((id) => serviceOf(id).name).join('; '),
      ]),
      WIDTH,
    ),
  ];
}

function findingLines(context: SheetContext): string[] {
  const findings = sortedFindings(context.assessment.findings);
  if (findings.length === 0) return [...heading('Findings'), 'None.'];
  const lines = findings.flatMap((each) => {
    const finding = sheetFinding(context, each);
    const entry = (label: string, value: string): string[] => (value === '' ? [] : hanging(`      ${label}: `, value));
    return [
      ...hanging(`${finding.mark.padEnd(4)}  `, finding.title),
      ...entry('concerns', finding.concerns),
      ...entry('found', finding.measured),
      ...entry('limit', finding.limit),
      ...entry('whose rule', finding.authority),
      ...entry('do', finding.action),
      ...entry('overruled', finding.overruled ?? ''),
    ];
  });
  return [...heading('Findings (A safety, B soon, C note)'), ...lines];
}

/** A first line with its lead, the others under the text of the first. */
function hanging(lead: string, text: string): string[] {
  return wrapText(text, WIDTH - lead.length).map(
    (line, index) => (index === 0 ? lead : ' '.repeat(lead.length)) + line,
  );
}
