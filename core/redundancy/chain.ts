import type { PathBudget } from '../links/types.ts';
import type { PartOf, Through } from '../model/part.ts';
import type { Item, Run, Subject } from '../model/project.ts';
import type { Build } from './build.ts';
import { use } from './build.ts';
import { standsOn } from './fix.ts';
import { supplyGate } from './supply.ts';

/** What a signal path hangs on besides the set at its end: runs, joints, devices and their supply, antenna, structures. */
export function pathInputs(build: Build, path: PathBudget): readonly string[] {
  const antenna = build.index.items.get(path.antennaId);
  const inputs = path.runIds.map((id) => use(build, 'run', id));
  for (const deviceId of path.deviceIds) {
    const device = build.index.items.get(deviceId);
    if (!device) continue;
    inputs.push(use(build, 'item', deviceId), ...standsOn(build, device));
    if (!worksUnpowered(build, device, path)) inputs.push(supplyGate(build, deviceId));
  }
  inputs.push(use(build, 'item', path.antennaId));
  if (antenna) inputs.push(...standsOn(build, antenna));
  return inputs;
}

/** The set, what it stands on and its ship's supply. */
export function setInputs(build: Build, item: Item, supply: 'ship' | 'own'): readonly string[] {
  const inputs = [use(build, 'item', item.id), ...standsOn(build, item)];
  return supply === 'ship' ? [...inputs, supplyGate(build, item.id)] : inputs;
}

/** What the drawing shows of a path: the set, its antenna and all between. */
export function pathSubjects(path: PathBudget): readonly Subject[] {
  return [
    { kind: 'item', id: path.radioId },
    ...path.runIds.map((id): Subject => ({ kind: 'run', id })),
    ...path.deviceIds.map((id): Subject => ({ kind: 'item', id })),
    { kind: 'item', id: path.antennaId },
  ];
}

/** Whether a device lets this path through without supply. What is unknown is taken as no. */
export function worksUnpowered(build: Build, device: Item, path: PathBudget): boolean {
  const part = build.index.effective.get(device.id);
  if (part?.kind !== 'inline' || !part.traits.needsSupply) return true;
  return usedThrough(build, part, device.id, path)?.whenUnpowered === 'through';
}

function usedThrough(build: Build, part: PartOf<'inline'>, deviceId: string, path: PathBudget): Through | undefined {
  const ports = new Set<string>();
  for (const runId of path.runIds) for (const port of portsAt(build.index.runs.get(runId), deviceId)) ports.add(port);
  return part.throughs.find((through) => ports.has(through.fromPortId) && ports.has(through.toPortId));
}

function portsAt(run: Run | undefined, itemId: string): readonly string[] {
  if (!run) return [];
  return [run.from, run.to].filter((end) => end.itemId === itemId).map((end) => end.portId);
}
