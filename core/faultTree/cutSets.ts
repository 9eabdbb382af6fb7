import { Families } from './families.ts';
import { type Module, modulesOf } from './modules.ts';
import { ALWAYS, type Network, networksOf } from './network.ts';
import { type Ordered, orderLeaves } from './order.ts';
import { productOf, sumOf } from './orders.ts';
import { NodeStore, ONE, ZERO } from './store.ts';
import type { CutSet, FaultTree } from './types.ts';
import { diagramOf } from './walkGates.ts';

/** The minimal cut sets of a tree: how many of each order, and those of an order on demand. */
export interface CutSets {
  /** Highest order looked for; null when all were. No set of that order or less is missing. */
  readonly maxOrder: number | null;
  /** The top is down with nothing failed at all; then there is no set to name. */
  readonly lostFromStart: boolean;
  /** Index 0 holds the single points of failure; ends at the highest order there is. */
  readonly countByOrder: readonly number[];
  readonly count: number;
  /** All sets of one order, each sorted by id and the sets by their ids; may be many: see `countByOrder` first. */
  readonly ofOrder: (order: number) => readonly CutSet[];
  /**
   * Sum over all sets of the product of their probabilities, and of those with each event: the first is an upper bound of the
   * probability of the top, the share of an event in it its importance after Fussell and Vesely in the form for rare events.
   */
  readonly rareEventSum: (probabilityOf: (id: string) => number) => {
    sum: number;
    withEvent: ReadonlyMap<string, number>;
  };
}

/** A module's family with what its variables stand for. */
interface Solved {
  readonly module: Module;
  readonly ordered: Ordered;
  readonly root: number;
  readonly nodes: Int32Array;
  /** Sets by order, of the whole module and of every node in it; index is the order, inner modules written out. */
  readonly counts: readonly number[];
  readonly countsAt: ReadonlyMap<number, readonly number[]>;
}

/** High enough for any tree: no set is longer than there are events. */
const EVERY_ORDER = 1 << 20;

/**
 * Minimal cut sets of a coherent tree, exact up to an order, or all of them.
 * @param maxOrder 1 and up; all orders when left out. Cutting off is exact: no shorter set depends on a longer one.
 * @throws RangeError with a sentence for a tree that is not sound or an order that is no whole number from 1
 * Method: bottom-up zero-suppressed diagrams, module by module (docs/redundancy.md).
 * Checked by: tests/published/faultTrees.test.ts
 */
export function minimalCutSets(tree: FaultTree, maxOrder?: number): CutSets {
  return cutSetsOf(networksOf(tree)(tree.top), new NodeStore(), maxOrder);
}

/** `minimalCutSets` of a network, its diagrams in a store that many may share. */
export function cutSetsOf(network: Network, store: NodeStore, maxOrder?: number): CutSets {
  if (maxOrder !== undefined && !(Number.isInteger(maxOrder) && maxOrder >= 1)) {
    throw new RangeError(`The highest order of cut sets must be a whole number from 1, not ${maxOrder}.`);
  }
  if (network.top < network.events.length) return trivial(network, maxOrder ?? null);
  return new CutSetReader(network, store, maxOrder ?? EVERY_ORDER).read(maxOrder ?? null);
}

/** A top that is a constant or a single event. */
function trivial(network: Network, maxOrder: number | null): CutSets {
  const id = network.events[network.top];
  const [countByOrder, sets] = id === undefined ? [[], []] : [[1], [[id]]];
  return {
    maxOrder,
    lostFromStart: network.top === ALWAYS,
    countByOrder,
    count: countByOrder.length,
    ofOrder: (order) => (order === 1 ? sets : []),
    rareEventSum: (of) =>
      id === undefined ? { sum: 0, withEvent: new Map() } : { sum: of(id), withEvent: new Map([[id, of(id)]]) },
  };
}

class CutSetReader {
  private readonly store: NodeStore;
  private readonly solved = new Map<number, Solved>();
  private readonly network: Network;
  private readonly top: Solved;

  constructor(network: Network, store: NodeStore, order: number) {
    this.network = network;
    this.store = store;
    for (const module of modulesOf(network)) this.solved.set(module.top, this.solve(module, order));
    this.top = this.solvedAt(network.top);
  }

  read(maxOrder: number | null): CutSets {
    const countByOrder = this.top.counts.slice(1);
    return {
      maxOrder,
      lostFromStart: false,
      countByOrder,
      count: countByOrder.reduce((sum, n) => sum + n, 0),
      ofOrder: (order) => this.ofOrder(order),
      rareEventSum: (of) => this.rareEventSum(of),
    };
  }

  private solvedAt(node: number): Solved {
    const solved = this.solved.get(node);
    if (!solved) throw new RangeError('A module was asked for before it was solved.');
    return solved;
  }

  private solve(module: Module, order: number): Solved {
    const ordered = orderLeaves(this.network, module, 'as given');
    const weights = ordered.leaves.map((leaf) => this.lowestOrder(leaf));
    const families = new Families(this.store, weights);
    const root = diagramOf(
      this.network,
      module,
      this.store,
      {
        and: (a, b) => families.product(a, b, order),
        or: (a, b) => families.union(a, b),
        never: ZERO,
        always: ONE,
      },
      (leaf) => (this.lowestOrder(leaf) > order ? ZERO : families.single(ordered.levelOf.get(leaf) ?? 0)),
    );
    const nodes = this.store.below(root);
    const countsAt = this.countsOf(nodes, ordered, order);
    return { module, ordered, root, nodes, countsAt, counts: countsAt.get(root) ?? (root === ONE ? [1] : []) };
  }

  private lowestOrder(leaf: number): number {
    if (leaf < this.network.events.length) return 1;
    const lowest = this.solvedAt(leaf).counts.findIndex((count) => count > 0);
    return lowest < 0 ? Number.POSITIVE_INFINITY : lowest;
  }

  /** Number of sets by order, from the leaves up: those without the variable, and those with it, one order (or more) longer. */
  private countsOf(nodes: Int32Array, ordered: Ordered, order: number): Map<number, readonly number[]> {
    const { store } = this;
    const counts = new Map<number, readonly number[]>([
      [ZERO, []],
      [ONE, [1]],
    ]);
    for (const node of nodes) {
      const leaf = ordered.leaves[store.variable[node] as number] as number;
      const own = leaf < this.network.events.length ? [0, 1] : this.solvedAt(leaf).counts;
      const low = counts.get(store.low[node] as number) ?? [];
      counts.set(node, sumOf(low, productOf(own, counts.get(store.high[node] as number) ?? [], order)));
    }
    return counts;
  }

  private ofOrder(order: number): readonly CutSet[] {
    const sets: string[][] = [];
    if (Number.isInteger(order) && order >= 1)
      this.walk(this.top, this.top.root, order, [], (set) => sets.push([...set].sort(byId)));
    return sets.sort(bySets);
  }

  /** Every way down a family with exactly `left` more events; inner modules are gone into where they are met. */
  private walk(
    at: Solved,
    node: number,
    left: number,
    taken: readonly string[],
    found: (set: readonly string[]) => void,
  ): void {
    if (!((at.countsAt.get(node) ?? [])[left] ?? 0)) return;
    if (node === ONE) {
      found(taken);
      return;
    }
    const { store, network } = this;
    this.walk(at, store.low[node] as number, left, taken, found);
    const leaf = at.ordered.leaves[store.variable[node] as number] as number;
    const high = store.high[node] as number;
    const id = network.events[leaf];
    if (id !== undefined) {
      this.walk(at, high, left - 1, [...taken, id], found);
      return;
    }
    const inner = this.solvedAt(leaf);
    for (let order = 1; order <= left; order += 1) {
      if (!((at.countsAt.get(high) ?? [])[left - order] ?? 0)) continue;
      this.walk(inner, inner.root, order, taken, (set) => this.walk(at, high, left - order, set, found));
    }
  }

  private rareEventSum(of: (id: string) => number): { sum: number; withEvent: ReadonlyMap<string, number> } {
    const value = new Map<number, number>();
    const leafValue = (leaf: number): number => {
      const id = this.network.events[leaf];
      return id === undefined ? (value.get(leaf) ?? 0) : of(id);
    };
    const sums = new Map<Solved, Map<number, number>>();
    for (const solved of this.solved.values()) {
      const { store } = this;
      const at = new Map([
        [ZERO, 0],
        [ONE, 1],
      ]);
      for (const node of solved.nodes) {
        const leaf = solved.ordered.leaves[store.variable[node] as number] as number;
        const [low, high] = [at.get(store.low[node] as number) ?? 0, at.get(store.high[node] as number) ?? 0];
        at.set(node, low + leafValue(leaf) * high);
      }
      sums.set(solved, at);
      value.set(solved.module.top, at.get(solved.root) ?? 0);
    }
    return { sum: value.get(this.network.top) ?? 0, withEvent: this.sharesOf(sums, leafValue) };
  }

  /** By the chain rule from the top down: how the sum changes with each leaf, times the leaf. */
  private sharesOf(
    sums: ReadonlyMap<Solved, ReadonlyMap<number, number>>,
    leafValue: (leaf: number) => number,
  ): ReadonlyMap<string, number> {
    const slope = new Map<number, number>([[this.network.top, 1]]);
    const shares = new Map<string, number>();
    for (const solved of [...this.solved.values()].reverse()) {
      const at = sums.get(solved);
      const weight = new Map<number, number>([[solved.root, slope.get(solved.module.top) ?? 0]]);
      for (const node of solved.nodes.toReversed()) {
        const { store } = this;
        const leaf = solved.ordered.leaves[store.variable[node] as number] as number;
        const [low, high] = [store.low[node] as number, store.high[node] as number];
        const w = weight.get(node) ?? 0;
        slope.set(leaf, (slope.get(leaf) ?? 0) + w * (at?.get(high) ?? 0));
        weight.set(low, (weight.get(low) ?? 0) + w);
        weight.set(high, (weight.get(high) ?? 0) + w * leafValue(leaf));
      }
    }
    this.network.events.forEach((id, leaf) => {
      shares.set(id, (slope.get(leaf) ?? 0) * leafValue(leaf));
    });
    return shares;
  }
}

const byId = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function bySets(a: CutSet, b: CutSet): number {
  for (let i = 0; i < Math.min(a.length, b.length); i += 1) {
    const by = byId(a[i] as string, b[i] as string);
    if (by !== 0) return by;
  }
  return a.length - b.length;
}
