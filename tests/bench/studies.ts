import { assess } from '../../core/assess.ts';
import { moveItems, setItem } from '../../core/edit/items.ts';
import type { Project } from '../../core/model/project.ts';
import { studyFailures } from '../../core/redundancy/study.ts';
import { generatedVessel } from '../support/generatedVessel.ts';
import { keep, median, milliseconds } from './timing.ts';

/** One frame at 60 a second. */
const FRAME_MS = 16;
const ROUNDS = 41;

/** Cut sets to order three and exact probability with its interval, of every service. */
function studyAll(project: Project): number {
  const paths = assess(project).paths;
  return milliseconds(() => {
    const { cuts, riskOf } = studyFailures(project, paths);
    for (const { serviceId, countByOrder } of cuts) keep(riskOf(serviceId).nominal + countByOrder.length);
  });
}

/** What comes on top when all of it is looked at. */
function lookAtAll(project: Project): number {
  const study = studyFailures(project, assess(project).paths);
  return milliseconds(() => {
    for (const { serviceId } of study.cuts) keep(study.riskOf(serviceId).rows.length);
    keep(study.independence.means.length);
  });
}

/** A boat nobody has seen, then an edit that no tree feels, then one that takes a set out of service. */
function round(project: Project): Readonly<Record<string, number>> {
  const boat = structuredClone(project);
  const moved = moveItems(boat, ['a-3'], { dxM: 0.01, dyM: 0, dzM: 0 });
  const without = setItem(moved, 'vhf-4', { status: 'remove' });
  return {
    'a new boat': studyAll(boat),
    'importance of everything and independence besides': lookAtAll(boat),
    'an antenna moved': studyAll(moved),
    'a set taken out': studyAll(without),
  };
}

/** The whole failure study of a made-up boat of 500 items, beyond what its assessment has made already (the failure model). */
export function studyRows(): readonly Record<string, string>[] {
  const project = generatedVessel(500);
  const rounds = Array.from({ length: ROUNDS }, () => round(project));
  return Object.keys(rounds[0] ?? {}).map((name) => {
    const times = rounds.map((each) => each[name] ?? Number.NaN);
    const [bestMs, typicalMs] = [Math.min(...times), median(times)];
    return {
      'study of all services, 500 items': name,
      'best, ms': bestMs.toFixed(1),
      'median, ms': typicalMs.toFixed(1),
      aim: `${FRAME_MS} ms: ${typicalMs <= FRAME_MS ? 'kept' : bestMs <= FRAME_MS ? 'kept by the best' : 'missed'}`,
    };
  });
}
