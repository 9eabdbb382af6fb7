import { indexProject, placeOf } from '../catalogue/lookup.ts';
import { balloonNumber } from '../drawing/balloons.ts';
import type { Feed, Item } from '../model/project.ts';
import { bare, lengthUnit, type SheetContext, show } from './context.ts';
import { type CableRow, cableRows } from './scheduleRows.ts';
import type { Block, SheetSection } from './types.ts';
import { endpointLabel, itemName, itemTag, STATUS_WORDS } from './words.ts';

/** Every item with its balloon number, place, position and supply. */
export function equipmentSection(context: SheetContext): SheetSection {
  const unit = lengthUnit(context);
  return {
    id: 'equipment',
    title: 'Equipment list',
    page: 'landscape',
    ownPage: false,
    blocks: [
      {
        kind: 'table',
        caption: '',
        columns: [
          { header: 'No.', weight: 4, align: 'end' },
          { header: 'Tag', weight: 9, align: 'start' },
          { header: 'Part', weight: 30, align: 'start' },
          { header: 'Place', weight: 16, align: 'start' },
          { header: `x (${unit})`, weight: 6, align: 'end' },
          { header: `y (${unit})`, weight: 6, align: 'end' },
          { header: `z (${unit})`, weight: 6, align: 'end' },
          { header: 'Supply', weight: 26, align: 'start' },
          { header: 'Status', weight: 9, align: 'start' },
          { header: 'Remarks', weight: 24, align: 'start' },
        ],
        rows: context.project.items.map((item) => equipmentRow(context, item)),
        empty: 'Nothing is fitted yet: drag parts onto the boat.',
      },
    ],
  };
}

function equipmentRow(context: SheetContext, item: Item): string[] {
  const { project } = context;
  const { xM, yM, zM } = item.position;
  return [
    String(balloonNumber(project, item.id)),
    item.tag,
    itemName(project, item),
    placeOf(project, item)?.name ?? '',
    bare(context, xM, 'm', 2),
    bare(context, yM, 'm', 2),
    bare(context, zM, 'm', 2),
    supplyText(context, item),
    STATUS_WORDS[item.status],
    item.notes,
  ];
}

/** By what an item is fed: source, wire, fuse; its own battery; or nothing it needs. */
function supplyText(context: SheetContext, item: Item): string {
  const index = indexProject(context.project);
  const part = index.effective.get(item.id);
  const feeds = (index.feedsInto.get(item.id) ?? []).map((feed) => feedText(context, feed));
  if (part?.kind === 'standalone') return 'own battery';
  if (part?.kind === 'radio' && part.traits.ownBattery) feeds.push('own battery');
  return feeds.join('; ');
}

function feedText(context: SheetContext, feed: Feed): string {
  const part = indexProject(context.project).parts.get(feed.conductorId);
  const wire = part?.kind === 'conductor' ? show(context, part.figures.areaMm2.value, 'mm2') : feed.conductorId;
  const fuse = feed.fuse === null ? '' : `, fuse ${show(context, feed.fuse.ratingA, 'A', 0)}`;
  return `${itemTag(context.project, feed.from.itemId)} by ${feed.number}, ${wire}${fuse}`;
}

/** The cable schedule: coax and data on one table, so that a run is found by its number alone. */
export function cableSection(context: SheetContext): SheetSection {
  const unit = lengthUnit(context);
  const rows = cableRows(context.project, context.assessment).map((row) => cableCells(context, row));
  return {
    id: 'cables',
    title: 'Cable schedule',
    page: 'landscape',
    ownPage: false,
    blocks: [
      {
        kind: 'table',
        caption: '',
        columns: [
          { header: 'No.', weight: 6, align: 'start' },
          { header: 'Service', weight: 11, align: 'start' },
          { header: 'From (unit / port)', weight: 12, align: 'start' },
          { header: 'To (unit / port)', weight: 12, align: 'start' },
          { header: 'Type', weight: 15, align: 'start' },
          { header: `OD (${unit === 'ft' ? 'in' : 'mm'})`, weight: 5, align: 'end' },
          { header: 'Route', weight: 22, align: 'start' },
          { header: `Length (${unit})`, weight: 6, align: 'end' },
          { header: `+ slack (${unit})`, weight: 5.5, align: 'end' },
          { header: `= cut (${unit})`, weight: 6, align: 'end' },
          { header: 'Known by', weight: 8, align: 'start' },
          { header: 'Joints', weight: 7, align: 'start' },
          { header: 'Connector A', weight: 9, align: 'start' },
          { header: 'Connector B', weight: 9, align: 'start' },
          { header: 'Gland', weight: 13, align: 'start' },
          { header: 'Fuse', weight: 7, align: 'start' },
          { header: 'Label A', weight: 6, align: 'start' },
          { header: 'Label B', weight: 6, align: 'start' },
          { header: 'Status', weight: 7, align: 'start' },
          { header: 'Tested', weight: 6, align: 'middle' },
        ],
        rows,
        empty: 'No cables are drawn yet: drag a run from one socket to another.',
      },
      {
        kind: 'paragraph',
        text:
          'Lengths known by the drawing must be checked with a tape before cutting. Put the same number on both ends, set ' +
          'back from the termination so that re-making a plug keeps it, and leave a service loop of at least ' +
          `${show(context, 0.15, 'm', context.preferences.length === 'ft' ? 1 : 2)}. DC lengths are one way: the pair needs that of each core.`,
        tone: 'quiet',
      },
    ],
  };
}

function cableCells(context: SheetContext, row: CableRow): string[] {
  return [
    row.number,
    row.service,
    row.from,
    row.to,
    row.type,
    bare(context, row.outsideDiameterMm, 'mm', 1),
    row.route,
    bare(context, row.lengthM, 'm', 2),
    row.kind === 'coax' && row.slackM === null ? 'incl.' : bare(context, row.slackM, 'm', 2),
    bare(context, row.cutM, 'm', 2),
    row.lengthBasis,
    row.joints,
    row.connectorA,
    row.connectorB,
    row.gland,
    row.fuse,
    row.labelA,
    row.labelB,
    row.status,
    'Y / N',
  ];
}

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
        : `needs ${show(context, result.smallestAreaMm2, 'mm2')}`;
    const drop = tooMuch ? `drop above the limit: ${mend}` : 'drop good';
    const guarded = protection.verdict === 'good' ? 'protection good' : VERDICT_WORDS[protection.verdict];
    return [
      feed?.number ?? result.feedId,
      feed ? endpointLabel(project, feed.from) : '',
      itemTag(project, result.loadId),
      bare(context, result.currentA, 'A', 1),
      bare(context, result.lengthM, 'm', 1),
      show(context, result.areaMm2, 'mm2'),
      bare(context, result.dropV, 'V', 2),
      bare(context, result.totalDropV, 'V', 2),
      bare(context, result.totalDropPercent, 'percent', 1),
      bare(context, result.limitPercent, 'percent', 1),
      protection.present && protection.ratingA !== null ? show(context, protection.ratingA, 'A', 0) : 'none',
      bare(context, protection.largestRatingA, 'A', 0),
      `${drop}; ${guarded}`,
    ];
  });
}
