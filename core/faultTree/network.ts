import { checkModel } from './check.ts';
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
/** Gate g of a model is the node -(g + FIRST_GATE), because the number of events is not known while it is built. */
const FIRST_GATE = 3;

/**
 * Networks of a model, one per top: causes as events beside what they hit, constants and single inputs gone, repeated inputs
 * dropped, equal gates shared, then made small (rewrite.ts). What two tops share is worked out once.
 * @throws RangeError with a sentence when the model is not sound (check.ts); the function it gives back, for a top that is
 * neither a gate nor an event
 */
export function networksOf(model: FaultModel): (top: string) => Network {
  checkModel(model);
  const builder = new Builder(model);
  return (top) => rewritten(builder.network(top));
}

class Builder {
  private readonly events: string[] = [];
  private readonly gates: NumberedGate[] = [];
  private readonly known = new Map<string, number>();
  private readonly shared = new Map<string, number>();
  private readonly causesOf = new Map<string, string[]>();
  private readonly names: ReadonlySet<string>;
  private readonly model: FaultModel;

  constructor(model: FaultModel) {
    this.model = model;
    this.names = new Set([...model.events, ...model.gates.keys(), ...model.causes.map(({ id }) => id)]);
    for (const cause of model.causes) {
      for (const hit of new Set(cause.hits)) this.causesOf.set(hit, [...(this.causesOf.get(hit) ?? []), cause.id]);
    }
  }

  /** What a top is made of, events in the order the depth-first walk meets them. */
  network(top: string): Network {
    if (!this.names.has(top))
      throw new RangeError(`The top "${top}" is neither a gate nor an event of the fault tree.`);
    const root = this.nodeOf(top);
    const events: number[] = [];
    const gates: number[] = [];
    const seen = new Map<number, boolean>();
    const stack = [root];
    while (stack.length > 0) {
      const node = stack.at(-1) as number;
      const gate = node <= -FIRST_GATE ? this.gates[-node - FIRST_GATE] : undefined;
      if (gate && !seen.has(node)) {
        seen.set(node, false);
        for (const input of gate.inputs.toReversed()) if (!seen.has(input)) stack.push(input);
        continue;
      }
      stack.pop();
      if (seen.get(node) === true) continue;
      seen.set(node, true);
      if (gate) gates.push(node);
      else if (node >= 0) events.push(node);
    }
    const place = new Map([...events, ...gates].map((node, index) => [node, index]));
    return {
      events: events.map((event) => this.events[event] as string),
      gates: gates.map((node) => {
        const gate = this.gates[-node - FIRST_GATE] as NumberedGate;
        return { ...gate, inputs: gate.inputs.map((input) => place.get(input) as number) };
      }),
      top: place.get(root) ?? root,
    };
  }

  /** Depth first without recursion, so that no depth of tree can exhaust the stack. */
  private nodeOf(top: string): number {
    const stack = [top];
    while (stack.length > 0) {
      const id = stack.at(-1) as string;
      const inputs = this.known.has(id) ? [] : (this.model.gates.get(id)?.inputs ?? []);
      const missing = inputs.filter((input) => !this.known.has(input));
      if (missing.length > 0) {
        stack.push(...missing.reverse());
        continue;
      }
      stack.pop();
      if (!this.known.has(id)) this.known.set(id, this.build(id));
    }
    return this.known.get(top) as number;
  }

  private build(id: string): number {
    const gate = this.model.gates.get(id);
    const own = gate ? this.gate(gate) : this.event(id);
    const causes = (this.causesOf.get(id) ?? []).map((cause) => this.known.get(cause) ?? this.event(cause));
    return causes.length === 0 ? own : this.plain('or', [own, ...causes]);
  }

  private event(id: string): number {
    const node = this.events.push(id) - 1;
    this.known.set(id, node);
    return node;
  }

  private gate({ op, inputs, k }: Gate): number {
    const nodes = inputs.map((input) => this.known.get(input) as number);
    return op === 'atleast' ? this.vote(k ?? 0, nodes) : this.plain(op, nodes);
  }

  private plain(op: 'and' | 'or', nodes: readonly number[]): number {
    const [idle, final] = op === 'and' ? [ALWAYS, NEVER] : [NEVER, ALWAYS];
    if (nodes.includes(final)) return final;
    const inputs = [...new Set(nodes)].filter((node) => node !== idle);
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
    const key = `${op}${k}:${[...inputs].sort((a, b) => a - b).join()}`;
    const known = this.shared.get(key);
    if (known !== undefined) return known;
    const node = -(this.gates.push({ op, k, inputs }) - 1 + FIRST_GATE);
    this.shared.set(key, node);
    return node;
  }
}
