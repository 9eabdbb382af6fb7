import { bare, lengthUnit, type SheetContext, show } from './context.ts';
import { type CableRow, cableRows } from './scheduleRows.ts';
import type { Column, SheetSection } from './types.ts';

interface CableColumn extends Column {
  readonly cell: (row: CableRow) => string;
}

/** The cable schedule: coax, DC and data on one table, so that a cable is found by its number alone. */
export function cableSection(context: SheetContext): SheetSection {
  const columns = cableColumns(context);
  return {
    id: 'cables',
    title: 'Cable schedule',
    page: 'landscape',
    ownPage: false,
    blocks: [
      {
        kind: 'table',
        caption: '',
        columns: columns.map(({ header, weight, align }) => ({ header, weight, align })),
        rows: cableRows(context.project, context.assessment, context.preferences).map((row) =>
          columns.map(({ cell }) => cell(row)),
        ),
        empty: 'No cables are drawn yet: drag a run from one socket to another.',
      },
      { kind: 'paragraph', text: cableNote(context), tone: 'quiet' },
    ],
  };
}

function cableColumns(context: SheetContext): CableColumn[] {
  const unit = lengthUnit(context);
  const metres = (header: string, weight: number, value: (row: CableRow) => number | null): CableColumn => ({
    header: `${header} (${unit})`,
    weight,
    align: 'end',
    cell: (row) => bare(context, value(row), 'm', 2),
  });
  const slack = metres('+ slack', 5.5, (row) => row.slackM);
  return [
    start('No.', 6, (row) => row.number),
    start('Service', 11, (row) => row.service),
    start('From (unit / port)', 12, (row) => row.from),
    start('To (unit / port)', 12, (row) => row.to),
    start('Type', 15, (row) => row.type),
    {
      header: `OD (${unit === 'ft' ? 'in' : 'mm'})`,
      weight: 5,
      align: 'end',
      cell: (row) => bare(context, row.outsideDiameterMm, 'mm', 1),
    },
    start('Route', 22, (row) => row.route),
    metres('Length', 6, (row) => row.lengthM),
    { ...slack, cell: (row) => (row.kind === 'coax' && row.slackM === null ? 'incl.' : slack.cell(row)) },
    metres('= cut', 6, (row) => row.cutM),
    start('Known by', 8, (row) => row.lengthBasis),
    start('Joints', 7, (row) => row.joints),
    start('Connector A', 9, (row) => row.connectorA),
    start('Connector B', 9, (row) => row.connectorB),
    start('Gland', 13, (row) => row.gland),
    start('Fuse', 7, (row) => row.fuse),
    start('Label A', 6, (row) => row.labelA),
    start('Label B', 6, (row) => row.labelB),
    start('Status', 7, (row) => row.status),
    { header: 'Tested', weight: 6, align: 'middle', cell: () => 'Y / N' },
  ];
}

function start(header: string, weight: number, cell: (row: CableRow) => string): CableColumn {
  return { header, weight, align: 'start', cell };
}

function cableNote(context: SheetContext): string {
  const loop = show(context, 0.15, 'm', context.preferences.length === 'ft' ? 1 : 2);
  return (
    'Lengths known by the drawing must be checked with a tape before cutting. Put the same number on both ends, set ' +
    `back from the termination so that re-making a plug keeps it, and leave a service loop of at least ${loop}. ` +
    'DC lengths are one way: each core of the pair needs that much.'
  );
}
