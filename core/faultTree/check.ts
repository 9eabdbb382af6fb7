import type { FaultModel, Gate } from './types.ts';

/** A sound model by numbers: events first, then gates, then causes. */
export interface IndexedModel {
  readonly names: readonly string[];
  readonly numberOf: ReadonlyMap<string, number>;
  /** By number; nothing at an event or a cause. */
  readonly gates: readonly (IndexedGate | undefined)[];
  /** Causes that hit an event or gate, by its number. */
  readonly causesOf: ReadonlyMap<number, readonly number[]>;
}

export interface IndexedGate {
  readonly op: Gate['op'];
  readonly k: number;
  readonly inputs: readonly number[];
}

/**
 * Numbers a model, and refuses one that no answer could be right for.
 * @throws RangeError with a sentence that names the gate or event and says how to mend it: an id used twice or not known, a
 * vote without a whole number, a circle
 */
export function indexed(model: FaultModel): IndexedModel {
  const names = [...model.events, ...model.gates.keys(), ...model.causes.map((cause) => cause.id)];
  const numberOf = new Map<string, number>();
  for (const id of names) {
    if (numberOf.has(id))
      throw new RangeError(`The fault tree uses the name "${id}" twice: give each event, gate and cause its own.`);
    numberOf.set(id, numberOf.size);
  }
  const gates = new Array<IndexedGate | undefined>(names.length).fill(undefined);
  let number = model.events.length;
  for (const [id, gate] of model.gates) {
    gates[number] = indexedGate(id, gate, numberOf);
    number += 1;
  }
  const causesOf = new Map<number, number[]>();
  for (const { id, hits } of model.causes) {
    for (const hit of new Set(hits)) {
      const at = numberOf.get(hit);
      if (at === undefined)
        throw new RangeError(
          `Cause "${id}" hits "${hit}", which is nowhere in the fault model: add it, or leave it out of the cause.`,
        );
      if (at >= model.events.length + model.gates.size)
        throw new RangeError(`Cause "${id}" hits the cause "${hit}": let it hit what that one hits instead.`);
      const known = causesOf.get(at);
      if (known) known.push(number);
      else causesOf.set(at, [number]);
    }
    number += 1;
  }
  const made = { names, numberOf, gates, causesOf };
  refuseCircles(made);
  return made;
}

/** @throws RangeError when a top is no name of the model */
export function numberOfTop({ numberOf }: IndexedModel, top: string): number {
  const number = numberOf.get(top);
  if (number === undefined)
    throw new RangeError(
      `The top "${top}" is neither a gate nor an event of the fault tree: name one of its gates as the top.`,
    );
  return number;
}

function indexedGate(id: string, { op, inputs, k }: Gate, numberOf: ReadonlyMap<string, number>): IndexedGate {
  checkVote(id, op, k);
  const numbers = inputs.map((input) => {
    const at = numberOf.get(input);
    if (at === undefined)
      throw new RangeError(
        `Gate "${id}" has the input "${input}", which is nowhere in the fault model: add it, or take it out of the gate.`,
      );
    return at;
  });
  return { op, k: k ?? 0, inputs: numbers };
}

/** @throws RangeError when a vote says no whole number of inputs */
export function checkVote(id: string, op: Gate['op'], k: number | undefined): void {
  if (op !== 'atleast') return;
  if (k === undefined)
    throw new RangeError(`Gate "${id}" is a vote without a number: say how many of its inputs it takes.`);
  if (!(Number.isInteger(k) && k >= 0))
    throw new RangeError(`Gate "${id}" asks for at least ${k} of its inputs: that must be a whole number from 0.`);
}

const OPEN = 1;
const DONE = 2;

/** Depth first over gates; a gate met again while it is still open closes a circle. */
function refuseCircles({ names, gates }: IndexedModel): void {
  const state = new Uint8Array(names.length);
  const stack: number[] = [];
  for (let start = 0; start < gates.length; start += 1) {
    stack.push(start);
    while (stack.length > 0) {
      const at = stack.at(-1) as number;
      const gate = gates[at];
      if (gate === undefined || state[at] !== 0) {
        if (state[at] === OPEN) state[at] = DONE;
        stack.pop();
        continue;
      }
      state[at] = OPEN;
      for (const input of gate.inputs) {
        if (state[input] === OPEN) throw circle(names, stack, state, input);
        if (state[input] === 0 && gates[input]) stack.push(input);
      }
    }
  }
}

/** The open gates on the stack are the way down to where the circle closes. */
function circle(names: readonly string[], stack: readonly number[], state: Uint8Array, closing: number): RangeError {
  const open = [...new Set(stack.filter((at) => state[at] === OPEN))];
  const around = [...open.slice(open.indexOf(closing)), closing].map((at) => names[at]);
  return new RangeError(`The fault tree runs in a circle: ${around.join(', ')}. Cut it where a supply feeds itself.`);
}

/**
 * Probabilities of the events a top hangs on, in their order.
 * @throws RangeError naming the event whose probability is missing or outside 0 to 1
 */
export function checkedProbabilities(events: readonly string[], of: ReadonlyMap<string, number>): Float64Array {
  const values = new Float64Array(events.length);
  for (let index = 0; index < events.length; index += 1) {
    const id = events[index] as string;
    values[index] = checkedProbability(id, of.get(id));
  }
  return values;
}

/** @throws RangeError naming the event when its probability is missing or outside 0 to 1 */
export function checkedProbability(id: string, p: number | undefined): number {
  if (p === undefined) throw new RangeError(`No probability is given for "${id}": state one from 0 to 1.`);
  if (!(p >= 0 && p <= 1))
    throw new RangeError(`The probability of "${id}" must be from 0 to 1, not ${p}: correct it.`);
  return p;
}
