import type { CutSets } from '../faultTree/cutSets.ts';
import { type Importance, importanceOf } from '../faultTree/importance.ts';
import { groupPairs } from '../faultTree/pairs.ts';
import { type FaultSolver, solverOf } from '../faultTree/solver.ts';
import type { FaultModel } from '../faultTree/types.ts';
import type { PathBudget } from '../links/types.ts';
import type { Boat } from '../model/boat.ts';
import type { Project } from '../model/project.ts';
import type { ServiceId } from '../model/services.ts';
import { chancesOf } from './chances.ts';
import { independenceOf } from './independence.ts';
import { fullGate, type RedundancyModel, serviceGate } from './model.ts';
import { posedOf } from './redundancy.ts';
import { isSameModel, type Posed } from './sameModel.ts';
import type {
  ChanceOf,
  FailureEvent,
  FailureStudy,
  Independence,
  RiskRow,
  ServiceCuts,
  ServiceRisk,
  TreeLabel,
} from './types.ts';

/** Highest order of cut sets looked for: single things, pairs and triples. */
const STUDY_ORDER = 3;
/** More triples than this are counted, not listed: nobody reads them. */
const MOST_TRIPLES = 200;

/** Studies of one boat that are kept: the layout at hand, a few steps back, a few alternatives. */
const MOST_KEPT = 4;

interface Kept {
  readonly project: Project;
  readonly posed: Posed;
  readonly trees: Trees;
  readonly study: FailureStudy;
}

/** What a study knows of the trees alone, whatever the chances. */
interface Trees {
  readonly causes: readonly FailureEvent[];
  readonly model: FaultModel;
  readonly solver: FaultSolver;
  readonly cuts: readonly ServiceCuts[];
  readonly labels: ReadonlyMap<string, TreeLabel>;
}
const cache = new WeakMap<Boat, readonly Kept[]>();

/**
 * What one, two or three failures take away, exactly; how often each service is down; which component matters most; and
 * whether two means of alert are independent. Worked out when it is looked at, and the same object for the same project
 * while that is one of the last few; a service whose tree an edit leaves as it was is not worked out again.
 * Method and what the numbers are worth: docs/redundancy.md.
 */
export function studyFailures(project: Project, paths: readonly PathBudget[]): FailureStudy {
  const kept = cache.get(project.boat) ?? [];
  const known = kept.find((each) => each.project === project);
  if (known) return known.study;
  const made = studied(project, paths, kept[0]);
  cache.set(project.boat, [made, ...kept].slice(0, MOST_KEPT));
  return made.study;
}

function studied(project: Project, paths: readonly PathBudget[], before: Kept | undefined): Kept {
  const posed = posedOf(project, paths);
  const isAsBefore = before !== undefined && isSameModel(before.posed, posed);
  const trees = isAsBefore ? before.trees : treesOf(posed, before?.trees.solver);
  const { causes, model, solver, cuts, labels } = trees;
  const { build, services } = posed.model;
  const chances = chancesOf(project, [...build.components.values()], causes);
  const risks = new Risks(solver, chances, labels);
  let independence: Independence | null = null;
  const study: FailureStudy = {
    cuts,
    cutsOfFull: keptByService(services, (id) => cutsOf(id, solver.cutSets(fullGate(id), STUDY_ORDER))),
    riskOf: keptByService(services, (id) => risks.of(id)),
    labels,
    chances,
    get independence() {
      independence ??= independenceOf(posed.model, model, labels, commonCauses(posed.excluded).length > 0);
      return independence;
    },
    model,
    tops: new Map(services.map((id) => [id, serviceGate(id)] as const)),
  };
  return { project, posed, trees, study };
}

function treesOf({ model: built, events }: Posed, before: FaultSolver | undefined): Trees {
  const causes = commonCauses(events);
  const model = faultModel(built, causes);
  const solver = solverOf(model, before);
  const cuts = built.services.map((id) => cutsOf(id, solver.cutSets(serviceGate(id), STUDY_ORDER)));
  return { causes, model, solver, cuts, labels: labelsOf(built, causes) };
}

/**
 * Events that are causes in the tree: what takes several things down at once and is nobody's own failure. A mast or an arch is
 * a component already, a breaker, bank or device too; abandoning the boat is no failure of the installation.
 */
export function commonCauses(events: readonly FailureEvent[]): readonly FailureEvent[] {
  const kinds: ReadonlySet<FailureEvent['kind']> = new Set([
    'all-masts',
    'flood',
    'lightning',
    'compartment-fire',
    'own',
  ]);
  return events.filter(({ kind, downIds }) => kinds.has(kind) && downIds.length > 0);
}

/** The gates of all services with components and common causes as events. */
function faultModel({ build }: RedundancyModel, causes: readonly FailureEvent[]): FaultModel {
  const events = [...build.components.keys()];
  const known = new Set(events);
  return {
    events,
    gates: build.gates,
    causes: causes.map(({ id, downIds }) => ({ id: causeId(id), hits: downIds.filter((hit) => known.has(hit)) })),
  };
}

/** Events and components share one name space in a tree, and an event may be named after its component. */
export const causeId = (eventId: string): string => `cause:${eventId}`;

function labelsOf({ build }: RedundancyModel, causes: readonly FailureEvent[]): ReadonlyMap<string, TreeLabel> {
  const labels = new Map<string, TreeLabel>();
  for (const { id, label, subject } of build.components.values()) labels.set(id, { label, subject });
  for (const { id, label } of causes) labels.set(causeId(id), { label, subject: null });
  return labels;
}

function keptByService<T>(services: readonly ServiceId[], workOut: (id: ServiceId) => T): (id: ServiceId) => T {
  const kept = new Map<ServiceId, T>();
  return (id) => {
    const known = kept.get(id);
    if (known !== undefined) return known;
    if (!services.includes(id))
      throw new RangeError(`The service "${id}" is not shown for this boat: ask for one that is.`);
    const made = workOut(id);
    kept.set(id, made);
    return made;
  };
}

function cutsOf(serviceId: ServiceId, sets: CutSets): ServiceCuts {
  const tripleCount = sets.countByOrder[2] ?? 0;
  return {
    serviceId,
    lostFromStart: sets.lostFromStart,
    countByOrder: sets.countByOrder,
    singles: sets.ofOrder(1).flat(),
    pairs: groupPairs(sets.ofOrder(2)),
    triples: tripleCount <= MOST_TRIPLES ? sets.ofOrder(3) : [],
    tripleCount,
  };
}

/** What all services of a study read their risks from; nothing of it is made before the first is asked for. */
class Risks {
  private readonly solver: FaultSolver;
  private readonly labels: ReadonlyMap<string, TreeLabel>;
  private readonly chances: readonly ChanceOf[];
  private made: ChancesInTree | null = null;

  constructor(solver: FaultSolver, chances: readonly ChanceOf[], labels: ReadonlyMap<string, TreeLabel>) {
    this.solver = solver;
    this.chances = chances;
    this.labels = labels;
  }

  of(serviceId: ServiceId): ServiceRisk {
    const top = serviceGate(serviceId);
    const at = this.solver.unavailability(top);
    const { low, nominal, high, byId } = this.chancesInTree();
    const middle = at(nominal);
    const rowsNow = (): readonly RiskRow[] =>
      (importanceOf(middle, this.solver.cutSets(top, STUDY_ORDER), nominal) ?? []).flatMap((row) =>
        this.row(row, byId.get(row.id)),
      );
    let rows: readonly RiskRow[] | null = null;
    return {
      serviceId,
      low: at(low).lowest,
      nominal: middle.isExact ? middle.lowest : (middle.lowest + middle.highest) / 2,
      high: at(high).highest,
      isExact: middle.isExact,
      get rows() {
        rows ??= rowsNow();
        return rows;
      },
    };
  }

  private row({ id, birnbaum, criticality, fussellVesely }: Importance, chance: ChanceOf | undefined): RiskRow[] {
    const labelled = this.labels.get(id);
    if (!labelled || !chance) return [];
    const { label, subject } = labelled;
    return [{ id, label, subject, chance, birnbaum, ifPerfect: criticality, takesPart: fussellVesely }];
  }

  /** A chance goes by the id of its component or event; in the trees an event is a cause. */
  private chancesInTree(): ChancesInTree {
    if (this.made) return this.made;
    const made = {
      byId: new Map<string, ChanceOf>(),
      low: new Map<string, number>(),
      nominal: new Map<string, number>(),
      high: new Map<string, number>(),
    };
    for (const chance of this.chances) {
      const id = this.labels.has(chance.id) ? chance.id : causeId(chance.id);
      made.byId.set(id, chance);
      made.low.set(id, chance.low);
      made.nominal.set(id, chance.nominal);
      made.high.set(id, chance.high);
    }
    this.made = made;
    return made;
  }
}

/** Chances by the names of the tree. */
interface ChancesInTree {
  readonly byId: ReadonlyMap<string, ChanceOf>;
  readonly low: ReadonlyMap<string, number>;
  readonly nominal: ReadonlyMap<string, number>;
  readonly high: ReadonlyMap<string, number>;
}
