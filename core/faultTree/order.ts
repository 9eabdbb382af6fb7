import type { Module } from './modules.ts';
import type { Network, NumberedGate } from './network.ts';

/** A module ready for diagrams: its leaves (events and inner modules) by level, its gates with the inputs in that order. */
export interface Ordered {
  /** Nodes of the network by level, top level first. */
  readonly leaves: readonly number[];
  /** Level of a leaf. */
  readonly levelOf: ReadonlyMap<number, number>;
}

/** How the children of a gate are walked; the walk decides the levels, and the levels decide the size of a diagram. */
export type OrderRule = 'as given' | 'large first' | 'small first' | 'shared first';
export const ORDER_RULES: readonly OrderRule[] = ['as given', 'large first', 'small first', 'shared first'];

/** Levels of a module's leaves by the order in which a depth-first walk meets them. */
export function orderLeaves(network: Network, module: Module, rule: OrderRule): Ordered {
  if (rule !== 'as given') return walked(network, module, rule);
  const known = asGiven.get(module);
  if (known) return known;
  const ordered = walked(network, module, rule);
  asGiven.set(module, ordered);
  return ordered;
}

/** The first order tried, for cut sets and for the probability. */
const asGiven = new WeakMap<Module, Ordered>();

function walked(network: Network, module: Module, rule: OrderRule): Ordered {
  const count = network.events.length;
  const inside = new Set(module.gates.map((g) => count + g));
  const rank = rule === 'as given' ? null : rankOf(network, module, rule);
  const leaves: number[] = [];
  const levelOf = new Map<number, number>();
  const seen = new Set<number>();
  const stack = [module.top];
  while (stack.length > 0) {
    const node = stack.pop() as number;
    if (!inside.has(node)) {
      if (!levelOf.has(node)) levelOf.set(node, leaves.push(node) - 1);
      continue;
    }
    if (seen.has(node)) continue;
    seen.add(node);
    const inputs = [...(network.gates[node - count] as NumberedGate).inputs];
    if (rank) inputs.sort((a, b) => (rank.get(a) ?? 0) - (rank.get(b) ?? 0));
    stack.push(...inputs.reverse());
  }
  return { leaves, levelOf };
}

/** What children are sorted by: lower comes first. */
function rankOf({ events, gates }: Network, module: Module, rule: Exclude<OrderRule, 'as given'>): Map<number, number> {
  const count = events.length;
  const rank = new Map<number, number>();
  const sizes = new Map<number, number>();
  for (const g of module.gates) {
    const { inputs } = gates[g] as NumberedGate;
    if (rule === 'shared first') for (const input of inputs) rank.set(input, (rank.get(input) ?? 0) - 1);
    sizes.set(
      count + g,
      inputs.reduce((sum, input) => sum + (sizes.get(input) ?? 1), 1),
    );
  }
  if (rule === 'shared first') return rank;
  const sign = rule === 'large first' ? -1 : 1;
  for (const g of module.gates) {
    for (const input of (gates[g] as NumberedGate).inputs) rank.set(input, sign * (sizes.get(input) ?? 1));
  }
  return rank;
}
