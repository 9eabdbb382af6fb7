import { type NodeStore, ONE, ZERO } from './store.ts';

const PLAIN_CODES = 8;

/** In place of a highest order: all sets. No set is longer than there are events. */
export const EVERY_ORDER = 1 << 20;

/**
 * Families of sets as zero-suppressed diagrams: low are the sets without the variable, high those with it, taken out. ZERO
 * holds no set, ONE only the empty one. Every family is kept minimal (no member contains another) and within an order.
 * Source: zero-suppressed diagrams after Minato; truncated from the tree as in Jung, Han and Yang 2008. docs/redundancy.md
 * has the three operations.
 */
export class Families {
  private readonly store: NodeStore;
  /** Lowest order of what a variable stands for: 1 for an event, more for a module. */
  private readonly weights: readonly number[];
  private readonly codes: {
    readonly less: number;
    readonly union: number;
    readonly product: number;
    readonly upTo: number;
    readonly minimal: number;
  };

  constructor(store: NodeStore, weights: readonly number[]) {
    this.store = store;
    this.weights = weights;
    // Where every variable is one event, results hold for all functions of the store; else only for these weights.
    const isPlain = weights.every((weight) => weight === 1);
    const base = isPlain ? PLAIN_CODES : store.nextCode;
    if (!isPlain) store.nextCode += 5;
    this.codes = { less: base, union: base + 1, product: base + 2, upTo: base + 3, minimal: base + 4 };
  }

  /** The family of one set of one variable. */
  single(variable: number): number {
    return this.node(variable, ZERO, ONE);
  }

  /** Members of `family` that contain no member of `other`. */
  less(family: number, other: number): number {
    if (family === ZERO || other === ONE || family === other) return ZERO;
    if (other === ZERO || family === ONE) return family;
    const { store, codes } = this;
    const known = store.recall(codes.less, family, other, 0);
    if (known >= 0) return known;
    const { variable, low, high } = store;
    const [v, w] = [variable[family] as number, variable[other] as number];
    const [fLow, fHigh] = [low[family] as number, high[family] as number];
    const [oLow, oHigh] = [low[other] as number, high[other] as number];
    let result: number;
    if (v > w) result = this.less(family, oLow);
    else if (v < w) result = this.node(v, this.less(fLow, other), this.less(fHigh, other));
    else result = this.node(v, this.less(fLow, oLow), this.less(this.less(fHigh, oHigh), oLow));
    return store.remember(codes.less, family, other, 0, result);
  }

  /** All members of both, the non-minimal ones dropped. */
  union(first: number, second: number): number {
    if (first === ONE || second === ONE) return ONE;
    if (first === ZERO || first === second) return second;
    if (second === ZERO) return first;
    const [a, b] = first < second ? [first, second] : [second, first];
    const { store, codes } = this;
    const known = store.recall(codes.union, a, b, 0);
    if (known >= 0) return known;
    const v = Math.min(store.variable[a] as number, store.variable[b] as number);
    const low = this.union(this.without(a, v), this.without(b, v));
    const high = this.union(this.having(a, v), this.having(b, v));
    return store.remember(codes.union, a, b, 0, this.node(v, low, this.less(high, low)));
  }

  /** Every union of a member of one and a member of the other, up to an order, minimal. */
  product(first: number, second: number, order: number): number {
    if (first === ZERO || second === ZERO || order < 0) return ZERO;
    if (first === ONE || first === second) return this.upTo(second, order);
    if (second === ONE) return this.upTo(first, order);
    const [a, b] = first < second ? [first, second] : [second, first];
    const { store, codes } = this;
    const known = store.recall(codes.product, a, b, order);
    if (known >= 0) return known;
    const v = Math.min(store.variable[a] as number, store.variable[b] as number);
    const left = this.leftOf(order, v);
    const [aLow, bLow] = [this.without(a, v), this.without(b, v)];
    const low = this.product(aLow, bLow, order);
    const high = left < 0 ? ZERO : this.productHaving(a, b, v, left);
    return store.remember(codes.product, a, b, order, this.node(v, low, this.less(high, low)));
  }

  private productHaving(a: number, b: number, v: number, left: number): number {
    const [aLow, bLow] = [this.without(a, v), this.without(b, v)];
    const [aHigh, bHigh] = [this.having(a, v), this.having(b, v)];
    if (aHigh === ZERO) return this.product(aLow, bHigh, left);
    if (bHigh === ZERO) return this.product(aHigh, bLow, left);
    const both = this.product(aHigh, this.union(bHigh, bLow), left);
    return this.union(both, this.product(aLow, bHigh, left));
  }

  /** Members of an order or less. */
  upTo(family: number, order: number): number {
    if (order < 0) return ZERO;
    if (family <= ONE) return family;
    const { store, codes } = this;
    const known = store.recall(codes.upTo, family, 0, order);
    if (known >= 0) return known;
    const v = store.variable[family] as number;
    const [low, high] = [store.low[family] as number, store.high[family] as number];
    const left = this.leftOf(order, v);
    const result = this.node(v, this.upTo(low, order), left < 0 ? ZERO : this.upTo(high, left));
    return store.remember(codes.upTo, family, 0, order, result);
  }

  /**
   * The minimal members, up to an order, of the sets that make a function true: those that do without the variable, and those
   * with it that hold none of them. For functions that only and and or have made.
   * Source: minimal solutions of a binary decision diagram after Rauzy 1993 (from memory).
   */
  minimalOf(functionNode: number, order: number): number {
    if (order < 0) return ZERO;
    if (functionNode <= ONE) return functionNode;
    const { store, codes } = this;
    const known = store.recall(codes.minimal, functionNode, 0, order);
    if (known >= 0) return known;
    const v = store.variable[functionNode] as number;
    const [fLow, fHigh] = [store.low[functionNode] as number, store.high[functionNode] as number];
    const low = this.minimalOf(fLow, order);
    const high = this.less(this.minimalOf(fHigh, this.leftOf(order, v)), low);
    return store.remember(codes.minimal, functionNode, 0, order, this.node(v, low, high));
  }

  private leftOf(order: number, v: number): number {
    return order === EVERY_ORDER ? order : order - (this.weights[v] ?? 1);
  }

  private without(family: number, v: number): number {
    return this.store.variable[family] === v ? (this.store.low[family] as number) : family;
  }

  private having(family: number, v: number): number {
    return this.store.variable[family] === v ? (this.store.high[family] as number) : ZERO;
  }

  private node(variable: number, low: number, high: number): number {
    return high === ZERO ? low : this.store.node(variable, low, high);
  }
}
