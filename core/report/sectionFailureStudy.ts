import { studyFailures } from '../redundancy/study.ts';
import type { FailureStudy, ServiceRisk } from '../redundancy/types.ts';
import { formatChance, formatNumber } from '../units/format.ts';
import type { SheetContext } from './context.ts';
import type { Block, SheetSection } from './types.ts';
import { serviceOf } from './words.ts';

/** What several failures together take away, how likely each service is to be down, and whether two alerts are independent. */
export function failureStudySection(context: SheetContext): SheetSection {
  const { project, assessment } = context;
  const hasWays = assessment.redundancy.ways.length > 0;
  const study = hasWays ? studyFailures(project, assessment.paths) : null;
  return {
    id: 'failure-study',
    title: 'Two or three failures together',
    page: 'flow',
    ownPage: false,
    blocks: study
      ? [independenceBlock(study), countBlock(study), pairBlock(study), ...chanceBlocks(context, study)]
      : [],
  };
}

function independenceBlock({ independence }: FailureStudy): Block {
  return {
    kind: 'facts',
    rows: [
      [
        'Two separate means of alerting the shore',
        `${independence.sentence} Asked for by the GMDSS (47 CFR 80.1081(a), SOLAS IV/4); no verdict on the boat.`,
      ],
    ],
  };
}

function countBlock({ cuts }: FailureStudy): Block {
  return {
    kind: 'table',
    caption: 'How many least sets take each service away: single things, pairs, threes. Common causes are counted too.',
    columns: [
      { header: 'Service', weight: 55, align: 'start' },
      { header: 'Alone', weight: 15, align: 'end' },
      { header: 'Two', weight: 15, align: 'end' },
      { header: 'Three', weight: 15, align: 'end' },
    ],
    rows: cuts.map(({ serviceId, lostFromStart, countByOrder }) => [
      serviceOf(serviceId).name,
      ...(lostFromStart ? ['lost as drawn', '', ''] : [0, 1, 2].map((order) => String(countByOrder[order] ?? 0))),
    ]),
    empty: 'No service has a way.',
  };
}

function pairBlock({ cuts, labels }: FailureStudy): Block {
  const names = (ids: readonly string[]): string => ids.map((id) => labels.get(id)?.label ?? id).join(', ');
  return {
    kind: 'table',
    caption: 'Pairs: any one of the left together with any one of the right takes the service away.',
    columns: [
      { header: 'Service', weight: 16, align: 'start' },
      { header: 'Any one of', weight: 42, align: 'start' },
      { header: 'with any one of', weight: 42, align: 'start' },
    ],
    rows: cuts.flatMap(({ serviceId, pairs }) =>
      pairs.map(({ either, or }) => [serviceOf(serviceId).name, names(either), names(or)]),
    ),
    empty: 'No pair takes a service away that neither of them would alone.',
  };
}

/** How many of the things that matter most are printed. */
const MOST_NAMED = 3;

function chanceBlocks(context: SheetContext, study: FailureStudy): readonly Block[] {
  const { passageDays } = context.project.settings.redundancy;
  const risks = study.cuts
    .filter(({ lostFromStart }) => !lostFromStart)
    .map(({ serviceId }) => study.riskOf(serviceId));
  const days = formatNumber(passageDays, Number.isInteger(passageDays) ? 0 : 1, context.preferences);
  return [
    {
      kind: 'table',
      caption: `Chance of being down at some time of a passage of ${days} days, nothing being mended under way`,
      columns: [
        { header: 'Service', weight: 28, align: 'start' },
        { header: 'Likely', weight: 12, align: 'end' },
        { header: 'Span', weight: 20, align: 'end' },
        {
          header: 'What matters most: share of the outages it would spare if it were perfect',
          weight: 40,
          align: 'start',
        },
      ],
      rows: risks.map((risk) => chanceRow(context, risk)),
      empty: 'No service has a way.',
    },
    {
      kind: 'paragraph',
      text:
        `${risks.every(({ isExact }) => isExact) ? 'The sum is exact' : 'Where ≈ stands only bounds are known'}; what goes ` +
        'into it is nearly always an assumption, for no usable failure rate of sets, plugs, whips or splitters is ' +
        'published. Use it to compare layouts, not as a promise.',
      tone: 'quiet',
    },
  ];
}

function chanceRow(context: SheetContext, { serviceId, low, nominal, high, isExact, rows }: ServiceRisk): string[] {
  const most = rows
    .filter(({ ifPerfect }) => (ifPerfect ?? 0) >= 0.005)
    .slice(0, MOST_NAMED)
    .map(({ label, ifPerfect }) => `${label} ${Math.round(100 * (ifPerfect ?? 0))} %`);
  const percent = (chance: number): string => formatChance(chance, context.preferences);
  const likely = `${isExact ? '' : '≈ '}${percent(nominal)}`;
  return [serviceOf(serviceId).name, likely, `${percent(low)} to ${percent(high)}`, most.join(', ')];
}
