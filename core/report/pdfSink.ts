/** Typefaces of the sheet as TrueType bytes. */
export interface SheetFonts {
  readonly regular: Uint8Array;
  readonly medium: Uint8Array;
  readonly semibold: Uint8Array;
  readonly bold: Uint8Array;
}
export type Face = keyof SheetFonts;
export const FACES: readonly Face[] = ['regular', 'medium', 'semibold', 'bold'];

/**
 * The methods of a PDFKit document that the emitter uses, so that core draws PDF without importing PDFKit: the desktop
 * and the command line hand in the Node build, the browser hands in the standalone build. Lengths in points, y down.
 */
export interface PdfSink {
  readonly outline: { addItem(title: string): unknown };
  addPage(options: { size: [number, number]; margin: number }): unknown;
  bufferedPageRange(): { start: number; count: number };
  switchToPage(index: number): unknown;
  registerFont(name: string, source: Uint8Array): unknown;
  font(name: string, size: number): unknown;
  widthOfString(text: string): number;
  text(
    text: string,
    x: number,
    y: number,
    options: { lineBreak: false; baseline: 'alphabetic'; fill: boolean; stroke: boolean },
  ): unknown;
  save(): unknown;
  restore(): unknown;
  translate(x: number, y: number): unknown;
  rotate(degrees: number): unknown;
  scale(factor: number): unknown;
  moveTo(x: number, y: number): unknown;
  lineTo(x: number, y: number): unknown;
  rect(x: number, y: number, width: number, height: number): unknown;
  circle(x: number, y: number, radius: number): unknown;
  path(d: string): unknown;
  clip(): unknown;
  lineWidth(width: number): unknown;
  lineCap(style: 'butt' | 'round'): unknown;
  lineJoin(style: 'miter' | 'round'): unknown;
  /** Raw operators of the page's content stream: the only way to any dash pattern that all builds share. */
  addContent(operators: string): unknown;
  opacity(value: number): unknown;
  fillColor(colour: string): unknown;
  strokeColor(colour: string): unknown;
  fill(): unknown;
  stroke(): unknown;
  fillAndStroke(): unknown;
}

/** Code points between U+00A0 and U+017F that the sheet's typeface lacks, besides everything outside its ranges. */
const LACKING = new Set([0x114, 0x115, 0x12c, 0x132, 0x138, 0x13f, 0x149, 0x14e, 0x17f]);
const EXTRA = new Set([...'–—‘’‚“”„†‡•…‰′″‹›⁄€ΔΩμπ∂∆∏∑−√∞∫≈≠≤≥◊ȘșȚț']);
const STAND_INS: Readonly<Record<string, string>> = {
  α: 'alpha',
  β: 'beta',
  γ: 'gamma',
  ε: 'epsilon',
  η: 'eta',
  θ: 'theta',
  λ: 'lambda',
  ρ: 'rho',
  σ: 'sigma',
  φ: 'phi',
  '→': '>',
  '←': '<',
  '✓': 'yes',
  '✗': 'no',
  '‐': '-',
  '‑': '-',
};

/** Whether the sheet's typeface has the character. */
export function isPrintable(character: string): boolean {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x20 || (code > 0x7e && code < 0xa0)) return false;
  if (code < 0x180) return !LACKING.has(code);
  return (code >= 0x1ea0 && code <= 0x1ef9) || EXTRA.has(character);
}

/**
 * Text as the typeface can print it: white space becomes a space (line feeds stay), accents fall back to the bare
 * letter, anything else it lacks becomes `?`, never an empty box.
 */
export function printable(text: string): string {
  let out = '';
  for (const character of text.normalize('NFC')) {
    if (character === '\n' || isPrintable(character)) out += character;
    else if (/\s/u.test(character)) out += ' ';
    else out += STAND_INS[character] ?? bareLetter(character);
  }
  return out;
}

function bareLetter(character: string): string {
  const bare = [...character.normalize('NFD')][0] ?? '';
  if (bare !== character && isPrintable(bare)) return bare;
  return /\p{M}|\p{Cc}|\p{Cf}/u.test(character) ? '' : '?';
}
