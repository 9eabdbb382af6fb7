import type { CutSet } from './types.ts';

/** Whole numbers up to here are exact. */
const MOST_EXACT = 2 ** 53;

/**
 * Sets of one order, gathered as they come and handed out sorted: ids in a set, then the sets. While a set fits into one exact
 * number (its events by rank, as digits) a list of numbers is sorted, which is many times as fast as comparing ids.
 */
export class SetList {
  private readonly events: readonly string[];
  private readonly order: number;
  /** Leaves of one set after the other. */
  private readonly leaves: number[] = [];

  constructor(events: readonly string[], order: number) {
    this.events = events;
    this.order = order;
  }

  /** @param leaves events of one set, in any order; as many as the order says */
  add(leaves: readonly number[]): void {
    for (const leaf of leaves) this.leaves.push(leaf);
  }

  sorted(): readonly CutSet[] {
    const { order } = this;
    const names = this.namesMet();
    const ranks = this.ranksInOrder(names);
    const count = ranks.length / order;
    if (names.length ** order > MOST_EXACT) {
      const sets = Array.from({ length: count }, (_, n) => ranks.subarray(n * order, (n + 1) * order));
      return sets.sort(byRanks).map((set) => Array.from(set, (rank) => names[rank] as string));
    }
    const keys = new Float64Array(count);
    for (let at = 0; at < ranks.length; at += 1) {
      const n = Math.floor(at / order);
      keys[n] = (keys[n] as number) * names.length + (ranks[at] as number);
    }
    const sets: CutSet[] = [];
    for (const key of keys.sort()) sets.push(setOf(key, names, order));
    return sets;
  }

  /** Names of the events that are in any set, sorted. */
  private namesMet(): readonly string[] {
    const met = new Uint8Array(this.events.length);
    for (const leaf of this.leaves) met[leaf] = 1;
    return this.events.filter((_, leaf) => met[leaf] === 1).sort(byId);
  }

  /** Set after set, each by rising rank. */
  private ranksInOrder(names: readonly string[]): Int32Array {
    const { order, leaves } = this;
    const rankOf = new Map(names.map((name, rank) => [name, rank]));
    const rankOfLeaf = Int32Array.from(this.events, (name) => rankOf.get(name) ?? -1);
    const ranks = new Int32Array(leaves.length);
    for (let at = 0; at < leaves.length; at += 1) {
      const rank = rankOfLeaf[leaves[at] as number] as number;
      const start = at - (at % order);
      let to = at;
      for (; to > start && (ranks[to - 1] as number) > rank; to -= 1) ranks[to] = ranks[to - 1] as number;
      ranks[to] = rank;
    }
    return ranks;
  }
}

function setOf(key: number, names: readonly string[], order: number): CutSet {
  const set = new Array<string>(order);
  let left = key;
  for (let at = order - 1; at >= 0; at -= 1) {
    const rest = Math.floor(left / names.length);
    set[at] = names[left - rest * names.length] as string;
    left = rest;
  }
  return set;
}

const byId = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function byRanks(a: Int32Array, b: Int32Array): number {
  for (let i = 0; i < a.length; i += 1) if (a[i] !== b[i]) return (a[i] as number) - (b[i] as number);
  return 0;
}
