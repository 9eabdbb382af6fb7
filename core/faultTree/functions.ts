import type { Module } from './modules.ts';
import type { Network } from './network.ts';
import type { Ordered } from './order.ts';
import { type NodeStore, ONE, OutOfNodes, ZERO } from './store.ts';
import { diagramOf } from './walkGates.ts';

const AND = 1;
const OR = 2;

/**
 * Boolean functions as binary decision diagrams: a node is its variable ? high : low, ZERO is false, ONE true.
 * Source: Bryant 1986 (from memory). Only and and or are needed: the trees are coherent.
 */
export class Functions {
  private readonly store: NodeStore;

  constructor(store: NodeStore) {
    this.store = store;
  }

  single(variable: number): number {
    return this.node(variable, ZERO, ONE);
  }

  and(first: number, second: number): number {
    if (first === ZERO || second === ZERO) return ZERO;
    if (first === ONE || first === second) return second;
    return second === ONE ? first : this.both(AND, first, second);
  }

  or(first: number, second: number): number {
    if (first === ONE || second === ONE) return ONE;
    if (first === ZERO || first === second) return second;
    return second === ZERO ? first : this.both(OR, first, second);
  }

  private both(operation: number, first: number, second: number): number {
    const [a, b] = first < second ? [first, second] : [second, first];
    const { store } = this;
    const known = store.recall(operation, a, b, 0);
    if (known >= 0) return known;
    const [va, vb] = [store.variable[a] as number, store.variable[b] as number];
    const v = Math.min(va, vb);
    const [aLow, aHigh] = va === v ? [store.low[a] as number, store.high[a] as number] : [a, a];
    const [bLow, bHigh] = vb === v ? [store.low[b] as number, store.high[b] as number] : [b, b];
    const low = operation === AND ? this.and(aLow, bLow) : this.or(aLow, bLow);
    const high = operation === AND ? this.and(aHigh, bHigh) : this.or(aHigh, bHigh);
    return store.remember(operation, a, b, 0, this.node(v, low, high));
  }

  private node(variable: number, low: number, high: number): number {
    return low === high ? low : this.store.node(variable, low, high);
  }
}

/** Nodes a module's function may take before other ways are tried: about a millisecond. */
export const SMALL_BUDGET = 8192;

/** The function of a module's top with the leaves in a given order, or null when it takes more nodes than the budget. */
export function functionOf(
  network: Network,
  module: Module,
  { levelOf }: Ordered,
  store: NodeStore,
  budget: number,
): number | null {
  const functions = new Functions(store);
  const algebra = {
    and: (a: number, b: number) => functions.and(a, b),
    or: (a: number, b: number) => functions.or(a, b),
    never: ZERO,
    always: ONE,
  };
  const before = store.size;
  store.limit = before + budget;
  try {
    return diagramOf(network, module, store, algebra, (leaf) => functions.single(levelOf.get(leaf) ?? 0));
  } catch (error) {
    if (!(error instanceof OutOfNodes)) throw error;
    store.rewind(before);
    return null;
  } finally {
    store.limit = Number.POSITIVE_INFINITY;
  }
}
