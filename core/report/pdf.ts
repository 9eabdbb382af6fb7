import { blockPieces, headingPiece } from './pdfBlocks.ts';
import {
  finishPages,
  type Layout,
  newLayout,
  type Piece,
  setPieces,
  startPage,
  textHeight,
  textWidth,
} from './pdfPage.ts';
import { FACES, type PdfSink, printable, type SheetFonts } from './pdfSink.ts';
import { type Frame, gap } from './pdfTable.ts';
import { drawLine, drawLines, drawRule, portions, STYLES, type Style, wrap } from './pdfType.ts';
import type { Block, Sheet, SheetSection } from './types.ts';

/** What a PDFKit document must be made with to take a sheet: pages kept open, none begun, the sheet's own date. */
export interface PdfSettings {
  readonly autoFirstPage: false;
  readonly bufferPages: true;
  /** None to start with: PDFKit's own choice, Helvetica, is not in its browser build. */
  readonly font: '';
  readonly lang: 'en';
  readonly displayTitle: true;
  readonly pdfVersion: '1.5';
  readonly info: {
    readonly Title: string;
    readonly Subject: string;
    readonly Author: string;
    readonly Creator: string;
    readonly Producer: string;
    readonly CreationDate: Date;
    readonly ModDate: Date;
  };
}

/**
 * Settings for `new PDFDocument(...)`. Every date comes from the sheet, so the same sheet makes the same bytes.
 * @throws RangeError when the sheet's date is not an ISO date
 */
export function pdfSettings(sheet: Sheet): PdfSettings {
  const date = new Date(sheet.titleBlock.date);
  if (Number.isNaN(date.getTime())) throw new RangeError(`"${sheet.titleBlock.date}" is not an ISO date.`);
  return {
    autoFirstPage: false,
    bufferPages: true,
    font: '',
    lang: 'en',
    displayTitle: true,
    pdfVersion: '1.5',
    info: {
      Title: `${sheet.title}: ${sheet.titleBlock.boat}`,
      Subject: sheet.subtitle,
      Author: sheet.titleBlock.preparedBy,
      Creator: 'Backstay',
      Producer: 'Backstay',
      CreationDate: date,
      ModDate: date,
    },
  };
}

/**
 * Draws the whole sheet into a PDFKit document made with `pdfSettings(sheet)`; the caller ends the document. Runs on
 * any build of PDFKit. In a page:
 *
 *     import PDFDocument from 'pdfkit';
 *     const document = new PDFDocument(pdfSettings(sheet));
 *     const chunks: Uint8Array[] = [];
 *     document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
 *     document.on('end', () => done(new Blob(chunks, { type: 'application/pdf' })));
 *     renderSheetPdf(document, sheet, { regular: new Uint8Array(await (await fetch(url)).arrayBuffer()), ... });
 *     document.end();
 */
export function renderSheetPdf(pdf: PdfSink, sheet: Sheet, fonts: SheetFonts): void {
  for (const face of FACES) pdf.registerFont(face, fonts[face]);
  const layout = newLayout(pdf, sheet);
  const bookmarks: Bookmark[] = [];
  startPage(layout, 'flow', '');
  setPieces(layout, titlePieces(frameOf(layout), sheet));
  const contents = setContents(layout, sheet.sections.length);
  for (const section of sheet.sections) setSection(layout, section, bookmarks);
  finishPages(layout);
  if (contents) drawContents(pdf, contents, bookmarks);
}

interface Bookmark {
  readonly title: string;
  readonly page: number;
}

/** Where the list of contents goes: it is drawn last, when every section knows its page. Points. */
interface Spot {
  readonly page: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

const CONTENTS_ROW = 11.5;

/** Keeps room for the list of contents, two columns of it. */
function setContents(layout: Layout, count: number): Spot | null {
  const spots: Spot[] = [];
  const frame = frameOf(layout);
  const list: Piece = {
    height: Math.ceil(count / 2) * CONTENTS_ROW + 16,
    draw: (x, y) => spots.push({ page: layout.pages.length - 1, x, y, width: frame.width }),
  };
  setPieces(layout, [headingPiece(frame, 'Contents', 2), list]);
  return spots[0] ?? null;
}

function drawContents(pdf: PdfSink, spot: Spot, bookmarks: readonly Bookmark[]): void {
  pdf.switchToPage(pdf.bufferedPageRange().start + spot.page);
  const perColumn = Math.ceil(bookmarks.length / 2);
  const width = (spot.width - 24) / 2;
  bookmarks.forEach((bookmark, index) => {
    const x = spot.x + Math.floor(index / perColumn) * (width + 24);
    const y = spot.y + ((index % perColumn) + 0.8) * CONTENTS_ROW;
    drawLine(pdf, printable(bookmark.title), x, y, STYLES.body);
    drawLine(pdf, `sheet ${bookmark.page + 1}`, x + width, y, STYLES.body, 'end');
    drawRule(pdf, [x, y + 2.6], [x + width, y + 2.6], 0.3, 'hairline');
  });
}

function frameOf(layout: Layout): Frame {
  return { pdf: layout.pdf, width: textWidth(layout), height: textHeight(layout) };
}

function setSection(layout: Layout, section: SheetSection, bookmarks: Bookmark[]): void {
  if (section.ownPage || layout.orientation !== section.page) {
    startPage(layout, section.page, section.id === 'drawing' ? layout.sheet.titleBlock.scale : '');
  }
  const frame = frameOf(layout);
  const [head, ...rest] = [
    bookmarked(layout, headingPiece(frame, section.title, 1), section.title, bookmarks),
    ...sectionPieces(frame, section.blocks),
    gap(10),
  ];
  if (head) setPieces(layout, [head, ...rest]);
}

/** The blocks of a section; what introduces a list stays with its beginning. */
function sectionPieces(frame: Frame, blocks: readonly Block[]): Piece[] {
  let introduces = true;
  return blocks.flatMap((block, index) => {
    if (block.kind === 'heading') introduces = true;
    const pieces = blockPieces(frame, block);
    const isSmall = pieces.reduce((sum, piece) => sum + piece.height, 0) < frame.height / 4;
    introduces &&= ['heading', 'paragraph', 'drawing'].includes(block.kind) && isSmall;
    return introduces && index < blocks.length - 1 ? pieces.map((piece) => ({ ...piece, keepWithNext: true })) : pieces;
  });
}

/** The section's head, which also sets the bookmark, because only then is it known on which page it falls. */
function bookmarked(layout: Layout, head: Piece, title: string, bookmarks: Bookmark[]): Piece {
  return {
    ...head,
    draw: (x, y) => {
      layout.pdf.outline.addItem(printable(title));
      layout.pages.at(-1)?.titles.push(title);
      bookmarks.push({ title, page: layout.pages.length - 1 });
      head.draw(x, y);
    },
  };
}

function titlePieces(frame: Frame, sheet: Sheet): Piece[] {
  const set = (text: string, style: Style, after: number): Piece[] => {
    const parts = portions(wrap(frame.pdf, text, frame.width, style));
    return parts.map((lines, index) => ({
      height: lines.length * style.leading + (index === parts.length - 1 ? after : 0),
      draw: (x, y) => drawLines(frame.pdf, lines, x, y, style),
    }));
  };
  return [...set(sheet.title, STYLES.title, 0), ...set(sheet.subtitle, STYLES.subtitle, 12)];
}
