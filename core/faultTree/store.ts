/** The two terminals of every diagram. What they mean is up to the diagram: false and true, or no set and the empty set. */
export const ZERO = 0;
export const ONE = 1;
/** Variable of a terminal: below every other in the order. */
const TERMINAL = 0x7fff_ffff;
const START = 1 << 9;
/** Ints of an entry of the operation cache: operation, two operands, a number, result. */
const STRIDE = 5;
const MAX_CACHE_ENTRIES = 1 << 20;

/** A diagram grew beyond the nodes it was given. Never seen outside this folder. */
export class OutOfNodes extends Error {}

/**
 * Nodes of decision diagrams, each a variable with a low and a high child, equal ones shared: one store for all that is asked
 * of one top. Arrays of numbers and a direct-mapped cache instead of objects and maps, because millions of steps go through
 * here and neither a garbage collector nor a string key keeps up with that.
 */
export class NodeStore {
  variable = new Int32Array(START).fill(TERMINAL, 0, 2);
  low = new Int32Array(START);
  high = new Int32Array(START);
  size = 2;
  /** Nodes the store may hold; the next one throws OutOfNodes. */
  limit = Number.POSITIVE_INFINITY;
  /** Codes of operations not used yet: results that hold only for some variables' meaning get codes of their own. */
  nextCode = 16;
  private places = new Int32Array(START);
  private buckets = new Int32Array(2 * START);
  private cache = new Int32Array(STRIDE * START);

  /** The node of a variable and two children, found or made. The reduction rule is the caller's. */
  node(variable: number, low: number, high: number): number {
    const mask = this.buckets.length - 1;
    let slot = hash(variable, low, high) & mask;
    for (let at = this.buckets[slot] as number; at !== 0; at = this.buckets[slot] as number) {
      if (this.variable[at] === variable && this.low[at] === low && this.high[at] === high) return at;
      slot = (slot + 1) & mask;
    }
    return this.add(slot, variable, low, high);
  }

  /** Result of an operation done before, or -1. */
  recall(operation: number, a: number, b: number, n: number): number {
    const { cache } = this;
    const at = this.entry(operation, a, b, n);
    const isIt = cache[at] === operation && cache[at + 1] === a && cache[at + 2] === b && cache[at + 3] === n;
    return isIt ? (cache[at + 4] as number) : -1;
  }

  remember(operation: number, a: number, b: number, n: number, result: number): number {
    const { cache } = this;
    const at = this.entry(operation, a, b, n);
    cache[at] = operation;
    cache[at + 1] = a;
    cache[at + 2] = b;
    cache[at + 3] = n;
    cache[at + 4] = result;
    return result;
  }

  /**
   * Nodes below and with a root, children before parents (a child is always made before what stands on it), and the place of
   * each, terminals first. The places hold until the next call.
   */
  below(root: number): { nodes: Int32Array; placeOf: (node: number) => number } {
    if (this.places.length < this.variable.length) this.places = new Int32Array(this.variable.length);
    const { places } = this;
    const found = root > ONE ? [root] : [];
    places[root] = -1;
    for (let at = 0; at < found.length; at += 1) {
      const node = found[at] as number;
      for (const child of [this.low[node] as number, this.high[node] as number]) {
        if (child <= ONE || places[child] === -1) continue;
        places[child] = -1;
        found.push(child);
      }
    }
    const nodes = Int32Array.from(found).sort();
    nodes.forEach((node, index) => {
      places[node] = index + 2;
    });
    return { nodes, placeOf: (node) => (node <= ONE ? node : (places[node] as number)) };
  }

  private entry(operation: number, a: number, b: number, n: number): number {
    return STRIDE * (hash(a, b, operation + (n << 6)) & (this.cache.length / STRIDE - 1));
  }

  private add(slot: number, variable: number, low: number, high: number): number {
    if (this.size >= this.limit) throw new OutOfNodes();
    const at = this.size;
    if (at === this.variable.length) this.grow();
    this.size += 1;
    this.variable[at] = variable;
    this.low[at] = low;
    this.high[at] = high;
    if (2 * this.size > this.buckets.length) this.rehash();
    else this.buckets[slot] = at;
    return at;
  }

  private grow(): void {
    const length = 2 * this.variable.length;
    const copied = (old: Int32Array): Int32Array<ArrayBuffer> => {
      const bigger = new Int32Array(length);
      bigger.set(old);
      return bigger;
    };
    this.variable = copied(this.variable);
    this.low = copied(this.low);
    this.high = copied(this.high);
    // What the cache knew is worked out again; that costs less than moving it.
    if (length <= MAX_CACHE_ENTRIES) this.cache = new Int32Array(STRIDE * length);
  }

  /** Forgets all nodes from a size on, and with them every result known. */
  rewind(size: number): void {
    this.size = size;
    this.cache.fill(0);
    this.fillBuckets(this.buckets.fill(0));
  }

  private rehash(): void {
    this.buckets = this.fillBuckets(new Int32Array(4 * this.buckets.length));
  }

  private fillBuckets(buckets: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
    const mask = buckets.length - 1;
    for (let at = 2; at < this.size; at += 1) {
      let slot = hash(this.variable[at] as number, this.low[at] as number, this.high[at] as number) & mask;
      while (buckets[slot] !== 0) slot = (slot + 1) & mask;
      buckets[slot] = at;
    }
    return buckets;
  }
}

function hash(a: number, b: number, c: number): number {
  let mixed = Math.imul(a, 0x9e37_79b1) ^ Math.imul(b, 0x85eb_ca77) ^ Math.imul(c, 0xc2b2_ae3d);
  mixed ^= mixed >>> 15;
  mixed = Math.imul(mixed, 0x2c1b_3c6d);
  return mixed ^ (mixed >>> 13);
}
