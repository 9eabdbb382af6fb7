import type { Cause, FaultTree, Gate } from '../../core/faultTree/types.ts';

/** A tree as the data files hold it. */
export interface WrittenTree {
  readonly events: Readonly<Record<string, number>>;
  readonly gates: Readonly<
    Record<string, { readonly op: Gate['op']; readonly k?: number; readonly in: readonly string[] }>
  >;
  readonly top: string;
  readonly causes?: readonly (Cause & { readonly p: number })[];
  readonly beta?: readonly { readonly id: string; readonly beta: number; readonly members: readonly string[] }[];
}

export interface ReadTree {
  readonly tree: FaultTree;
  readonly probabilityOf: ReadonlyMap<string, number>;
}

/** A group with a common share is one more event that hits all its members, which keep the rest of their probability. */
export function readTree({ events, gates, top, causes = [], beta = [] }: WrittenTree): ReadTree {
  const probabilityOf = new Map(Object.entries(events));
  for (const cause of causes) probabilityOf.set(cause.id, cause.p);
  for (const group of beta) {
    const whole = events[group.members[0] ?? ''] ?? 0;
    for (const member of group.members) probabilityOf.set(member, (1 - group.beta) * (events[member] ?? 0));
    probabilityOf.set(group.id, group.beta * whole);
  }
  const shared = beta.map(({ id, members }) => ({ id, hits: members }));
  const made = Object.entries(gates).map(([id, gate]): [string, Gate] => [
    id,
    { op: gate.op, inputs: gate.in, ...(gate.k === undefined ? {} : { k: gate.k }) },
  ]);
  const tree = {
    events: Object.keys(events),
    gates: new Map(made),
    top,
    causes: [...causes.map(({ id, hits }) => ({ id, hits })), ...shared],
  };
  return { tree, probabilityOf };
}
