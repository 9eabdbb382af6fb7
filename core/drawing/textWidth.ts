/**
 * Advance widths of the drawing's typeface (Barlow Semi Condensed, regular), thousandths of an em, for U+0020 to U+007E;
 * read from the font's own table. Core cannot measure text, and layout must not depend on where it runs.
 */
const ADVANCES = [
  200, 285, 249, 624, 488, 815, 600, 125, 241, 241, 379, 471, 221, 354, 234, 367, 504, 303, 469, 462, 483, 461, 462,
  419, 472, 461, 275, 252, 471, 471, 471, 415, 794, 508, 538, 526, 542, 517, 486, 532, 563, 237, 501, 531, 482, 618,
  585, 539, 517, 510, 528, 500, 496, 562, 514, 751, 511, 496, 472, 341, 367, 341, 423, 430, 188, 462, 484, 461, 484,
  470, 317, 474, 482, 232, 223, 453, 206, 737, 482, 480, 490, 490, 329, 428, 315, 480, 427, 638, 426, 414, 403, 288,
  155, 288, 481,
] as const;
const OTHERS: Readonly<Record<string, number>> = { '·': 203, '–': 411, '−': 471, Ω: 561, '°': 370, '²': 285 };
/** A letter the table lacks is taken as wide as a capital. */
const UNKNOWN = 540;
/** Semibold runs a little wider: mean of the two faces' tables. */
const BOLD_FACTOR = 1.04;

/** Width of a line of text in the drawing's typeface, in the unit of `size` (the em). */
export function textWidth(text: string, size: number, bold = false): number {
  let thousandths = 0;
  for (const character of text) {
    thousandths += OTHERS[character] ?? ADVANCES[(character.codePointAt(0) ?? 0) - 32] ?? UNKNOWN;
  }
  return (thousandths / 1000) * size * (bold ? BOLD_FACTOR : 1);
}

/** The text cut to a width with an ellipsis, or whole when it fits. */
export function fitted(text: string, size: number, maxWidth: number, bold = false): string {
  if (textWidth(text, size, bold) <= maxWidth) return text;
  let cut = [...text];
  while (cut.length > 1 && textWidth(`${cut.join('').trimEnd()}…`, size, bold) > maxWidth) cut = cut.slice(0, -1);
  return `${cut.join('').trimEnd()}…`;
}
