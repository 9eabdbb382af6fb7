import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { SheetFonts } from '../../core/report/pdfSink.ts';
import { ROOT } from './paths.ts';

/** The typefaces of the install sheet, from the program's own assets. */
export async function readSheetFonts(): Promise<SheetFonts> {
  const read = (weight: string): Promise<Uint8Array> =>
    readFile(resolve(ROOT, `assets/fonts/BarlowSemiCondensed-${weight}.ttf`));
  const [regular, medium, semibold, bold] = await Promise.all([
    read('Regular'),
    read('Medium'),
    read('SemiBold'),
    read('Bold'),
  ]);
  return { regular, medium, semibold, bold };
}
