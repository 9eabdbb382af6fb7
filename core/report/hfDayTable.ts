import { hfDay } from '../reach/hfDay.ts';
import type { HfDay, HfResult } from '../reach/types.ts';
import { KM_PER_NM } from '../units/constants.ts';
import { type SheetContext, show } from './context.ts';
import type { Block } from './types.ts';

/** Parts of the day, local solar time: first hour and the hour after the last. */
const PARTS = [0, 4, 8, 12, 16, 20].map((from) => ({ from, to: from + 4 }));

/** Distances the bands are named for, round in the reader's own unit. */
export function statedDistancesKm(context: SheetContext): readonly number[] {
  return context.preferences.distance === 'nm'
    ? [100, 300, 1000, 2000].map((miles) => miles * KM_PER_NM)
    : [200, 500, 2000, 4000];
}

/** Best band by part of the day for a row of distances; nothing for a set with no band that goes by the sky. */
export function dayBlock(context: SheetContext, result: HfResult): Block[] {
  const rows = bestBandRows(context, result);
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: 'Band to try first, by local solar time',
      columns: [
        { header: 'Distance', weight: 14, align: 'start' },
        ...PARTS.map((part) => ({ header: partText(part), weight: 14, align: 'start' as const })),
      ],
      rows,
      empty: '',
    },
  ];
}

export const PART_HEADS: readonly string[] = PARTS.map((part) => partText(part));

function partText({ from, to }: { from: number; to: number }): string {
  return `${String(from).padStart(2, '0')} to ${String(to).padStart(2, '0')} h`;
}

/** Distance, then for each part of the day the bands to try in the order of its hours. */
export function bestBandRows(context: SheetContext, result: HfResult): readonly (readonly string[])[] {
  const days = statedDistancesKm(context).map((distanceKm) => hfDay(context.project, result, distanceKm));
  if (days.every(({ cells }) => cells.length === 0)) return [];
  return days.map((day) => [
    `${show(context, day.distanceKm, 'km', 0)}, ${day.hops === 1 ? 'one hop' : `${day.hops} hops`}`,
    ...PARTS.map(({ from, to }) => partBands(result, day, from, to)),
  ]);
}

/** `8 MHz, 6 MHz`: what each hour has for its best; the ground wave where that does it; `none` where no hour is open. */
function partBands(result: HfResult, day: HfDay, from: number, to: number): string {
  const cells = day.cells.filter(({ hour }) => hour >= from && hour < to);
  const nameOf = new Map(result.bands.map(({ id, name }) => [id, name]));
  const best = cells
    .filter(({ isBest }) => isBest)
    .toSorted((a, b) => a.hour - b.hour)
    .map(({ bandId }) => nameOf.get(bandId) ?? bandId);
  if (best.length > 0) return [...new Set(best)].join(', ');
  return cells.some(({ state }) => state === 'ground') ? 'ground wave' : 'none';
}
