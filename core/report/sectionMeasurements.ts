import { MAX_SHOWN_VSWR } from '../links/budget.ts';
import { routedLengthM } from '../links/route.ts';
import type { PathBudget } from '../links/types.ts';
import type { Measurement } from '../model/project.ts';
import { lossOfOpenEndVswrDb } from '../rf/mismatch.ts';
import type { Unit } from '../units/quantity.ts';
import { bare, type SheetContext, show, watts } from './context.ts';
import { feederLoss, openEndText } from './sectionLosses.ts';
import type { SheetSection } from './types.ts';
import { subjectLabel } from './words.ts';

const KIND_WORDS: Readonly<Record<Measurement['kind'], { readonly name: string; readonly unit: Unit }>> = {
  vswr: { name: 'VSWR, antenna on', unit: 'ratio' },
  'open-end-vswr': { name: 'VSWR, antenna taken off', unit: 'ratio' },
  'insertion-loss-db': { name: 'Insertion loss', unit: 'dB' },
  'forward-power-w': { name: 'Forward power', unit: 'W' },
  'reflected-power-w': { name: 'Reflected power', unit: 'W' },
  'supply-idle-v': { name: 'Supply, idle', unit: 'V' },
  'supply-transmit-v': { name: 'Supply, transmitting', unit: 'V' },
};

/** What was read on the boat beside what the design says it should have been. */
export function measurementSection(context: SheetContext): SheetSection {
  const { measurements } = context.project;
  return {
    id: 'measurements',
    title: 'Measurements against prediction',
    page: 'flow',
    ownPage: false,
    blocks: [
      {
        kind: 'table',
        caption: '',
        columns: [
          { header: 'On', weight: 12, align: 'start' },
          { header: 'Reading', weight: 18, align: 'start' },
          { header: 'Measured', weight: 10, align: 'end' },
          { header: 'Frequency', weight: 14, align: 'end' },
          { header: 'Date', weight: 11, align: 'start' },
          { header: 'Predicted and what it says', weight: 46, align: 'start' },
          { header: 'Instrument, note', weight: 22, align: 'start' },
        ],
        rows: [...lengthRows(context), ...measurements.map((measurement) => readingRow(context, measurement))],
        empty: 'Nothing has been measured yet: fill in the commissioning record.',
      },
    ],
  };
}

function readingRow(context: SheetContext, measurement: Measurement): string[] {
  const { name, unit } = KIND_WORDS[measurement.kind];
  return [
    subjectLabel(context.project, measurement.subject),
    name,
    show(context, measurement.value, unit),
    measurement.frequencyMhz === null ? 'not recorded' : show(context, measurement.frequencyMhz, 'MHz'),
    measurement.date ?? 'no date',
    prediction(context, measurement),
    [measurement.instrument, measurement.note].filter((text) => text !== '').join('; '),
  ];
}

/** A run that was measured and drawn differently is worth a line of its own. */
function lengthRows(context: SheetContext): string[][] {
  return context.project.runs.flatMap((run) => {
    if (run.measuredLengthM === null || run.via.length === 0) return [];
    const drawn = routedLengthM(context.project, run);
    const measured = show(context, run.measuredLengthM, 'm');
    return [
      [run.number, 'Length', measured, '', '', `${show(context, drawn, 'm')} by the drawn route, slack included`, ''],
    ];
  });
}

function prediction(context: SheetContext, measurement: Measurement): string {
  if (measurement.kind === 'supply-idle-v' || measurement.kind === 'supply-transmit-v') {
    return supplyPrediction(context, measurement);
  }
  const path = pathOf(context, measurement);
  if (!path) return 'no path to compare it with';
  switch (measurement.kind) {
    case 'open-end-vswr':
      return openEndPrediction(context, path, measurement.value);
    case 'insertion-loss-db':
      return lossPrediction(context, path, measurement);
    case 'vswr':
      return vswrPrediction(context, path);
    case 'forward-power-w':
      return powerPrediction(context, path, measurement);
    case 'reflected-power-w':
      return 'compare with the forward power taken at the same time';
  }
}

/** The path a reading belongs to: through its subject, nearest in frequency. */
function pathOf(context: SheetContext, measurement: Measurement): PathBudget | undefined {
  const { id } = measurement.subject;
  const candidates = context.assessment.paths.filter(
    (path) => path.radioId === id || path.antennaId === id || path.runIds.includes(id) || path.deviceIds.includes(id),
  );
  const off = (path: PathBudget): number =>
    Math.abs(path.frequencyMhz - (measurement.frequencyMhz ?? path.frequencyMhz));
  return candidates.toSorted((a, b) => off(a) - off(b))[0];
}

/** A reading at the set says something about the antenna only where the feeder does not hide it. */
function vswrPrediction(context: SheetContext, path: PathBudget): string {
  if (path.openEndVswr >= MAX_SHOWN_VSWR) return 'nothing lies between: the reading is the antenna’s own';
  const { lossDb } = feederLoss(path);
  return `behind ${show(context, lossDb, 'dB')} even a missing antenna would read ${show(context, path.openEndVswr, 'ratio')} here`;
}

function openEndPrediction(context: SheetContext, path: PathBudget, value: number): string {
  const { lossDb, toleranceDb } = feederLoss(path);
  const predicted = `predicted ${openEndText(context, path)} (${show(context, lossDb, 'dB')})`;
  if (value <= 1) return `${predicted}; a reading of 1 cannot be a feeder with its end open`;
  const measuredDb = lossOfOpenEndVswrDb(value);
  const means = `this reading means ${show(context, measuredDb, 'dB')}`;
  return `${predicted}; ${means}: ${verdict(context, measuredDb - lossDb, toleranceDb)}`;
}

function lossPrediction(context: SheetContext, path: PathBudget, measurement: Measurement): string {
  const own = path.elements.filter((element) => element.subject.id === measurement.subject.id);
  const whole = feederLoss(path);
  const ofPart = measurement.subject.kind === 'run' && own.length > 0;
  const lossDb = ofPart ? own.reduce((sum, element) => sum + element.lossDb, 0) : whole.lossDb;
  const toleranceDb = ofPart ? Math.hypot(...own.map((element) => element.toleranceDb)) : whole.toleranceDb;
  const predicted = `predicted ${bare(context, lossDb, 'dB', 2)} ± ${show(context, toleranceDb, 'dB')}`;
  return `${predicted}: ${verdict(context, measurement.value - lossDb, toleranceDb)}`;
}

/** More loss than the tolerance allows is unexplained; less is only a better cable than its data sheet. */
function verdict(context: SheetContext, extraDb: number, toleranceDb: number): string {
  return extraDb > toleranceDb ? `${show(context, extraDb, 'dB')} unexplained` : 'as expected';
}

function powerPrediction(context: SheetContext, path: PathBudget, measurement: Measurement): string {
  if (path.txPowerW === null || path.wattsAtAntenna === null) return 'a receive path carries no power';
  return measurement.subject.id === path.antennaId
    ? `predicted ${watts(context, path.wattsAtAntenna)} at the antenna`
    : `the set is rated ${watts(context, path.txPowerW)}`;
}

function supplyPrediction(context: SheetContext, measurement: Measurement): string {
  const { id } = measurement.subject;
  const feed = context.assessment.feeds.find((each) => each.loadId === id || each.feedId === id);
  if (!feed) return 'no feed to compare it with';
  if (measurement.kind === 'supply-idle-v') return 'compare with the reading on transmit';
  const idle = context.project.measurements.find(
    (each) => each.kind === 'supply-idle-v' && each.subject.id === id && each.date === measurement.date,
  );
  const predicted = `predicted drop ${show(context, feed.totalDropV, 'V')} in the wiring`;
  return idle ? `${predicted}; ${show(context, idle.value - measurement.value, 'V')} below idle` : predicted;
}
