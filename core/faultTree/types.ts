/**
 * Fault trees in the failure sense: an event is true when its component is down, a gate is true when what it stands for
 * is lost. Only and, or and k-of-n: such trees are coherent, mending a component never makes things worse. A gate of no
 * inputs follows from its operator: `or` of nothing is false (nothing can fail), `and` of nothing is true (no way at all).
 */
export interface Gate {
  readonly op: 'and' | 'or' | 'atleast';
  /** Ids of events or gates; one name space. Repeated inputs of an `atleast` count once per mention. */
  readonly inputs: readonly string[];
  /** How many inputs must be true; only for `atleast`. */
  readonly k?: number;
}

/** Something outside that takes several events or gates down at once; an event in its own right. */
export interface Cause {
  readonly id: string;
  readonly hits: readonly string[];
}

/** Gates of one or more tops over the same events. */
export interface FaultModel {
  readonly events: readonly string[];
  readonly gates: ReadonlyMap<string, Gate>;
  readonly causes: readonly Cause[];
}

export interface FaultTree extends FaultModel {
  readonly top: string;
}

/** A set of events that together take the top away, none of them to spare; sorted by id. */
export type CutSet = readonly string[];
