import type { FaultTree } from '../faultTree/types.ts';
import type { PathBudget, PathService } from '../links/types.ts';
import type { PartOf, RadioClass } from '../model/part.ts';
import type { Item, Project } from '../model/project.ts';
import type { ServiceId } from '../model/services.ts';
import { SERVICES } from '../model/services.ts';
import { aisWays } from './aisWays.ts';
import type { Build, BuiltWay } from './build.ts';
import { addGate, stands, startBuild } from './build.ts';
import type { Graded } from './grades.ts';
import { FULL, reduced } from './grades.ts';
import { broadbandWays, hfWays, lBandWays } from './longRangeWays.ts';
import { plainWays, positionWay } from './otherWays.ts';
import { standaloneWays } from './standaloneWays.ts';
import { vhfFixedWays } from './vhfWays.ts';

/** The failure model of a project: components, ways, and the gates of one tree per service. */
export interface RedundancyModel {
  readonly build: Build;
  /** Shown services, in the order of the matrix. */
  readonly services: readonly ServiceId[];
}

/**
 * Builds the failure model: for every set that stands (not marked for removal) the ways it can serve, then one gate per
 * service that is true when all its ways are gone. Carried ways stay out of the trees: a tree describes the boat as
 * fitted, and a set nobody has picked up yet is no redundancy of the installation.
 */
export function buildModel(project: Project, paths: readonly PathBudget[]): RedundancyModel {
  const build = startBuild(project, paths);
  for (const item of project.items) if (stands(item)) itemWays(build, item);
  const services = SERVICES.filter((service) => service.always || concerns(build, service.id)).map(({ id }) => id);
  for (const serviceId of services) {
    const ways = build.ways.filter((way) => way.serviceId === serviceId && !way.carried);
    const gone = (of: readonly BuiltWay[]): readonly string[] => of.map((way) => way.gate);
    addGate(build, serviceGate(serviceId), 'and', gone(ways));
    addGate(build, fullGate(serviceId), 'and', gone(ways.filter(({ grade }) => grade === 'full')));
  }
  return { build, services };
}

/** Id of the gate that is true when a service is lost. */
export function serviceGate(serviceId: ServiceId): string {
  return `service:${serviceId}`;
}

/**
 * Id of the gate that is true when a service is no longer full: every way that gives it fully is gone. What an event does to
 * a grade besides (an antenna lent to voice) is the matrix's to say, not the tree's.
 */
export function fullGate(serviceId: ServiceId): string {
  return `full:${serviceId}`;
}

/** The fault tree of one service, components only, for whoever wants to try the general engine on it. */
export function serviceTree(model: RedundancyModel, serviceId: ServiceId): FaultTree {
  const { components, gates } = model.build;
  return { events: [...components.keys()], gates, top: serviceGate(serviceId), causes: [] };
}

function concerns(build: Build, serviceId: ServiceId): boolean {
  const isOf = (entry: { readonly serviceId: ServiceId }): boolean => entry.serviceId === serviceId;
  return build.ways.some(isOf) || build.noWays.some(isOf);
}

function itemWays(build: Build, item: Item): void {
  const part = build.index.effective.get(item.id);
  if (part?.kind === 'standalone') standaloneWays(build, item, part);
  else if (part?.kind === 'position-source') positionWay(build, item, FULL);
  else if (part?.kind === 'radio') RADIO_WAYS[part.radioClass](build, item, part);
}

type RadioWays = (build: Build, item: Item, part: PartOf<'radio'>) => void;

/** An HF set that sends on the marine VHF channels too is a VHF set as well, without selective calling there. */
const byHf: RadioWays = (build, item, part) => {
  hfWays(build, item, part);
  if ((part.figures.vhfTxPowerW?.value ?? 0) > 0) vhfFixedWays(build, item, false);
};
const byVhf: RadioWays = (build, item, part) => vhfFixedWays(build, item, part.traits.dsc);
const byPosition: RadioWays = (build, item) => positionWay(build, item, FULL);
const byPath =
  (service: PathService | null, serviceId: ServiceId, graded: Graded): RadioWays =>
  (build, item) =>
    plainWays(build, item, service, serviceId, graded);

/** What each class of set is good for. A repeater serves no service of the boat by itself. */
const RADIO_WAYS: Readonly<Record<RadioClass, RadioWays>> = {
  'vhf-fixed': byVhf,
  'ais-class-a': aisWays,
  'ais-class-b-cs': aisWays,
  'ais-class-b-so': aisWays,
  'ais-receiver': aisWays,
  'mf-hf': byHf,
  'l-band-messenger': lBandWays,
  'l-band-voice': lBandWays,
  'broadband-terminal': broadbandWays,
  'navtex-receiver': byPath(null, 'safety-information', FULL),
  'broadcast-receiver': byPath(
    'broadcast',
    'safety-information',
    reduced('weather only, and only where it is broadcast'),
  ),
  'gnss-receiver': byPosition,
  'cellular-router': byPath('cellular', 'internet-near-shore', FULL),
  'wifi-bridge': byPath('wifi', 'internet-near-shore', reduced('only in reach of a shore network')),
  'cellular-repeater': () => undefined,
};
