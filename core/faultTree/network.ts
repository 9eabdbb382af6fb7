import { type IndexedGate, type IndexedModel, indexed, numberOfTop } from './check.ts';
import { rewritten } from './rewrite.ts';
import type { FaultModel, Gate } from './types.ts';

/** A tree made small and numbered: nodes 0 to events - 1 are events, the others gates, inputs before what they feed. */
export interface Network {
  readonly events: readonly string[];
  readonly gates: readonly NumberedGate[];
  /** Node of the top, or a constant: the top is lost from the start, or cannot be lost. */
  readonly top: number;
}

export interface NumberedGate {
  readonly op: Gate['op'];
  /** How many inputs must be true; 1 for or, all for and. */
  readonly k: number;
  readonly inputs: readonly number[];
}

/** Constants in place of a node. */
export const NEVER = -1;
export const ALWAYS = -2;
const UNMADE = -3;

/**
 * Networks of a model, one per top: causes as events beside what they hit, constants and single inputs gone, repeated inputs
 * dropped, equal gates shared. Not yet made small (rewrite.ts). What two tops share is worked out once.
 * @throws RangeError with a sentence when the model is not sound (check.ts); the function it gives back, for a top that is
 * neither a gate nor an event
 */
export function plainNetworksOf(model: FaultModel): (top: string) => Network {
  const builder = new Builder(indexed(model));
  return (top) => builder.network(top);
}

/** As `plainNetworksOf`, made small. */
export function networksOf(model: FaultModel): (top: string) => Network {
  const networkOf = plainNetworksOf(model);
  return (top) => rewritten(networkOf(top));
}

/** Whether two networks are one and the same, name by name and gate by gate. */
export function isSameNetwork(a: Network, b: Network): boolean {
  if (a.top !== b.top || a.gates.length !== b.gates.length || !isSameList(a.events, b.events)) return false;
  return a.gates.every((gate, g) => {
    const other = b.gates[g];
    return gate.op === other?.op && gate.k === other.k && isSameList(gate.inputs, other.inputs);
  });
}

function isSameList<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((value, index) => value === b[index]);
}

class Builder {
  /** Node by node: a gate, or nothing where it is an event, and the event's id. */
  private readonly gates: (NumberedGate | undefined)[] = [];
  private readonly events: string[] = [];
  /** Node of each name of the model, once it is made. */
  private readonly known: Int32Array;
  /** Gates by a number made of their inputs, so that equal ones are found. */
  private readonly alike = new Map<number, number[]>();
  private readonly model: IndexedModel;

  constructor(model: IndexedModel) {
    this.model = model;
    this.known = new Int32Array(model.names.length).fill(UNMADE);
  }

  /** What a top is made of, events in the order the depth-first walk meets them. */
  network(topName: string): Network {
    const top = numberOfTop(this.model, topName);
    const root = this.nodeOf(top);
    if (root < 0) return { events: [], gates: [], top: root };
    const { events, gates } = this.below(root);
    const place = new Int32Array(this.gates.length);
    events.forEach((node, index) => {
      place[node] = index;
    });
    gates.forEach((node, index) => {
      place[node] = events.length + index;
    });
    return {
      events: events.map((node) => this.events[node] as string),
      gates: gates.map((node) => {
        const { op, k, inputs } = this.gates[node] as NumberedGate;
        return { op, k, inputs: inputs.map((input) => place[input] as number) };
      }),
      top: place[root] as number,
    };
  }

  /** Events below a node in the order a depth-first walk meets them, and gates, inputs before what they feed. */
  private below(root: number): { events: number[]; gates: number[] } {
    const events: number[] = [];
    const gates: number[] = [];
    const state = new Uint8Array(this.gates.length);
    const stack = [root];
    while (stack.length > 0) {
      const node = stack.at(-1) as number;
      const gate = this.gates[node];
      if (gate && state[node] === 0) {
        state[node] = 1;
        for (let i = gate.inputs.length - 1; i >= 0; i -= 1) {
          const input = gate.inputs[i] as number;
          if (state[input] === 0) stack.push(input);
        }
        continue;
      }
      stack.pop();
      if (state[node] === 2) continue;
      state[node] = 2;
      (gate ? gates : events).push(node);
    }
    return { events, gates };
  }

  /** Depth first without recursion, so that no depth of tree can exhaust the stack. */
  private nodeOf(top: number): number {
    const { known, model } = this;
    const stack = [top];
    while (stack.length > 0) {
      const at = stack.at(-1) as number;
      const before = stack.length;
      const gate = model.gates[at];
      if (gate && known[at] === UNMADE) {
        for (let i = gate.inputs.length - 1; i >= 0; i -= 1) {
          const input = gate.inputs[i] as number;
          if (known[input] === UNMADE) stack.push(input);
        }
      }
      if (stack.length > before) continue;
      stack.pop();
      if (known[at] === UNMADE) known[at] = this.build(at, gate);
    }
    return known[top] as number;
  }

  private build(at: number, gate: IndexedGate | undefined): number {
    const own = gate ? this.gate(gate) : this.event(at);
    const causes = this.model.causesOf.get(at);
    return causes ? this.plain('or', [own, ...causes.map((cause) => this.event(cause))]) : own;
  }

  /** An event, or a cause met beside what it hits. */
  private event(at: number): number {
    if (this.known[at] !== UNMADE) return this.known[at] as number;
    const node = this.gates.push(undefined) - 1;
    this.events.push(this.model.names[at] as string);
    this.known[at] = node;
    return node;
  }

  private gate({ op, inputs, k }: IndexedGate): number {
    const nodes = inputs.map((input) => this.known[input] as number);
    return op === 'atleast' ? this.vote(k, nodes) : this.plain(op, nodes);
  }

  private plain(op: 'and' | 'or', nodes: readonly number[]): number {
    const [idle, final] = op === 'and' ? [ALWAYS, NEVER] : [NEVER, ALWAYS];
    if (nodes.includes(final)) return final;
    const isPlain = nodes.length === 2 && nodes[0] !== nodes[1] && !nodes.includes(idle);
    const inputs = isPlain ? nodes : [...new Set(nodes)].filter((node) => node !== idle);
    if (inputs.length === 0) return idle;
    return inputs.length === 1 ? (inputs[0] as number) : this.add(op, op === 'or' ? 1 : inputs.length, inputs);
  }

  private vote(k: number, nodes: readonly number[]): number {
    const inputs = nodes.filter((node) => node !== NEVER && node !== ALWAYS);
    const left = k - nodes.filter((node) => node === ALWAYS).length;
    if (left <= 0) return ALWAYS;
    if (left > inputs.length) return NEVER;
    if (left === 1) return this.plain('or', inputs);
    return left === inputs.length ? this.plain('and', inputs) : this.add('atleast', left, inputs);
  }

  private add(op: Gate['op'], k: number, inputs: readonly number[]): number {
    let mixed = op === 'and' ? 1 : op === 'or' ? 2 : 3;
    for (const input of inputs) mixed = (mixed + Math.imul(input + 1, 0x9e37_79b1)) | 0;
    const alike = this.alike.get(mixed);
    const known = alike?.find((node) => isSameGate(this.gates[node] as NumberedGate, op, k, inputs));
    if (known !== undefined) return known;
    const node = this.gates.push({ op, k, inputs }) - 1;
    this.events.push('');
    if (alike) alike.push(node);
    else this.alike.set(mixed, [node]);
    return node;
  }
}

/** Order of the inputs left aside; those of a vote may repeat. */
function isSameGate(gate: NumberedGate, op: Gate['op'], k: number, inputs: readonly number[]): boolean {
  if (gate.op !== op || gate.k !== k || gate.inputs.length !== inputs.length) return false;
  if (isSameList(gate.inputs, inputs)) return true;
  return isSameList([...gate.inputs].sort(ascending), [...inputs].sort(ascending));
}

const ascending = (a: number, b: number): number => a - b;
