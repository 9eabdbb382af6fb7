import { indexProject, placeOf } from '../catalogue/lookup.ts';
import { balloonNumber } from '../drawing/balloons.ts';
import type { Feed, Item, Project } from '../model/project.ts';
import { bare, lengthUnit, rated, type SheetContext } from './context.ts';
import { conductorText } from './scheduleRows.ts';
import type { SheetSection } from './types.ts';
import { itemName, itemTag, STATUS_WORDS } from './words.ts';

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
    nameAndPart(project, item),
    placeOf(project, item)?.name ?? '',
    bare(context, xM, 'm', 2),
    bare(context, yM, 'm', 2),
    bare(context, zM, 'm', 2),
    supplyText(context, item),
    STATUS_WORDS[item.status],
    item.notes,
  ];
}

/** The item's own name, then the catalogue part it is. */
function nameAndPart(project: Project, item: Item): string {
  const name = itemName(project, item);
  const part = indexProject(project).parts.get(item.partId)?.name;
  return part === undefined || part === name ? name : `${name}: ${part}`;
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
  const { project, preferences } = context;
  const wire = conductorText(indexProject(project).parts.get(feed.conductorId), feed.conductorId, preferences);
  const fuse = feed.fuse === null ? '' : `, fuse ${rated(preferences, feed.fuse.ratingA, 'A')}`;
  return `${itemTag(project, feed.from.itemId)} by ${feed.number}, ${wire}${fuse}`;
}
