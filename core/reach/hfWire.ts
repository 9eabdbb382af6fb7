import { indexProject } from '../catalogue/lookup.ts';
import { routedLengthM, runLengthM, runRoute } from '../links/route.ts';
import type { PathBudget } from '../links/types.ts';
import type { Position } from '../model/boat.ts';
import type { PartOf } from '../model/part.ts';
import type { Item, Project, Run } from '../model/project.ts';

/** An HF antenna as it hangs: the wire and as much of its lead-in as is in the open. */
export interface HfWire {
  /** Along the conductor, m. */
  readonly lengthM: number;
  /** From its lowest to its highest point, m. */
  readonly verticalM: number;
  readonly radiusMm: number;
  /** The tuner at its foot; null where there is none on the way. */
  readonly tuner: Item | null;
  /** Length of the lead-in inside metal, m, which radiates nothing. */
  readonly hiddenLeadM: number;
}

/** A part of the conductor: how long, and how much of that upwards. */
interface Stretch {
  readonly lengthM: number;
  readonly riseM: number;
  readonly hiddenM: number;
}

const NO_LEAD: Stretch = { lengthM: 0, riseM: 0, hiddenM: 0 };
/** Radius where none is stated, mm (6 mm wire or rod; common practice, no source). */
const USUAL_RADIUS_MM = 3;

/**
 * The conductor of an HF antenna from the drawing: a wire from its lower to its upper insulator, else the length of the part,
 * standing; and the lead-in from the tuner, which is part of the antenna, less what of it runs inside metal.
 */
export function hfWire(project: Project, path: PathBudget, item: Item, part: PartOf<'antenna'>): HfWire {
  const { items } = indexProject(project);
  const tuner = path.deviceIds.map((id) => items.get(id)).find((device) => device && isTuner(project, device)) ?? null;
  const wire = wireOf(item, part);
  const lead = tuner ? leadIn(project, path, item) : NO_LEAD;
  const lengthM = Math.min(200, Math.max(0.1, wire.lengthM + lead.lengthM));
  const radiusMm = part.figures.conductorRadiusMm?.value ?? USUAL_RADIUS_MM;
  return {
    lengthM,
    verticalM: Math.min(lengthM, Math.abs(wire.riseM + lead.riseM)),
    radiusMm: Math.min(Math.max(0.1, radiusMm), 100, lengthM * 50),
    tuner,
    hiddenLeadM: lead.hiddenM,
  };
}

function isTuner(project: Project, item: Item): boolean {
  const part = indexProject(project).effective.get(item.id);
  return part?.kind === 'inline' && part.deviceClass === 'tuner';
}

function wireOf({ position, endPosition }: Item, part: PartOf<'antenna'>): Stretch {
  if (endPosition)
    return { lengthM: distanceM(position, endPosition), riseM: endPosition.zM - position.zM, hiddenM: 0 };
  const lengthM = part.figures.lengthM.value;
  return { lengthM, riseM: lengthM, hiddenM: 0 };
}

/** The last run before the antenna, where it is a single wire and no coax. Followed down from the antenna while in the open. */
function leadIn(project: Project, path: PathBudget, antenna: Item): Stretch {
  const { runs, parts } = indexProject(project);
  const run = runs.get(path.runIds.at(-1) ?? '');
  const cable = run && parts.get(run.cableId);
  if (!run || cable?.kind !== 'coax' || cable.figures.lossK1.value > 0) return NO_LEAD;
  const lengthM = runLengthM(project, run);
  const hiddenM = Math.min(lengthM, run.facts.insideMetalM ?? antenna.facts.leadInInsideMetalM ?? 0);
  const openM = lengthM - hiddenM;
  const share = lengthM > 0 ? openM / lengthM : 0;
  const drawnM = (routedLengthM(project, run) - run.slackM) * share;
  return { lengthM: openM, riseM: riseAlong(fromAntenna(project, run, antenna), drawnM), hiddenM };
}

function fromAntenna(project: Project, run: Run, antenna: Item): readonly Position[] {
  const route = runRoute(project, run);
  return run.to.itemId === antenna.id ? route.toReversed() : route;
}

/** How far the start of a line lies above the point a length further along it, m. */
function riseAlong(route: readonly Position[], lengthM: number): number {
  let left = lengthM;
  let riseM = 0;
  route.slice(1).forEach((point, i) => {
    const before = route[i];
    if (!before || left <= 0) return;
    const stepM = distanceM(before, point);
    const share = stepM > left ? left / stepM : 1;
    riseM += (before.zM - point.zM) * share;
    left -= stepM;
  });
  return riseM;
}

function distanceM(a: Position, b: Position): number {
  return Math.hypot(a.xM - b.xM, a.yM - b.yM, a.zM - b.zM);
}
