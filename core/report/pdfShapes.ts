import { PALETTES } from '../drawing/palette.ts';
import type { Drawing, Shape } from '../drawing/types.ts';
import type { PdfSink } from './pdfSink.ts';
import { printable } from './pdfSink.ts';

const PALETTE = PALETTES.print;

/**
 * Draws a drawing with its top left corner at (x, y), `scale` points to a drawing unit, clipped to its own frame.
 * Everything stays vector; colours are the print palette's.
 */
export function drawShapes(pdf: PdfSink, drawing: Drawing, x: number, y: number, scale: number): void {
  pdf.save();
  pdf.translate(x, y);
  pdf.scale(scale);
  pdf.rect(0, 0, drawing.width, drawing.height);
  pdf.clip();
  for (const shape of drawing.shapes) {
    pdf.save();
    if (shape.opacity !== undefined) pdf.opacity(shape.opacity);
    drawShape(pdf, shape);
    pdf.restore();
  }
  pdf.restore();
}

function drawShape(pdf: PdfSink, shape: Shape): void {
  if (shape.kind === 'text') {
    drawText(pdf, shape);
    return;
  }
  if (shape.kind === 'path') pdf.path(shape.d);
  else pdf.circle(shape.x, shape.y, shape.radius);
  paint(pdf, shape);
}

function paint(pdf: PdfSink, shape: Exclude<Shape, { kind: 'text' }>): void {
  const { stroke, fill } = shape;
  pdf.lineWidth(shape.width);
  pdf.lineJoin('round');
  pdf.lineCap(shape.kind === 'path' && shape.dash ? 'butt' : 'round');
  if (shape.kind === 'path' && shape.dash && shape.dash.length > 0) pdf.addContent(`[${shape.dash.join(' ')}] 0 d`);
  if (fill !== 'none') pdf.fillColor(PALETTE[fill]);
  if (stroke !== 'none') pdf.strokeColor(PALETTE[stroke]);
  if (fill !== 'none' && stroke !== 'none') pdf.fillAndStroke();
  else if (fill !== 'none') pdf.fill();
  else pdf.stroke();
}

function drawText(pdf: PdfSink, shape: Extract<Shape, { kind: 'text' }>): void {
  const text = printable(shape.text);
  pdf.translate(shape.x, shape.y);
  if (shape.rotate) pdf.rotate(shape.rotate);
  pdf.font(shape.bold ? 'semibold' : 'medium', shape.size);
  const width = shape.anchor === 'start' ? 0 : pdf.widthOfString(text);
  const left = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? -width / 2 : -width;
  if (shape.halo) {
    pdf.lineWidth(shape.size * 0.28);
    pdf.lineJoin('round');
    pdf.strokeColor(PALETTE.paper);
    pdf.text(text, left, 0, { lineBreak: false, baseline: 'alphabetic', fill: false, stroke: true });
  }
  pdf.fillColor(PALETTE[shape.ink]);
  pdf.text(text, left, 0, { lineBreak: false, baseline: 'alphabetic', fill: true, stroke: false });
}
