import { LIKE_STATION_ID } from '../reach/strongSignals.ts';
import type { StrongSignal } from '../reach/types.ts';
import { bare, type SheetContext, show, watts } from './context.ts';
import type { Block, SheetSection } from './types.ts';
import { itemTag } from './words.ts';

/** Strong signals that break a limit, or that come from too near to say; those that keep every limit are counted only. */
export function strongSignalSection(context: SheetContext): SheetSection {
  const { strongSignals } = context.assessment;
  const near = strongSignals.filter(({ kind }) => kind === 'near-station');
  const own = strongSignals.filter(({ kind }) => kind === 'own-antenna');
  return {
    id: 'strong-signals',
    title: 'Too strong and too near',
    page: 'flow',
    ownPage: false,
    blocks: strongSignals.length === 0 ? [] : [intro(), ...nearTable(context, near), ...ownTable(context, own)],
  };
}

function intro(): Block {
  return {
    kind: 'paragraph',
    text:
      'Beyond these limits a receiver loses weak calls, on other channels too, and far beyond them its input may be ' +
      'hurt. In an anchorage turn the power down: what another boat does to you, you do to her.',
    tone: 'plain',
  };
}

/** The limit that takes most distance for each station and receiver. */
function nearTable(context: SheetContext, signals: readonly StrongSignal[]): Block[] {
  const rows = signals.flatMap((signal) => {
    const { clearM, limit } = farthest(signal);
    return limit === undefined || clearM === null
      ? []
      : [
          [
            `${sourceText(context, signal.fromId)}, ${watts(context, signal.powerW)}`,
            signal.toItemId === LIKE_STATION_ID ? 'hers' : itemTag(context.project, signal.toItemId),
            limit.label,
            clearM < 1000 ? show(context, clearM, 'm', 0) : show(context, clearM / 1000, 'km', 1),
          ],
        ];
  });
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: 'Other stations nearby: distance from which every limit is kept',
      columns: [
        { header: 'Sending', weight: 32, align: 'start' },
        { header: 'Receiver', weight: 14, align: 'start' },
        { header: 'Limit that takes most', weight: 38, align: 'start' },
        { header: 'Kept from', weight: 16, align: 'end' },
      ],
      rows,
      empty: '',
    },
  ];
}

function farthest({ limits }: StrongSignal): {
  clearM: number | null;
  limit: StrongSignal['limits'][number] | undefined;
} {
  const limit = limits.toSorted((a, b) => (b.clearM ?? 0) - (a.clearM ?? 0))[0];
  return { clearM: limit?.clearM ?? null, limit };
}

function ownTable(context: SheetContext, signals: readonly StrongSignal[]): Block[] {
  if (signals.length === 0) return [];
  const shown = signals.filter((signal) => signal.levelDbm === null || leastMarginDb(signal) < 0);
  const kept = signals.length - shown.length;
  return [
    {
      kind: 'table',
      caption: 'Own antennas: where a limit is broken, or where no level can be given',
      columns: [
        { header: 'Sending', weight: 22, align: 'start' },
        { header: 'Receiver', weight: 12, align: 'start' },
        { header: 'Isolation (dB)', weight: 10, align: 'end' },
        { header: 'Level (dBm)', weight: 10, align: 'end' },
        { header: 'Broken', weight: 46, align: 'start' },
      ],
      rows: shown.map((signal) => ownRow(context, signal)),
      empty: 'None.',
    },
    {
      kind: 'paragraph',
      text: `${kept} of ${signals.length} pairs of own antennas keep every limit.`,
      tone: 'quiet',
    },
  ];
}

function ownRow(context: SheetContext, signal: StrongSignal): string[] {
  const broken = signal.limits.filter(({ marginDb }) => marginDb !== null && marginDb < 0);
  return [
    `${sourceText(context, signal.fromId)}, ${watts(context, signal.powerW)}`,
    itemTag(context.project, signal.toItemId),
    bare(context, signal.isolationDb, 'dB', 0),
    bare(context, signal.levelDbm, 'dBm', 0),
    signal.levelDbm === null
      ? 'So near that the formula does not hold: measure it, or move one of the two.'
      : broken.map(({ label, marginDb }) => `${label} by ${show(context, -(marginDb ?? 0), 'dB', 0)}`).join('; '),
  ];
}

const leastMarginDb = ({ limits }: StrongSignal): number =>
  Math.min(...limits.map(({ marginDb }) => marginDb ?? Number.POSITIVE_INFINITY));

/** A station by its name, an own set by its path or its tag. */
export function sourceText(context: SheetContext, fromId: string): string {
  const { project, assessment } = context;
  if (fromId === LIKE_STATION_ID) return 'A boat like yours';
  const station = project.stations.find(({ id }) => id === fromId);
  if (station) return station.name;
  const path = assessment.paths.find(({ id }) => id === fromId);
  return path ? `${itemTag(project, path.radioId)} by ${itemTag(project, path.antennaId)}` : itemTag(project, fromId);
}
