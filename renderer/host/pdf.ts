import boldUrl from '../../assets/fonts/BarlowSemiCondensed-Bold.ttf?url';
import mediumUrl from '../../assets/fonts/BarlowSemiCondensed-Medium.ttf?url';
import regularUrl from '../../assets/fonts/BarlowSemiCondensed-Regular.ttf?url';
import semiboldUrl from '../../assets/fonts/BarlowSemiCondensed-SemiBold.ttf?url';
import { pdfSettings, renderSheetPdf } from '../../core/report/pdf.ts';
import type { Sheet } from '../../core/report/types.ts';

/** The install sheet as PDF, made in the page by the same emitter as on the command line. PDFKit loads when first needed. */
export async function sheetPdf(sheet: Sheet): Promise<Uint8Array<ArrayBuffer>> {
  const [{ default: PDFDocument }, regular, medium, semibold, bold] = await Promise.all([
    import('pdfkit'),
    fontBytes(regularUrl),
    fontBytes(mediumUrl),
    fontBytes(semiboldUrl),
    fontBytes(boldUrl),
  ]);
  const document = new PDFDocument(pdfSettings(sheet));
  const bytes = collected(document);
  renderSheetPdf(document, sheet, { regular, medium, semibold, bold });
  document.end();
  return bytes;
}

async function fontBytes(url: string): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await (await fetch(url)).arrayBuffer());
}

function collected(document: NodeJS.EventEmitter): Promise<Uint8Array<ArrayBuffer>> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('error', reject);
    document.on('end', () =>
      new Blob(chunks as BlobPart[]).arrayBuffer().then((buffer) => resolve(new Uint8Array(buffer)), reject),
    );
  });
}
