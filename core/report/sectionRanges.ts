import { explainRange } from '../reach/explain.ts';
import { type RangeExplanation, type RangeResult, SEA_SERVICE_WORDS, type UncertaintyShare } from '../reach/types.ts';
import { formatText } from '../units/format.ts';
import { bandText, bare, distanceUnit, type SheetContext, show } from './context.ts';
import { rangeChart } from './rangeChart.ts';
import type { Block, SheetSection } from './types.ts';
import { itemTag } from './words.ts';

const LIMIT_WORDS = { transmit: 'they hear you', receive: 'you hear them' } as const;

/** How far each radio reaches each other station, with what every distance promises. */
export function rangeSection(context: SheetContext): SheetSection {
  const { ranges } = context.assessment;
  return {
    id: 'ranges',
    title: 'Ranges',
    page: 'flow',
    ownPage: false,
    blocks: [
      {
        kind: 'paragraph',
        text:
          'Over open sea, antenna to antenna. The horizon is a landmark, not a limit. Typical: the median level is just ' +
          'enough for the receiver, so half the time it is not. Dependable: it still holds after the real-life margin; ' +
          'plan on this one. The band beside each is what the tolerances of the figures and 4 dB of the model make of it, ' +
          'combined as the root of the sum of their squares: a distance outside it would want several of them wrong at ' +
          'once. Gives out first: which way fails as the distance grows. Land, squalls, other traffic and noise shorten ' +
          'them all; nothing here promises that a call is answered.',
        tone: 'plain',
      },
      ...radioGroups(ranges).flatMap((group) => groupBlocks(context, group)),
      ...(ranges.length === 0 ? [nothingToSay()] : []),
      marginBlock(context),
    ],
  };
}

function nothingToSay(): Block {
  return { kind: 'paragraph', text: 'No set that works over the sea reaches an antenna yet.', tone: 'quiet' };
}

function radioGroups(ranges: readonly RangeResult[]): RangeResult[][] {
  const groups = new Map<string, RangeResult[]>();
  for (const result of ranges) {
    const key = `${result.itemId} ${result.pathId ?? ''} ${result.service}`;
    groups.set(key, [...(groups.get(key) ?? []), result]);
  }
  return [...groups.values()];
}

/** `VHF-1 by A1, voice`: one radio by one antenna. */
export function rangeTitle(context: SheetContext, result: RangeResult): string {
  const path = context.assessment.paths.find((each) => each.id === result.pathId);
  const isOwn = path === undefined || path.antennaId === path.radioId;
  const by = isOwn ? ', own antenna' : ` by ${itemTag(context.project, path.antennaId)}`;
  return `${itemTag(context.project, result.itemId)}${by}, ${SEA_SERVICE_WORDS[result.service]}`;
}

export function stationName(context: SheetContext, result: RangeResult): string {
  return context.project.stations.find((station) => station.id === result.stationId)?.name ?? result.stationId;
}

function groupBlocks(context: SheetContext, group: readonly RangeResult[]): Block[] {
  const [first] = group;
  if (!first) return [];
  const unit = distanceUnit(context);
  return [
    {
      kind: 'heading',
      level: 2,
      text: `${rangeTitle(context, first)}, ${show(context, first.ownHeightM, 'm')} above the water`,
    },
    {
      kind: 'drawing',
      drawing: rangeChart(
        context,
        group.map((result) => ({ label: stationName(context, result), result })),
      ),
      caption: '',
    },
    {
      kind: 'table',
      caption: '',
      columns: [
        { header: 'To', weight: 24, align: 'start' },
        { header: `Dependable (${unit})`, weight: 11, align: 'end' },
        { header: 'band', weight: 13, align: 'end' },
        { header: `Typical (${unit})`, weight: 11, align: 'end' },
        { header: 'band', weight: 13, align: 'end' },
        { header: `Horizon (${unit})`, weight: 11, align: 'end' },
        { header: 'Gives out first', weight: 15, align: 'start' },
        { header: `Feeder costs, dependable (${unit})`, weight: 13, align: 'end' },
        { header: `Feeder costs, typical (${unit})`, weight: 13, align: 'end' },
      ],
      rows: group.map((result) => rangeRow(context, result)),
      empty: '',
    },
    { kind: 'paragraph', text: bandRemark(context, first), tone: 'quiet' },
  ];
}

/** Who owns the width of the band, and what a telephone without the installation would do. */
export function bandRemark(context: SheetContext, result: RangeResult): string {
  const explained = explainRange(context.project, context.assessment.paths, result);
  const [largest, second] = explained.uncertainty;
  if (!largest) return '';
  const owners = [`Most of it is owned by ${shareText(context, largest)}`];
  if (second) owners.push(`, then by ${shareText(context, second)}`);
  return `To ${stationName(context, result)} the band is ± ${show(context, explained.bandDb, 'dB', 1)} wide. ${owners.join('')}.${phoneText(context, explained)}`;
}

/** `propagation over the sea, ± 4.0 dB (86 %)`. */
function shareText(context: SheetContext, { label, toleranceDb, sharePercent }: UncertaintyShare): string {
  const share = show(context, sharePercent, 'percent');
  return `${formatText(label, context.preferences)}, ± ${show(context, toleranceDb, 'dB', 1)} (${share} of the squares)`;
}

function phoneText(context: SheetContext, { withoutKm }: RangeExplanation): string {
  if (!withoutKm) return '';
  const dependable = show(context, withoutKm.dependable, 'km', 1);
  return ` A telephone in the hand on deck would have ${dependable} dependable, ${show(context, withoutKm.typical, 'km', 1)} typical.`;
}

function rangeRow(context: SheetContext, result: RangeResult): string[] {
  return [
    stationName(context, result),
    bare(context, result.dependable.nominalKm, 'km', 1),
    bandText(context, result.dependable),
    bare(context, result.typical.nominalKm, 'km', 1),
    bandText(context, result.typical),
    bare(context, result.horizonKm, 'km', 1),
    LIMIT_WORDS[result.limitedBy],
    feederCost(context, result, result.feederCostDependableKm),
    feederCost(context, result, result.feederCostTypicalKm),
  ];
}

/** Empty for a set with its own antenna: it has no feeder. */
export function feederCost(context: SheetContext, result: RangeResult, costKm: number): string {
  return result.pathId === null ? '' : bare(context, costKm, 'km', 1);
}

function marginBlock(context: SheetContext): Block {
  const { margin } = context.project.settings;
  const total = margin.reduce((sum, item) => sum + item.lossDb, 0);
  return {
    kind: 'table',
    caption: 'Real-life margin between the typical and the dependable range',
    columns: [
      { header: 'Item', weight: 40, align: 'start' },
      { header: 'dB', weight: 10, align: 'end' },
      { header: 'Source', weight: 50, align: 'start' },
    ],
    rows: margin.map((item) => [item.label, bare(context, item.lossDb, 'dB', 1), item.source]),
    ...(margin.length > 0 ? { total: ['Together', bare(context, total, 'dB', 1), ''] } : {}),
    empty: 'No margin is set: dependable and typical range are the same.',
  };
}
