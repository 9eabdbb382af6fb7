import type { SatelliteResult } from '../reach/types.ts';
import { formatText } from '../units/format.ts';
import { bare, type SheetContext } from './context.ts';
import type { SheetSection } from './types.ts';
import { itemTag } from './words.ts';

/** What line and antenna do to each satellite set against its own antenna. */
export function satelliteSection(context: SheetContext): SheetSection {
  const { satellites } = context.assessment;
  return {
    id: 'satellites',
    title: 'Satellite sets',
    page: 'flow',
    ownPage: false,
    blocks:
      satellites.length === 0
        ? []
        : [
            {
              kind: 'paragraph',
              text:
                'Change: what the outside antenna gains or loses against the set’s own antenna held in the open, cable ' +
                'counted. Break-even: line loss from which on it gains nothing. What mast and sails hide of the sky is ' +
                'not in these figures.',
              tone: 'plain',
            },
            {
              kind: 'table',
              caption: '',
              columns: [
                { header: 'Set', weight: 10, align: 'start' },
                { header: 'Antenna', weight: 10, align: 'start' },
                { header: 'MHz', weight: 9, align: 'end' },
                { header: 'Line loss (dB)', weight: 8, align: 'end' },
                { header: 'Limit (dB)', weight: 8, align: 'end' },
                { header: 'Change sending (dB)', weight: 10, align: 'end' },
                { header: 'Change receiving (dB)', weight: 10, align: 'end' },
                { header: 'Break-even (dB)', weight: 10, align: 'end' },
                { header: 'Verdict', weight: 34, align: 'start' },
              ],
              rows: satellites.map((result) => satelliteRow(context, result)),
              empty: '',
            },
          ],
  };
}

function satelliteRow(context: SheetContext, result: SatelliteResult): string[] {
  const { change, lineLimitDb } = result;
  return [
    itemTag(context.project, result.itemId),
    antennaText(context, result),
    bare(context, result.frequencyMhz, 'MHz', 1),
    result.pathId === null ? '' : bare(context, result.lineLossDb, 'dB', 2),
    bare(context, lineLimitDb, 'dB', 1),
    change ? bare(context, change.transmitDb, 'dB', 1) : '',
    change ? bare(context, change.receiveDb, 'dB', 1) : '',
    change ? bare(context, change.breakEvenLossDb, 'dB', 1) : '',
    formatText(result.verdict, context.preferences),
  ];
}

/** Tag of the antenna, or that it is the set's own. */
export function antennaText(
  context: SheetContext,
  result: { readonly itemId: string; readonly antennaId: string },
): string {
  return result.antennaId === result.itemId ? 'own' : itemTag(context.project, result.antennaId);
}
