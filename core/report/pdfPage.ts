import { type PageSize, pageSize } from './pageSize.ts';
import type { PdfSink } from './pdfSink.ts';
import { drawLine, drawLines, drawRule, INK, mm, PT_PER_MM, STYLES, wrap } from './pdfType.ts';
import type { Sheet } from './types.ts';

/**
 * Something of a known height that is drawn whole. Blocks become pieces, pieces are set one under another; a page
 * breaks only between pieces.
 */
export interface Piece {
  /** Points, clear space below included. */
  readonly height: number;
  readonly draw: (x: number, topY: number) => void;
  /** Never the last on its page, unless it and its followers are taller than a page. */
  readonly keepWithNext?: boolean;
  /** Clear space only: left out at the head and the foot of a page. */
  readonly isSpace?: boolean;
  /** Drawn again above this piece when it comes first on a page: the head of a table. */
  readonly head?: Piece;
}

/** The page being filled. Lengths in points. */
export interface Layout {
  readonly pdf: PdfSink;
  readonly sheet: Sheet;
  orientation: 'flow' | 'landscape';
  size: PageSize;
  y: number;
  /** One note per page, for the title block drawn when the number of pages is known. */
  readonly pages: { readonly size: PageSize; readonly titles: string[]; readonly scale: string }[];
}

export function newLayout(pdf: PdfSink, sheet: Sheet): Layout {
  return { pdf, sheet, orientation: 'flow', size: pageSize(sheet.paper, 'flow'), y: 0, pages: [] };
}

/** Width of the text area, points. */
export function textWidth(layout: Layout): number {
  return mm(layout.size.rightMm - layout.size.leftMm);
}

/** Height of the text area, points. */
export function textHeight(layout: Layout): number {
  return mm(layout.size.bottomMm - layout.size.topMm);
}

export function startPage(layout: Layout, orientation: Layout['orientation'], scale: string): void {
  layout.orientation = orientation;
  layout.size = pageSize(layout.sheet.paper, orientation);
  layout.pdf.addPage({ size: [mm(layout.size.widthMm), mm(layout.size.heightMm)], margin: 0 });
  layout.pages.push({ size: layout.size, titles: [], scale });
  layout.y = mm(layout.size.topMm);
}

/** Sets pieces one under another, breaking pages between them and never leaving a head behind. */
export function setPieces(layout: Layout, pieces: readonly Piece[]): void {
  for (const chain of chains(pieces)) {
    if (chain[0]?.isSpace && (isAtTop(layout) || chain[0].height > room(layout))) continue;
    const chainHeight = chain.reduce((sum, piece) => sum + piece.height, 0);
    const first = chain[0];
    const wholePage = chainHeight + (first?.head?.height ?? 0) <= textHeight(layout) + 0.01;
    if (wholePage && chainHeight > room(layout)) breakPage(layout, first);
    for (const piece of chain) {
      if (piece.height > room(layout) && !isAtTop(layout)) breakPage(layout, piece);
      setPiece(layout, piece);
    }
  }
}

function setPiece(layout: Layout, piece: Piece): void {
  piece.draw(mm(layout.size.leftMm), layout.y);
  layout.y += piece.height;
}

function breakPage(layout: Layout, next: Piece | undefined): void {
  startPage(layout, layout.orientation, '');
  if (next?.head) setPiece(layout, next.head);
}

function room(layout: Layout): number {
  return mm(layout.size.bottomMm) - layout.y + 0.01;
}

function isAtTop(layout: Layout): boolean {
  return layout.y <= mm(layout.size.topMm) + 0.01;
}

function chains(pieces: readonly Piece[]): Piece[][] {
  const out: Piece[][] = [];
  let chain: Piece[] = [];
  for (const piece of pieces) {
    chain.push(piece);
    if (!piece.keepWithNext) {
      out.push(chain);
      chain = [];
    }
  }
  if (chain.length > 0) out.push(chain);
  return out;
}

const FRAME_MM = 7;
const STRIP_MM = 12;
const GOVERNS_MM = 6.5;

/** Frame and title block of every page, drawn last because each says how many pages there are. */
export function finishPages(layout: Layout): void {
  const { start } = layout.pdf.bufferedPageRange();
  layout.pages.forEach((page, index) => {
    layout.pdf.switchToPage(start + index);
    drawFrame(layout.pdf, page.size);
    drawStrip(layout, index);
  });
}

function drawFrame(pdf: PdfSink, size: PageSize): void {
  pdf.lineWidth(0.9);
  pdf.strokeColor(INK.ink);
  pdf.rect(
    mm(FRAME_MM),
    mm(FRAME_MM),
    (size.widthMm - 2 * FRAME_MM) * PT_PER_MM,
    (size.heightMm - 2 * FRAME_MM) * PT_PER_MM,
  );
  pdf.stroke();
}

/** Share of the strip's width per cell; the boat's name takes most. */
const STRIP_CELLS = [
  { label: 'Vessel', weight: 26 },
  { label: 'On this page', weight: 34 },
  { label: 'Layout', weight: 16 },
  { label: 'Rev.', weight: 6 },
  { label: 'Prepared by', weight: 17 },
  { label: 'Date', weight: 11 },
  { label: 'Scale', weight: 9 },
  { label: 'Sheet', weight: 11 },
] as const;

function drawStrip(layout: Layout, index: number): void {
  const page = layout.pages[index];
  if (!page) return;
  const { pdf, sheet } = layout;
  const block = sheet.titleBlock;
  const number = `${index + 1} of ${layout.pages.length}`;
  const values = [
    block.boat,
    contentsOf(layout, index),
    block.layout,
    block.revision,
    block.preparedBy,
    block.date,
    page.scale || 'none',
    number,
  ];
  const left = mm(FRAME_MM);
  const right = mm(page.size.widthMm - FRAME_MM);
  const bottom = mm(page.size.heightMm - FRAME_MM);
  const top = bottom - mm(STRIP_MM);
  const governsTop = top - mm(GOVERNS_MM);
  drawRule(pdf, [left, governsTop], [right, governsTop], 0.5, 'ink');
  drawRule(pdf, [left, top], [right, top], 0.9, 'ink');
  drawLines(
    pdf,
    wrap(pdf, block.governs, right - left - mm(5), STYLES.governs),
    left + mm(2.5),
    governsTop + 1.4,
    STYLES.governs,
  );
  const total = STRIP_CELLS.reduce((sum, cell) => sum + cell.weight, 0);
  let x = left;
  STRIP_CELLS.forEach((cell, column) => {
    const width = ((right - left) * cell.weight) / total;
    if (column > 0) drawRule(pdf, [x, top], [x, bottom], 0.5, 'ink');
    drawLine(pdf, cell.label, x + mm(1.6), top + 7.5, STYLES.label);
    drawLines(pdf, fitted(pdf, values[column] ?? '', width - mm(3)), x + mm(1.6), top + 9.5, STYLES.strip);
    x += width;
  });
}

/** Sections that begin on a page, else the one that goes on there. */
function contentsOf(layout: Layout, index: number): string {
  const titles = layout.pages[index]?.titles ?? [];
  if (titles.length > 0) return titles.join('; ');
  const before = layout.pages.slice(0, index).findLast((page) => page.titles.length > 0);
  const last = before?.titles.at(-1);
  return last === undefined ? '' : `${last}, continued`;
}

/** At most two lines; what does not fit ends in an ellipsis, which only names of the user's own can need. */
function fitted(pdf: PdfSink, text: string, width: number): string[] {
  const lines = wrap(pdf, text, width, STYLES.strip);
  if (lines.length <= 2) return lines;
  return [lines[0] ?? '', `${(lines[1] ?? '').slice(0, -1)}…`];
}
