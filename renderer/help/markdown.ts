/**
 * The part of Markdown the user guide is written in: headings, paragraphs, lists of one level, tables, strong, emphasis,
 * code and links. It is read into plain data and drawn as elements of our own, so that no text of a guide can ever
 * become markup. Pictures are left out: in the program the real thing is on the screen.
 */
export type Inline =
  | { readonly kind: 'text' | 'strong' | 'em' | 'code'; readonly text: string }
  | { readonly kind: 'link'; readonly text: string; readonly href: string };

export type Block =
  | { readonly kind: 'heading'; readonly level: number; readonly text: string }
  | { readonly kind: 'paragraph'; readonly inlines: readonly Inline[] }
  | { readonly kind: 'list'; readonly isOrdered: boolean; readonly items: readonly (readonly Inline[])[] }
  | {
      readonly kind: 'table';
      readonly head: readonly (readonly Inline[])[];
      readonly rows: readonly (readonly (readonly Inline[])[])[];
    };

const HEADING = /^(#{1,6}) (.+)$/;
const ITEM = /^(?:[*-]|(\d+)\.) (.+)$/;
const TABLE_RULE = /^\|[ :|-]+\|$/;
const PICTURE = /^!\[[^\]]*\]\([^)]*\)$/;

/** Reads a Markdown text into blocks, in order. Never throws: what it does not know stays as the text it is. */
export function parseMarkdown(text: string): Block[] {
  return text
    .replaceAll('\r\n', '\n')
    .split(/\n{2,}/)
    .map((chunk) => chunk.trim())
    .filter((chunk) => chunk !== '' && !PICTURE.test(chunk))
    .flatMap(blocksOf);
}

function blocksOf(chunk: string): Block[] {
  const lines = chunk.split('\n');
  const [first = '', ...rest] = lines;
  const heading = HEADING.exec(first);
  if (heading) {
    const block: Block = { kind: 'heading', level: heading[1]?.length ?? 1, text: plainText(heading[2] ?? '') };
    return rest.length === 0 ? [block] : [block, ...blocksOf(rest.join('\n').trim())];
  }
  if (ITEM.test(first)) return [listOf(lines)];
  if (first.startsWith('|') && TABLE_RULE.test(rest[0] ?? '')) return [tableOf(lines)];
  // A list may follow its sentence without a blank line between.
  const listAt = lines.findIndex((line, i) => i > 0 && ITEM.test(line) && lines.slice(0, i).join(' ').endsWith(':'));
  if (listAt > 0) return [paragraphOf(lines.slice(0, listAt)), listOf(lines.slice(listAt))];
  return [paragraphOf(lines)];
}

const paragraphOf = (lines: readonly string[]): Block => ({
  kind: 'paragraph',
  inlines: parseInline(lines.map((line) => line.trim()).join(' ')),
});

function listOf(lines: readonly string[]): Block {
  const items: string[] = [];
  for (const line of lines) {
    const item = ITEM.exec(line);
    if (item) items.push(item[2] ?? '');
    else items.push(`${items.pop() ?? ''} ${line.trim()}`);
  }
  return { kind: 'list', isOrdered: ITEM.exec(lines[0] ?? '')?.[1] !== undefined, items: items.map(parseInline) };
}

function tableOf(lines: readonly string[]): Block {
  const cells = (line: string): Inline[][] =>
    line
      .replace(/^\||\|$/g, '')
      .split('|')
      .map((cell) => parseInline(cell.trim()));
  const [head = '', , ...rows] = lines;
  return { kind: 'table', head: cells(head), rows: rows.map(cells) };
}

const MARKED = /\*\*(.+?)\*\*|\*(.+?)\*|`([^`]+)`|\[([^\]]+)\]\(([^)]+)\)/g;

/** Reads the marks inside a line. */
export function parseInline(text: string): Inline[] {
  const inlines: Inline[] = [];
  let from = 0;
  for (const found of text.matchAll(MARKED)) {
    if (found.index > from) inlines.push({ kind: 'text', text: text.slice(from, found.index) });
    inlines.push(markedInline(found));
    from = found.index + found[0].length;
  }
  if (from < text.length) inlines.push({ kind: 'text', text: text.slice(from) });
  return inlines;
}

function markedInline([, strong, em, code, label, href]: RegExpExecArray): Inline {
  if (strong !== undefined) return { kind: 'strong', text: strong };
  if (em !== undefined) return { kind: 'em', text: em };
  if (code !== undefined) return { kind: 'code', text: code };
  return { kind: 'link', text: label ?? '', href: href ?? '' };
}

/** A line without its marks. */
export function plainText(line: string): string {
  return textOf(parseInline(line));
}

export const textOf = (inlines: readonly Inline[]): string => inlines.map(({ text }) => text).join('');

/** All words of a block, for searching. */
export function blockText(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return block.text;
    case 'paragraph':
      return textOf(block.inlines);
    case 'list':
      return block.items.map(textOf).join('\n');
    case 'table':
      return [block.head, ...block.rows].map((row) => row.map(textOf).join(' ')).join('\n');
  }
}
