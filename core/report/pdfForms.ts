import type { Piece } from './pdfPage.ts';
import { captionPieces, type Frame, gap, partedRows } from './pdfTable.ts';
import { drawLine, drawLines, drawRule, INK, mm, STYLES, wrap } from './pdfType.ts';
import type { BlankRow, Block } from './types.ts';

const PAD = 3.2;
const BLANK_MIN = 20;
/** Shares of the width: what to do, what to expect, the empty box, by whom and when. */
const BLANK_SHARES = [0.36, 0.31, 0.18, 0.15] as const;
const BLANK_HEADS = ['Check', 'Expected by this design', 'Found', 'By, date'] as const;

type BlanksBlock = Extract<Block, { kind: 'blanks' }>;

/** Commissioning blanks, with room to write in. */
export function blankPieces(frame: Frame, block: BlanksBlock): Piece[] {
  if (block.rows.length === 0) return [];
  const widths = BLANK_SHARES.map((share) => share * frame.width);
  const head: Piece = {
    height: 14,
    keepWithNext: true,
    draw: (x, y) => {
      let left = x;
      BLANK_HEADS.forEach((text, index) => {
        drawLine(frame.pdf, text, left + PAD, y + 9.5, STYLES.head);
        left += widths[index] ?? 0;
      });
      drawRule(frame.pdf, [x, y], [x + frame.width, y], 0.9, 'ink');
      drawRule(frame.pdf, [x, y + 14], [x + frame.width, y + 14], 0.6, 'ink');
    },
  };
  const rows = block.rows.map((row) => blankRow(frame, widths, row, head));
  return [...captionPieces(frame, block.caption), head, ...partedRows(frame, rows), gap(10)];
}

function blankRow(frame: Frame, widths: readonly number[], row: BlankRow, head: Piece): Piece {
  const { pdf } = frame;
  const [first = 0, second = 0, third = 0, fourth = 0] = widths;
  const label = wrap(pdf, row.label, first - 2 * PAD, STYLES.cell);
  const expected = wrap(pdf, row.expected, second - 2 * PAD, STYLES.cellStrong);
  const lines = Math.max(label.length, expected.length);
  const height = Math.max(BLANK_MIN, lines * STYLES.cell.leading + 7);
  return {
    height,
    head,
    draw: (x, y) => {
      drawLines(pdf, label, x + PAD, y + 3.5, STYLES.cell);
      drawLines(pdf, expected, x + first + PAD, y + 3.5, STYLES.cellStrong);
      const boxX = x + first + second;
      if (row.unit === 'yes / no') drawYesNo(frame, boxX + PAD, y + height / 2);
      else drawBox(frame, boxX, y + 2.5, third - PAD, height - 5, row.unit);
      drawBox(frame, boxX + third, y + 2.5, fourth, height - 5, '');
      drawRule(pdf, [x, y + height], [x + frame.width, y + height], 0.4, 'hairline');
    },
  };
}

function drawBox(frame: Frame, x: number, y: number, width: number, height: number, unit: string): void {
  const { pdf } = frame;
  pdf.lineWidth(0.5);
  pdf.strokeColor(INK.rule);
  pdf.rect(x, y, width, height);
  pdf.stroke();
  if (unit !== '') drawLine(pdf, unit, x + width - PAD, y + height - 4, STYLES.cell, 'end');
}

function drawYesNo(frame: Frame, x: number, middleY: number): void {
  ['yes', 'no'].forEach((word, index) => {
    const left = x + index * mm(11);
    drawBox(frame, left, middleY - 4, 8, 8, '');
    drawLine(frame.pdf, word, left + 11, middleY + 2.6, STYLES.cell);
  });
}

type SignatureBlock = Extract<Block, { kind: 'signatures' }>;
const SIGNATURE_HEIGHT = 52;

/** One ruled box per role: name, licence or certificate, signature, date. */
export function signaturePieces(frame: Frame, block: SignatureBlock): Piece[] {
  const shares = [
    { label: 'Name', share: 0.28 },
    { label: 'Licence or certificate no.', share: 0.24 },
    { label: 'Signature', share: 0.32 },
    { label: 'Date', share: 0.16 },
  ];
  return block.roles.map((role, index) => ({
    height: SIGNATURE_HEIGHT + 8,
    keepWithNext: index < block.roles.length - 1,
    draw: (x, y) => {
      const { pdf, width } = frame;
      drawLine(pdf, role, x, y + 10, STYLES.strong);
      pdf.lineWidth(0.6);
      pdf.strokeColor(INK.ink);
      pdf.rect(x, y + 15, width, SIGNATURE_HEIGHT - 15);
      pdf.stroke();
      let left = x;
      for (const { label, share } of shares) {
        if (left > x) drawRule(pdf, [left, y + 15], [left, y + SIGNATURE_HEIGHT], 0.5, 'ink');
        drawLine(pdf, label, left + PAD, y + 23, STYLES.label);
        left += width * share;
      }
    },
  }));
}
