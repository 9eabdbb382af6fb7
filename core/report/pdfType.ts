import { type Face, type PdfSink, printable } from './pdfSink.ts';

/** Black on white with two greys: the sheet must survive a photocopier. */
export const INK = { ink: '#111a22', quiet: '#4d5a64', rule: '#8a969e', hairline: '#c3cbd0', tint: '#e9edef' } as const;
export type InkName = keyof typeof INK;

export const PT_PER_MM = 72 / 25.4;
export function mm(value: number): number {
  return value * PT_PER_MM;
}

export interface Style {
  readonly face: Face;
  /** Points. */
  readonly size: number;
  readonly ink: InkName;
  /** Distance between baselines, points. */
  readonly leading: number;
}

export const STYLES = {
  title: { face: 'bold', size: 21, ink: 'ink', leading: 24 },
  subtitle: { face: 'medium', size: 11.5, ink: 'quiet', leading: 15 },
  section: { face: 'bold', size: 14, ink: 'ink', leading: 17 },
  heading: { face: 'semibold', size: 10.5, ink: 'ink', leading: 13 },
  minor: { face: 'semibold', size: 9, ink: 'ink', leading: 11.5 },
  body: { face: 'regular', size: 9, ink: 'ink', leading: 11.8 },
  strong: { face: 'semibold', size: 9, ink: 'ink', leading: 11.8 },
  quiet: { face: 'regular', size: 8.2, ink: 'quiet', leading: 10.6 },
  cell: { face: 'regular', size: 7.8, ink: 'ink', leading: 9.6 },
  cellStrong: { face: 'semibold', size: 7.8, ink: 'ink', leading: 9.6 },
  head: { face: 'semibold', size: 7.2, ink: 'ink', leading: 8.8 },
  strip: { face: 'semibold', size: 8, ink: 'ink', leading: 9.4 },
  governs: { face: 'medium', size: 6.9, ink: 'ink', leading: 8 },
  label: { face: 'regular', size: 5.8, ink: 'quiet', leading: 7 },
} as const satisfies Record<string, Style>;

/** Sets font and size, and answers how wide a text comes out, points. */
export function measure(pdf: PdfSink, text: string, style: Style): number {
  pdf.font(style.face, style.size);
  return pdf.widthOfString(text);
}

/** Draws one line with its baseline at y. `x` is the left, middle or right end as `align` says. */
export function drawLine(
  pdf: PdfSink,
  text: string,
  x: number,
  baselineY: number,
  style: Style,
  align: 'start' | 'middle' | 'end' = 'start',
): void {
  const width = align === 'start' ? 0 : measure(pdf, text, style);
  const left = align === 'start' ? x : align === 'end' ? x - width : x - width / 2;
  pdf.font(style.face, style.size);
  pdf.fillColor(INK[style.ink]);
  pdf.text(text, left, baselineY, { lineBreak: false, baseline: 'alphabetic', fill: true, stroke: false });
}

/**
 * Breaks text into lines no wider than `width` points: at line feeds, at spaces, and inside a word only when the word
 * alone is wider than the line. Never returns an empty list.
 */
export function wrap(pdf: PdfSink, text: string, width: number, style: Style): string[] {
  const lines: string[] = [];
  for (const paragraph of keepUnits(printable(text)).split('\n')) {
    let line = '';
    for (const word of paragraph.split(' ').filter((each) => each !== '')) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (measure(pdf, longer, style) <= width) {
        line = longer;
        continue;
      }
      if (line !== '') lines.push(line);
      const pieces = breakWord(pdf, word, width, style);
      line = pieces.pop() ?? '';
      lines.push(...pieces);
    }
    lines.push(line);
  }
  return lines;
}

/** A number and its unit stay on one line. */
function keepUnits(text: string): string {
  return text.replaceAll(
    /(\d) (?=(?:A|V|W|m|ft|mm|in|dBm?|dBi|%|NM|km|mm²|AWG|MHz|Ω|Ah|h)(?![\p{L}\d]))/gu,
    '$1\u00A0',
  );
}

function breakWord(pdf: PdfSink, word: string, width: number, style: Style): string[] {
  if (measure(pdf, word, style) <= width) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const character of word) {
    if (piece !== '' && measure(pdf, piece + character, style) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += character;
  }
  return [...pieces, piece];
}

/** Most lines that are kept together: well under a page of the largest type. */
const PORTION = 24;

/** Lines in portions that fit a page each; nearly always one. */
export function portions(lines: readonly string[]): string[][] {
  const out: string[][] = [];
  for (let from = 0; from < lines.length; from += PORTION) out.push(lines.slice(from, from + PORTION));
  return out;
}

/** Draws wrapped lines from the top edge `topY`; the first baseline is 80 per cent of the leading below it. */
export function drawLines(
  pdf: PdfSink,
  lines: readonly string[],
  x: number,
  topY: number,
  style: Style,
  align: 'start' | 'middle' | 'end' = 'start',
): void {
  lines.forEach((line, index) => {
    if (line !== '') drawLine(pdf, line, x, topY + style.leading * (index + 0.8), style, align);
  });
}

/** A straight rule. */
export function drawRule(
  pdf: PdfSink,
  from: readonly [x: number, y: number],
  to: readonly [x: number, y: number],
  width: number,
  ink: InkName,
): void {
  pdf.lineWidth(width);
  pdf.strokeColor(INK[ink]);
  pdf.moveTo(from[0], from[1]);
  pdf.lineTo(to[0], to[1]);
  pdf.stroke();
}
