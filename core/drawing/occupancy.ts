import { type Box, lengthInBox, overlaps, type Point } from './geometry.ts';

/** A line that labels would rather not cover, and how much they mind, per unit of length. */
interface SoftLine {
  readonly a: Point;
  readonly b: Point;
  readonly weight: number;
  /** Lines of the same owner as the label do not count. */
  readonly owner: string | undefined;
}

/** Cells from -`HALF` to `HALF` each way have a number of their own; further out they share, which costs time only. */
const HALF = 1 << 14;

/** What is where on the sheet, in square cells, so that a question costs only what is near. */
export class Occupancy {
  readonly #cell: number;
  readonly #boxes = new Map<number, Box[]>();
  readonly #lines = new Map<number, SoftLine[]>();

  /** @param cell side of a cell, drawing units, > 0; about the size of a balloon is right */
  constructor(cell: number) {
    if (!(cell > 0)) throw new RangeError('A cell needs a size.');
    this.#cell = cell;
  }

  addBox(box: Box): void {
    this.#everyCell(box, (key) => push(this.#boxes, key, box));
  }

  addLine(a: Point, b: Point, weight: number, owner?: string): void {
    const soft: SoftLine = { a, b, weight, owner };
    const steps = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / (this.#cell / 2)));
    let last = Number.NaN;
    for (let step = 0; step <= steps; step++) {
      const x = this.#index(a.x + ((b.x - a.x) * step) / steps);
      const key = keyOf(x, this.#index(a.y + ((b.y - a.y) * step) / steps));
      if (key !== last) push(this.#lines, key, soft);
      last = key;
    }
  }

  /** Whether the box would cover something that must stay clear. */
  hits(box: Box): boolean {
    const right = this.#index(box.right);
    const bottom = this.#index(box.bottom);
    for (let x = this.#index(box.left); x <= right; x++) {
      for (let y = this.#index(box.top); y <= bottom; y++) {
        for (const other of this.#boxes.get(keyOf(x, y)) ?? NONE) if (overlaps(box, other)) return true;
      }
    }
    return false;
  }

  /** How much line the box would cover, weighted; 0 when it covers none. */
  lineCost(box: Box, owner?: string): number {
    const seen = new Set<SoftLine>();
    let cost = 0;
    this.#everyCell(box, (key) => {
      for (const soft of this.#lines.get(key) ?? []) {
        if (seen.has(soft) || (owner !== undefined && soft.owner === owner)) continue;
        seen.add(soft);
        cost += soft.weight * lengthInBox(soft.a, soft.b, box);
      }
    });
    return cost;
  }

  #index(value: number): number {
    return Math.floor(value / this.#cell);
  }

  #everyCell(box: Box, visit: (key: number) => void): void {
    const right = this.#index(box.right);
    const bottom = this.#index(box.bottom);
    for (let x = this.#index(box.left); x <= right; x++) {
      for (let y = this.#index(box.top); y <= bottom; y++) visit(keyOf(x, y));
    }
  }
}

const NONE: readonly Box[] = [];

const keyOf = (x: number, y: number): number => (x + HALF) * 2 * HALF + (y + HALF);

function push<T>(map: Map<number, T[]>, key: number, value: T): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}
