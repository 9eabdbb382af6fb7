import { fitted, textWidth } from '../drawing/textWidth.ts';

/** A text on as few lines as it needs, two at most unless said otherwise; what then still does not fit is cut with an ellipsis. */
export function wrapped(text: string, size: number, maxWidth: number, bold: boolean, mostLines = 2): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    const longer = line === '' ? word : `${line} ${word}`;
    const isLast = lines.length === mostLines - 1;
    if (line === '' || isLast || textWidth(longer, size, bold) <= maxWidth) line = longer;
    else {
      lines.push(line);
      line = word;
    }
  }
  return [...lines, line.trim()].map((each) => fitted(each, size, maxWidth, bold));
}
