import { checkedProbabilities } from './check.ts';
import { cutSetsOf } from './cutSets.ts';
import { functionOf, SMALL_BUDGET } from './functions.ts';
import { type Module, modulesOf } from './modules.ts';
import { ALWAYS, type Network, networksOf } from './network.ts';
import { ORDER_RULES, orderLeaves } from './order.ts';
import { NodeStore } from './store.ts';
import { diagramBelow, evaluated, type Solved } from './sweeps.ts';
import type { FaultTree } from './types.ts';

/** How often the top is down. Exact where the diagram fits; else two bounds that hold for certain. */
export interface Unavailability {
  readonly lowest: number;
  readonly highest: number;
  /** Whether both are the one exact value. */
  readonly isExact: boolean;
  /**
   * P(top with the event certainly down) - P(top with it certainly up): the chance that this one decides. Null without an exact
   * value.
   */
  readonly birnbaum: ReadonlyMap<string, number> | null;
}

/** Nodes given to a diagram in the second round of orders; in the last it gets all it may have. */
const MIDDLE_BUDGET = 5 * SMALL_BUDGET;
/** Nodes a diagram may have unless the caller says otherwise: some hundred megabytes and a few seconds. */
const MOST_NODES = 1_500_000;
/** Order of the cut sets that the bounds are made from when no diagram fits. */
const BOUND_ORDER = 3;

/**
 * A tree made ready for numbers: its diagrams are built once, and then any probabilities can be put in.
 * @param maxNodes nodes a module's diagram may have before bounds are given instead
 * @throws RangeError with a sentence for a tree that is not sound or a number of nodes below 1; the function it gives back, for a probability that is
 * missing or outside 0 to 1
 * Method: binary decision diagrams module by module; importance in one sweep after Dutuit and Rauzy 2001 (docs/redundancy.md).
 * Checked by: tests/published/faultTrees.test.ts
 */
export function unavailabilityOf(tree: FaultTree, maxNodes?: number): (probabilityOf: ProbabilityOf) => Unavailability {
  return unavailabilityOfNetwork(networksOf(tree)(tree.top), new NodeStore(), maxNodes);
}

/** Probability of each event and cause, 0 to 1. */
export type ProbabilityOf = ReadonlyMap<string, number>;

/** `unavailabilityOf` of a network, its diagrams in a store that many may share. */
export function unavailabilityOfNetwork(
  network: Network,
  store: NodeStore,
  maxNodes = MOST_NODES,
): (probabilityOf: ProbabilityOf) => Unavailability {
  if (!(Number.isInteger(maxNodes) && maxNodes >= 1))
    throw new RangeError(`The nodes a diagram may have must be a whole number from 1, not ${maxNodes}.`);
  const isTrivial = network.top < network.events.length;
  const diagrams = isTrivial ? null : buildAll(network, store, maxNodes);
  return (of) => {
    const values = checkedProbabilities(network.events, of);
    if (isTrivial) return trivial(network, values);
    return diagrams ? exact(network, diagrams, values) : bounds(network, store, of);
  };
}

function trivial(network: Network, values: Float64Array): Unavailability {
  const id = network.events[network.top];
  const value = id === undefined ? Number(network.top === ALWAYS) : (values[network.top] as number);
  return { lowest: value, highest: value, isExact: true, birnbaum: new Map(id === undefined ? [] : [[id, 1]]) };
}

/** The diagrams of all modules, or null when one of them fits no budget in any order. */
function buildAll(network: Network, store: NodeStore, maxNodes: number): readonly Solved[] | null {
  const list: Solved[] = [];
  for (const module of modulesOf(network)) {
    const solved = build(network, module, store, maxNodes);
    if (solved === null) return null;
    list.push(solved);
  }
  return list;
}

/** Every order under a small budget, then every order under a larger one: the order decides the size. */
function build(network: Network, module: Module, store: NodeStore, maxNodes: number): Solved | null {
  for (const budget of [SMALL_BUDGET, MIDDLE_BUDGET, maxNodes]) {
    for (const rule of ORDER_RULES) {
      const ordered = orderLeaves(network, module, rule);
      const root = functionOf(network, module, ordered, store, Math.min(budget, maxNodes));
      if (root !== null) return { top: module.top, diagram: diagramBelow(store, root, ordered.leaves) };
    }
    if (budget >= maxNodes) break;
  }
  return null;
}

function exact(network: Network, list: readonly Solved[], values: Float64Array): Unavailability {
  const leafValue = new Float64Array(network.events.length + network.gates.length);
  leafValue.set(values);
  const { value, slopes } = evaluated(list, leafValue, 'rest');
  let birnbaum: ReadonlyMap<string, number> | null = null;
  return {
    lowest: value,
    highest: value,
    isExact: true,
    get birnbaum() {
      if (birnbaum) return birnbaum;
      const slope = slopes();
      birnbaum = new Map(network.events.map((id, leaf) => [id, slope[leaf] as number]));
      return birnbaum;
    },
  };
}

/**
 * Bounds where no diagram fits. Lower: the likeliest of the short cut sets. Upper: the sum over the short ones plus the chance
 * that more components are down than those have: a loss they do not explain needs that many.
 */
function bounds(network: Network, store: NodeStore, of: ProbabilityOf): Unavailability {
  const sets = cutSetsOf(network, store, BOUND_ORDER);
  const { sum } = sets.rareEventSum((id) => of.get(id) ?? 0);
  let lowest = 0;
  for (let order = 1; order <= BOUND_ORDER; order += 1) {
    for (const set of sets.ofOrder(order))
      lowest = Math.max(
        lowest,
        set.reduce((p, id) => p * (of.get(id) ?? 0), 1),
      );
  }
  const highest = Math.min(
    1,
    sum +
      atLeastDown(
        BOUND_ORDER + 1,
        network.events.map((id) => of.get(id) ?? 0),
      ),
  );
  return { lowest, highest, isExact: false, birnbaum: null };
}

/**
 * Chance that at least so many of independent events are true, one event added at a time. Summed up, not taken from 1: at small
 * chances that difference would be rounding, and the bound would no longer hold.
 */
function atLeastDown(count: number, probabilities: readonly number[]): number {
  const exactly = new Float64Array(count);
  exactly[0] = 1;
  let reached = 0;
  for (const p of probabilities) {
    reached += (exactly[count - 1] as number) * p;
    for (let n = count - 1; n >= 0; n -= 1)
      exactly[n] = (exactly[n] as number) * (1 - p) + (n > 0 ? (exactly[n - 1] as number) * p : 0);
  }
  return reached;
}
