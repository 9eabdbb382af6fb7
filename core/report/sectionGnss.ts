import type { GnssResult } from '../reach/types.ts';
import { formatText } from '../units/format.ts';
import { bare, type SheetContext } from './context.ts';
import { antennaText } from './sectionSatellites.ts';
import type { SheetSection } from './types.ts';
import { itemTag } from './words.ts';

/** What each GNSS receiver gets from its antenna through its lead. */
export function gnssSection(context: SheetContext): SheetSection {
  const { gnss } = context.assessment;
  return {
    id: 'gnss',
    title: 'GNSS receivers',
    page: 'flow',
    ownPage: false,
    blocks:
      gnss.length === 0
        ? []
        : [
            {
              kind: 'paragraph',
              text:
                'Net gain: the antenna’s amplifier less cable, connectors and splitters. Too little and the receiver’s ' +
                'own noise buries the signal; too much and its input is driven too hard. C/N0 is that of a satellite ' +
                'at its least stated level under an open sky.',
              tone: 'plain',
            },
            {
              kind: 'table',
              caption: '',
              columns: [
                { header: 'Receiver', weight: 12, align: 'start' },
                { header: 'Antenna', weight: 10, align: 'start' },
                { header: 'Net gain (dB)', weight: 9, align: 'end' },
                { header: 'Wanted (dB)', weight: 14, align: 'end' },
                { header: 'Noise figure (dB)', weight: 10, align: 'end' },
                { header: 'C/N0 (dB-Hz)', weight: 10, align: 'end' },
                { header: 'Verdict', weight: 36, align: 'start' },
              ],
              rows: gnss.map((result) => gnssRow(context, result)),
              empty: '',
            },
          ],
  };
}

function gnssRow(context: SheetContext, result: GnssResult): string[] {
  return [
    itemTag(context.project, result.itemId),
    antennaText(context, result),
    bare(context, result.netGainDb, 'dB', 1),
    windowText(context, result.window),
    bare(context, result.noiseFigureDb, 'dB', 1),
    bare(context, result.carrierToNoiseDbHz, 'count', 1),
    formatText(result.verdict, context.preferences),
  ];
}

/** `15 to 35`, `10 or more`, `up to 50`; empty where the receiver states no window. */
export function windowText(context: SheetContext, window: GnssResult['window']): string {
  const { minDb = null, maxDb = null } = window ?? {};
  const least = bare(context, minDb, 'dB', 0);
  const most = bare(context, maxDb, 'dB', 0);
  if (minDb !== null && maxDb !== null) return `${least} to ${most}`;
  if (minDb !== null) return `${least} or more`;
  return maxDb === null ? '' : `up to ${most}`;
}
