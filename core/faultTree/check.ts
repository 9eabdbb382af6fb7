import type { FaultModel } from './types.ts';

/**
 * Refuses a model that no answer could be right for.
 * @throws RangeError with a sentence that names the gate or event and says how to mend it: an id used twice or not known, a
 * vote without a whole number, a circle
 */
export function checkModel(model: FaultModel): void {
  const ids = new Set<string>();
  for (const id of [...model.events, ...model.gates.keys(), ...model.causes.map((cause) => cause.id)]) {
    if (ids.has(id))
      throw new RangeError(`The fault tree uses the name "${id}" twice: give each event, gate and cause its own.`);
    ids.add(id);
  }
  for (const [id, gate] of model.gates) {
    for (const input of gate.inputs) {
      if (!ids.has(input))
        throw new RangeError(`Gate "${id}" has the input "${input}", which is nowhere in the fault model.`);
    }
    if (gate.op === 'atleast' && !(Number.isInteger(gate.k) && (gate.k ?? -1) >= 0)) {
      throw new RangeError(
        `Gate "${id}" asks for at least ${gate.k} of its inputs: that must be a whole number from 0.`,
      );
    }
  }
  for (const cause of model.causes) {
    for (const hit of cause.hits) {
      if (!ids.has(hit))
        throw new RangeError(`Cause "${cause.id}" hits "${hit}", which is nowhere in the fault model.`);
    }
  }
  checkCircles(model);
}

/** Depth first over gates; a gate met again while it is still open closes a circle. */
function checkCircles({ gates }: FaultModel): void {
  const done = new Set<string>();
  for (const start of gates.keys()) {
    const trail: string[] = [];
    const open = new Set<string>();
    const stack = [start];
    while (stack.length > 0) {
      const id = stack.at(-1) as string;
      if (done.has(id) || open.has(id)) {
        stack.pop();
        if (open.delete(id)) {
          trail.pop();
          done.add(id);
        }
        continue;
      }
      open.add(id);
      trail.push(id);
      for (const input of gates.get(id)?.inputs ?? []) {
        if (open.has(input)) {
          const circle = [...trail.slice(trail.indexOf(input)), input];
          throw new RangeError(
            `The fault tree runs in a circle: ${circle.join(', ')}. Cut it where a supply feeds itself.`,
          );
        }
        if (gates.has(input) && !done.has(input)) stack.push(input);
      }
    }
  }
}

/**
 * Probabilities of the events a top hangs on.
 * @throws RangeError naming the event whose probability is missing or outside 0 to 1
 */
export function checkProbabilities(events: readonly string[], of: ReadonlyMap<string, number>): void {
  for (const id of events) {
    const p = of.get(id);
    if (p === undefined) throw new RangeError(`No probability is given for "${id}": state one from 0 to 1.`);
    if (!(p >= 0 && p <= 1)) throw new RangeError(`The probability of "${id}" must be from 0 to 1, not ${p}.`);
  }
}
