import { type Assessment, assess } from '../assess.ts';
import { indexProject, type ProjectIndex } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import type { Part, PartOf } from '../model/part.ts';
import type { Endpoint, Feed, Item, Project, Run } from '../model/project.ts';
import type { ServiceId } from '../model/services.ts';
import { type Build, stands, startBuild } from '../redundancy/build.ts';
import { worksUnpowered } from '../redundancy/chain.ts';
import { structuresUnder } from '../redundancy/components.ts';
import { studyFailures } from '../redundancy/study.ts';
import type { FailureStudy } from '../redundancy/types.ts';

/** A boat with all that is known of its failures: what the makers of candidates look at. */
export interface Survey {
  readonly project: Project;
  readonly index: ProjectIndex;
  readonly assessment: Assessment;
  readonly study: FailureStudy;
  readonly build: Build;
  /** Services each component or cause takes away alone. */
  readonly singles: ReadonlyMap<string, readonly ServiceId[]>;
  /** Services each set has a way for. */
  readonly servicesOf: ReadonlyMap<string, ReadonlySet<ServiceId>>;
  /** Shown services that have no way as drawn. */
  readonly lost: readonly ServiceId[];
}

/** Looks over a boat. */
export function surveyOf(project: Project): Survey {
  const assessment = assess(project);
  const study = studyFailures(project, assessment.paths);
  const singles = new Map<string, ServiceId[]>();
  for (const { serviceId, singles: ids } of study.cuts) {
    for (const id of ids) {
      const known = singles.get(id);
      if (known) known.push(serviceId);
      else singles.set(id, [serviceId]);
    }
  }
  const servicesOf = new Map<string, Set<ServiceId>>();
  for (const { itemId, serviceId } of assessment.redundancy.ways) {
    const known = servicesOf.get(itemId);
    if (known) known.add(serviceId);
    else servicesOf.set(itemId, new Set([serviceId]));
  }
  const lost = study.cuts.filter((cut) => cut.lostFromStart).map((cut) => cut.serviceId);
  const build = startBuild(project, assessment.paths);
  return { project, index: indexProject(project), assessment, study, build, singles, servicesOf, lost };
}

/** An item that stays aboard, with its part. */
export interface Fitted<P extends Part = Part> {
  readonly item: Item;
  readonly part: P;
}

/** Items of a kind of part that are not to be removed, in document order. */
export function fittedOf<K extends Part['kind']>(survey: Survey, kind: K): readonly Fitted<PartOf<K>>[] {
  return survey.project.items.flatMap((item) => {
    const part = survey.index.effective.get(item.id);
    return stands(item) && part?.kind === kind ? [{ item, part: part as PartOf<K> }] : [];
  });
}

/** Paths of a set over things that stay, ready to use as the switches stand. */
export function pathsOf(survey: Survey, itemId: string): readonly PathBudget[] {
  return (survey.build.pathsOf.get(itemId) ?? []).filter((path) => path.switchIds.length === 0);
}

/** Whether any of these alone takes a service away. */
export function anySingle(survey: Survey, ids: Iterable<string>): boolean {
  for (const id of ids) if (survey.singles.has(id)) return true;
  return false;
}

/** Whether any of these alone takes a service that the set gives. */
export function endangers(survey: Survey, itemId: string, ids: Iterable<string>): boolean {
  const own = survey.servicesOf.get(itemId);
  for (const id of ids) if (survey.singles.get(id)?.some((serviceId) => own?.has(serviceId))) return true;
  return false;
}

/** Devices on a set's paths that fail it when they have no supply, and that have a drawn supply. */
export function poweredOnWay(survey: Survey, itemId: string): readonly Item[] {
  const found = new Map<string, Item>();
  for (const path of pathsOf(survey, itemId)) {
    for (const id of path.deviceIds) {
      const device = survey.index.items.get(id);
      if (device && !worksUnpowered(survey.build, device, path) && feedsOf(survey, id).length > 0) {
        found.set(id, device);
      }
    }
  }
  return [...found.values()];
}

/** Feeds into an item that stay, from things that stay. */
export function feedsOf(survey: Survey, itemId: string): readonly Feed[] {
  return (survey.index.feedsInto.get(itemId) ?? []).filter(
    (feed) => stands(feed) && stands(survey.index.items.get(feed.from.itemId)),
  );
}

/** What an item's supply hangs on, up to its batteries. */
export interface SupplyChain {
  readonly feeds: readonly Feed[];
  readonly items: readonly Item[];
}

/** Everything between an item and its batteries, batteries included. */
export function supplyChain(survey: Survey, itemIds: readonly string[]): SupplyChain {
  const feeds = new Map<string, Feed>();
  const items = new Map<string, Item>();
  const queue = [...itemIds];
  for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
    for (const feed of feedsOf(survey, id)) {
      feeds.set(feed.id, feed);
      const source = survey.index.items.get(feed.from.itemId);
      if (!source || items.has(source.id)) continue;
      items.set(source.id, source);
      if (!isBattery(survey.index.effective.get(source.id))) queue.push(source.id);
    }
  }
  return { feeds: [...feeds.values()], items: [...items.values()] };
}

/** Component ids of a supply chain, and of the common causes that may take it. */
export function chainIds({ feeds, items }: SupplyChain): readonly string[] {
  return [...feeds.map(({ id }) => `feed:${id}`), ...items.map(({ id }) => `item:${id}`)];
}

export function isBattery(part: Part | undefined): part is PartOf<'power'> {
  return part?.kind === 'power' && (part.powerClass === 'battery-bank' || part.powerClass === 'starter-battery');
}

/** The run on an item's port that stays, and which end of it is there. */
export function runAt(survey: Survey, end: Endpoint): { readonly run: Run; readonly end: 'from' | 'to' } | null {
  for (const run of survey.index.runsAtItem.get(end.itemId) ?? []) {
    if (!stands(run)) continue;
    if (run.from.itemId === end.itemId && run.from.portId === end.portId) return { run, end: 'from' };
    if (run.to.itemId === end.itemId && run.to.portId === end.portId) return { run, end: 'to' };
  }
  return null;
}

/** AIS sets behind a device, by any of their paths. */
export function aisThrough({ assessment, index }: Survey, deviceId: string): readonly PartOf<'radio'>[] {
  const behind = assessment.paths.filter(({ service, deviceIds }) => service === 'ais' && deviceIds.includes(deviceId));
  return [...new Set(behind.map(({ radioId }) => radioId))].flatMap((id) => {
    const part = index.effective.get(id);
    return part?.kind === 'radio' ? [part] : [];
  });
}

/** Whether a set is an AIS set that sends by itself, as all but a receiver do. */
export const sendsAis = ({ radioClass }: PartOf<'radio'>): boolean => radioClass.startsWith('ais-class');

/** Structures a path's antenna is lost with. */
export function structuresOfPath(survey: Survey, path: PathBudget): readonly string[] {
  const antenna = survey.index.items.get(path.antennaId);
  return antenna ? structuresUnder(survey.project, antenna) : [];
}

/** A place's name inside a sentence: `the saloon shelf`. */
export function placeWords(name: string): string {
  return `the ${name.charAt(0).toLowerCase()}${name.slice(1)}`;
}

/** `VHF-1`, `VHF-1 and SP-1`. */
export function tagsOf(items: readonly Pick<Item, 'tag'>[]): string {
  const tags = items.map(({ tag }) => tag);
  const last = tags.at(-1) ?? '';
  return tags.length < 2 ? last : `${tags.slice(0, -1).join(', ')} and ${last}`;
}
