import type { Piece } from './pdfPage.ts';
import type { PdfSink } from './pdfSink.ts';
import { drawLine, drawLines, drawRule, INK, measure, mm, STYLES, type Style, wrap } from './pdfType.ts';
import type { Block, Column } from './types.ts';

/** Where pieces are made: the page's text width and height in points, and the document they are drawn in. */
export interface Frame {
  readonly pdf: PdfSink;
  readonly width: number;
  readonly height: number;
}

const PAD_X = 4;
const PAD_Y = 2.4;
const AFTER = 11;

type TableBlock = Extract<Block, { kind: 'table' }>;

/** Table as pieces: caption, head (repeated on every page), rows, total. */
export function tablePieces(frame: Frame, table: TableBlock): Piece[] {
  const caption = captionPieces(frame, table.caption);
  if (table.rows.length === 0) return [...caption, emptyPiece(frame, table.empty)];
  const widths = columnWidths(frame.pdf, table, frame.width);
  const head = headPiece(frame, table.columns, widths);
  const rows = table.rows.flatMap((row) => rowPieces(frame, table.columns, widths, row, STYLES.cell, head));
  const total = table.total ? rowPieces(frame, table.columns, widths, table.total, STYLES.cellStrong, head) : [];
  return [...caption, head, ...partedRows(frame, [...rows, ...total]), gap(AFTER)];
}

/** Rows as a reader wants them parted: a short list stays whole, and the last row of a long one is never alone. */
export function partedRows(frame: Frame, rows: readonly Piece[], shareOfPage = 0.25): Piece[] {
  const isShort = rows.reduce((sum, row) => sum + row.height, 0) < frame.height * shareOfPage;
  const last = rows.length - 1;
  return rows.map((row, index) =>
    index < last && (isShort || index === last - 1) ? { ...row, keepWithNext: true } : row,
  );
}

/** Clear space, which costs nothing at the head or the foot of a page. */
export function gap(height: number): Piece {
  return { height, isSpace: true, draw: () => undefined };
}

export function captionPieces(frame: Frame, caption: string): Piece[] {
  if (caption === '') return [];
  const lines = wrap(frame.pdf, caption, frame.width, STYLES.minor);
  return [
    {
      height: lines.length * STYLES.minor.leading + 3,
      draw: (x, y) => drawLines(frame.pdf, lines, x, y, STYLES.minor),
      keepWithNext: true,
    },
  ];
}

export function emptyPiece(frame: Frame, text: string): Piece {
  const lines = wrap(frame.pdf, text, frame.width, STYLES.quiet);
  return {
    height: lines.length * STYLES.quiet.leading + AFTER,
    draw: (x, y) => drawLines(frame.pdf, lines, x, y, STYLES.quiet),
  };
}

/**
 * Widths in proportion to the weights, then corrected so that no word has to be broken: a column narrower than its
 * longest word takes what it lacks from the columns that have room to spare.
 */
function columnWidths(pdf: PdfSink, table: TableBlock, total: number): number[] {
  const weights = table.columns.reduce((sum, column) => sum + column.weight, 0);
  const widths = table.columns.map((column) => (total * column.weight) / weights);
  const needs = table.columns.map((column, index) => {
    const cells = [...table.rows, ...(table.total ? [table.total] : [])].map((row) => row[index] ?? '');
    const words = cells.flatMap((cell) => cell.split(/\s/u));
    const heads = column.header.split(' ').map((word) => measure(pdf, word, STYLES.head));
    const longest = Math.max(0, ...heads, ...words.map((word) => measure(pdf, word, STYLES.cellStrong)));
    return Math.min(longest + 2 * PAD_X + 0.5, total / 3);
  });
  const lacking = widths.reduce((sum, width, index) => sum + Math.max(0, (needs[index] ?? 0) - width), 0);
  const spare = widths.reduce((sum, width, index) => sum + Math.max(0, width - (needs[index] ?? 0)), 0);
  if (lacking === 0 || spare === 0) return widths;
  const share = Math.min(1, lacking / spare);
  return widths.map((width, index) => {
    const need = needs[index] ?? 0;
    if (width >= need) return width - (width - need) * share;
    return width + (need - width) * Math.min(1, spare / lacking);
  });
}

function headPiece(frame: Frame, columns: readonly Column[], widths: readonly number[]): Piece {
  const { pdf } = frame;
  const cells = columns.map((column, index) => wrap(pdf, column.header, (widths[index] ?? 0) - 2 * PAD_X, STYLES.head));
  const lines = Math.max(...cells.map((cell) => cell.length));
  const height = lines * STYLES.head.leading + 2 * PAD_Y;
  return {
    height,
    keepWithNext: true,
    draw: (x, y) => {
      pdf.fillColor(INK.tint);
      pdf.rect(x, y, frame.width, height);
      pdf.fill();
      drawRule(pdf, [x, y], [x + frame.width, y], 0.9, 'ink');
      drawRule(pdf, [x, y + height], [x + frame.width, y + height], 0.6, 'ink');
      drawCells(pdf, columns, widths, cells, x, y + PAD_Y, STYLES.head);
    },
  };
}

function rowPieces(
  frame: Frame,
  columns: readonly Column[],
  widths: readonly number[],
  row: readonly string[],
  style: Style,
  head: Piece,
): Piece[] {
  const { pdf } = frame;
  const cells = columns.map((_, index) => wrap(pdf, row[index] ?? '', (widths[index] ?? 0) - 2 * PAD_X, style));
  const lines = Math.max(...cells.map((cell) => cell.length));
  // A row taller than a page (a very long remark) is the only one that is split.
  const most = Math.max(1, Math.floor((frame.height - head.height - 2 * PAD_Y) / style.leading));
  const pieces: Piece[] = [];
  for (let from = 0; from < lines; from += most) {
    const part = cells.map((cell) => cell.slice(from, from + most));
    const height = Math.min(most, lines - from) * style.leading + 2 * PAD_Y;
    pieces.push({
      height,
      head,
      draw: (x, y) => {
        drawCells(pdf, columns, widths, part, x, y + PAD_Y, style);
        drawRule(pdf, [x, y + height], [x + frame.width, y + height], 0.4, 'hairline');
      },
    });
  }
  return pieces;
}

function drawCells(
  pdf: PdfSink,
  columns: readonly Column[],
  widths: readonly number[],
  cells: readonly (readonly string[])[],
  left: number,
  top: number,
  style: Style,
): void {
  let x = left;
  columns.forEach((column, index) => {
    const width = widths[index] ?? 0;
    const anchor = column.align === 'start' ? x + PAD_X : column.align === 'end' ? x + width - PAD_X : x + width / 2;
    drawLines(pdf, cells[index] ?? [], anchor, top, style, column.align);
    x += width;
  });
}

type MatrixBlock = Extract<Block, { kind: 'matrix' }>;
const MATRIX_ROW = 15;

/** The failure matrix: a letter per cell; reduced is tinted, lost is white on black, so that a copy still reads. */
export function matrixPieces(frame: Frame, matrix: MatrixBlock): Piece[] {
  const { pdf, width } = frame;
  const cell = Math.min(mm(14), (width * 0.68) / Math.max(1, matrix.columns.length));
  const labelWidth = Math.min(width - cell * matrix.columns.length, mm(74));
  const total = labelWidth + cell * matrix.columns.length;
  const centre = (x: number, column: number): number => x + labelWidth + cell * (column + 0.5);
  const head: Piece = {
    height: MATRIX_ROW,
    keepWithNext: true,
    draw: (x, y) => {
      drawLine(pdf, 'When this fails', x + PAD_X, y + 10, STYLES.head);
      matrix.columns.forEach((column, index) => {
        drawLine(pdf, column.code, centre(x, index), y + 10, STYLES.cellStrong, 'middle');
      });
      drawRule(pdf, [x, y], [x + total, y], 0.9, 'ink');
      drawRule(pdf, [x, y + MATRIX_ROW], [x + total, y + MATRIX_ROW], 0.6, 'ink');
    },
  };
  const rows = matrix.rows.map((row): Piece => {
    const lines = wrap(pdf, row.label, labelWidth - 2 * PAD_X, STYLES.cell);
    const height = Math.max(MATRIX_ROW, lines.length * STYLES.cell.leading + 2 * PAD_Y);
    return {
      height,
      head,
      draw: (x, y) => {
        drawLines(pdf, lines, x + PAD_X, y + (height - lines.length * STYLES.cell.leading) / 2, STYLES.cell);
        row.letters.forEach((letter, index) => {
          drawGrade(pdf, letter, x + labelWidth + cell * index, y, cell, height);
        });
        drawRule(pdf, [x, y + height], [x + total, y + height], 0.4, 'hairline');
      },
    };
  });
  return [...captionPieces(frame, matrix.caption), head, ...partedRows(frame, rows, 0.6), gap(AFTER)];
}

function drawGrade(pdf: PdfSink, letter: string, x: number, y: number, width: number, height: number): void {
  const baseline = y + height / 2 + 2.8;
  if (letter !== 'F') {
    pdf.fillColor(letter === 'R' ? '#d3d9dd' : INK.ink);
    pdf.rect(x + 0.8, y + 0.8, width - 1.6, height - 1.6);
    pdf.fill();
  }
  const style = STYLES.cellStrong;
  const textWidth = measure(pdf, letter, style);
  pdf.fillColor(letter === '–' ? '#ffffff' : INK.ink);
  pdf.text(letter, x + (width - textWidth) / 2, baseline, {
    lineBreak: false,
    baseline: 'alphabetic',
    fill: true,
    stroke: false,
  });
}
