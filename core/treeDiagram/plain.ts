import { addColumn, type Columns, downColumns, emptyColumns, hasColumn } from '../faultTree/scenarios.ts';
import type { Gate } from '../faultTree/types.ts';
import type { Way } from '../redundancy/types.ts';
import { readGateId } from './wording.ts';

/** A gate with everything taken out that says nothing: what cannot fail, one gate on another of one input. */
export interface PlainGate {
  readonly op: Gate['op'];
  readonly k: number;
  /** Ids of plain gates or events. None: down from the start. */
  readonly inputs: readonly string[];
}

/** The gates below a top, made plain; an id that is not in it is an event. */
export type PlainGates = ReadonlyMap<string, PlainGate>;

/**
 * Makes the gates below a top plain, with the levels people know: way, what lies between set and antenna (`path:…`), supply,
 * what a panel or breaker gives (`source:…`), position. Says the same as the gates given.
 * @returns null for a top that nothing can take away
 */
export function plainGates(
  gates: ReadonlyMap<string, Gate>,
  top: string,
  wayOf: (gateId: string) => Way | undefined,
): PlainGates | null {
  const maker = new PlainMaker(gates, wayOf);
  return maker.settle(top) === null ? null : maker.made;
}

const ALWAYS: PlainGate = { op: 'and', k: 0, inputs: [] };
const isBare = (gate: PlainGate | undefined): boolean => gate !== undefined && gate.inputs.length === 0;

class PlainMaker {
  readonly made = new Map<string, PlainGate>();
  /** Null for what can never be lost. */
  private readonly settled = new Map<string, string | null>();
  private readonly gates: Map<string, Gate>;
  private readonly wayOf: (gateId: string) => Way | undefined;

  constructor(gates: ReadonlyMap<string, Gate>, wayOf: (gateId: string) => Way | undefined) {
    this.gates = new Map(gates);
    this.wayOf = wayOf;
  }

  /** Id of the plain gate or event that stands for an id. */
  settle(id: string): string | null {
    const known = this.settled.get(id);
    if (known !== undefined) return known;
    const gate = this.gates.get(id);
    const found = gate === undefined ? id : this.settleGate(id, this.withLevels(id, gate));
    this.settled.set(id, found);
    return found;
  }

  private settleGate(id: string, gate: Gate): string | null {
    const plain = this.plainOf(id, gate);
    if (plain === null) return null;
    this.made.set(id, plain);
    return id;
  }

  private plainOf(id: string, { op, k = 0, inputs }: Gate): PlainGate | null {
    const open = inputs.map((input) => this.settle(input));
    if (op === 'and' && open.includes(null)) return null;
    const found = open.filter((input) => input !== null);
    if (op === 'atleast') return this.vote(found, k);
    const kept = op === 'and' ? found.filter((input) => !isBare(this.made.get(input))) : found;
    // `and` of nothing, or of nothing but what is gone anyhow: gone. `or` of nothing: cannot fail.
    if (kept.length === 0) return op === 'and' ? ALWAYS : null;
    const [only] = kept;
    const inner = kept.length === 1 && only !== undefined ? this.made.get(only) : undefined;
    if (inner) return inner;
    const merged = op === 'or' ? kept.flatMap((input) => this.mergedInto(id, input)) : kept;
    return { op, k: 0, inputs: [...new Set(merged)] };
  }

  private vote(inputs: readonly string[], k: number): PlainGate | null {
    if (k === 0) return ALWAYS;
    return inputs.length < k ? null : { op: 'atleast', k, inputs };
  }

  /** An `or` under an `or` is a level of its own only where people know it by name. */
  private mergedInto(parentId: string, childId: string): readonly string[] {
    const child = this.made.get(childId);
    if (child?.op !== 'or' || child.inputs.length === 0) return [childId];
    const { kind } = readGateId(childId);
    const isPassing =
      kind === 'feed-chain' || kind === 'link-position' || (kind === 'own-fix' && childId.includes('/'));
    const isOfSource = kind === 'supply' && readGateId(parentId).kind === 'source';
    return isPassing || isOfSource ? child.inputs : [childId];
  }

  private withLevels(id: string, gate: Gate): Gate {
    if (id.startsWith('feed-chain:')) return this.withSource(gate);
    const way = this.wayOf(id);
    return way ? this.withPath(gate, way) : gate;
  }

  /** What a breaker or panel gives becomes a level: two feeds from one panel are then seen to hang on the same. */
  private withSource(gate: Gate): Gate {
    const supply = gate.inputs.find((input) => input.startsWith('supply:'));
    if (supply === undefined) return gate;
    const id = `source:${supply.slice('supply:'.length)}`;
    const source = `item:${readGateId(supply).id}`;
    this.gates.set(id, { op: 'or', inputs: [source, supply] });
    return { ...gate, inputs: [...gate.inputs.filter((input) => input !== supply && input !== source), id] };
  }

  /** What lies between a set and its antenna becomes a level, the antenna and what it stands on included. */
  private withPath(gate: Gate, way: Way): Gate {
    if (way.pathId === null) return gate;
    const between = new Set(way.subjects.slice(1).map(({ kind, id }) => `${kind}:${id}`));
    const start = gate.inputs.findIndex((input) => between.has(input));
    if (start < 0) return gate;
    const isPosition = (input: string): boolean => /^(position|own-fix|link-position):/.test(input);
    const after = gate.inputs.findIndex((input, index) => index > start && isPosition(input));
    const end = after < 0 ? gate.inputs.length : after;
    const inputs = gate.inputs.slice(start, end);
    if (inputs.length < 2) return gate;
    const id = `path:${way.pathId}`;
    this.gates.set(id, { op: 'or', inputs });
    return { ...gate, inputs: [...gate.inputs.slice(0, start), id, ...gate.inputs.slice(end)] };
  }
}

/**
 * Everything that is down below the plain gates when some things are: events, and gates as if they were.
 * @param down ids of events or gates
 */
export function downIn(gates: PlainGates, down: ReadonlySet<string>): (id: string) => boolean {
  const known = new Map<string, boolean>();
  const isDown = (id: string): boolean => {
    if (down.has(id)) return true;
    const gate = gates.get(id);
    if (gate === undefined) return false;
    const before = known.get(id);
    if (before !== undefined) return before;
    const count = gate.inputs.filter(isDown).length;
    const found = isTrue(gate.op, gate.k, count, gate.inputs.length);
    known.set(id, found);
    return found;
  };
  return isDown;
}

/** Everything below a top, gates and events, that alone brings it down; nothing where it is down from the start. */
export function aloneBelow(gates: PlainGates, top: string): ReadonlySet<string> {
  if (downIn(gates, new Set())(top)) return new Set();
  const below = new Set<string>();
  const stack = [...(gates.get(top)?.inputs ?? [])];
  for (let id = stack.pop(); id !== undefined; id = stack.pop()) {
    if (below.has(id)) continue;
    below.add(id);
    stack.push(...(gates.get(id)?.inputs ?? []));
  }
  const ids = [...below];
  const down = new Map(ids.map((id, index) => [id, onlyColumn(index, ids.length)] as const));
  const lost = downColumns(gates, down, ids.length)(top);
  return new Set(ids.filter((_, index) => hasColumn(lost, index)));
}

function onlyColumn(index: number, width: number): Columns {
  const columns = emptyColumns(width);
  addColumn(columns, index);
  return columns;
}

/** Whether a gate is true when so many of its inputs are. */
export function isTrue(op: Gate['op'], k: number, count: number, of: number): boolean {
  if (op === 'and') return count === of;
  return op === 'or' ? count > 0 : count >= k;
}
