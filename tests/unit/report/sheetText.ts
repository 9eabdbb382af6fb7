import type { Block, Sheet, SheetSection } from '../../../core/report/types.ts';

/** Every word a sheet prints, drawings' labels included. */
export function sheetText(sheet: Sheet): string {
  return [sheet.title, sheet.subtitle, ...Object.values(sheet.titleBlock), ...sheet.sections.map(sectionText)].join(
    '\n',
  );
}

export function sectionText(section: SheetSection): string {
  return [section.title, ...section.blocks.map(blockText)].join('\n');
}

function blockText(block: Block): string {
  switch (block.kind) {
    case 'heading':
    case 'paragraph':
      return block.text;
    case 'facts':
      return block.rows.flat().join('\n');
    case 'table':
      return [
        block.caption,
        ...block.columns.map((column) => column.header),
        ...block.rows.flat(),
        ...(block.total ?? []),
      ].join('\n');
    case 'matrix':
      return [
        block.caption,
        ...block.columns.flatMap(({ code, name }) => [code, name]),
        ...block.rows.flatMap((row) => [row.label, ...row.letters]),
      ].join('\n');
    case 'cautions':
      return block.items.flatMap((item) => [item.title, item.text]).join('\n');
    case 'findings':
      return block.items.flatMap((item) => Object.values(item)).join('\n');
    case 'blanks':
      return [block.caption, ...block.rows.flatMap((row) => Object.values(row))].join('\n');
    case 'drawing':
      return [block.caption, ...block.drawing.shapes.map((shape) => (shape.kind === 'text' ? shape.text : ''))].join(
        '\n',
      );
    case 'signatures':
      return block.roles.join('\n');
  }
}

export function sectionOf(sheet: Sheet, id: SheetSection['id']): SheetSection {
  const section = sheet.sections.find((each) => each.id === id);
  if (!section) throw new Error(`The sheet has no section ${id}.`);
  return section;
}

/** Rows of the first table of a section, each as a record by column header. */
export function tableOf(section: SheetSection, index = 0): Record<string, string>[] {
  const table = section.blocks.filter((block) => block.kind === 'table')[index];
  if (!table) throw new Error(`Section ${section.id} has no table ${index}.`);
  return table.rows.map((row) => Object.fromEntries(table.columns.map((column, at) => [column.header, row[at] ?? ''])));
}
