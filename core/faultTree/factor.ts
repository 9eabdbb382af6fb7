/** What some children of a gate have in common, to be taken out of them. */
export interface Share {
  readonly children: readonly number[];
  readonly shared: readonly number[];
  /** What each child has beside it; null where the children add nothing to what is there already. */
  readonly rests: readonly (readonly number[])[] | null;
}

/**
 * What the children of a gate share, children being gates of the other kind: a child that holds all of another adds nothing
 * (x and y, beside x, y and z); then, again and again, what most of them have in common. Children that others use too can
 * be dropped but not taken apart.
 * @param times room to count in, by node; all zero before and after
 */
export function shareOut(
  children: readonly number[],
  inputsOf: (child: number) => readonly number[],
  isOwn: (child: number) => boolean,
  times: Int32Array,
): readonly Share[] {
  const holders = holdersOf(children, inputsOf, times);
  if (holders.size === 0) return [];
  const absorbed = absorbedIn(children, inputsOf, holders);
  const shares: Share[] = absorbed.size > 0 ? [{ children: [...absorbed], shared: [], rests: null }] : [];
  return [...shares, ...factorsOf(inputsOf, holders, (child) => isOwn(child) && !absorbed.has(child))];
}

/** Inputs that two children or more have, with those that have them. */
function holdersOf(
  children: readonly number[],
  inputsOf: (child: number) => readonly number[],
  times: Int32Array,
): Map<number, number[]> {
  const holders = new Map<number, number[]>();
  for (const child of children) for (const node of inputsOf(child)) times[node] = (times[node] as number) + 1;
  for (const child of children) {
    for (const node of inputsOf(child)) {
      if ((times[node] as number) < 2) continue;
      const known = holders.get(node);
      if (known) known.push(child);
      else holders.set(node, [child]);
    }
  }
  for (const child of children) for (const node of inputsOf(child)) times[node] = 0;
  return holders;
}

/** Children that hold every input of another. Of two alike, the later one goes. */
function absorbedIn(
  children: readonly number[],
  inputsOf: (child: number) => readonly number[],
  holders: ReadonlyMap<number, readonly number[]>,
): ReadonlySet<number> {
  const absorbed = new Set<number>();
  for (const child of children) {
    const inputs = inputsOf(child);
    if (absorbed.has(child) || !inputs.every((node) => holders.has(node))) continue;
    // Whoever holds all of them holds the one that fewest hold.
    let fewest = holders.get(inputs[0] as number) ?? [];
    for (const node of inputs) {
      const list = holders.get(node) ?? [];
      if (list.length < fewest.length) fewest = list;
    }
    for (const other of fewest) {
      if (other === child || absorbed.has(other)) continue;
      if (inputs.every((node) => holders.get(node)?.includes(other))) absorbed.add(other);
    }
  }
  return absorbed;
}

/** The commonest input taken out with all that its holders share besides, while any is left that two hold. */
function factorsOf(
  inputsOf: (child: number) => readonly number[],
  holders: ReadonlyMap<number, readonly number[]>,
  isFree: (child: number) => boolean,
): readonly Share[] {
  const free = new Map<number, number[]>();
  for (const [node, list] of holders) {
    const own = list.filter(isFree);
    if (own.length > 1) free.set(node, own);
  }
  const shares: Share[] = [];
  for (let sharing = largest(free); sharing !== null; sharing = largest(free)) {
    const shared = [...free].filter(
      ([, list]) => list.length >= sharing.length && sharing.every((child) => list.includes(child)),
    );
    const out = new Set(shared.map(([node]) => node));
    shares.push({
      children: sharing,
      shared: [...out],
      rests: sharing.map((child) => inputsOf(child).filter((node) => !out.has(node))),
    });
    const gone = new Set(sharing);
    for (const [node, list] of free) {
      const left = list.filter((child) => !gone.has(child));
      if (left.length > 1) free.set(node, left);
      else free.delete(node);
    }
  }
  return shares;
}

/** The longest list; the first of equal ones. */
function largest(lists: ReadonlyMap<number, readonly number[]>): readonly number[] | null {
  let best: readonly number[] | null = null;
  for (const list of lists.values()) if (best === null || list.length > best.length) best = list;
  return best;
}
