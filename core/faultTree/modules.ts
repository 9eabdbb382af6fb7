import type { Network, NumberedGate } from './network.ts';

/** A gate with everything below it that is used nowhere else, solved alone; inner modules stand in it as events. */
export interface Module {
  /** Node of the network it stands for. */
  readonly top: number;
  /** Gates of this module, inputs before what they feed; the last is the module's own. */
  readonly gates: readonly number[];
}

/**
 * The modules of a network, inner ones first; the last is the top itself. Linear: two walks.
 * Source: Dutuit and Rauzy, IEEE Trans. Reliability 45 (1996) 422, after its abstract.
 */
export function modulesOf(network: Network): readonly Module[] {
  const known = cache.get(network);
  if (known) return known;
  const modules = foundIn(network);
  cache.set(network, modules);
  return modules;
}

/** Cut sets and probability of one network are made from the same modules. */
const cache = new WeakMap<Network, readonly Module[]>();

function foundIn(network: Network): readonly Module[] {
  const { events, gates, top } = network;
  const count = events.length;
  const { first, last, left } = visits(network);
  const isModule = new Uint8Array(gates.length);
  const lowest = new Int32Array(gates.length);
  const highest = new Int32Array(gates.length);
  gates.forEach((gate, g) => {
    let low = Number.MAX_SAFE_INTEGER;
    let high = 0;
    for (const input of gate.inputs) {
      low = Math.min(low, at(first, input), input < count ? low : at(lowest, input - count));
      high = Math.max(high, at(last, input), input < count ? high : at(highest, input - count));
    }
    lowest[g] = low;
    highest[g] = high;
    if (low > at(first, count + g) && high < at(left, g)) isModule[g] = 1;
  });
  isModule[top - count] = 1;
  return gates.flatMap((_, g) => (isModule[g] === 1 ? [moduleAt(gates, count, g, isModule)] : []));
}

const at = (array: Int32Array, index: number): number => array[index] ?? 0;

/** When each node is first and last met by a depth-first walk, and when each gate is left the first time. */
function visits({ events, gates, top }: Network) {
  const count = events.length;
  const first = new Int32Array(count + gates.length);
  const last = new Int32Array(count + gates.length);
  const left = new Int32Array(gates.length);
  const next = new Int32Array(gates.length);
  let clock = 1;
  first[top] = last[top] = clock;
  const stack = [top];
  while (stack.length > 0) {
    const node = stack.at(-1) as number;
    const inputs = (gates[node - count] as NumberedGate).inputs;
    const index = at(next, node - count);
    clock += 1;
    if (index === inputs.length) {
      left[node - count] = clock;
      stack.pop();
      continue;
    }
    next[node - count] = index + 1;
    const input = inputs[index] as number;
    last[input] = clock;
    if (first[input] !== 0) continue;
    first[input] = clock;
    if (input >= count) stack.push(input);
  }
  return { first, last, left };
}

function moduleAt(gates: readonly NumberedGate[], count: number, top: number, isModule: Uint8Array): Module {
  const inside = new Set([top]);
  // Gates come inputs first, so whatever feeds one found already has a lower number: a walk downwards meets all.
  const stack = [top];
  while (stack.length > 0) {
    const gate = gates[stack.pop() as number] as NumberedGate;
    for (const input of gate.inputs) {
      const g = input - count;
      if (g < 0 || isModule[g] === 1 || inside.has(g)) continue;
      inside.add(g);
      stack.push(g);
    }
  }
  return { top: count + top, gates: [...inside].sort((a, b) => a - b) };
}
