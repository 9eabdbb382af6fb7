import { downColumns, loneScenarios, readSinglePoints } from '../faultTree/scenarios.ts';
import type { FaultModel } from '../faultTree/types.ts';
import type { RedundancySettings } from '../model/project.ts';
import { type Build, type BuiltWay, stands } from './build.ts';
import type { RedundancyModel } from './model.ts';
import type { AlertMeans, Independence, TreeLabel } from './types.ts';

type RadioService = AlertMeans['radioService'];
type SeaArea = RedundancySettings['seaArea'];

/**
 * By which services the shore is reached from each sea area: the areas are drawn by that. A 406 MHz beacon alerts from
 * anywhere and is no means of being answered, so it is not in here. This table is our own reading of the areas' definitions.
 */
export const SHORE_SERVICES: Readonly<Record<SeaArea, readonly RadioService[]>> = {
  A1: ['vhf-dsc', 'mf-hf-dsc', 'satellite'],
  A2: ['mf-hf-dsc', 'satellite'],
  A3: ['mf-hf-dsc', 'satellite'],
  A4: ['mf-hf-dsc'],
};

/** Whether an alert by a service reaches the shore from a sea area. */
export const alertsShore = (service: RadioService, seaArea: SeaArea): boolean =>
  service === 'beacon-406' || SHORE_SERVICES[seaArea].includes(service);

/**
 * Whether a distress alert can go ashore by two separate and independent means, each of another radio service: the first of the
 * GMDSS functional requirements (47 CFR 80.1081(a), which is SOLAS IV/4). Each set that can alert is a means; it counts where
 * its service reaches the shore from the boat's sea area. It hangs on what all of its ways share, and on the common causes that
 * take all of them. Two means are independent when no component and no cause is in both lists.
 */
export function independenceOf(
  { build }: RedundancyModel,
  model: FaultModel,
  labels: ReadonlyMap<string, TreeLabel>,
  isCauseLeftOut: boolean,
): Independence {
  const { seaArea } = build.project.settings.redundancy;
  const means = alertMeans(build, model);
  const counted = means.filter(({ radioService }) => alertsShore(radioService, seaArea));
  const verdict = verdictOn(counted, labels, isCauseLeftOut);
  const short = means.filter((each) => !counted.includes(each)).map(({ label }) => label);
  const left =
    short.length === 0
      ? ''
      : ` Not counted: ${short.join(', ')}, whose service does not reach the shore from sea area ${seaArea}.`;
  return { ...verdict, sentence: `${verdict.sentence}${left}`, means, countedIds: counted.map(({ id }) => id) };
}

type Verdict = Pick<Independence, 'verdict' | 'sentence' | 'pair'>;

function verdictOn(
  means: readonly AlertMeans[],
  labels: ReadonlyMap<string, TreeLabel>,
  isCauseLeftOut: boolean,
): Verdict {
  if (means.length === 0) return none('Nothing aboard can send a distress alert ashore.', 'none');
  if (new Set(means.map(({ radioService }) => radioService)).size === 1) {
    const labels = means.map(({ label }) => label).join(' and ');
    return none(`${labels}: one radio service only. Two different ones are asked for.`, 'one-service');
  }
  const [best] = pairsOf(means).sort((a, b) => sharedCount(a) - sharedCount(b));
  if (!best) return none('Nothing aboard can send a distress alert ashore.', 'none');
  const pair = {
    first: best.first.id,
    second: best.second.id,
    sharedComponents: best.components,
    sharedCauses: best.causes,
  };
  const names = `${best.first.label} and ${best.second.label}`;
  if (sharedCount(best) === 0) {
    const events = isCauseLeftOut ? 'no one event that is tried' : 'no one event';
    return { verdict: 'independent', sentence: `${names} share nothing and ${events} takes both.`, pair };
  }
  const named = (ids: readonly string[]): string => ids.map((id) => labels.get(id)?.label ?? id).join(', ');
  const words = [
    ...(best.components.length > 0 ? [`both hang on ${named(best.components)}`] : []),
    ...(best.causes.length > 0 ? [`both are lost to ${named(best.causes)}`] : []),
  ];
  return { verdict: 'shared', sentence: `${names} are the best pair, but ${words.join(' and ')}.`, pair };
}

const none = (sentence: string, verdict: Independence['verdict']): Verdict => ({ verdict, sentence, pair: null });

interface Pair {
  readonly first: AlertMeans;
  readonly second: AlertMeans;
  readonly components: readonly string[];
  readonly causes: readonly string[];
}

const sharedCount = ({ components, causes }: Pair): number => components.length + causes.length;

function pairsOf(means: readonly AlertMeans[]): Pair[] {
  return means.flatMap((first, index) =>
    means.slice(index + 1).flatMap((second): Pair[] => {
      if (first.radioService === second.radioService) return [];
      const both = (of: (means: AlertMeans) => readonly string[]): string[] =>
        of(first).filter((id) => of(second).includes(id));
      return [{ first, second, components: both((each) => each.hangsOn), causes: both((each) => each.causes) }];
    }),
  );
}

function alertMeans(build: Build, model: FaultModel): readonly AlertMeans[] {
  const lone = loneScenarios(model.events, model.causes);
  const gates = new Map(build.gates);
  const sets = new Map<string, { radioService: RadioService; ways: BuiltWay[] }>();
  for (const way of build.ways) {
    const radioService = way.carried ? null : serviceOf(build, way);
    if (radioService === null) continue;
    const known = sets.get(way.itemId) ?? { radioService, ways: [] };
    known.ways.push(way);
    sets.set(way.itemId, known);
  }
  // All gates first, then one pass for all: what the means share is gone through once.
  for (const [itemId, { ways }] of sets)
    gates.set(meansId(itemId), { op: 'and', inputs: ways.map(({ gate }) => gate) });
  const columnsOf = downColumns(gates, lone.down, lone.width);
  const causeIds = new Set(model.causes.map(({ id }) => id));
  return [...sets].flatMap(([itemId, { radioService }]): AlertMeans[] => {
    const id = meansId(itemId);
    const { lostFromStart, ids: alone } = readSinglePoints(columnsOf(id), lone);
    // A set without supply or position as drawn is no means at all, and must not pass for one that hangs on nothing.
    if (lostFromStart) return [];
    return [
      {
        id,
        radioService,
        label: build.index.items.get(itemId)?.tag ?? itemId,
        itemId,
        hangsOn: alone.filter((each) => !causeIds.has(each)),
        causes: alone.filter((each) => causeIds.has(each)),
      },
    ];
  });
}

const meansId = (itemId: string): string => `alert:${itemId}`;

/** By which radio service a way alerts the shore, or null where it does not. */
function serviceOf(build: Build, way: BuiltWay): RadioService | null {
  const item = build.index.items.get(way.itemId);
  const part = build.index.effective.get(way.itemId);
  if (!item || !stands(item) || !part) return null;
  if (part.kind === 'standalone') {
    if (way.serviceId === 'beacon') return 'beacon-406';
    if (way.serviceId === 'long-range' && part.standaloneClass === 'handheld-satellite') return 'satellite';
    return way.serviceId === 'digital-alert' ? 'vhf-dsc' : null;
  }
  if (part.kind !== 'radio') return null;
  if (way.serviceId === 'digital-alert') return part.radioClass === 'mf-hf' ? 'mf-hf-dsc' : 'vhf-dsc';
  const bySatellite = part.radioClass === 'l-band-messenger' || part.radioClass === 'l-band-voice';
  return way.serviceId === 'long-range' && bySatellite ? 'satellite' : null;
}
