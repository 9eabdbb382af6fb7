/** One line of a file as it can be shown: clipped, with nothing in it that would draw strangely. */
export interface ReadableLine {
  /** From 1, as an editor counts. */
  readonly number: number;
  /** The line in up to three parts: before the place of the problem, the place itself, after it. */
  readonly before: string;
  readonly mark: string;
  readonly after: string;
}

/** What is shown of a file that could not be opened: its beginning, and the lines round its first problem. */
export interface ReadableText {
  readonly parts: readonly (readonly ReadableLine[])[];
  /** Whether there is more of the file than is shown. */
  readonly isCut: boolean;
}

const FIRST_LINES = 60;
const LINES_AROUND = 8;
const MAX_LINE_LENGTH = 240;

/**
 * Picks from a text what helps to see what is left in it: the first lines, and those round the first fault where that
 * lies further on. Whatever the file holds, the result is short.
 * @param faultIndex character at which the first problem lies, or null when it lies nowhere in particular
 */
export function readableText(text: string, faultIndex: number | null): ReadableText {
  const lines = text.split(/\r\n|\n|\r/, 1_000_000);
  const fault = faultIndex === null ? null : placeOf(text, faultIndex);
  const shown = (from: number, to: number): ReadableLine[] =>
    lines
      .slice(from, to)
      .map((line, i) => readableLine(line, from + i + 1, fault?.line === from + i + 1 ? fault.column : null));
  const first = shown(0, FIRST_LINES);
  if (!fault || fault.line <= FIRST_LINES) {
    return { parts: [first], isCut: lines.length > FIRST_LINES };
  }
  const from = Math.max(FIRST_LINES, fault.line - 1 - LINES_AROUND);
  const to = fault.line + LINES_AROUND;
  const around = shown(from, to);
  if (from === FIRST_LINES) return { parts: [[...first, ...around]], isCut: to < lines.length };
  return { parts: [first, around], isCut: true };
}

function placeOf(text: string, index: number): { readonly line: number; readonly column: number } {
  // Counted as the lines are parted above, so that the mark stands in the line that is shown.
  const lines = text.slice(0, index).split(/\r\n|\n|\r/);
  return { line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 };
}

function readableLine(line: string, number: number, column: number | null): ReadableLine {
  if (column === null) return { number, before: clipped(line, MAX_LINE_LENGTH), mark: '', after: '' };
  const at = Math.min(column - 1, line.length);
  const from = Math.max(0, at - MAX_LINE_LENGTH / 2);
  return {
    number,
    before: `${from > 0 ? '…' : ''}${visible(line.slice(from, at))}`,
    mark: visible(line.slice(at, at + 1)) || '▏',
    after: clipped(line.slice(at + 1), MAX_LINE_LENGTH / 2),
  };
}

const clipped = (line: string, length: number): string =>
  line.length > length ? `${visible(line.slice(0, length))}…` : visible(line);

/** Marks in the place of characters that show nothing or turn the writing direction. */
function visible(text: string): string {
  return text.replaceAll('\t', '  ').replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Zl}\p{Zp}]/gu, '\uFFFD');
}
