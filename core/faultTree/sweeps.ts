import { type NodeStore, ONE, ZERO } from './store.ts';

/**
 * The diagram below one root, copied out of the store and numbered anew: 0 and 1 are the terminals, children come before what
 * stands on them, the root is last. Ready to be gone through again and again with other numbers.
 */
export interface Diagram {
  readonly root: number;
  /** Leaf of the network each node asks about; nothing at the terminals. */
  readonly leaf: Int32Array;
  readonly low: Int32Array;
  readonly high: Int32Array;
}

/** What a node means: `rest`, a function, high with the chance of its leaf and low with the rest; `all`, a family, both. */
export type Low = 'rest' | 'all';

/** @param leaves leaf of the network by level */
export function diagramBelow(store: NodeStore, root: number, leaves: readonly number[]): Diagram {
  const { nodes, placeOf } = store.below(root);
  const size = nodes.length + 2;
  const diagram = { leaf: new Int32Array(size), low: new Int32Array(size), high: new Int32Array(size) };
  nodes.forEach((node, index) => {
    diagram.leaf[index + 2] = leaves[store.variable[node] as number] as number;
    diagram.low[index + 2] = placeOf(store.low[node] as number);
    diagram.high[index + 2] = placeOf(store.high[node] as number);
  });
  return { root: placeOf(root), ...diagram };
}

/** Value of every node, from the terminals up; by node. */
export function valuesOf({ leaf, low, high }: Diagram, leafValue: Float64Array, meaning: Low): Float64Array {
  const at = new Float64Array(leaf.length);
  at[ZERO] = 0;
  at[ONE] = 1;
  for (let node = 2; node < leaf.length; node += 1) {
    const p = leafValue[leaf[node] as number] as number;
    const share = meaning === 'rest' ? 1 - p : 1;
    at[node] = p * (at[high[node] as number] as number) + share * (at[low[node] as number] as number);
  }
  return at;
}

/**
 * One sweep from the root down: how much of the top reaches each node, and from that how the top changes with each leaf.
 * @param topSlope how the whole changes with this diagram's root
 * @param slope by leaf; what this diagram gives is added
 */
export function addSlopes(
  { root, leaf, low, high }: Diagram,
  at: Float64Array,
  leafValue: Float64Array,
  meaning: Low,
  topSlope: number,
  slope: Float64Array,
): void {
  const weight = new Float64Array(leaf.length);
  weight[root] = topSlope;
  for (let node = leaf.length - 1; node >= 2; node -= 1) {
    const [l, h, own] = [low[node] as number, high[node] as number, leaf[node] as number];
    const p = leafValue[own] as number;
    const w = weight[node] as number;
    const without = meaning === 'rest' ? (at[l] as number) : 0;
    slope[own] = (slope[own] as number) + w * ((at[h] as number) - without);
    weight[h] = (weight[h] as number) + w * p;
    weight[l] = (weight[l] as number) + w * (meaning === 'rest' ? 1 - p : 1);
  }
}

/** A module's diagram with the node of the network it stands for. */
export interface Solved {
  readonly top: number;
  readonly diagram: Diagram;
}

/**
 * Value of the top of modules, inner ones first, and on demand how it changes with each leaf (the chain rule from the top down).
 * @param leafValue by node of the network, events filled in; those of the modules are filled in here
 */
export function evaluated(
  modules: readonly Solved[],
  leafValue: Float64Array,
  meaning: Low,
): { value: number; slopes: () => Float64Array } {
  let value = 0;
  const values = modules.map(({ top, diagram }) => {
    const at = valuesOf(diagram, leafValue, meaning);
    value = at[diagram.root] as number;
    leafValue[top] = value;
    return at;
  });
  const slopes = (): Float64Array => {
    const slope = new Float64Array(leafValue.length);
    const last = modules.at(-1);
    if (last) slope[last.top] = 1;
    for (let index = modules.length - 1; index >= 0; index -= 1) {
      const { top, diagram } = modules[index] as Solved;
      addSlopes(diagram, values[index] as Float64Array, leafValue, meaning, slope[top] as number, slope);
    }
    return slope;
  };
  return { value, slopes };
}
