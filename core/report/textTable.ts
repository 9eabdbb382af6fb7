/** Head of a column; `end` sets its cells to the right, for numbers. */
export type TextHead = string | { readonly head: string; readonly end: true };

const GAP = '  ';

/**
 * A table in plain text no wider than `width` columns: columns are as wide as their longest cell, and when that is too
 * much the widest ones give way and their cells wrap.
 */
export function textTable(heads: readonly TextHead[], rows: readonly (readonly string[])[], width: number): string[] {
  const names = heads.map((head) => (typeof head === 'string' ? head : head.head));
  const widths = columnWidths([names, ...rows], names.length, width);
  const line = (cells: readonly string[]): string[] => tableRow(heads, widths, cells);
  return [...line(names), widths.map((each) => '-'.repeat(each)).join(GAP), ...rows.flatMap(line)];
}

function columnWidths(rows: readonly (readonly string[])[], count: number, width: number): number[] {
  const widths = Array.from({ length: count }, (_, column) =>
    Math.max(1, ...rows.map((row) => [...(row[column] ?? '')].length)),
  );
  const room = width - GAP.length * (count - 1);
  let over = widths.reduce((sum, each) => sum + each, 0) - room;
  while (over > 0) {
    const widest = widths.indexOf(Math.max(...widths));
    const now = widths[widest] ?? 1;
    if (now <= 4) break;
    widths[widest] = now - 1;
    over -= 1;
  }
  return widths;
}

function tableRow(heads: readonly TextHead[], widths: readonly number[], cells: readonly string[]): string[] {
  const wrapped = widths.map((width, column) => wrapText(cells[column] ?? '', width));
  const height = Math.max(...wrapped.map((lines) => lines.length));
  return Array.from({ length: height }, (_, index) =>
    wrapped
      .map((lines, column) => {
        const text = lines[index] ?? '';
        const blank = ' '.repeat(Math.max(0, (widths[column] ?? 0) - [...text].length));
        return typeof heads[column] === 'string' ? text + blank : blank + text;
      })
      .join(GAP)
      .trimEnd(),
  );
}

/** Text in lines of at most `width` characters, broken at spaces, inside a word only when the word alone is longer. */
export function wrapText(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/u).filter((each) => each !== '')) {
    let rest = [...word];
    if (line !== '' && [...line].length + 1 + rest.length <= width) {
      line += ` ${word}`;
      continue;
    }
    if (line !== '') lines.push(line);
    while (rest.length > width) {
      lines.push(rest.slice(0, width).join(''));
      rest = rest.slice(width);
    }
    line = rest.join('');
  }
  return line === '' && lines.length > 0 ? lines : [...lines, line];
}
