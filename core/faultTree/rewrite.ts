import { shareOut } from './factor.ts';
import type { Network, NumberedGate } from './network.ts';

/** A gate while it is being rewritten. */
export interface Loose {
  op: NumberedGate['op'];
  k: number;
  inputs: readonly number[];
  /** Round in which it was last made or changed. */
  changed: number;
}

/** Rounds of rewriting; each is one of plain laws, so stopping early only leaves a larger network, never a wrong one. */
const MOST_ROUNDS = 12;

/**
 * A smaller network of the same meaning, by laws that hold in any coherent tree: gates of one kind on top of each other are
 * one, x or (x and y) is x, (x and a) or (x and b) is x and (a or b), and their duals. At last, what only one gate uses is put
 * under a gate of its own, so that the chain of parts one way hangs on counts as one thing.
 * Source: laws of Boolean algebra; which to use, after the documentation of a public analyser (docs/redundancy.md).
 */
export function rewritten(network: Network): Network {
  const count = network.events.length;
  if (network.top < count) return network;
  const loose = new Rewriting(network);
  for (let round = 0; round < MOST_ROUNDS && loose.round(); round += 1);
  loose.group();
  return loose.result();
}

class Rewriting {
  private readonly count: number;
  private readonly gates: Loose[];
  private readonly events: readonly string[];
  private top: number;
  /** Nodes marked with the running number of the gate that is looked at: a set that costs nothing to empty. */
  private marks: Int32Array;
  private mark = 0;
  /** Room for factor.ts to count in. */
  private times: Int32Array;
  private now = 0;
  private usesBefore: Int32Array = new Int32Array(0);

  constructor({ events, gates, top }: Network) {
    this.events = events;
    this.count = events.length;
    this.top = top;
    this.gates = gates.map(({ op, k, inputs }) => ({ op, k, inputs, changed: 0 }));
    this.marks = new Int32Array(events.length + 2 * gates.length);
    this.times = new Int32Array(this.marks.length);
  }

  /** One pass of every law over all gates, inputs first; whether anything changed. */
  round(): boolean {
    const order = this.order();
    const uses = this.uses(order);
    this.now += 1;
    let changed = false;
    for (const node of order) {
      const gate = this.gate(node);
      if (gate.op === 'atleast') changed = this.replaceSingles(gate) || changed;
      else changed = this.tidy(gate, uses) || this.factor(gate, uses) || changed;
    }
    this.usesBefore = uses;
    while (this.isSingle(this.top)) this.top = this.gate(this.top).inputs[0] as number;
    return changed;
  }

  /** Gates of two inputs or more keep their place; those left with one stand for it. */
  private isSingle(node: number): boolean {
    return node >= this.count && this.gate(node).op !== 'atleast' && this.gate(node).inputs.length === 1;
  }

  private replaceSingles(gate: Loose): boolean {
    if (!gate.inputs.some((input) => this.isSingle(input))) return false;
    const inputs = gate.inputs.map((input) => (this.isSingle(input) ? (this.gate(input).inputs[0] as number) : input));
    this.change(gate, inputs);
    return true;
  }

  /** Gates of one input replaced, gates of the same kind merged, repeated inputs and absorbed gates dropped. */
  private tidy(gate: Loose, uses: Int32Array): boolean {
    this.mark += 1;
    const joined: number[] = [];
    let opened = false;
    for (const input of gate.inputs) {
      if (!this.opens(gate, input, uses)) {
        this.take(input, joined);
        continue;
      }
      opened = true;
      for (const inner of this.gate(input).inputs) this.take(inner, joined);
    }
    let absorbed = false;
    for (const input of joined) absorbed = absorbed || this.isAbsorbed(gate, input);
    if (!opened && !absorbed && joined.length === gate.inputs.length) return false;
    this.change(gate, absorbed ? joined.filter((input) => !this.isAbsorbed(gate, input)) : joined);
    return true;
  }

  /** Whether what is inside an input can stand for it: one thing alone, or a gate of the same kind that is nobody else's. */
  private opens(gate: Loose, input: number, uses: Int32Array): boolean {
    if (input < this.count) return false;
    const { op, inputs } = this.gate(input);
    return op !== 'atleast' && (inputs.length === 1 || (op === gate.op && uses[input] === 1));
  }

  private take(input: number, into: number[]): void {
    if (this.marks[input] === this.mark) return;
    this.marks[input] = this.mark;
    into.push(input);
  }

  /** x or (x and y): the second adds nothing. */
  private isAbsorbed(gate: Loose, input: number): boolean {
    if (input < this.count) return false;
    const inner = this.gate(input);
    if (inner.op === gate.op || inner.op === 'atleast') return false;
    for (const node of inner.inputs) if (this.marks[node] === this.mark) return true;
    return false;
  }

  private change(gate: Loose, inputs: readonly number[]): void {
    gate.inputs = inputs;
    gate.changed = this.now;
    if (gate.op === 'and') gate.k = inputs.length;
  }

  /** Takes out what several children of the other kind share. */
  private factor(gate: Loose, uses: Int32Array): boolean {
    if (gate.op === 'atleast' || !this.isFresh(gate, uses)) return false;
    const { op } = gate;
    const other = op === 'and' ? 'or' : 'and';
    const children = gate.inputs.filter((input) => input >= this.count && this.gate(input).op === other);
    if (children.length < 2) return false;
    const inputsOf = (child: number): readonly number[] => this.gate(child).inputs;
    const shares = shareOut(children, inputsOf, (child) => uses[child] === 1, this.times);
    if (shares.length === 0) return false;
    const gone = new Set(shares.flatMap(({ children: taken }) => taken));
    const inputs = gate.inputs.filter((input) => !gone.has(input));
    for (const { shared, rests } of shares) {
      if (rests === null) continue;
      const alternatives = rests.map((rest) => this.one(other, rest));
      inputs.push(this.one(other, [...shared, this.add(op, alternatives)]));
    }
    this.change(gate, inputs);
    return true;
  }

  /** Whether a gate or a child, or who else uses a child, is other than when it was last looked at. */
  private isFresh(gate: Loose, uses: Int32Array): boolean {
    const last = this.now - 1;
    if (gate.changed >= last) return true;
    return gate.inputs.some(
      (input) => input >= this.count && (this.gate(input).changed >= last || uses[input] !== this.usesBefore[input]),
    );
  }

  /**
   * Inputs that only one gate uses, and that are events or stand alone, under a gate of their own where there are several.
   * Done last: merging would undo it.
   */
  group(): void {
    const order = this.order();
    const uses = this.uses(order);
    const alone = new Set<number>();
    for (let event = 0; event < this.count; event += 1) if (uses[event] === 1) alone.add(event);
    for (const node of order) {
      const gate = this.gate(node);
      if (uses[node] === 1 && gate.inputs.every((input) => alone.has(input))) alone.add(node);
      const lone = gate.inputs.filter((input) => alone.has(input));
      if (gate.op === 'atleast' || lone.length < 2 || lone.length === gate.inputs.length) continue;
      this.change(gate, [this.add(gate.op, lone), ...gate.inputs.filter((input) => !alone.has(input))]);
    }
  }

  /** Numbered anew, inputs before what they feed. */
  result(): Network {
    const { count, events } = this;
    if (this.top < count) return { events, gates: [], top: this.top };
    const order = this.order();
    const place = new Map(order.map((node, index) => [node, count + index]));
    const gates = order.map((node) => {
      const { op, k, inputs } = this.gate(node);
      return { op, k, inputs: inputs.map((input) => place.get(input) ?? input) };
    });
    return { events, gates, top: place.get(this.top) ?? this.top };
  }

  private gate(node: number): Loose {
    return this.gates[node - this.count] as Loose;
  }

  private one(op: 'and' | 'or', inputs: readonly number[]): number {
    return inputs.length === 1 ? (inputs[0] as number) : this.add(op, inputs);
  }

  private add(op: 'and' | 'or', inputs: readonly number[]): number {
    const k = op === 'and' ? inputs.length : 1;
    const node = this.count + this.gates.push({ op, k, inputs, changed: this.now }) - 1;
    if (node >= this.marks.length) {
      this.marks = longer(this.marks);
      this.times = longer(this.times);
    }
    return node;
  }

  /** Gates below the top, inputs before what they feed, by a depth-first walk without recursion. */
  private order(): number[] {
    const order: number[] = [];
    const state = new Uint8Array(this.count + this.gates.length);
    const stack = [this.top];
    while (stack.length > 0) {
      const node = stack.at(-1) as number;
      if (node < this.count || state[node] === 2) {
        stack.pop();
      } else if (state[node] === 1) {
        state[node] = 2;
        order.push(node);
        stack.pop();
      } else {
        state[node] = 1;
        const { inputs } = this.gate(node);
        for (let i = inputs.length - 1; i >= 0; i -= 1) {
          if (state[inputs[i] as number] === 0) stack.push(inputs[i] as number);
        }
      }
    }
    return order;
  }

  private uses(order: readonly number[]): Int32Array {
    const uses = new Int32Array(this.count + this.gates.length);
    for (const node of order) for (const input of this.gate(node).inputs) uses[input] = (uses[input] as number) + 1;
    return uses;
  }
}

function longer(short: Int32Array): Int32Array {
  const long = new Int32Array(2 * short.length + 2);
  long.set(short);
  return long;
}
