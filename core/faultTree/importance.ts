import { checkedProbability } from './check.ts';
import type { CutSets } from './cutSets.ts';
import type { ProbabilityOf, Unavailability } from './unavailability.ts';

/** What one component is to the top. */
export interface Importance {
  readonly id: string;
  readonly probability: number;
  /** Chance that this one decides: P(top | down) - P(top | up). */
  readonly birnbaum: number;
  /** Share of the outages that goes if it were perfect: (P - P(top | up)) / P. Null where the top is never down. */
  readonly criticality: number | null;
  /** Share of the outages it takes part in, by cut sets in the form for rare events (Fussell and Vesely). Null as above. */
  readonly fussellVesely: number | null;
  /** Chance that it is down when the top is. Null as above. */
  readonly diagnosis: number | null;
  /** How many times as often the top is down when it is known to be down. Null as above. */
  readonly riskAchievementWorth: number | null;
  /** How many times less often the top would be down if it were perfect. Null where then it never is. */
  readonly riskReductionWorth: number | null;
}

/** Below this share of the whole, what is left without a component is rounding of a difference. */
const ROUNDING = 1e-12;

/**
 * Importance of every event of a top, the most critical first, equal ones by id.
 * @param sets all minimal cut sets, or those up to an order: the share by cut sets then counts those only
 * @returns null where the unavailability is known by bounds alone
 * @throws RangeError naming the event whose probability is missing or outside 0 to 1
 * Source: definitions as in the documentation of a public fault-tree analyser; Fussell-Vesely in its textbook form by cut sets
 * (from memory). Checked by: tests/published/faultTrees.test.ts
 */
export function importanceOf(
  { lowest: p, birnbaum }: Unavailability,
  sets: CutSets,
  probabilityOf: ProbabilityOf,
): readonly Importance[] | null {
  if (birnbaum === null) return null;
  const chance = (id: string): number => checkedProbability(id, probabilityOf.get(id));
  const { sum, withEvent } = sets.rareEventSum(chance);
  const rows = [...birnbaum].map(([id, slope]): Importance => {
    const own = chance(id);
    const whenDown = p + (1 - own) * slope;
    const whenUp = cleared(p - own * slope, p);
    return {
      id,
      probability: own,
      birnbaum: slope,
      criticality: p > 0 ? (p - whenUp) / p : null,
      fussellVesely: sum > 0 ? (withEvent.get(id) ?? 0) / sum : null,
      diagnosis: p > 0 ? (own * whenDown) / p : null,
      riskAchievementWorth: p > 0 ? whenDown / p : null,
      riskReductionWorth: whenUp > 0 ? p / whenUp : null,
    };
  });
  return rows.sort((a, b) => (b.criticality ?? 0) - (a.criticality ?? 0) || (a.id < b.id ? -1 : 1));
}

const cleared = (left: number, whole: number): number => (left <= ROUNDING * whole ? 0 : left);
