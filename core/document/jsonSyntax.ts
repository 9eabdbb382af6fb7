/** Where and why a text is not JSON. `index` counts characters from 0. */
export interface SyntaxFault {
  readonly index: number;
  readonly what: string;
  readonly mend: string;
}

/** Deepest nesting that is read: no document goes beyond about a dozen. */
export const MAX_DEPTH = 64;

/**
 * Finds the first fault in a text that `JSON.parse` refused; null when it finds none. Engines differ in what their own
 * errors say and some give no position, so the place is looked for here.
 */
export function findSyntaxFault(text: string): SyntaxFault | null {
  const scanner = new Scanner(text);
  try {
    scanner.value(0);
    scanner.blank();
    if (!scanner.atEnd()) {
      scanner.fail('There is more text after the end of the document', 'Take out what follows the last bracket.');
    }
    return null;
  } catch (error) {
    if (error instanceof Fault) return error.fault;
    throw error;
  }
}

/** Line and column (both from 1) of a character in a text. */
export function lineAndColumn(text: string, index: number): { readonly line: number; readonly column: number } {
  const before = text.slice(0, index);
  const lastBreak = before.lastIndexOf('\n');
  let line = 1;
  for (let at = before.indexOf('\n'); at >= 0; at = before.indexOf('\n', at + 1)) line += 1;
  return { line, column: index - lastBreak };
}

/** The text around a character, on one line. */
export function excerpt(text: string, index: number): string {
  const lineStart = text.lastIndexOf('\n', index - 1) + 1;
  const lineEnd = text.indexOf('\n', index);
  const from = Math.max(lineStart, index - 30);
  const to = Math.min(lineEnd < 0 ? text.length : lineEnd, index + 30);
  return text.slice(from, to).replaceAll(/\s+/g, ' ').trim();
}

class Fault extends Error {
  readonly fault: SyntaxFault;
  constructor(fault: SyntaxFault) {
    super(fault.what);
    this.fault = fault;
  }
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /[+-]?[A-Za-z_][A-Za-z0-9_]*/y;

/** Words other notations use for numbers that JSON does not have. */
const NOT_NUMBERS = ['NaN', 'Infinity', '-Infinity', '+Infinity', '-NaN', 'nan', 'inf', '-inf'];

class Scanner {
  private index = 0;
  private readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  atEnd(): boolean {
    return this.index >= this.text.length;
  }

  fail(what: string, mend: string, index = this.index): never {
    if (index >= this.text.length) {
      throw new Fault({
        index: this.text.length,
        what: 'The file ends in the middle of the document',
        mend: 'It was cut off when it was saved or copied: open a backup or the copy it came from.',
      });
    }
    throw new Fault({ index, what, mend });
  }

  blank(): void {
    while (this.index < this.text.length && ' \t\n\r'.includes(this.text.charAt(this.index))) this.index += 1;
  }

  value(depth: number): void {
    if (depth > MAX_DEPTH) this.fail(`It is nested more than ${MAX_DEPTH} deep`, 'This is not a Backstay document.');
    this.blank();
    const next = this.text.charAt(this.index);
    if (next === '{') this.object(depth);
    else if (next === '[') this.list(depth);
    else if (next === '"') this.string();
    else if (!this.number()) this.word();
  }

  private object(depth: number): void {
    this.index += 1;
    this.blank();
    if (this.take('}')) return;
    do {
      this.blank();
      if (this.text.charAt(this.index) === '}')
        this.fail('There is a comma before the closing }', 'Take that comma out.');
      if (this.text.charAt(this.index) !== '"') {
        this.fail('The name of an entry is expected here', 'Put the name in double quotation marks.');
      }
      this.string();
      this.blank();
      if (!this.take(':')) this.fail('A colon is missing after the name of an entry', 'Put in the colon.');
      this.value(depth + 1);
      this.blank();
    } while (this.take(','));
    if (!this.take('}'))
      this.fail('A comma or a closing } is missing', 'Put in what is missing between these entries.');
  }

  private list(depth: number): void {
    this.index += 1;
    this.blank();
    if (this.take(']')) return;
    do {
      this.blank();
      if (this.text.charAt(this.index) === ']')
        this.fail('There is a comma before the closing ]', 'Take that comma out.');
      this.value(depth + 1);
      this.blank();
    } while (this.take(','));
    if (!this.take(']'))
      this.fail('A comma or a closing ] is missing', 'Put in what is missing between these entries.');
  }

  private string(): void {
    const start = this.index;
    this.index += 1;
    for (let character = this.text.charAt(this.index); character !== '"'; character = this.text.charAt(this.index)) {
      if (character === '') this.fail('A text has no closing quotation mark', 'Close it.', this.text.length);
      if (character < ' ')
        this.fail('A text has no closing quotation mark on its line', 'Close the quotation marks.', start);
      if (character === '\\') this.escape();
      this.index += 1;
    }
    this.index += 1;
  }

  private escape(): void {
    this.index += 1;
    const next = this.text.charAt(this.index);
    if (next === 'u' && /^[0-9a-fA-F]{4}$/.test(this.text.slice(this.index + 1, this.index + 5))) this.index += 4;
    else if (next === '' || !'"\\/bfnrt'.includes(next)) {
      this.fail('A backslash in a text is followed by a sign it cannot stand before', 'Write the backslash twice.');
    }
  }

  private number(): boolean {
    NUMBER.lastIndex = this.index;
    const match = NUMBER.exec(this.text);
    if (!match) return false;
    this.index += match[0].length;
    const after = this.text.charAt(this.index);
    if (/[0-9.eExX]/.test(after)) {
      this.fail('This number is not written as JSON writes numbers', 'Write it plainly, e.g. 0.5 or 12.', this.index);
    }
    return true;
  }

  private word(): void {
    WORD.lastIndex = this.index;
    const word = WORD.exec(this.text)?.[0];
    if (word === 'true' || word === 'false' || word === 'null') {
      this.index += word.length;
      return;
    }
    if (word !== undefined && NOT_NUMBERS.includes(word)) {
      this.fail(
        `${word} is not a number that a document can hold`,
        'Put in the number itself; where none is known, see whether null is allowed.',
      );
    }
    if (word !== undefined) {
      this.fail(
        `The word ${word.slice(0, 20)} cannot stand here`,
        'Put a text in double quotation marks, or write a number.',
      );
    }
    const sign = this.text.charAt(this.index);
    if (sign === "'") this.fail('Texts need double quotation marks, not single ones', 'Put in " in place of \'.');
    if (sign === '/') this.fail('A document cannot have comments', 'Take the comment out; notes go into "notes".');
    if (sign === ',') this.fail('There is a comma with nothing before it', 'Take it out, or put in what is missing.');
    this.fail(
      `The sign ${sign} cannot stand here`,
      'Put in a number, a text in double quotation marks, a list or a group.',
    );
  }

  private take(sign: string): boolean {
    if (this.text.charAt(this.index) !== sign) return false;
    this.index += 1;
    return true;
  }
}
