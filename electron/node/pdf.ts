import PDFDocument from 'pdfkit';
import { pdfSettings, renderSheetPdf } from '../../core/report/pdf.ts';
import type { Sheet } from '../../core/report/types.ts';
import { readSheetFonts } from './fonts.ts';

/**
 * The install sheet as PDF bytes, made in plain Node. The same sheet makes the same bytes.
 * @throws RangeError when the sheet's date is not an ISO date
 */
export async function sheetPdf(sheet: Sheet): Promise<Uint8Array> {
  const fonts = await readSheetFonts();
  const document = new PDFDocument(pdfSettings(sheet));
  const chunks: Uint8Array[] = [];
  const bytes = new Promise<Uint8Array>((resolve, reject) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    document.on('error', reject);
  });
  renderSheetPdf(document, sheet, fonts);
  document.end();
  return bytes;
}
