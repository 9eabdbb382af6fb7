import { type CutSets, cutSetsOf } from './cutSets.ts';
import { isSameNetwork, type Network, plainNetworksOf } from './network.ts';
import { rewritten } from './rewrite.ts';
import { NodeStore } from './store.ts';
import type { FaultModel } from './types.ts';
import { type ProbabilityOf, type Unavailability, unavailabilityOfNetwork } from './unavailability.ts';

/** One model with many tops. What was worked out for a top is kept. */
export interface FaultSolver {
  /** As `minimalCutSets`. */
  readonly cutSets: (top: string, maxOrder?: number) => CutSets;
  /** As `unavailabilityOf`. */
  readonly unavailability: (top: string) => (probabilityOf: ProbabilityOf) => Unavailability;
  /** Events the top hangs on at all, in the order a walk from it meets them. */
  readonly eventsOf: (top: string) => readonly string[];
}

/** What is known of one top, and the network it is known for. */
interface Known {
  readonly plain: Network;
  readonly network: Network;
  /** One store for its cut sets and its probability. */
  readonly store: NodeStore;
  readonly cutSets: Map<number | null, CutSets>;
  unavailability: ((probabilityOf: ProbabilityOf) => Unavailability) | null;
}

/** Kept beside the solver and not in it: nobody else has a use for it. */
const knownBy = new WeakMap<FaultSolver, ReadonlyMap<string, Known>>();

/**
 * A solver of one model.
 * @param before solver of an earlier state of the model: a top whose own tree is the same as there, name by name, is not
 * worked out again
 * @throws RangeError with a sentence for a model that is not sound; its functions, for a top that is not in it
 */
export function solverOf(model: FaultModel, before?: FaultSolver): FaultSolver {
  const networkOf = plainNetworksOf(model);
  const known = new Map<string, Known>();
  const earlier = before && knownBy.get(before);
  const at = (top: string): Known => {
    const here = known.get(top);
    if (here) return here;
    const plain = networkOf(top);
    const old = earlier?.get(top);
    const made = old && isSameNetwork(old.plain, plain) ? old : started(plain);
    known.set(top, made);
    return made;
  };
  const solver: FaultSolver = {
    cutSets: (top, maxOrder) => cutSetsAt(at(top), maxOrder),
    unavailability: (top) => {
      const entry = at(top);
      entry.unavailability ??= unavailabilityOfNetwork(entry.network, entry.store);
      return entry.unavailability;
    },
    eventsOf: (top) => at(top).network.events,
  };
  knownBy.set(solver, known);
  return solver;
}

function started(plain: Network): Known {
  return { plain, network: rewritten(plain), store: new NodeStore(), cutSets: new Map(), unavailability: null };
}

function cutSetsAt({ network, store, cutSets }: Known, maxOrder?: number): CutSets {
  const known = cutSets.get(maxOrder ?? null);
  if (known) return known;
  const made = cutSetsOf(network, store, maxOrder);
  cutSets.set(maxOrder ?? null, made);
  return made;
}
