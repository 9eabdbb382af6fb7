import type { Module } from './modules.ts';
import type { Network, NumberedGate } from './network.ts';
import type { NodeStore } from './store.ts';

/** What a gate is made with: the two ways of joining, and the diagrams of nothing. */
export interface Algebra {
  readonly and: (a: number, b: number) => number;
  readonly or: (a: number, b: number) => number;
  readonly never: number;
  readonly always: number;
}

/**
 * The diagram of a module's top from those of its leaves. A vote goes by rows, one input after the other: "at least j of those
 * from here on" is "at least j of the rest, or this one and j - 1 of the rest"; its combinations are never written out.
 */
export function diagramOf(
  network: Network,
  module: Module,
  store: NodeStore,
  algebra: Algebra,
  leaf: (node: number) => number,
): number {
  const count = network.events.length;
  const made = new Map<number, number>();
  const of = (node: number): number => made.get(node) ?? leaf(node);
  // Deepest variables first: what is joined early is then small, and what comes later goes on top of it.
  const deepestFirst = (a: number, b: number): number => (store.variable[b] as number) - (store.variable[a] as number);
  for (const g of module.gates) {
    const gate = network.gates[g] as NumberedGate;
    const inputs = gate.inputs.map(of).sort(deepestFirst);
    if (gate.op === 'atleast') made.set(count + g, voteOf(gate.k, inputs, algebra));
    else if (gate.op === 'or') made.set(count + g, inputs.reduce(algebra.or, algebra.never));
    else made.set(count + g, inputs.reduce(algebra.and, algebra.always));
  }
  return of(module.top);
}

function voteOf(k: number, inputs: readonly number[], { and, or, never, always }: Algebra): number {
  const rows = [always, ...new Array<number>(k).fill(never)];
  for (const input of inputs) {
    for (let j = k; j >= 1; j -= 1) rows[j] = or(rows[j] as number, and(input, rows[j - 1] as number));
  }
  return rows[k] as number;
}
