import type { CutSets } from '../faultTree/cutSets.ts';
import { importanceOf } from '../faultTree/importance.ts';
import { groupPairs } from '../faultTree/pairs.ts';
import { type FaultSolver, solverOf } from '../faultTree/solver.ts';
import type { FaultModel } from '../faultTree/types.ts';
import type { PathBudget } from '../links/types.ts';
import type { Project } from '../model/project.ts';
import type { ServiceId } from '../model/services.ts';
import { chancesOf } from './chances.ts';
import { failureEvents } from './events.ts';
import { independenceOf } from './independence.ts';
import { buildModel, type RedundancyModel, serviceGate } from './model.ts';
import type { ChanceOf, FailureEvent, FailureStudy, RiskRow, ServiceCuts, ServiceRisk, TreeLabel } from './types.ts';

/** Highest order of cut sets looked for: single things, pairs and triples. */
export const STUDY_ORDER = 3;
/** More triples than this are counted, not listed: nobody reads them. */
const MOST_TRIPLES = 200;

const cache = new WeakMap<Project, FailureStudy>();

/**
 * What one, two or three failures take away, exactly; how often each service is down; which component matters most; and
 * whether two means of alert are independent. Worked out when it is looked at, and the same object for the same project.
 * Method and what the numbers are worth: docs/redundancy.md.
 */
export function studyFailures(project: Project, paths: readonly PathBudget[]): FailureStudy {
  const known = cache.get(project);
  if (known) return known;
  const built = buildModel(project, paths);
  const causes = commonCauses(failureEvents(built.build).tried);
  const model = faultModel(built, causes);
  const solver = solverOf(model);
  const components = [...built.build.components.values()];
  const chances = chancesOf(project, components, causes);
  const labels = labelsOf(built, causes);
  const tops = new Map(built.services.map((id) => [id, serviceGate(id)] as const));
  const study: FailureStudy = {
    cuts: built.services.map((id) => cutsOf(id, solver.cutSets(serviceGate(id), STUDY_ORDER))),
    riskOf: keptByService(built.services, (id) => riskOf(id, solver, chances, labels)),
    labels,
    chances,
    independence: independenceOf(built, model),
    model,
    tops,
  };
  cache.set(project, study);
  return study;
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
export function faultModel({ build }: RedundancyModel, causes: readonly FailureEvent[]): FaultModel {
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

function riskOf(
  serviceId: ServiceId,
  solver: FaultSolver,
  chances: readonly ChanceOf[],
  labels: ReadonlyMap<string, TreeLabel>,
): ServiceRisk {
  const top = serviceGate(serviceId);
  const at = solver.unavailability(top);
  const of = (pick: (chance: ChanceOf) => number) =>
    new Map(chances.map((chance) => [treeId(chance, labels), pick(chance)]));
  const nominal = of((chance) => chance.nominal);
  const middle = at(nominal);
  const byId = new Map(chances.map((chance) => [treeId(chance, labels), chance]));
  const rows = (importanceOf(middle, solver.cutSets(top, STUDY_ORDER), nominal) ?? []).flatMap((row): RiskRow[] => {
    const labelled = labels.get(row.id);
    const chance = byId.get(row.id);
    if (!labelled || !chance) return [];
    return [
      {
        id: row.id,
        ...labelled,
        chance,
        birnbaum: row.birnbaum,
        ifPerfect: row.criticality,
        takesPart: row.fussellVesely,
      },
    ];
  });
  return {
    serviceId,
    low: at(of((chance) => chance.low)).lowest,
    nominal: middle.isExact ? middle.lowest : (middle.lowest + middle.highest) / 2,
    high: at(of((chance) => chance.high)).highest,
    isExact: middle.isExact,
    rows,
  };
}

const treeId = ({ id }: ChanceOf, labels: ReadonlyMap<string, unknown>): string => (labels.has(id) ? id : causeId(id));
