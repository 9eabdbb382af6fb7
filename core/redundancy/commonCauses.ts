import { placeOf } from '../catalogue/lookup.ts';
import type { Build } from './build.ts';
import type { Placed } from './placed.ts';
import type { FailureEvent } from './types.ts';

/** Banks whose terminals lie within this of each other flood together, m. */
const SAME_LEVEL_M = 0.05;
/**
 * Highest terminal a flood is tried up to, m above the drawn waterline: water inside a boat that still floats on her marks
 * stands no higher than outside. Deeper than that the question is the raft. Own rule, no source.
 */
const HIGHEST_FLOOD_M = 0;

/**
 * One flood per height at which a compartment holds power sources. Water stands equally high in all compartments on the
 * same side, for no watertight bulkhead is recorded; everything there at or below the terminals is down.
 */
export function floodEvents(build: Build, placed: readonly Placed[]): readonly FailureEvent[] {
  const compartments = new Map(build.project.boat.compartments.map((each) => [each.id, each]));
  const inside = placed.flatMap((entry) => {
    const compartmentId = placeOf(build.project, entry.item)?.compartmentId;
    const compartment = compartmentId ? compartments.get(compartmentId) : undefined;
    return compartment ? [{ ...entry, compartment }] : [];
  });
  const banks = inside.filter(
    ({ component, item }) => component.kind === 'bank' && item.position.zM <= HIGHEST_FLOOD_M,
  );
  const events: FailureEvent[] = [];
  const covered: { side: string; levelM: number }[] = [];
  for (const { compartment, item } of banks) {
    const levelM = item.position.zM;
    const { side, name, id } = compartment;
    if (covered.some((flood) => flood.side === side && Math.abs(flood.levelM - levelM) <= SAME_LEVEL_M)) continue;
    covered.push({ side, levelM });
    const wet = new Set([...compartments.values()].filter((each) => each.side === side).map((each) => each.id));
    // Whatever stands there is under water, whether or not a service hangs on it.
    const down = build.project.items.filter(
      (each) => wet.has(placeOf(build.project, each)?.compartmentId ?? '') && each.position.zM <= levelM + SAME_LEVEL_M,
    );
    const drowned = banks.filter((bank) => down.includes(bank.item)).map((bank) => bank.item.tag);
    events.push({
      id: `flood:${id}:${item.id}`,
      label: `${name} floods over ${drowned.join(', ')}`,
      kind: 'flood',
      downIds: down.map((each) => `item:${each.id}`),
      note: 'Water up to the battery terminals; what stands higher, and anywhere else, stays dry.',
      water: { levelZM: levelM, compartmentIds: [...wet] },
    });
  }
  return events;
}

/**
 * A strike: everything joined to an antenna or to the ship's supply is down, wherever it is. What was unplugged from
 * both lives, and so do stand-alone sets.
 */
export function lightningEvent(build: Build, placed: readonly Placed[]): FailureEvent {
  const unplugged = new Set(placed.filter(({ item }) => item.facts.unpluggedInStorms).map(({ item }) => item.id));
  const spared = sparedRuns(build, placed, unplugged);
  const downIds: string[] = [];
  for (const component of build.components.values()) {
    const { kind, subject } = component;
    if (kind === 'structure' || kind === 'standalone') continue;
    if (subject.kind === 'item' && (unplugged.has(subject.id) || spared.has(`item:${subject.id}`))) continue;
    if (subject.kind === 'run' && spared.has(`run:${subject.id}`)) continue;
    downIds.push(component.id);
  }
  const [main] = [...build.project.boat.masts].sort((a, b) => b.truckZM - a.truckZM);
  const label = main ? `Lightning on the ${main.name.toLowerCase()}` : 'Lightning';
  const tags = placed.filter(({ item }) => unplugged.has(item.id)).map(({ item }) => item.tag);
  const spare =
    tags.length > 0
      ? `unplugged in storms, and so spared: ${tags.join(', ')}`
      : 'no set is recorded as unplugged in storms';
  const note = `Everything joined to an antenna or to the ship’s supply is taken as gone; ${spare}.`;
  return { id: 'lightning', label, kind: 'lightning', downIds, note };
}

/** Runs of an unplugged set and the antennas at their far ends, unless the antenna stands on a mast. */
function sparedRuns(build: Build, placed: readonly Placed[], unplugged: ReadonlySet<string>): ReadonlySet<string> {
  const masts = new Set(build.project.boat.masts.map((mast) => mast.id));
  const aloft = new Set(
    placed.filter((entry) => entry.structures.some((id) => masts.has(id))).map(({ item }) => item.id),
  );
  const spared = new Set<string>();
  for (const itemId of unplugged) {
    for (const run of build.index.runsAtItem.get(itemId) ?? []) {
      const farId = run.from.itemId === itemId ? run.to.itemId : run.from.itemId;
      if (aloft.has(farId) || build.index.effective.get(farId)?.kind !== 'antenna') continue;
      spared.add(`run:${run.id}`);
      spared.add(`item:${farId}`);
    }
  }
  return spared;
}

/** How far from its seat a fire takes things, m. Own rule, no source. */
const FIRE_REACH_M = 1;

/** A fire where most fixed sets are, if two or more are together anywhere. */
export function fireEvent(build: Build, placed: readonly Placed[]): readonly FailureEvent[] {
  const sets = placed.filter(({ component }) => component.kind === 'radio');
  const near = (a: Placed, b: Placed): boolean =>
    (a.item.placeId !== null && a.item.placeId === b.item.placeId) ||
    Math.hypot(
      a.item.position.xM - b.item.position.xM,
      a.item.position.yM - b.item.position.yM,
      a.item.position.zM - b.item.position.zM,
    ) <= FIRE_REACH_M;
  let seat: Placed | undefined;
  let most = 1;
  for (const set of sets) {
    const count = sets.filter((other) => near(set, other)).length;
    if (count <= most) continue;
    most = count;
    seat = set;
  }
  if (!seat) return [];
  const at = seat;
  const place = placeOf(build.project, at.item);
  return [
    {
      id: `fire:${place?.id ?? at.item.id}`,
      label: `Fire at the ${(place?.name ?? at.item.tag).toLowerCase()}`,
      kind: 'compartment-fire',
      downIds: placed.filter((entry) => near(at, entry)).map((entry) => entry.component.id),
      note: 'Everything at the place where most fixed sets are is gone.',
    },
  ];
}

/** The boat is left: only what is portable with a battery of its own, or floats free, goes along. */
export function abandonEvent(build: Build, placed: readonly Placed[]): FailureEvent {
  const goes = new Set(
    placed
      .filter(({ item }) => {
        const part = build.index.effective.get(item.id);
        if (part?.kind === 'radio') return part.traits.portable && part.traits.ownBattery;
        return part?.kind === 'standalone';
      })
      .map(({ component }) => component.id),
  );
  const downIds = [...build.components.keys()].filter((id) => !goes.has(id));
  const note = 'Only portable sets with a battery of their own, and a beacon that floats free, go along.';
  return { id: 'abandon', label: 'Abandon to the raft', kind: 'abandon', downIds, note };
}
