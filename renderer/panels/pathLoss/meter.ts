import { MAX_SHOWN_VSWR } from '../../../core/links/budget.ts';
import { countedLossDb } from '../../../core/links/countedLoss.ts';
import type { PathBudget } from '../../../core/links/types.ts';
import type { Measurement, Project } from '../../../core/model/project.ts';
import { feederLoss } from '../../../core/report/sectionLosses.ts';
import { afterLossW, lostPercent } from '../../../core/rf/decibels.ts';
import { lossOfOpenEndVswrDb, openEndVswr } from '../../../core/rf/mismatch.ts';
import { q, type RichText } from '../../../core/units/quantity.ts';
import { percent, watts } from './figures.ts';

/** Below this open-end reading a good VSWR at the set says nothing: a missing antenna reads hardly worse. */
const HIDES_BELOW_VSWR = 3;

export interface MeterRow {
  readonly key: string;
  readonly label: string;
  readonly text: RichText;
  readonly when: string;
}

const READING_WORDS: Readonly<Partial<Record<Measurement['kind'], string>>> = {
  vswr: 'VSWR, antenna on',
  'open-end-vswr': 'Open-end VSWR',
  'insertion-loss-db': 'Loss',
  'forward-power-w': 'Forward power',
  'reflected-power-w': 'Reflected power',
};

/** Readings kept under the set, its antenna or the runs of a path. */
export function readingsOf(project: Project, path: PathBudget): readonly Measurement[] {
  const onPath = new Set([path.radioId, path.antennaId, ...path.runIds]);
  return project.measurements.filter(
    ({ subject, kind }) => READING_WORDS[kind] !== undefined && onPath.has(subject.id),
  );
}

/** What the meter read, reading by reading. */
export function meterRows(project: Project, path: PathBudget, tagOf: (id: string) => string): readonly MeterRow[] {
  return readingsOf(project, path).map((reading) => ({
    key: reading.id,
    label: `${READING_WORDS[reading.kind]} at ${tagOf(reading.subject.id)}`,
    text: readingText(reading),
    when: [reading.date, reading.instrument].filter(Boolean).join(', ') || 'no date or instrument kept',
  }));
}

function readingText({ kind, value }: Measurement): RichText {
  if (kind === 'insertion-loss-db') return [q(value, 'dB')];
  if (kind === 'forward-power-w' || kind === 'reflected-power-w') return [q(value, 'W')];
  if (kind !== 'open-end-vswr') return [q(value, 'ratio')];
  return value > 1
    ? [q(value, 'ratio'), ', which means ', q(lossOfOpenEndVswrDb(value), 'dB')]
    : [q(value, 'ratio'), ', which no open feeder can read'];
}

/** The open-end reading to expect, with its band; more loss reads lower. */
export function expectedOpenEnd(path: PathBudget): RichText {
  if (path.openEndVswr >= MAX_SHOWN_VSWR) return ['off the scale: the feeder loses next to nothing'];
  const { lossDb, toleranceDb } = feederLoss(path);
  const low = openEndVswr(lossDb + toleranceDb);
  const least = lossDb - toleranceDb;
  const text: RichText = [q(path.openEndVswr, 'ratio'), ' (', q(low, 'ratio')];
  return least > 0
    ? [...text, ' to ', q(Math.min(MAX_SHOWN_VSWR, openEndVswr(least)), 'ratio'), '); a sound feeder reads no lower']
    : [...text, ' or more); a sound feeder reads no lower'];
}

/** What a meter at the set should read with the antenna on: the antenna's own VSWR, flattered by the loss between. */
export function expectedAtRadio({ radioVswr, antennaVswr }: PathBudget): RichText {
  return [q(radioVswr, 'ratio'), '; at the antenna itself ', q(antennaVswr, 'ratio')];
}

/** Why a good VSWR at the set proves nothing here; null where it proves something, for a tuned antenna and a receiver. */
export function vswrNote(path: PathBudget): RichText | null {
  if (path.service === 'mf-hf' || path.txPowerW === null || path.elements.length === 0) return null;
  const lossDb = path.measuredLossDb ?? feederLoss(path).lossDb;
  if (!(lossDb > 0)) return null;
  const missing = openEndVswr(lossDb);
  if (missing >= HIDES_BELOW_VSWR) return null;
  return [
    'VSWR at the set proves nothing here: through ',
    q(lossDb, 'dB', 1),
    ' even a missing antenna would read ',
    q(missing, 'ratio'),
    '. Measure the loss of the feeder, or read at the antenna.',
  ];
}

export interface LossCheck {
  readonly text: RichText;
  readonly isUnexplained: boolean;
}

/** Measured feeder loss against the predicted one; null where nothing was measured. */
export function measuredCheck(path: PathBudget): LossCheck | null {
  if (path.measuredLossDb === null) return null;
  const { lossDb, toleranceDb } = feederLoss(path);
  const extraDb = path.measuredLossDb - lossDb;
  const both: RichText = [
    'Measured ',
    q(path.measuredLossDb, 'dB'),
    ', predicted ',
    q(lossDb, 'dB'),
    ' ± ',
    q(toleranceDb, 'dB'),
    ': ',
  ];
  if (extraDb > toleranceDb) {
    const hint = ' unexplained. Look for a wet or badly fitted plug, a crushed cable, or a longer run than drawn.';
    return { text: [...both, q(extraDb, 'dB'), hint], isUnexplained: true };
  }
  const word = extraDb < -toleranceDb ? 'less than predicted: check what was measured.' : 'as predicted.';
  return { text: [...both, word], isUnexplained: false };
}

/**
 * What arrives by the measured loss instead of the predicted one, in words; null where nothing unexplained was measured or
 * nothing is sent.
 */
export function measuredOutcome(path: PathBudget, limitDb: number): { text: RichText; isOver: boolean } | null {
  if (path.txPowerW === null || !measuredCheck(path)?.isUnexplained) return null;
  const lossDb = countedLossDb(path);
  const text: RichText = [
    'By the measured loss only ',
    watts(afterLossW(path.txPowerW, lossDb)),
    ' arrives: ',
    q(lossDb, 'dB'),
    ', ',
    percent(lostPercent(lossDb)),
    ' lost.',
  ];
  return { text, isOver: lossDb > limitDb };
}
