import { checkedProbability } from './check.ts';
import { EVERY_ORDER, Families } from './families.ts';
import { functionOf, SMALL_BUDGET } from './functions.ts';
import { type Module, modulesOf } from './modules.ts';
import { ALWAYS, type Network, networksOf } from './network.ts';
import { type Ordered, orderLeaves } from './order.ts';
import { productOf, sumOf } from './orders.ts';
import { SetList } from './setList.ts';
import { NodeStore, ONE, ZERO } from './store.ts';
import { type Diagram, diagramBelow, evaluated, type Solved } from './sweeps.ts';
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
   * A RangeError names an event whose probability is none.
   */
  readonly rareEventSum: (probabilityOf: (id: string) => number) => {
    sum: number;
    withEvent: ReadonlyMap<string, number>;
  };
}

/** A module's family: its diagram, and how many sets of each order every node of it holds, inner modules written out. */
interface Family extends Solved {
  readonly counts: readonly (readonly number[])[];
}

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
      id === undefined ? { sum: 0, withEvent: new Map() } : single(id, checkedProbability(id, of(id))),
  };
}

const single = (id: string, p: number) => ({ sum: p, withEvent: new Map([[id, p]]) });

class CutSetReader {
  private readonly store: NodeStore;
  private readonly families = new Map<number, Family>();
  private readonly network: Network;
  private readonly order: number;
  private readonly top: Family;

  constructor(network: Network, store: NodeStore, order: number) {
    this.network = network;
    this.store = store;
    this.order = order;
    for (const module of modulesOf(network)) this.families.set(module.top, this.solve(module));
    this.top = this.familyOf(network.top);
  }

  read(maxOrder: number | null): CutSets {
    const countByOrder = countsOf(this.top).slice(1);
    return {
      maxOrder,
      lostFromStart: false,
      countByOrder,
      count: countByOrder.reduce((sum, n) => sum + n, 0),
      ofOrder: (order) => this.ofOrder(order),
      rareEventSum: (of) => this.rareEventSum(of),
    };
  }

  private familyOf(node: number): Family {
    const family = this.families.get(node);
    if (!family) throw new RangeError('A module was asked for before it was solved.');
    return family;
  }

  /** By way of the module's function where that is small, for it is quickly made; else family by family, cut off on the way. */
  private solve(module: Module): Family {
    const { network, store, order } = this;
    const ordered = orderLeaves(network, module, 'as given');
    const weights = ordered.leaves.map((leaf) => this.lowestOrder(leaf));
    const families = new Families(store, weights);
    const whole = functionOf(network, module, ordered, store, SMALL_BUDGET);
    const root = whole === null ? this.familyByGates(module, ordered, families) : families.minimalOf(whole, order);
    const diagram = diagramBelow(store, root, ordered.leaves);
    return { top: module.top, diagram, counts: this.countsIn(diagram) };
  }

  private familyByGates(module: Module, { levelOf }: Ordered, families: Families): number {
    const { network, store, order } = this;
    const algebra = {
      and: (a: number, b: number) => families.product(a, b, order),
      or: (a: number, b: number) => families.union(a, b),
      never: ZERO,
      always: ONE,
    };
    return diagramOf(network, module, store, algebra, (leaf) =>
      this.lowestOrder(leaf) > order ? ZERO : families.single(levelOf.get(leaf) ?? 0),
    );
  }

  private lowestOrder(leaf: number): number {
    if (leaf < this.network.events.length) return 1;
    const lowest = countsOf(this.familyOf(leaf)).findIndex((count) => count > 0);
    return lowest < 0 ? Number.POSITIVE_INFINITY : lowest;
  }

  /** Number of sets by order, from the leaves up: those without the variable, and those with it, one order (or more) longer. */
  private countsIn({ leaf, low, high }: Diagram): readonly (readonly number[])[] {
    const counts: (readonly number[])[] = [[], [1]];
    for (let node = 2; node < leaf.length; node += 1) {
      const own = leaf[node] as number;
      const ofLeaf = own < this.network.events.length ? ONE_EVENT : countsOf(this.familyOf(own));
      const without = counts[low[node] as number] ?? [];
      counts.push(sumOf(without, productOf(ofLeaf, counts[high[node] as number] ?? [], this.order)));
    }
    return counts;
  }

  private ofOrder(order: number): readonly CutSet[] {
    if (!Number.isInteger(order) || order < 1 || !countsOf(this.top)[order]) return [];
    const list = new SetList(this.network.events, order);
    const taken: number[] = [];
    this.walk(this.top, this.top.diagram.root, order, taken, () => list.add(taken));
    return list.sorted();
  }

  /**
   * Every way down a family with exactly `left` more events; inner modules are gone into where they are met.
   * @param taken leaves on the way so far, complete when `found` is called
   */
  private walk(at: Family, node: number, left: number, taken: number[], found: () => void): void {
    if (!((at.counts[node] ?? [])[left] ?? 0)) return;
    if (node === ONE) {
      found();
      return;
    }
    const { diagram } = at;
    this.walk(at, diagram.low[node] as number, left, taken, found);
    const leaf = diagram.leaf[node] as number;
    const high = diagram.high[node] as number;
    if (leaf < this.network.events.length) {
      taken.push(leaf);
      this.walk(at, high, left - 1, taken, found);
      taken.pop();
      return;
    }
    const inner = this.familyOf(leaf);
    for (let order = 1; order <= left; order += 1) {
      if (!((at.counts[high] ?? [])[left - order] ?? 0)) continue;
      this.walk(inner, inner.diagram.root, order, taken, () => this.walk(at, high, left - order, taken, found));
    }
  }

  private rareEventSum(of: (id: string) => number): { sum: number; withEvent: ReadonlyMap<string, number> } {
    const { events, gates } = this.network;
    const leafValue = new Float64Array(events.length + gates.length);
    events.forEach((id, leaf) => {
      leafValue[leaf] = checkedProbability(id, of(id));
    });
    const { value, slopes } = evaluated([...this.families.values()], leafValue, 'all');
    const slope = slopes();
    const shareOf = (leaf: number): number => (slope[leaf] as number) * (leafValue[leaf] as number);
    return { sum: value, withEvent: new Map(events.map((id, leaf) => [id, shareOf(leaf)])) };
  }
}

const ONE_EVENT = [0, 1];
const countsOf = ({ diagram, counts }: Family): readonly number[] => counts[diagram.root] ?? [];
