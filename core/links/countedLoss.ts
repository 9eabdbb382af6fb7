import type { PathBudget } from './types.ts';

/** Loss of the feeder alone as computed, dB: everything but what the antenna throws back. */
export function feederLossDb({ elements }: PathBudget): number {
  return elements.reduce((sum, { kind, lossDb }) => (kind === 'mismatch' ? sum : sum + lossDb), 0);
}

/** Loss a path is reckoned with, dB: the feeder as measured, where it was, plus what the antenna throws back. */
export function countedLossDb(path: PathBudget): number {
  if (path.measuredLossDb === null) return path.lossDb;
  const mismatch = path.elements.filter((element) => element.kind === 'mismatch');
  return mismatch.reduce((sum, element) => sum + element.lossDb, path.measuredLossDb);
}
