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
import { drawLines, STYLES, wrap } from './pdfType.ts';
import type { Sheet, SheetSection } from './types.ts';

/** What a PDFKit document must be made with to take a sheet: pages kept open, none begun, the sheet's own date. */
export interface PdfSettings {
  readonly autoFirstPage: false;
  readonly bufferPages: true;
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
 *     import PDFDocument from 'pdfkit/js/pdfkit.standalone.js';
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
  for (const section of sheet.sections) setSection(layout, section);
  finishPages(layout);
}

function setSection(layout: Layout, section: SheetSection): void {
  const first = layout.pages.length === 0;
  if (first || section.ownPage || layout.orientation !== section.page) {
    startPage(layout, section.page, section.id === 'drawing' ? layout.sheet.titleBlock.scale : '');
  }
  const frame: Frame = { pdf: layout.pdf, width: textWidth(layout), height: textHeight(layout) };
  if (first) setPieces(layout, titlePieces(frame, layout.sheet));
  const [head, ...rest] = [
    bookmarked(layout, headingPiece(frame, section.title, 1), section.title),
    ...section.blocks.flatMap((block) => blockPieces(frame, block)),
    gap(10),
  ];
  if (head) setPieces(layout, [head, ...rest]);
}

/** The section's head, which also sets the bookmark, because only then is it known on which page it falls. */
function bookmarked(layout: Layout, head: Piece, title: string): Piece {
  return {
    ...head,
    draw: (x, y) => {
      layout.pdf.outline.addItem(printable(title));
      layout.pages.at(-1)?.titles.push(title);
      head.draw(x, y);
    },
  };
}

function titlePieces(frame: Frame, sheet: Sheet): Piece[] {
  const title = wrap(frame.pdf, sheet.title, frame.width, STYLES.title);
  const subtitle = wrap(frame.pdf, sheet.subtitle, frame.width, STYLES.subtitle);
  return [
    {
      height: title.length * STYLES.title.leading + subtitle.length * STYLES.subtitle.leading + 12,
      draw: (x, y) => {
        drawLines(frame.pdf, title, x, y, STYLES.title);
        drawLines(frame.pdf, subtitle, x, y + title.length * STYLES.title.leading, STYLES.subtitle);
      },
    },
  ];
}
