/** Protection of one feed against its conductor and its place in the feed. */
export interface FeedProtection {
  readonly present: boolean;
  readonly ratingA: number | null;
  /** Distance along the wire from the source to the fuse or breaker, m. */
  readonly fromSourceM: number | null;
  readonly ampacityA: number;
  /** Largest rating the conductor may be protected at, A. */
  readonly largestRatingA: number;
  readonly verdict: 'good' | 'missing' | 'too-large' | 'too-far' | 'too-small-for-load';
}

/** DC feed of one load on transmit (or its steady current where it never transmits). */
export interface FeedResult {
  readonly feedId: string;
  readonly loadId: string;
  readonly currentA: number;
  readonly lengthM: number;
  readonly areaMm2: number;
  /** Drop in this feed alone, out and back, V. */
  readonly dropV: number;
  /** Drop from the battery to the load over all feeds on the way, V and per cent of the nominal supply. */
  readonly totalDropV: number;
  readonly totalDropPercent: number;
  readonly limitPercent: number;
  readonly protection: FeedProtection;
  /** Smallest listed conductor area that would meet the limit, mm2; null if none does. */
  readonly smallestAreaMm2: number | null;
}
