import { type CutSets, cutSetsOf } from './cutSets.ts';
import { type Network, networksOf } from './network.ts';
import { NodeStore } from './store.ts';
import type { FaultModel } from './types.ts';
import { type ProbabilityOf, type Unavailability, unavailabilityOfNetwork } from './unavailability.ts';

/** One model with many tops, solved with one store: what two services share is worked out once. */
export interface FaultSolver {
  /** As `minimalCutSets`. */
  readonly cutSets: (top: string, maxOrder?: number) => CutSets;
  /** As `unavailabilityOf`. */
  readonly unavailability: (top: string) => (probabilityOf: ProbabilityOf) => Unavailability;
  /** Events the top hangs on at all, in the order a walk from it meets them. */
  readonly eventsOf: (top: string) => readonly string[];
}

/** @throws RangeError with a sentence for a model that is not sound; its functions, for a top that is not in it */
export function solverOf(model: FaultModel): FaultSolver {
  const networkOf = networksOf(model);
  const networks = new Map<string, Network>();
  const at = (top: string): Network => {
    const network = networks.get(top) ?? networkOf(top);
    networks.set(top, network);
    return network;
  };
  const store = new NodeStore();
  return {
    cutSets: (top, maxOrder) => cutSetsOf(at(top), store, maxOrder),
    unavailability: (top) => unavailabilityOfNetwork(at(top), store),
    eventsOf: (top) => at(top).events,
  };
}
