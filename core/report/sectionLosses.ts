import { indexProject } from '../catalogue/lookup.ts';
import { MAX_SHOWN_VSWR } from '../links/budget.ts';
import { feederLossDb } from '../links/countedLoss.ts';
import { runLengthM } from '../links/route.ts';
import type { PathBudget, PathElement } from '../links/types.ts';
import { bare, type SheetContext, show, watts } from './context.ts';
import { lossStrip } from './lossStrip.ts';
import type { Block, SheetSection } from './types.ts';
import { BASIS_WORDS, itemTag, PATH_SERVICE_WORDS } from './words.ts';

/** Every path, element by element, in order from the radio's socket to the antenna's feed point. */
export function lossSection(context: SheetContext): SheetSection {
  const paths = context.assessment.paths.filter(hasFeeder);
  const sources = [...new Set(paths.flatMap((path) => path.elements.map((element) => element.source)))];
  return {
    id: 'losses',
    title: 'Path losses',
    page: 'flow',
    ownPage: false,
    blocks:
      paths.length === 0
        ? [{ kind: 'paragraph', text: 'No radio reaches an antenna yet.', tone: 'quiet' }]
        : [...paths.flatMap((path) => pathBlocks(context, path, sources)), sourceBlock(sources)],
  };
}

/** `VHF-1 to A1, VHF voice, 156.800 MHz`. */
export function pathTitle(context: SheetContext, path: PathBudget): string {
  const { project } = context;
  const ends = `${itemTag(project, path.radioId)} to ${itemTag(project, path.antennaId)}`;
  return `${ends}, ${PATH_SERVICE_WORDS[path.service]}, ${show(context, path.frequencyMhz, 'MHz')}`;
}

/** `25.0 W at the set, 7.4 W at the antenna: 5.30 ± 0.40 dB, 70 % lost`. */
export function pathOutcome(context: SheetContext, path: PathBudget): string {
  const loss = `${bare(context, path.lossDb, 'dB', 2)} ± ${show(context, path.toleranceDb, 'dB', 2)}, ${show(context, path.lostPercent, 'percent')} lost`;
  if (path.txPowerW === null || path.wattsAtAntenna === null) return `Receive only: ${loss}`;
  return `${watts(context, path.txPowerW)} at the set, ${watts(context, path.wattsAtAntenna)} at the antenna: ${loss}`;
}

/** Loss between the set and the antenna's feed point without the antenna's own mismatch: what a feeder test reads. */
export function feederLoss(path: PathBudget): { readonly lossDb: number; readonly toleranceDb: number } {
  const feeder = path.elements.filter((element) => element.kind !== 'mismatch');
  return {
    lossDb: feederLossDb(path),
    toleranceDb: Math.hypot(...feeder.map((element) => element.toleranceDb)),
  };
}

/** The reading with the antenna taken off, or that no meter can tell it. */
export function openEndText(context: SheetContext, path: PathBudget): string {
  return path.openEndVswr >= MAX_SHOWN_VSWR ? 'off the scale' : show(context, path.openEndVswr, 'ratio', 1);
}

/** A set with its antenna inside has no feeder to list or to test. */
export function hasFeeder(path: PathBudget): boolean {
  return path.elements.length > 0;
}

/** Sources are long and repeat: the tables give their numbers, this one their words. */
function sourceBlock(sources: readonly string[]): Block {
  return {
    kind: 'table',
    caption: 'Sources of these figures',
    columns: [
      { header: 'No.', weight: 6, align: 'end' },
      { header: 'Source', weight: 94, align: 'start' },
    ],
    rows: sources.map((source, index) => [String(index + 1), source || 'not stated']),
    empty: '',
  };
}

function pathBlocks(context: SheetContext, path: PathBudget, sources: readonly string[]): Block[] {
  const isTransmit = path.txPowerW !== null;
  const heads = [
    'Element',
    'Loss (dB)',
    '± (dB)',
    'Running (dB)',
    ...(isTransmit ? ['Power in (W)', 'Power out (W)'] : []),
    'Share lost (%)',
    'Known by',
    'Source',
  ];
  const weights = [42, 8, 7, 9, ...(isTransmit ? [9, 9] : []), 9, 12, 8];
  const textColumns = new Set(['Element', 'Known by']);
  const blocks: Block[] = [
    { kind: 'heading', level: 2, text: pathTitle(context, path) },
    { kind: 'paragraph', text: pathOutcome(context, path), tone: 'strong' },
  ];
  if (isTransmit) blocks.push({ kind: 'drawing', drawing: lossStrip(context, path), caption: '' });
  blocks.push({
    kind: 'table',
    caption: '',
    columns: heads.map((header, index) => ({
      header,
      weight: weights[index] ?? 1,
      align: textColumns.has(header) ? 'start' : 'end',
    })),
    rows: path.elements.map((element) => elementRow(context, element, isTransmit, sources)),
    total: totalRow(context, path),
    empty: 'Nothing lies between the set and the antenna.',
  });
  blocks.push({ kind: 'paragraph', text: pathRemarks(context, path), tone: 'quiet' });
  return blocks;
}

function elementRow(
  context: SheetContext,
  element: PathElement,
  isTransmit: boolean,
  sources: readonly string[],
): string[] {
  return [
    elementLabel(context, element),
    bare(context, element.lossDb, 'dB', 2),
    bare(context, element.toleranceDb, 'dB', 2),
    bare(context, element.runningLossDb, 'dB', 2),
    ...(isTransmit ? [bare(context, element.wattsIn, 'W', 2), bare(context, element.wattsOut, 'W', 2)] : []),
    bare(context, element.shareLostPercent, 'percent', 1),
    BASIS_WORDS[element.basis],
    String(sources.indexOf(element.source) + 1),
  ];
}

/** An element's label; a cable's length follows in the reader's unit. */
function elementLabel(context: SheetContext, element: PathElement): string {
  if (element.kind !== 'cable' || element.subject.kind !== 'run') return element.label;
  const run = indexProject(context.project).runs.get(element.subject.id);
  return run ? `${element.label}, ${show(context, runLengthM(context.project, run), 'm')}` : element.label;
}

function totalRow(context: SheetContext, path: PathBudget): string[] {
  const isTransmit = path.txPowerW !== null;
  return [
    'Whole path',
    bare(context, path.lossDb, 'dB', 2),
    bare(context, path.toleranceDb, 'dB', 2),
    bare(context, path.lossDb, 'dB', 2),
    ...(isTransmit ? [bare(context, path.txPowerW, 'W', 2), bare(context, path.wattsAtAntenna, 'W', 2)] : []),
    bare(context, path.lostPercent, 'percent', 1),
    '',
    '',
  ];
}

function pathRemarks(context: SheetContext, path: PathBudget): string {
  const parts = [
    `Antenna ${show(context, path.antennaGainDbi, 'dBi')}, feed point ${show(context, path.antennaHeightM, 'm')} above the water.`,
  ];
  if (path.txPowerW !== null) {
    parts.push(`With the antenna taken off, an analyser at the set should read VSWR ${openEndText(context, path)}.`);
  }
  if (path.eirpDbm !== null) parts.push(`Effective radiated level ${show(context, path.eirpDbm, 'dBm')} EIRP.`);
  if (!path.canTransmit) parts.push('A device on the way forbids transmitting by this path.');
  if (path.measuredLossDb !== null) {
    parts.push(`Measured loss of the feeder: ${show(context, path.measuredLossDb, 'dB')}.`);
  }
  return parts.join(' ');
}
