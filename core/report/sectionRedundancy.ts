import type { ServiceId } from '../model/services.ts';
import { meansFinder, usualFarEnd } from '../redundancy/meansLeft.ts';
import type { MatrixRow, ServiceState } from '../redundancy/types.ts';
import { type SheetContext, show } from './context.ts';
import type { Block, SheetSection } from './types.ts';
import { gradeLetter, serviceOf } from './words.ts';

const GRADE_WORDS = { full: 'full', reduced: 'reduced', lost: 'lost' } as const;

/** The failure matrix with its legend and reasons, then what each service hangs on alone. */
export function redundancySection(context: SheetContext): SheetSection {
  const { redundancy } = context.assessment;
  return {
    id: 'redundancy',
    title: 'What one failure takes away',
    page: 'flow',
    ownPage: false,
    blocks: [
      {
        kind: 'paragraph',
        text: redundancy.services
          .map(serviceOf)
          .map(({ code, name }) => `${code} ${name}`)
          .join('.  '),
        tone: 'quiet',
      },
      {
        kind: 'matrix',
        caption: 'F full, R reduced, – lost',
        columns: redundancy.services.map(serviceOf),
        rows: redundancy.matrix.map((row) => ({
          label: row.event.label,
          letters: row.states.map((state) => gradeLetter(state.grade)),
        })),
      },
      reasonBlock(context),
      singlePointBlock(context),
      ...leftOutBlocks(context),
    ],
  };
}

function reasonBlock(context: SheetContext): Block {
  const { matrix } = context.assessment.redundancy;
  const intact = matrix.find((row) => row.event.kind === 'none');
  const reachIn = reachFinder(context);
  return {
    kind: 'table',
    caption: 'Reasons. A service that is no worse off than with nothing failed is not repeated.',
    columns: [
      { header: 'When this fails', weight: 22, align: 'start' },
      { header: 'Services', weight: 14, align: 'start' },
      { header: 'State', weight: 9, align: 'start' },
      { header: 'Why', weight: 55, align: 'start' },
    ],
    rows: matrix.flatMap((row) => reasonRows(row, row === intact ? undefined : intact, reachIn)),
    empty: 'Every service keeps its full state whatever single thing fails.',
  };
}

/** One row per reason, its services together; only what is not full and has changed from the intact boat. */
function reasonRows(row: MatrixRow, intact: MatrixRow | undefined, reachIn: ReachFinder): string[][] {
  const reachOf = reachIn(row);
  const groups = new Map<string, { grade: ServiceState['grade']; reason: string; codes: string[] }>();
  for (const state of row.states) {
    const before = intact?.states.find((each) => each.serviceId === state.serviceId);
    const unchanged = before?.grade === state.grade && before.reason === state.reason;
    if (state.grade === 'full' || unchanged) continue;
    const reason = `${state.reason}${reachOf(state.serviceId)}`;
    const key = `${state.grade} ${reason}`;
    const group = groups.get(key) ?? { grade: state.grade, reason, codes: [] };
    group.codes.push(serviceOf(state.serviceId).code);
    groups.set(key, group);
  }
  const label = row.event.note === '' ? row.event.label : `${row.event.label}: ${row.event.note}`;
  return [...groups.values()].map((group, index) => [
    index === 0 ? label : row.event.label,
    group.codes.join(', '),
    GRADE_WORDS[group.grade],
    group.reason,
  ]);
}

/** The reach of the best means left in a row, service by service, as the end of its reason; empty where it has none. */
type ReachFinder = (row: MatrixRow) => (serviceId: ServiceId) => string;

function reachFinder(context: SheetContext): ReachFinder {
  const { project, assessment } = context;
  const farEnd = usualFarEnd(project);
  const meansIn = meansFinder(project, assessment, farEnd);
  return (row) => {
    const means = meansIn(row);
    return (serviceId) => {
      const reach = means.get(serviceId)?.[0]?.reach;
      if (!reach || !farEnd) return '';
      return ` Dependable reach to ${farEnd.name}: ${show(context, reach.dependable.nominalKm, 'km', 0)}.`;
    };
  };
}

function leftOutBlocks(context: SheetContext): readonly Block[] {
  const { excluded } = context.assessment.redundancy;
  if (excluded.length === 0) return [];
  const names = excluded.map(({ label }) => label).join('; ');
  return [{ kind: 'paragraph', text: `Left out by choice, and not tried: ${names}.`, tone: 'strong' }];
}

function singlePointBlock(context: SheetContext): Block {
  const { singlePoints, components } = context.assessment.redundancy;
  const labels = new Map(components.map((component) => [component.id, component]));
  return {
    kind: 'table',
    caption: 'Single things that each take a service away',
    columns: [
      { header: 'Thing', weight: 40, align: 'start' },
      { header: 'Kind', weight: 15, align: 'start' },
      { header: 'Services lost with it', weight: 45, align: 'start' },
    ],
    rows: singlePoints.map((point) => {
      const component = labels.get(point.componentId);
      return [
        component?.label ?? point.componentId,
        component?.kind.replaceAll('-', ' ') ?? '',
        point.serviceIds.map((id) => serviceOf(id).name).join('; '),
      ];
    }),
    empty: 'No single thing takes a whole service away.',
  };
}
