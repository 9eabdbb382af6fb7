/** A label to be put beside others: where it points, px, and how wide it is, px. */
export interface Tag {
  readonly atX: number;
  readonly width: number;
}

/** Where it went: its left edge, px, and its lane, 0 first. */
export interface PlacedTag {
  readonly left: number;
  readonly lane: number;
}

const GAP_PX = 8;

/**
 * Labels centred on what they point at, pushed inside [from, to], each in the first lane where it touches no other.
 * Answers in the order given.
 */
export function inLanes(tags: readonly Tag[], from: number, to: number): readonly PlacedTag[] {
  const order = tags.map((_, index) => index).sort((a, b) => (tags[a]?.atX ?? 0) - (tags[b]?.atX ?? 0));
  const placed: PlacedTag[] = tags.map(() => ({ left: from, lane: 0 }));
  const taken: { readonly lane: number; readonly left: number; readonly right: number }[] = [];
  for (const index of order) {
    const tag = tags[index];
    if (!tag) continue;
    const left = Math.max(from, Math.min(tag.atX - tag.width / 2, to - tag.width));
    const right = left + tag.width;
    let lane = 0;
    while (taken.some((other) => other.lane === lane && left < other.right + GAP_PX && right + GAP_PX > other.left)) {
      lane += 1;
    }
    taken.push({ lane, left, right });
    placed[index] = { left, lane };
  }
  return placed;
}

export const laneCount = (placed: readonly PlacedTag[]): number => Math.max(0, ...placed.map(({ lane }) => lane + 1));
