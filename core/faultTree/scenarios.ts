import { checkVote, indexed, numberOfTop } from './check.ts';
import type { Cause, FaultTree, Gate } from './types.ts';

/** A set of columns (scenarios), one bit each. */
export type Columns = Uint32Array;

export function emptyColumns(width: number): Columns {
  return new Uint32Array(Math.ceil(width / 32));
}

export function hasColumn(columns: Columns, column: number): boolean {
  return ((columns[column >>> 5] ?? 0) & (1 << (column & 31))) !== 0;
}

export function addColumn(columns: Columns, column: number): void {
  columns[column >>> 5] = (columns[column >>> 5] ?? 0) | (1 << (column & 31));
}

/** Adds all of `more` to `columns`; both of one width. */
export function addColumns(columns: Columns, more: Columns): void {
  for (let i = 0; i < columns.length; i++) columns[i] = (columns[i] ?? 0) | (more[i] ?? 0);
}

/**
 * Evaluates a tree for many scenarios in one pass: every node gets the set of scenarios in which it is down.
 * @param gates the gates of one or more trees; only those asked for are worked out
 * @param down scenarios in which an event is down, or which bring a gate down from outside; absent means none
 * @param width number of scenarios, >= 0
 * @returns a function from node id to its scenarios; ids that are no gate count as events
 * @throws RangeError with a sentence for a width that is no whole number; the function it gives back, for a circle or a vote
 * without a whole number below the node asked for
 */
export function downColumns(
  gates: ReadonlyMap<string, Gate>,
  down: ReadonlyMap<string, Columns>,
  width: number,
): (node: string) => Columns {
  if (!(Number.isInteger(width) && width >= 0))
    throw new RangeError(`The number of scenarios must be a whole number from 0, not ${width}.`);
  const none = emptyColumns(width);
  const known = new Map<string, Columns>();
  const open = new Set<string>();
  return (top) => {
    const stack = [top];
    for (let node = stack.at(-1); node !== undefined; node = stack.at(-1)) {
      const gate = known.has(node) ? undefined : gates.get(node);
      if (gate === undefined) {
        if (!known.has(node)) known.set(node, down.get(node) ?? none);
        stack.pop();
      } else if (open.has(node)) {
        const inputs = gate.inputs.map((input) => known.get(input) ?? none);
        known.set(node, withOutside(combine(gate, inputs, width), down.get(node)));
        open.delete(node);
        stack.pop();
      } else {
        open.add(node);
        checkVote(node, gate.op, gate.k);
        for (const input of gate.inputs) {
          if (open.has(input))
            throw new RangeError(
              `The fault tree runs in a circle: "${node}" hangs on "${input}", which hangs on it. Cut it where a supply feeds itself.`,
            );
          if (!known.has(input)) stack.push(input);
        }
      }
    }
    return known.get(top) ?? none;
  };
}

function withOutside(own: Columns, outside: Columns | undefined): Columns {
  return outside ? own.map((word, index) => word | (outside[index] ?? 0)) : own;
}

function combine(gate: Gate, inputs: readonly Columns[], width: number): Columns {
  if (gate.op === 'atleast') return combineVote(gate.k ?? 0, inputs, width);
  const result = emptyColumns(width);
  if (gate.op === 'or') {
    for (const input of inputs) addColumns(result, input);
  } else {
    result.fill(0xffffffff);
    for (const input of inputs) for (let i = 0; i < result.length; i++) result[i] = (result[i] ?? 0) & (input[i] ?? 0);
  }
  return result;
}

function combineVote(k: number, inputs: readonly Columns[], width: number): Columns {
  const result = emptyColumns(width);
  for (let column = 0; column < width; column++) {
    let votes = 0;
    for (const input of inputs) if (hasColumn(input, column)) votes++;
    if (votes >= k) addColumn(result, column);
  }
  return result;
}

/** What alone brings a tree's top down. */
export interface SinglePoints {
  /** The top is down with nothing failed at all; then there are no single points to name. */
  readonly lostFromStart: boolean;
  /** Events and causes, sorted by id. */
  readonly ids: readonly string[];
}

/** The scenarios "nothing down" (column 0) and "only this one down" (column i + 1 for the i-th id). */
export interface LoneScenarios {
  readonly ids: readonly string[];
  readonly down: ReadonlyMap<string, Columns>;
  readonly width: number;
}

export function loneScenarios(events: readonly string[], causes: readonly Cause[]): LoneScenarios {
  const ids = [...events, ...causes.map((cause) => cause.id)];
  const width = ids.length + 1;
  const down = new Map<string, Columns>();
  const mark = (node: string, column: number): void => {
    const columns = down.get(node) ?? emptyColumns(width);
    addColumn(columns, column);
    down.set(node, columns);
  };
  events.forEach((event, index) => {
    mark(event, index + 1);
  });
  causes.forEach((cause, index) => {
    for (const hit of cause.hits) mark(hit, events.length + index + 1);
  });
  return { ids, down, width };
}

/** Reads the single points off a node's lone scenarios, in the order of `scenarios.ids`. */
export function readSinglePoints(columns: Columns, scenarios: LoneScenarios): SinglePoints {
  if (hasColumn(columns, 0)) return { lostFromStart: true, ids: [] };
  const ids: string[] = [];
  for (let word = 0; word < columns.length; word++) {
    for (let bits = columns[word] ?? 0; bits !== 0; bits &= bits - 1) {
      const id = scenarios.ids[word * 32 + (31 - Math.clz32(bits & -bits)) - 1];
      if (id !== undefined) ids.push(id);
    }
  }
  return { lostFromStart: false, ids };
}

/**
 * The single points of failure (minimal cut sets of order 1) of a coherent tree: exact, one pass, linear in the tree's
 * size times the number of events over 32. Method: docs/redundancy.md.
 * @throws RangeError with a sentence for a tree that is not sound or a top that is not in it
 */
export function singlePoints(tree: FaultTree): SinglePoints {
  numberOfTop(indexed(tree), tree.top);
  const scenarios = loneScenarios(tree.events, tree.causes);
  const columnsOf = downColumns(tree.gates, scenarios.down, scenarios.width);
  const { lostFromStart, ids } = readSinglePoints(columnsOf(tree.top), scenarios);
  return { lostFromStart, ids: [...ids].sort((a, b) => (a < b ? -1 : a > b ? 1 : 0)) };
}
