import { findSyntaxFault } from '../../core/document/jsonSyntax.ts';

/** Texts longer than this are not searched: finding the place would take longer than it helps. */
const MAX_SEARCHED = 5_000_000;

/**
 * The character of a text at which a problem lies: where it stops being JSON, else the value the problem's place names,
 * or the nearest thing round it that is there. Null when the problem is one of the whole file.
 * @param where place as the loader tells it, such as `runs[3] "W04" › to.portId`
 */
export function problemIndex(text: string, where: string): number | null {
  if (text.length > MAX_SEARCHED) return null;
  const fault = findSyntaxFault(text);
  if (fault) return fault.index;
  const path = pathOf(where);
  return path.length === 0 ? null : placeOfPath(text, path);
}

/** `runs[3] "W04" › to.portId` becomes `runs`, `3`, `to`, `portId`; empty for what is no path. */
export function pathOf(where: string): string[] {
  const bare = where.replace(/ "[^"]*"(?= › |$)/g, '');
  if (!/^[\w[\].› ]+$/.test(bare) || / (?!›)(?<!› )/.test(bare)) return [];
  return bare.match(/\w+/g) ?? [];
}

const TOKEN = /"(?:[^"\\]|\\.)*"|[{}[\],:]|[^\s{}[\],:"]+/g;

/** Walks a valid JSON text to the value at a path; the last value on the way that is there where the path breaks off. */
export function placeOfPath(text: string, path: readonly string[]): number | null {
  const walker = new PathWalker(path);
  for (const token of text.matchAll(TOKEN)) {
    if (walker.take(token[0], token.index)) break;
  }
  return walker.best;
}

interface Level {
  readonly isList: boolean;
  key: string;
  /** In an object: whether the next string is a key. */
  awaitsKey: boolean;
}

class PathWalker {
  best: number | null = null;
  #bestDepth = 0;
  readonly #levels: Level[] = [];
  readonly #path: readonly string[];

  constructor(path: readonly string[]) {
    this.#path = path;
  }

  /** Takes the next token; true once the value at the whole path begins. */
  take(token: string, index: number): boolean {
    const level = this.#levels.at(-1);
    if (token === '}' || token === ']') this.#levels.pop();
    else if (token === ',') {
      if (level?.isList) level.key = String(Number(level.key) + 1);
      else if (level) level.awaitsKey = true;
    } else if (token === ':') {
      if (level) level.awaitsKey = false;
    } else if (level?.awaitsKey) level.key = token.slice(1, -1);
    else return this.#value(token, index);
    return false;
  }

  #value(token: string, index: number): boolean {
    const depth = this.#levels.length;
    const isOnPath = depth <= this.#path.length && this.#levels.every(({ key }, i) => key === this.#path[i]);
    if (isOnPath && depth > this.#bestDepth) {
      this.best = index;
      this.#bestDepth = depth;
    }
    if (token === '{') this.#levels.push({ isList: false, key: '', awaitsKey: true });
    else if (token === '[') this.#levels.push({ isList: true, key: '0', awaitsKey: false });
    return this.#bestDepth === this.#path.length;
  }
}
