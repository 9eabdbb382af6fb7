import type { Measurement } from '../model/project.ts';
import { lossOfOpenEndVswrDb } from '../rf/mismatch.ts';
import type { Loss } from './elements.ts';
import type { Hop } from './walk.ts';

/**
 * Loss of a feeder from the antenna's feed point to the radio as measurements give it, dB, or null where none does. An
 * open-end VSWR read at the radio (on the set, or on the run at its socket) covers the whole
 * feeder, and so does an insertion loss kept under the set; an insertion loss of a run replaces that run's computed loss.
 * @param losses the computed elements without the antenna's mismatch, which no feeder test sees
 */
export function measuredFeederLossDb(
  measurements: readonly Measurement[],
  radioId: string,
  hops: readonly Hop[],
  losses: readonly Loss[],
): number | null {
  const first = hops[0];
  const firstRunId = first?.kind === 'run' ? first.run.id : null;
  const whole = measurements.filter(({ subject }) => subject.kind === 'item' && subject.id === radioId);
  const atSocket = measurements.filter(({ subject }) => subject.kind === 'run' && subject.id === firstRunId);
  const open = [...whole, ...atSocket].findLast(({ kind, value }) => kind === 'open-end-vswr' && value > 1);
  if (open) return lossOfOpenEndVswrDb(open.value);
  const inserted = whole.findLast(isInsertionLoss);
  if (inserted) return inserted.value;
  return withRunsReplaced(measurements, hops, losses);
}

function withRunsReplaced(
  measurements: readonly Measurement[],
  hops: readonly Hop[],
  losses: readonly Loss[],
): number | null {
  const runIds = hops.flatMap((hop) => (hop.kind === 'run' ? [hop.run.id] : []));
  const measured = new Map<string, number>();
  for (const measurement of measurements) {
    const { subject, value } = measurement;
    if (isInsertionLoss(measurement) && subject.kind === 'run' && runIds.includes(subject.id)) {
      measured.set(subject.id, value);
    }
  }
  if (measured.size === 0) return null;
  const rest = losses.filter(({ subject }) => subject.kind !== 'run' || !measured.has(subject.id));
  return rest.reduce(
    (sum, { lossDb }) => sum + lossDb,
    [...measured.values()].reduce((sum, value) => sum + value, 0),
  );
}

const isInsertionLoss = ({ kind, value }: Measurement): boolean => kind === 'insertion-loss-db' && value >= 0;
