import { blankPieces, signaturePieces } from './pdfForms.ts';
import type { Piece } from './pdfPage.ts';
import { drawShapes } from './pdfShapes.ts';
import { emptyPiece, type Frame, gap, matrixPieces, partedRows, tablePieces } from './pdfTable.ts';
import { drawLine, drawLines, drawRule, INK, mm, PT_PER_MM, portions, STYLES, type Style, wrap } from './pdfType.ts';
import type { Block, SheetFinding } from './types.ts';

/** A block as pieces that fit the frame's width. */
export function blockPieces(frame: Frame, block: Block): Piece[] {
  switch (block.kind) {
    case 'heading':
      return [headingPiece(frame, block.text, block.level)];
    case 'paragraph':
      return paragraphPieces(frame, block.text, toneStyle(block.tone));
    case 'facts':
      return factPieces(frame, block.rows);
    case 'table':
      return tablePieces(frame, block);
    case 'matrix':
      return matrixPieces(frame, block);
    case 'cautions':
      return [...block.items.map((item) => cautionPiece(frame, item.title, item.text)), gap(6)];
    case 'findings':
      if (block.items.length === 0) return [emptyPiece(frame, block.empty)];
      return block.items.flatMap((item) => findingPieces(frame, item));
    case 'blanks':
      return blankPieces(frame, block);
    case 'drawing':
      return drawingPieces(frame, block);
    case 'signatures':
      return signaturePieces(frame, block);
  }
}

function toneStyle(tone: 'plain' | 'quiet' | 'strong'): Style {
  return tone === 'plain' ? STYLES.body : tone === 'quiet' ? STYLES.quiet : STYLES.strong;
}

export function headingPiece(frame: Frame, text: string, level: 1 | 2 | 3): Piece {
  const style = level === 1 ? STYLES.section : level === 2 ? STYLES.heading : STYLES.minor;
  const lines = wrap(frame.pdf, text, frame.width, style);
  const before = level === 1 ? 0 : 3;
  const height = before + lines.length * style.leading + (level === 1 ? 12 : 3);
  return {
    height,
    keepWithNext: true,
    draw: (x, y) => {
      drawLines(frame.pdf, lines, x, y + before, style);
      if (level === 1) drawRule(frame.pdf, [x, y + height - 8], [x + frame.width, y + height - 8], 1.2, 'ink');
    },
  };
}

const LONG_PARAGRAPH = 10;

/** A paragraph stays whole up to ten lines; a longer one breaks, never leaving one line alone. */
function paragraphPieces(frame: Frame, text: string, style: Style): Piece[] {
  const lines = wrap(frame.pdf, text, frame.width, style);
  const after = 5;
  if (lines.length <= LONG_PARAGRAPH) return [linesPiece(frame, lines, style, after)];
  return lines.map((line, index) => ({
    ...linesPiece(frame, [line], style, index === lines.length - 1 ? after : 0),
    keepWithNext: index === 0 || index === lines.length - 2,
  }));
}

function linesPiece(frame: Frame, lines: readonly string[], style: Style, after: number): Piece {
  return {
    height: lines.length * style.leading + after,
    draw: (x, y) => drawLines(frame.pdf, lines, x, y, style),
  };
}

/** Height of a fact left blank for a pen. */
const ROOM_TO_WRITE = 20;

function factPieces(frame: Frame, rows: readonly (readonly [string, string])[]): Piece[] {
  const labelWidth = Math.min(mm(46), frame.width * 0.3);
  const pieces = rows.flatMap(([label, value], row) => {
    const labels = wrap(frame.pdf, label, labelWidth - 6, STYLES.quiet);
    const parts = portions(wrap(frame.pdf, value, frame.width - labelWidth, STYLES.body));
    return parts.map((lines, part): Piece => {
      const words = Math.max(labels.length * STYLES.quiet.leading, lines.length * STYLES.body.leading) + 2.4;
      const height = value === '' ? ROOM_TO_WRITE : words;
      return {
        height,
        keepWithNext: row === 0 && rows.length > 1,
        draw: (x, y) => {
          if (part === 0) drawLines(frame.pdf, labels, x, y + 0.6, STYLES.quiet);
          drawLines(frame.pdf, lines, x + labelWidth, y, STYLES.body);
          if (part < parts.length - 1) return;
          drawRule(frame.pdf, [x, y + height - 1], [x + frame.width, y + height - 1], 0.3, 'hairline');
        },
      };
    });
  });
  return pieces.length === 0 ? [] : [...partedRows(frame, pieces), gap(8)];
}

function cautionPiece(frame: Frame, title: string, text: string): Piece {
  const indent = mm(10);
  const lines = wrap(frame.pdf, text, frame.width - indent, STYLES.body);
  const height = 13 + lines.length * STYLES.body.leading + 7;
  return {
    height,
    draw: (x, y) => {
      drawWarning(frame, x + 1, y + 2);
      drawLine(frame.pdf, title, x + indent, y + 10, STYLES.strong);
      drawLines(frame.pdf, lines, x + indent, y + 13, STYLES.body);
      drawRule(frame.pdf, [x, y + height - 2.5], [x + frame.width, y + height - 2.5], 0.3, 'hairline');
    },
  };
}

/** The general warning triangle in outline, after ISO 7010-W001. */
function drawWarning(frame: Frame, x: number, y: number): void {
  const { pdf } = frame;
  pdf.lineWidth(1.1);
  pdf.lineJoin('round');
  pdf.strokeColor(INK.ink);
  pdf.path(`M${x + 9} ${y + 1} L${x + 18} ${y + 16.6} L${x} ${y + 16.6} Z`);
  pdf.stroke();
  pdf.fillColor(INK.ink);
  pdf.path(`M${x + 8} ${y + 6} L${x + 10} ${y + 6} L${x + 9.5} ${y + 11.6} L${x + 8.5} ${y + 11.6} Z`);
  pdf.fill();
  pdf.circle(x + 9, y + 13.7, 1);
  pdf.fill();
}

/** A finding that stands alone: mark in a box, then what, limit, whose rule, what to do. Whole unless taller than a page. */
function findingPieces(frame: Frame, finding: SheetFinding): Piece[] {
  const { pdf } = frame;
  const indent = mm(14);
  const labelWidth = mm(21);
  const title = wrap(pdf, finding.title, frame.width - indent, STYLES.heading);
  const head: Piece = {
    height: title.length * STYLES.heading.leading + 5,
    keepWithNext: true,
    draw: (x, y) => {
      drawRule(pdf, [x, y], [x + frame.width, y], 0.6, 'ink');
      drawMark(frame, finding.mark, x, y + 4);
      drawLines(pdf, title, x + indent, y + 3, STYLES.heading);
    },
  };
  const rows = findingRows(finding).flatMap(([label, value, style]) =>
    portions(wrap(pdf, value, frame.width - indent - labelWidth, style)).map(
      (lines, index): Piece => ({
        height: lines.length * style.leading + 1.5,
        keepWithNext: true,
        draw: (x, y) => {
          if (index === 0) drawLine(pdf, label, x + indent, y + style.leading * 0.8, STYLES.quiet);
          drawLines(pdf, lines, x + indent + labelWidth, y, style);
        },
      }),
    ),
  );
  return [head, ...rows, gap(8)];
}

function findingRows(finding: SheetFinding): [label: string, value: string, style: Style][] {
  const rows: [string, string, Style][] = [
    ['Concerns', finding.concerns, STYLES.body],
    ['Found', finding.measured, STYLES.body],
    ['Limit', finding.limit, STYLES.body],
    ['Whose rule', finding.authority, STYLES.body],
    ['Do', finding.action, STYLES.strong],
  ];
  if (finding.overruled !== null) rows.push(['Overruled', finding.overruled, STYLES.strong]);
  return rows.filter(([, value]) => value !== '');
}

function drawMark(frame: Frame, mark: string, x: number, y: number): void {
  const { pdf } = frame;
  pdf.lineWidth(1);
  pdf.strokeColor(INK.ink);
  pdf.rect(x, y, mm(10.5), 15);
  pdf.stroke();
  drawLine(pdf, mark, x + mm(5.25), y + 11, STYLES.heading, 'middle');
}

function drawingPieces(frame: Frame, block: Extract<Block, { kind: 'drawing' }>): Piece[] {
  const { drawing } = block;
  const caption = block.caption === '' ? [] : wrap(frame.pdf, block.caption, frame.width, STYLES.quiet);
  const captionHeight = caption.length * STYLES.quiet.leading;
  const fit = Math.min(PT_PER_MM, frame.width / drawing.width, (frame.height - captionHeight - 8) / drawing.height);
  const height = drawing.height * fit;
  return [
    {
      height: height + captionHeight + 8,
      draw: (x, y) => {
        drawShapes(frame.pdf, drawing, x + (frame.width - drawing.width * fit) / 2, y, fit);
        drawLines(frame.pdf, caption, x, y + height + 3, STYLES.quiet);
      },
    },
  ];
}
