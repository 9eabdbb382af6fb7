import { meansFinder, usualFarEnd } from '../redundancy/meansLeft.ts';
import { type RaftItem, raftList, type Taken } from '../redundancy/raft.ts';
import { formatText } from '../units/format.ts';
import { type SheetContext, show } from './context.ts';
import type { Block, SheetSection } from './types.ts';
import { itemName, serviceOf } from './words.ts';

const TAKEN_WORDS: Readonly<Record<Taken, string>> = {
  'grab-bag': 'in the grab bag',
  'floats-free': 'floats free',
  'by-hand': 'to be picked up by hand',
};

/** What goes into the raft, and how far it is heard there. */
export function raftSection(context: SheetContext): SheetSection {
  const list = raftList(context.project, context.assessment.redundancy);
  return {
    id: 'raft',
    title: 'Abandoning to the raft',
    page: 'flow',
    ownPage: false,
    blocks:
      list && context.assessment.redundancy.ways.length > 0 ? [goesBlock(context, list.goes), reachBlock(context)] : [],
  };
}

function goesBlock({ project }: SheetContext, goes: readonly RaftItem[]): Block {
  return {
    kind: 'table',
    caption: 'What goes along',
    columns: [
      { header: 'Set', weight: 12, align: 'start' },
      { header: 'What it is', weight: 28, align: 'start' },
      { header: 'How', weight: 20, align: 'start' },
      { header: 'Good for', weight: 20, align: 'start' },
      { header: 'To put right', weight: 20, align: 'start' },
    ],
    rows: goes.flatMap(({ itemId, taken, serviceIds, doubts }) => {
      const item = project.items.find(({ id }) => id === itemId);
      if (!item) return [];
      return [
        [
          item.tag,
          itemName(project, item),
          TAKEN_WORDS[taken],
          serviceIds.map((id) => serviceOf(id).code).join(', '),
          doubts.join(', '),
        ],
      ];
    }),
    empty: 'Nothing aboard would serve in the raft.',
  };
}

function reachBlock(context: SheetContext): Block {
  const { project, assessment } = context;
  const { redundancy } = assessment;
  const row = redundancy.matrix.find(({ event }) => event.kind === 'abandon');
  const farEnd = usualFarEnd(project);
  const means = row ? [...meansFinder(project, assessment, farEnd)(row)] : [];
  return {
    kind: 'table',
    caption: `What the crew can do there${farEnd ? `; reach to ${farEnd.name}` : ''}`,
    columns: [
      { header: 'Service', weight: 26, align: 'start' },
      { header: 'By', weight: 24, align: 'start' },
      { header: 'Dependable', weight: 12, align: 'end' },
      { header: 'Typical', weight: 12, align: 'end' },
      { header: 'Note', weight: 26, align: 'start' },
    ],
    rows: means.flatMap(([serviceId, list]) =>
      list.map(({ way, reach, note }) => [
        serviceOf(serviceId).name,
        way.label,
        reach ? show(context, reach.dependable.nominalKm, 'km', 0) : '',
        reach ? show(context, reach.typical.nominalKm, 'km', 0) : '',
        formatText(note, context.preferences),
      ]),
    ),
    empty: 'Nothing.',
  };
}
