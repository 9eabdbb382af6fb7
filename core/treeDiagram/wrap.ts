import { fitted, textWidth } from '../drawing/textWidth.ts';

/** A text on one line, or on two if it is longer; what then still does not fit is cut with an ellipsis. */
export function wrapped(text: string, size: number, maxWidth: number, bold: boolean): readonly string[] {
  const fits = (line: string): boolean => textWidth(line, size, bold) <= maxWidth;
  const words = text.split(/\s+/).filter((word) => word !== '');
  if (words.length === 0) return [''];
  let first = words[0] ?? '';
  let used = 1;
  for (const word of words.slice(1)) {
    if (!fits(`${first} ${word}`)) break;
    first = `${first} ${word}`;
    used += 1;
  }
  const rest = words.slice(used).join(' ');
  const lines = rest === '' ? [first] : [first, rest];
  return lines.map((line) => fitted(line, size, maxWidth, bold));
}
