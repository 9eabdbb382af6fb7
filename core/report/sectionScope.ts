import type { Severity } from '../audit/types.ts';
import type { Material } from '../model/boat.ts';
import { GOVERNS } from './cautions.ts';
import { type SheetContext, show } from './context.ts';
import { printedDate } from './sheetDate.ts';
import type { Block, SheetSection } from './types.ts';
import { gradeLetter, serviceOf } from './words.ts';

const GRADE_WORDS = { F: 'full', R: 'reduced', '–': 'lost' } as const;

/** What this is about, what was found in brief, and what each word on the sheet means. */
export function scopeSection(context: SheetContext): SheetSection {
  return {
    id: 'scope',
    title: 'Scope and how to read this sheet',
    page: 'flow',
    ownPage: false,
    blocks: [
      { kind: 'paragraph', text: GOVERNS, tone: 'strong' },
      { kind: 'facts', rows: boatFacts(context) },
      ...briefBlocks(context),
      ...readingBlocks(context),
    ],
  };
}

function boatFacts(context: SheetContext): [string, string][] {
  const { project } = context;
  const { boat } = project;
  const lengths = `${show(context, boat.loaM, 'm', 2)} overall, ${show(context, boat.beamM, 'm', 2)} beam`;
  const depths = `${show(context, boat.draughtM, 'm', 2)} draught, ${show(context, boat.airDraughtM, 'm', 2)} air draught`;
  const rows: [string, string][] = [
    ['Vessel', boat.homePort === '' ? boat.name : `${boat.name}, ${boat.homePort}`],
    ['Kind', `${boat.kind.replace('-', ' ')}; ${lengths}, ${depths}`],
    ['Material', `hull ${materialWord(boat.hullMaterial)}, deck ${materialWord(boat.deckMaterial)}`],
    ['Layout', `${project.layoutName}, revision ${project.revision}`],
    ['Purpose', project.purpose],
    ['Prepared by', project.preparedBy],
    ['Date of sheet', printedDate(context.date)],
    ['Notes', project.notes],
  ];
  return rows.filter(([, value]) => value !== '');
}

function materialWord(material: Material): string {
  return material === 'grp' ? 'GRP' : material;
}

function briefBlocks(context: SheetContext): Block[] {
  const { findings, redundancy } = context.assessment;
  const open = (severity: Severity): number =>
    findings.filter((finding) => finding.severity === severity && finding.overruled === null).length;
  const overruled = findings.filter((finding) => finding.overruled !== null).length;
  const intact = redundancy.matrix.find((row) => row.event.kind === 'none');
  const services = (intact?.states ?? []).map((state) => {
    const { name } = serviceOf(state.serviceId);
    return [name, GRADE_WORDS[gradeLetter(state.grade)], state.reason];
  });
  return [
    { kind: 'heading', level: 2, text: 'In brief' },
    {
      kind: 'paragraph',
      text:
        `Findings: ${open('A')} of class A (safety, before use), ${open('B')} of class B (soon), ${open('C')} of class C ` +
        `(note)${overruled === 0 ? '' : `; ${overruled} overruled, printed with the reason`}. ` +
        `${redundancy.singlePoints.length} single things each take at least one service away.`,
      tone: 'plain',
    },
    {
      kind: 'table',
      caption: 'What the boat can do with nothing failed',
      columns: [
        { header: 'Service', weight: 30, align: 'start' },
        { header: 'State', weight: 10, align: 'start' },
        { header: 'By what, or why not', weight: 60, align: 'start' },
      ],
      rows: services,
      empty: 'No service could be worked out: add radios, antennas and cables to the drawing.',
    },
  ];
}

const HORIZON_WORDS = {
  'four-thirds-earth': 'four-thirds earth radius, 2.23 times the sum of the roots of the heights in metres, in NM',
  'trade-2.25': 'the trade’s round constant 2.25 times the sum of the roots of the heights in metres, in NM',
  'trade-2.2': 'the trade’s round constant 2.2 times the sum of the roots of the heights in metres, in NM',
  geometric: 'straight line over a bare sphere, without refraction',
} as const;

function readingBlocks(context: SheetContext): Block[] {
  const { settings } = context.project;
  const margin = settings.margin.reduce((sum, item) => sum + item.lossDb, 0);
  const axes = 'x aft of the stem, y to port (+) or starboard (−) of the centreline, z above the waterline';
  const decimal = (text: string): string => (context.preferences.decimal === ',' ? text.replaceAll('.', ',') : text);
  return [
    { kind: 'heading', level: 2, text: 'How to read it' },
    {
      kind: 'facts',
      rows: [
        ['Positions', axes],
        [
          'Known by',
          'Data sheet: a maker’s figure. Standard: a published standard. Measured: read on this boat. Computed: worked out ' +
            'from the others. Assumed: nobody has stated it; confirm before relying on it.',
        ],
        ['Horizon', `Geometric landmark, not a limit: ${decimal(HORIZON_WORDS[settings.horizonRule])}.`],
        [
          'Typical range',
          'The median level over calm open sea is just at the receiver’s stated sensitivity: half the time less.',
        ],
        [
          'Dependable range',
          `The level still holds after a real-life margin of ${show(context, margin, 'dB', 1)}, itemised under Ranges. ` +
            'Plan on this one. Neither range is a promise.',
        ],
        ['Letters', 'Findings: A safety, before use; B soon; C note. Failures: F full; R reduced; – lost.'],
        ['Status', 'Keep, new, remove, unknown (not yet traced), not accessible (could not be seen).'],
      ],
    },
  ];
}
