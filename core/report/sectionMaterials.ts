import { indexProject } from '../catalogue/lookup.ts';
import { runLengthM } from '../links/route.ts';
import { CONNECTOR_WORDS } from '../model/fit.ts';
import { M_PER_FT } from '../units/constants.ts';
import { bare, lengthUnit, rated, type SheetContext, show } from './context.ts';
import { conductorText } from './scheduleRows.ts';
import type { Block, SheetSection } from './types.ts';
import { itemName, subjectLabel } from './words.ts';

/** Step a cable is bought in, in the reader's own unit, and the step for less than that; common practice, no source. */
const BUY_STEP = { m: { coil: 5, piece: 1 }, ft: { coil: 25, piece: 5 } } as const;

interface Cut {
  readonly number: string;
  readonly lengthM: number;
}

/** What to buy, what to cut from it, and what comes out. */
export function materialsSection(context: SheetContext): SheetSection {
  return {
    id: 'materials',
    title: 'Buy, cut and remove',
    page: 'flow',
    ownPage: false,
    blocks: [cutBlock(context), partsBlock(context), removeBlock(context)],
  };
}

/** New cable by type: pieces, their sum, what to buy and what is left over. */
export function cutList(context: SheetContext): { readonly type: string; readonly cuts: readonly Cut[] }[] {
  const { project } = context;
  const { parts } = indexProject(project);
  const groups = new Map<string, Cut[]>();
  const add = (type: string, cut: Cut): void => {
    groups.set(type, [...(groups.get(type) ?? []), cut]);
  };
  for (const run of project.runs) {
    if (run.status === 'new')
      add(parts.get(run.cableId)?.name ?? run.cableId, { number: run.number, lengthM: runLengthM(project, run) });
  }
  for (const feed of project.feeds) {
    if (feed.status === 'new')
      add(`pair, ${conductorText(parts.get(feed.conductorId), feed.conductorId, context.preferences)}`, {
        number: feed.number,
        lengthM: feed.lengthM,
      });
  }
  return [...groups].map(([type, cuts]) => ({ type, cuts }));
}

function cutBlock(context: SheetContext): Block {
  const unit = lengthUnit(context);
  return {
    kind: 'table',
    caption: 'Cable to buy and cut',
    columns: [
      { header: 'Type', weight: 30, align: 'start' },
      { header: `Cut list (${unit})`, weight: 36, align: 'start' },
      { header: `Together (${unit})`, weight: 10, align: 'end' },
      { header: `Buy (${unit})`, weight: 10, align: 'end' },
      { header: `Left over (${unit})`, weight: 10, align: 'end' },
    ],
    rows: cutList(context).map(({ type, cuts }) => {
      const totalM = cuts.reduce((sum, cut) => sum + cut.lengthM, 0);
      const buyM = boughtM(context, totalM);
      return [
        type,
        cuts.map((cut) => `${cut.number}: ${bare(context, cut.lengthM, 'm', 1)}`).join('; '),
        bare(context, totalM, 'm', 1),
        bare(context, buyM, 'm', 0),
        bare(context, Math.max(0, buyM - totalM), 'm', 1),
      ];
    }),
    empty: 'No cable in this layout is marked new.',
  };
}

/** Length to buy for a length needed, m. */
function boughtM(context: SheetContext, totalM: number): number {
  const unitM = context.preferences.length === 'ft' ? M_PER_FT : 1;
  const { coil, piece } = BUY_STEP[context.preferences.length];
  const stepM = (totalM < coil * unitM ? piece : coil) * unitM;
  // A hair over the step must not buy another one for a rounding error.
  return Math.ceil(totalM / stepM - 1e-9) * stepM;
}

function partsBlock(context: SheetContext): Block {
  const { project } = context;
  const { parts } = indexProject(project);
  const counts = new Map<string, { tags: string[] }>();
  const add = (name: string, tag: string): void => {
    const entry = counts.get(name) ?? { tags: [] };
    entry.tags.push(tag);
    counts.set(name, entry);
  };
  for (const item of project.items)
    if (item.status === 'new') add(parts.get(item.partId)?.name ?? itemName(project, item), item.tag);
  for (const run of project.runs) {
    if (run.status !== 'new') continue;
    for (const id of [run.connectorFromId, run.connectorToId]) {
      const part = id === null ? undefined : parts.get(id);
      if (part?.kind === 'connector' && part.connectorType !== 'captive')
        add(connectorName(part.name, part.connectorType), run.number);
    }
  }
  for (const feed of project.feeds) {
    if (feed.status === 'new' && feed.fuse)
      add(`Fuse and holder, ${rated(context.preferences, feed.fuse.ratingA, 'A')}`, feed.number);
  }
  return {
    kind: 'table',
    caption: 'Parts to buy',
    columns: [
      { header: 'Number', weight: 8, align: 'end' },
      { header: 'Part', weight: 52, align: 'start' },
      { header: 'For', weight: 40, align: 'start' },
    ],
    rows: [...counts].map(([name, { tags }]) => [String(tags.length), name, [...new Set(tags)].join(', ')]),
    empty: 'No part in this layout is marked new.',
  };
}

function connectorName(name: string, type: keyof typeof CONNECTOR_WORDS): string {
  return name === '' ? CONNECTOR_WORDS[type] : name;
}

function removeBlock(context: SheetContext): Block {
  const { project } = context;
  const gone = [
    ...project.items
      .filter((item) => item.status === 'remove')
      .map((item) => [item.tag, itemName(project, item), item.notes]),
    ...project.runs
      .filter((run) => run.status === 'remove')
      .map((run) => [
        run.number,
        `${indexProject(project).parts.get(run.cableId)?.name ?? run.cableId}, ${show(context, runLengthM(project, run), 'm')}`,
        run.notes,
      ]),
    ...project.feeds
      .filter((feed) => feed.status === 'remove')
      .map((feed) => [
        subjectLabel(project, { kind: 'feed', id: feed.id }),
        show(context, feed.lengthM, 'm'),
        feed.notes,
      ]),
    ...project.dataLinks
      .filter((link) => link.status === 'remove')
      .map((link) => [link.number, link.standard, link.notes]),
  ];
  return {
    kind: 'table',
    caption: 'To take out',
    columns: [
      { header: 'No. or tag', weight: 14, align: 'start' },
      { header: 'What', weight: 46, align: 'start' },
      { header: 'Remarks', weight: 40, align: 'start' },
    ],
    rows: gone,
    empty: 'Nothing in this layout is marked for removal.',
  };
}
