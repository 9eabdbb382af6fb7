import { round2 } from './geometry.ts';
import type { Drawing, Ink, Shape } from './types.ts';

/** Typeface of the drawing and what may stand in for it. */
const FONT_FAMILY = "'Barlow Semi Condensed', 'Liberation Sans Narrow', 'Arial Narrow', sans-serif";

export interface SvgWords {
  readonly title: string;
  readonly description: string;
  /** Unit of the drawing for the size on paper: `mm` on the sheet, none on screen. */
  readonly unit?: 'mm';
}

/**
 * The drawing as one standalone SVG document: paper, shapes, and a title and description for screen readers. All text
 * is escaped and characters XML does not allow are left out.
 */
export function svgOf(drawing: Drawing, palette: Readonly<Record<Ink, string>>, words: SvgWords): string {
  const { width, height } = drawing;
  const unit = words.unit ?? '';
  const head =
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${round2(width)} ${round2(height)}" ` +
    `width="${round2(width)}${unit}" height="${round2(height)}${unit}" role="img" ` +
    `aria-labelledby="title desc" font-family="${FONT_FAMILY}">`;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    head,
    `<title id="title">${escapeXml(words.title)}</title>`,
    `<desc id="desc">${escapeXml(words.description)}</desc>`,
    `<rect width="${round2(width)}" height="${round2(height)}" fill="${palette.paper}"/>`,
    ...drawing.shapes.map((shape) => elementOf(shape, palette)),
    '</svg>',
    '',
  ].join('\n');
}

function elementOf(shape: Shape, palette: Readonly<Record<Ink, string>>): string {
  const opacity = shape.opacity === undefined || shape.opacity === 1 ? '' : ` opacity="${round2(shape.opacity)}"`;
  if (shape.kind === 'text') return textElement(shape, palette, opacity);
  const paint = `fill="${palette[shape.fill]}" stroke="${palette[shape.stroke]}" stroke-width="${round2(shape.width)}"`;
  if (shape.kind === 'circle') {
    return `<circle cx="${round2(shape.x)}" cy="${round2(shape.y)}" r="${round2(shape.radius)}" ${paint}${opacity}/>`;
  }
  const dash = shape.dash ? ` stroke-dasharray="${shape.dash.map(round2).join(' ')}"` : '';
  return `<path d="${escapeXml(shape.d)}" ${paint} stroke-linejoin="round"${dash}${opacity}/>`;
}

function textElement(
  shape: Extract<Shape, { kind: 'text' }>,
  palette: Readonly<Record<Ink, string>>,
  opacity: string,
): string {
  const at = `x="${round2(shape.x)}" y="${round2(shape.y)}"`;
  const turn = shape.rotate ? ` transform="rotate(${round2(shape.rotate)} ${round2(shape.x)} ${round2(shape.y)})"` : '';
  const bold = shape.bold ? ' font-weight="600"' : '';
  const halo = shape.halo
    ? ` stroke="${palette.paper}" stroke-width="${round2(shape.size * 0.3)}" stroke-linejoin="round" paint-order="stroke"`
    : '';
  return (
    `<text ${at} font-size="${round2(shape.size)}" text-anchor="${shape.anchor}" fill="${palette[shape.ink]}"` +
    `${bold}${halo}${turn}${opacity} xml:space="preserve">${escapeXml(shape.text)}</text>`
  );
}

/** Text safe inside XML content and attribute values. */
export function escapeXml(text: string): string {
  let out = '';
  for (const character of text) out += ESCAPES[character] ?? (isXmlCharacter(character) ? character : '');
  return out;
}

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** XML 1.0, production 2: tab, line feed, carriage return and everything printable; no lone surrogate. */
function isXmlCharacter(character: string): boolean {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x20) return code === 0x09 || code === 0x0a || code === 0x0d;
  return !(code >= 0xd800 && code <= 0xdfff) && code !== 0xfffe && code !== 0xffff;
}
