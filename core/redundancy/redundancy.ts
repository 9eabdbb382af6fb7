import { downColumns, loneScenarios, readSinglePoints } from '../faultTree/scenarios.ts';
import type { PathBudget } from '../links/types.ts';
import type { Boat } from '../model/boat.ts';
import type { Project } from '../model/project.ts';
import type { ServiceId } from '../model/services.ts';
import type { RangeResult } from '../reach/types.ts';
import { failureEvents } from './events.ts';
import type { TriedWay } from './matrix.ts';
import { failureMatrix } from './matrix.ts';
import type { RedundancyModel } from './model.ts';
import { buildModel, serviceGate } from './model.ts';
import { isSameModel, type Posed } from './sameModel.ts';
import type { Redundancy, SinglePoint, Way } from './types.ts';

/** What the links stage found; the paths are what a way hangs on. */
export interface LinkResults {
  readonly paths: readonly PathBudget[];
  readonly ranges: readonly RangeResult[];
}

interface Known extends Posed {
  readonly redundancy: Redundancy;
}
const cache = new WeakMap<Boat, Known>();

/**
 * What each service hangs on, which single things take it away, and what is left in each failure. Pure; the same object
 * as the last time for a boat where nothing that matters has changed. Grades and rules: docs/redundancy.md.
 */
export function assessRedundancy(project: Project, { paths }: LinkResults): Redundancy {
  const posed = posedOf(project, paths);
  const known = cache.get(project.boat);
  if (known && isSameModel(known, posed)) return known.redundancy;
  const redundancy = solve(posed);
  cache.set(project.boat, { ...posed, redundancy });
  return redundancy;
}

interface LastPosed {
  readonly project: Project;
  readonly paths: readonly PathBudget[];
  readonly posed: Posed;
}
const lastPosed = new WeakMap<Boat, LastPosed>();

/** The failure model of a project and the events it is tried against, made once for all who look at the same project. */
export function posedOf(project: Project, paths: readonly PathBudget[]): Posed {
  const last = lastPosed.get(project.boat);
  if (last?.project === project && last.paths === paths) return last.posed;
  const model = buildModel(project, paths);
  const { tried, excluded } = failureEvents(model.build);
  const posed: Posed = { model, events: tried, excluded };
  lastPosed.set(project.boat, { project, paths, posed });
  return posed;
}

function solve({ model, events, excluded }: Posed): Redundancy {
  const { build, services } = model;
  const lone = loneScenarios([...build.components.keys()], []);
  const columnsOf = downColumns(build.gates, lone.down, lone.width);
  const ways: TriedWay[] = build.ways.map((way) => {
    return { ...way, hangsOn: readSinglePoints(columnsOf(way.gate), lone).ids };
  });
  return {
    services,
    components: [...build.components.values()],
    ways: ways.map(publicWay),
    singlePoints: pointsOf(model, (serviceId) => readSinglePoints(columnsOf(serviceGate(serviceId)), lone).ids),
    matrix: failureMatrix(build, services, ways, events),
    excluded,
  };
}

function pointsOf(model: RedundancyModel, idsOf: (serviceId: ServiceId) => readonly string[]): readonly SinglePoint[] {
  const services = new Map<string, ServiceId[]>();
  for (const serviceId of model.services) {
    for (const id of idsOf(serviceId)) {
      const known = services.get(id);
      if (known) known.push(serviceId);
      else services.set(id, [serviceId]);
    }
  }
  return [...services].map(([componentId, serviceIds]) => ({ componentId, serviceIds }));
}

function publicWay(way: TriedWay): Way {
  const { id, serviceId, label, grade, reason, hangsOn, subjects, itemId, path, emergencyAntennaId } = way;
  const pathId = path?.id ?? null;
  return {
    ...{ id, serviceId, label, grade, reason, hangsOn, subjects, itemId, pathId },
    ...(way.carried ? { carried: true } : {}),
    ...(emergencyAntennaId === undefined ? {} : { emergencyAntennaId }),
  };
}
