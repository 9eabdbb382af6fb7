import { bare, lengthUnit, rated, type SheetContext } from './context.ts';
import type { Block, SheetSection } from './types.ts';
import { endpointLabel, itemTag } from './words.ts';

const VERDICT_WORDS = {
  good: 'good',
  missing: 'no fuse or breaker',
  'too-large': 'fuse or breaker larger than the conductor can carry',
  'too-far': 'fuse or breaker too far from the source',
  'too-small-for-load': 'fuse or breaker smaller than the load',
} as const;

/** Voltage drop and protection of every DC feed that supplies a load. */
export function feedSection(context: SheetContext): SheetSection {
  const unit = lengthUnit(context);
  return {
    id: 'feeds',
    title: 'DC feeds',
    page: 'landscape',
    ownPage: false,
    blocks: [
      {
        kind: 'table',
        caption: '',
        columns: [
          { header: 'No.', weight: 6, align: 'start' },
          { header: 'From', weight: 14, align: 'start' },
          { header: 'Load', weight: 14, align: 'start' },
          { header: 'Current (A)', weight: 8, align: 'end' },
          { header: `Length one way (${unit})`, weight: 9, align: 'end' },
          { header: 'Conductor', weight: 10, align: 'start' },
          { header: 'Drop in feed (V)', weight: 8, align: 'end' },
          { header: 'Drop from battery (V)', weight: 9, align: 'end' },
          { header: 'Drop (%)', weight: 7, align: 'end' },
          { header: 'Limit (%)', weight: 7, align: 'end' },
          { header: 'Protection', weight: 12, align: 'start' },
          { header: 'Most the conductor may have (A)', weight: 11, align: 'end' },
          { header: 'Verdict', weight: 22, align: 'start' },
        ],
        rows: feedRows(context),
        empty: 'No DC feeds are drawn yet.',
      },
      noteOnFeeds(),
    ],
  };
}

function noteOnFeeds(): Block {
  return {
    kind: 'paragraph',
    text:
      'Current is that on transmit, or the steady current of a load that never transmits. Drop counts both cores and ' +
      'every feed on the way from the battery. Confirm conductor, insulation and protection against the local code.',
    tone: 'quiet',
  };
}

function feedRows(context: SheetContext): string[][] {
  const { project, assessment } = context;
  return assessment.feeds.map((result) => {
    const feed = project.feeds.find((each) => each.id === result.feedId);
    const { protection } = result;
    const tooMuch = result.totalDropPercent > result.limitPercent;
    const mend =
      result.smallestAreaMm2 === null
        ? 'no listed conductor meets the limit'
        : `needs ${rated(context.preferences, result.smallestAreaMm2, 'mm2')}`;
    const drop = tooMuch ? `drop above the limit: ${mend}` : 'drop good';
    const guarded = protection.verdict === 'good' ? 'protection good' : VERDICT_WORDS[protection.verdict];
    return [
      feed?.number ?? result.feedId,
      feed ? endpointLabel(project, feed.from) : '',
      itemTag(project, result.loadId),
      bare(context, result.currentA, 'A', 1),
      bare(context, result.lengthM, 'm', 1),
      rated(context.preferences, result.areaMm2, 'mm2'),
      bare(context, result.dropV, 'V', 2),
      bare(context, result.totalDropV, 'V', 2),
      bare(context, result.totalDropPercent, 'percent', 1),
      bare(context, result.limitPercent, 'percent', 1),
      protection.present && protection.ratingA !== null ? rated(context.preferences, protection.ratingA, 'A') : 'none',
      bare(context, protection.largestRatingA, 'A', 0),
      `${drop}; ${guarded}`,
    ];
  });
}
