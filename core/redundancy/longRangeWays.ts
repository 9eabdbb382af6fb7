import { overheadOf } from '../catalogue/lookup.ts';
import type { PathBudget } from '../links/types.ts';
import type { PartOf } from '../model/part.ts';
import type { Item, Subject } from '../model/project.ts';
import type { Build } from './build.ts';
import { addWay, stands, use } from './build.ts';
import { pathInputs, pathSubjects, setInputs } from './chain.ts';
import { overheadInWords, positionGate, seesSky } from './fix.ts';
import type { Graded } from './grades.ts';
import { FULL, feederGrade, reduced, worse } from './grades.ts';
import { supplyGate } from './supply.ts';

/** Long-range voice or text, safety information, and the distress alert of a set with digital selective calling, by MF/HF. */
export function hfWays(build: Build, item: Item, part: PartOf<'radio'>): void {
  const paths = (build.pathsOf.get(item.id) ?? []).filter((path) => path.service === 'mf-hf' && path.canTransmit);
  if (paths.length === 0) {
    build.noWays.push({
      serviceId: 'long-range',
      reason: `${item.tag} is connected to no antenna it may transmit into`,
    });
  }
  for (const path of paths) {
    const inputs = [...setInputs(build, item, 'ship'), ...pathInputs(build, path)];
    const graded = worse(feederGrade(build.project, path), leadInGrade(build, path));
    const way = {
      label: onAntenna(build, item, path),
      itemId: item.id,
      carried: false,
      subjects: pathSubjects(path),
      path,
    };
    addWay(build, { ...way, id: `long-range:${path.id}`, serviceId: 'long-range', ...graded }, inputs);
    const heard = reduced('HF reception depends on the hour and on the band');
    addWay(build, { ...way, id: `safety-information:${path.id}`, serviceId: 'safety-information', ...heard }, inputs);
    if (part.traits.dsc) hfAlert(build, item, path, graded, inputs);
  }
}

function hfAlert(build: Build, item: Item, path: PathBudget, graded: Graded, inputs: readonly string[]): void {
  const position = positionGate(build, item);
  const way = {
    serviceId: 'digital-alert' as const,
    itemId: item.id,
    carried: false,
    subjects: pathSubjects(path),
    path,
  };
  const label = onAntenna(build, item, path);
  if (position.gate !== null) {
    const id = `digital-alert:${path.id}:with position`;
    addWay(build, { ...way, id, label: `${label}, with position`, ...graded }, [...inputs, position.gate]);
  }
  const why = position.gate === null ? position.reason : 'its position source is gone';
  const bare = worse(reduced(`the alert carries no position: ${why}`), graded);
  const id = `digital-alert:${path.id}:without position`;
  addWay(build, { ...way, id, label: `${label}, without position`, ...bare }, inputs);
}

function leadInGrade(build: Build, path: PathBudget): Graded {
  const inside = (id: string): number => build.index.runs.get(id)?.facts.insideMetalM ?? 0;
  const antenna = build.index.items.get(path.antennaId);
  const onDevices = path.deviceIds.map((id) => build.index.items.get(id)?.facts.leadInInsideMetalM ?? 0);
  const total = Math.max(antenna?.facts.leadInInsideMetalM ?? 0, ...onDevices, ...path.runIds.map(inside));
  return total > 0 ? reduced('part of its lead-in radiates inside the metal hull instead of outside') : FULL;
}

/** Long-range text or voice by an L-band set: fitted on ship's supply, on its own battery, and carried on deck. */
export function lBandWays(build: Build, item: Item, part: PartOf<'radio'>): void {
  for (const fitted of fittedLBand(build, item, part)) {
    lBandWay(build, item, fitted, fitted.graded, 'ship');
    if (part.traits.ownBattery) {
      const short = worse(reduced('only for as long as that lasts'), fitted.graded);
      lBandWay(build, item, fitted, short, 'own');
    }
  }
  if (part.traits.ownBattery && part.traits.portable) carriedWays(build, item);
}

interface Fitted {
  readonly id: string;
  readonly label: string;
  readonly graded: Graded;
  readonly inputs: readonly string[];
  readonly subjects: readonly Subject[];
  readonly path?: PathBudget;
}

function fittedLBand(build: Build, item: Item, part: PartOf<'radio'>): readonly Fitted[] {
  if (part.traits.integralAntenna) return integralFitted(build, item);
  const fitted: Fitted[] = [];
  const paths = (build.pathsOf.get(item.id) ?? []).filter((path) => path.service === 'l-band');
  if (paths.length === 0) noLongRange(build, `${item.tag} is connected to no antenna`);
  for (const path of paths) {
    const antenna = build.index.items.get(path.antennaId);
    if (antenna && !seesSky(overheadOf(build.project, antenna))) {
      noLongRange(
        build,
        `${item.tag} has no sky: its antenna ${antenna.tag} is under ${overheadInWords(build.project, antenna)}`,
      );
      continue;
    }
    const graded = feederGrade(build.project, path);
    const inputs = pathInputs(build, path);
    fitted.push({
      id: path.id,
      label: onAntenna(build, item, path),
      graded,
      inputs,
      subjects: pathSubjects(path),
      path,
    });
  }
  return fitted;
}

function integralFitted(build: Build, item: Item): readonly Fitted[] {
  if (seesSky(overheadOf(build.project, item))) {
    return [{ id: item.id, label: item.tag, graded: FULL, inputs: [], subjects: [{ kind: 'item', id: item.id }] }];
  }
  noLongRange(build, `${item.tag} has no sky under ${overheadInWords(build.project, item)}`);
  return [];
}

function noLongRange(build: Build, reason: string): void {
  build.noWays.push({ serviceId: 'long-range', reason });
}

function lBandWay(build: Build, item: Item, fitted: Fitted, graded: Graded, supply: 'ship' | 'own'): void {
  const variant = supply === 'own' ? ', on its own battery' : '';
  const inputs = [...setInputs(build, item, supply), ...fitted.inputs];
  const { subjects, path } = fitted;
  const byPath = path ? { path } : {};
  const way = { label: `${fitted.label}${variant}`, itemId: item.id, carried: false, subjects, ...byPath };
  addWay(build, { ...way, id: `long-range:${fitted.id}:${supply}`, serviceId: 'long-range', ...graded }, inputs);
  const heard = reduced('broadcasts by satellite come only where the set is subscribed and signed on');
  addWay(
    build,
    { ...way, id: `safety-information:${fitted.id}:${supply}`, serviceId: 'safety-information', ...heard },
    inputs,
  );
}

function carriedWays(build: Build, item: Item): void {
  // Whether somebody carries it out depends on its ship's supply, so that must be among the components.
  supplyGate(build, item.id);
  const graded = reduced('off its mount, on its own antenna and battery');
  for (const serviceId of ['long-range', 'safety-information'] as const) {
    const way = { id: `${serviceId}:${item.id}:carried`, serviceId, label: `${item.tag}, carried on deck`, ...graded };
    const subjects: Subject[] = [{ kind: 'item', id: item.id }];
    addWay(build, { ...way, itemId: item.id, carried: true, subjects }, [use(build, 'item', item.id)]);
  }
}

/** Long range, near-shore internet and safety information by a broadband terminal, through the boat's router and without. */
export function broadbandWays(build: Build, item: Item, part: PartOf<'radio'>): void {
  if (part.traits.integralAntenna && !seesSky(overheadOf(build.project, item))) {
    noLongRange(build, `${item.tag} has no sky under ${overheadInWords(build.project, item)}`);
    return;
  }
  const inputs = setInputs(build, item, 'ship');
  const router = routerOf(build, item);
  const way = { itemId: item.id, carried: false };
  const subjects: Subject[] = [{ kind: 'item', id: item.id }];
  const heard = reduced('forecasts over the internet are no substitute for broadcast warnings');
  const information = { ...way, id: `safety-information:${item.id}`, serviceId: 'safety-information' as const };
  addWay(build, { ...information, label: item.tag, ...heard, subjects }, inputs);
  for (const serviceId of ['long-range', 'internet-near-shore'] as const) {
    const bare = router
      ? reduced('the router is dead: only a device joined straight to the terminal gets through')
      : FULL;
    addWay(build, { ...way, id: `${serviceId}:${item.id}`, serviceId, label: item.tag, ...bare, subjects }, inputs);
    if (!router) continue;
    const label = `${item.tag} through ${router.tag}`;
    const id = `${serviceId}:${item.id}:router`;
    const through: Subject[] = [...subjects, { kind: 'item', id: router.itemId }];
    addWay(build, { ...way, id, serviceId, label, ...FULL, subjects: through }, [...inputs, ...router.inputs]);
  }
}

function routerOf(build: Build, item: Item): { itemId: string; tag: string; inputs: readonly string[] } | undefined {
  for (const link of build.index.linksAtItem.get(item.id) ?? []) {
    const farId = link.from.itemId === item.id ? link.to.itemId : link.from.itemId;
    const far = build.index.items.get(farId);
    const part = build.index.effective.get(farId);
    if (!far || !stands(far) || !stands(link)) continue;
    if (part?.kind !== 'equipment' || part.equipmentClass !== 'router') continue;
    const inputs = [use(build, 'link', link.id), use(build, 'item', farId), supplyGate(build, farId)];
    return { itemId: farId, tag: far.tag, inputs };
  }
  return undefined;
}

function onAntenna(build: Build, item: Item, path: PathBudget): string {
  return `${item.tag} on ${build.index.items.get(path.antennaId)?.tag ?? path.antennaId}`;
}
