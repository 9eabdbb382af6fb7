import type { CutSet } from './types.ts';

/** Whole numbers up to here are exact. */
const MOST_EXACT = 2 ** 53;

/**
 * Sets of one order, gathered as they come and handed out sorted: ids in a set, then the sets. While a set fits into one exact
 * number (its events by rank, as digits) a list of numbers is sorted, which is many times as fast as comparing ids.
 */
export class SetList {
  private readonly names: readonly string[];
  /** Rank of an event among all, by id. */
  private readonly rankOf: Int32Array;
  private readonly order: number;
  private readonly isShort: boolean;
  /** Room for one set. */
  private readonly ranks: Int32Array;
  private readonly keys: number[] = [];
  private readonly long: Int32Array[] = [];

  constructor(events: readonly string[], order: number) {
    const sorted = events.map((_, leaf) => leaf).sort((a, b) => byId(events[a] as string, events[b] as string));
    this.names = sorted.map((leaf) => events[leaf] as string);
    this.rankOf = new Int32Array(events.length);
    for (let rank = 0; rank < sorted.length; rank += 1) this.rankOf[sorted[rank] as number] = rank;
    this.order = order;
    this.ranks = new Int32Array(order);
    this.isShort = events.length ** order <= MOST_EXACT;
  }

  /** @param leaves events of one set, in any order */
  add(leaves: readonly number[]): void {
    const { ranks, order } = this;
    for (let n = 0; n < order; n += 1) {
      const rank = this.rankOf[leaves[n] as number] as number;
      let at = n;
      for (; at > 0 && (ranks[at - 1] as number) > rank; at -= 1) ranks[at] = ranks[at - 1] as number;
      ranks[at] = rank;
    }
    if (!this.isShort) {
      this.long.push(ranks.slice());
      return;
    }
    let key = 0;
    for (let n = 0; n < order; n += 1) key = key * this.names.length + (ranks[n] as number);
    this.keys.push(key);
  }

  sorted(): readonly CutSet[] {
    if (!this.isShort) return this.long.sort(byRanks).map((ranks) => Array.from(ranks, (rank) => this.nameOf(rank)));
    const sets: CutSet[] = [];
    for (const key of Float64Array.from(this.keys).sort()) sets.push(this.setOf(key));
    return sets;
  }

  private setOf(key: number): CutSet {
    const base = this.names.length;
    const set = new Array<string>(this.order);
    let left = key;
    for (let at = this.order - 1; at >= 0; at -= 1) {
      const rest = Math.floor(left / base);
      set[at] = this.nameOf(left - rest * base);
      left = rest;
    }
    return set;
  }

  private nameOf(rank: number): string {
    return this.names[rank] as string;
  }
}

const byId = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function byRanks(a: Int32Array, b: Int32Array): number {
  for (let i = 0; i < a.length; i += 1) if (a[i] !== b[i]) return (a[i] as number) - (b[i] as number);
  return 0;
}
