import { type Box, lengthInBox, overlaps, type Point } from './geometry.ts';

/** A line that labels would rather not cover, and how much they mind, per unit of length. */
interface SoftLine {
  readonly a: Point;
  readonly b: Point;
  readonly weight: number;
  /** Lines of the same owner as the label do not count. */
  readonly owner: string | undefined;
}

/** What is where on the sheet, in square cells, so that a question costs only what is near. */
export class Occupancy {
  readonly #cell: number;
  readonly #boxes = new Map<string, Box[]>();
  readonly #lines = new Map<string, SoftLine[]>();

  /** @param cell side of a cell, drawing units, > 0; about the size of a balloon is right */
  constructor(cell: number) {
    if (!(cell > 0)) throw new RangeError('A cell needs a size.');
    this.#cell = cell;
  }

  addBox(box: Box): void {
    for (const key of this.#keys(box)) push(this.#boxes, key, box);
  }

  addLine(a: Point, b: Point, weight: number, owner?: string): void {
    const soft: SoftLine = { a, b, weight, owner };
    const steps = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / (this.#cell / 2)));
    const seen = new Set<string>();
    for (let step = 0; step <= steps; step++) {
      const key = this.#key(a.x + ((b.x - a.x) * step) / steps, a.y + ((b.y - a.y) * step) / steps);
      if (seen.has(key)) continue;
      seen.add(key);
      push(this.#lines, key, soft);
    }
  }

  /** Whether the box would cover something that must stay clear. */
  hits(box: Box): boolean {
    for (const key of this.#keys(box)) {
      if (this.#boxes.get(key)?.some((other) => overlaps(box, other))) return true;
    }
    return false;
  }

  /** How much line the box would cover, weighted; 0 when it covers none. */
  lineCost(box: Box, owner?: string): number {
    const seen = new Set<SoftLine>();
    let cost = 0;
    for (const key of this.#keys(box)) {
      for (const soft of this.#lines.get(key) ?? []) {
        if (seen.has(soft) || (owner !== undefined && soft.owner === owner)) continue;
        seen.add(soft);
        cost += soft.weight * lengthInBox(soft.a, soft.b, box);
      }
    }
    return cost;
  }

  *#keys(box: Box): Generator<string> {
    const [left, right] = [Math.floor(box.left / this.#cell), Math.floor(box.right / this.#cell)];
    const [top, bottom] = [Math.floor(box.top / this.#cell), Math.floor(box.bottom / this.#cell)];
    for (let x = left; x <= right; x++) for (let y = top; y <= bottom; y++) yield `${x},${y}`;
  }

  #key(x: number, y: number): string {
    return `${Math.floor(x / this.#cell)},${Math.floor(y / this.#cell)}`;
  }
}

function push<T>(map: Map<string, T[]>, key: string, value: T): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}
