import type { HfBand, HfDay, HfHour, HfResult } from '../../../core/reach/types.ts';
import { KM_PER_NM } from '../../../core/units/constants.ts';
import type { UnitPreferences } from '../../../core/units/preferences.ts';
import { q, type RichText } from '../../../core/units/quantity.ts';

type CellState = HfHour['state'];

/** What a cell of the view says, in the order of its key. */
export const STATE_WORDS: Readonly<Record<CellState, { readonly short: string; readonly long: string }>> = {
  open: { short: 'open', long: 'open: below the working frequency, so it carries on most days' },
  edge: {
    short: 'at the edge',
    long: 'at the edge: above the working frequency, so it carries on about half the days',
  },
  ground: { short: 'ground wave', long: 'within reach of the ground wave, no hop is needed' },
  screened: { short: 'screened', long: 'screened: the E layer turns it back before it reaches the F2' },
  shut: { short: 'shut', long: 'shut: above what the layer returns, so it goes out into space' },
};
export const STATES = Object.keys(STATE_WORDS) as readonly CellState[];

/** Round distances to choose from, km: round in the reader's own unit. */
export function distanceChoices(preferences: UnitPreferences): readonly number[] {
  return preferences.distance === 'nm'
    ? [50, 100, 200, 500, 1000, 2000, 3000].map((miles) => miles * KM_PER_NM)
    : [100, 200, 500, 1000, 2000, 3500, 5500];
}

/** `06:30`. */
export function clock(hour: number): string {
  const minutes = Math.round(hour * 60) % 1440;
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}

/** Bands that carry at one hour, best first, then those at the edge. */
export function bandsAt(day: HfDay, bands: readonly HfBand[], hour: number) {
  const nameOf = new Map(bands.map(({ id, name }) => [id, name]));
  const cells = day.cells.filter((cell) => cell.hour === hour);
  const named = (pick: (cell: HfHour) => boolean): readonly string[] =>
    cells.filter(pick).flatMap(({ bandId }) => nameOf.get(bandId) ?? []);
  return {
    best: named(({ isBest }) => isBest)[0] ?? null,
    open: named(({ state, isBest }) => state === 'open' && !isBest),
    ground: named(({ state, isBest }) => state === 'ground' && !isBest),
    edge: named(({ state }) => state === 'edge'),
  };
}

/** Which bands the set can use over a distance at one hour. */
export function hfHeadline(result: HfResult, day: HfDay, hour: number): RichText {
  const { best, open, ground, edge } = bandsAt(day, result.bands, hour);
  const where: RichText = ['Over ', q(day.distanceKm, 'km', 0), ` at ${clock(hour)} solar time`];
  const verb = result.canTransmit ? 'try' : 'listen on';
  const usable = [...open, ...ground];
  if (best === null && usable.length === 0) {
    if (edge.length > 0) return [...where, ` no band is sure; ${bandList(edge)} may carry on about half the days.`];
    return [...where, ' none of its bands carries.'];
  }
  const first = best === null ? [`, ${verb} ${bandList(usable)}.`] : [`, ${verb} ${bandList([best])} first.`];
  const rest = best === null || usable.length === 0 ? [] : [` ${bandList(usable)} ${isAre(usable)} open too.`];
  const byGround = best === null && open.length === 0 ? [' The ground wave covers the distance.'] : [];
  return [...where, ...first, ...rest, ...byGround];
}

/** How the wave gets there at one hour. */
export function hopWords(day: HfDay, bands: readonly HfBand[], hour: number): string {
  const { best, open, ground } = bandsAt(day, bands, hour);
  if (best === null && open.length === 0 && ground.length > 0) return 'Along the sea; no hop is needed.';
  const hops = day.hops === 1 ? 'One hop by the sky' : `${day.hops} hops by the sky`;
  return `${hops}, all times by the sun at its middle.`;
}

/** What one cell says, in full. */
export function cellReading(day: HfDay, band: HfBand, cell: HfHour): RichText {
  const hour = day.hours.find((each) => each.hour === cell.hour);
  const best = cell.isBest ? ' The highest open band of the hour: try it first.' : '';
  const head: RichText = [`${band.name} at ${clock(cell.hour)} is ${STATE_WORDS[cell.state].long}.${best}`];
  if (!hour) return head;
  return [
    ...head,
    ' Working frequency ',
    q(hour.workingMhz, 'MHz', 1),
    ', median maximum ',
    q(hour.mufMhz, 'MHz', 1),
    ', take-off ',
    q(hour.takeoffDeg, 'degree'),
    ', sun ',
    q(Math.abs(90 - hour.sunZenithDeg), 'degree'),
    hour.sunZenithDeg <= 90 ? ' above the horizon.' : ' below the horizon.',
  ];
}

/** What a cell is called when the focus comes to it. */
export const cellName = (band: HfBand, cell: HfHour): string =>
  `${band.name}, ${clock(cell.hour)}: ${STATE_WORDS[cell.state].short}${cell.isBest ? ', best of the hour' : ''}`;

/** `4, 6 and 8 MHz`: the unit once where all have the same, and never parted from its number. */
export function bandList(names: readonly string[]): string {
  const units = new Set(names.map((name) => name.split(' ')[1] ?? ''));
  const bare =
    units.size > 1
      ? names
      : names.map((name, index) => (index < names.length - 1 ? (name.split(' ')[0] ?? name) : name));
  const kept = bare.map((name) => name.replace(' ', '\u00a0'));
  return kept.length < 2 ? (kept[0] ?? '') : `${kept.slice(0, -1).join(', ')} and ${kept.at(-1)}`;
}
const isAre = (names: readonly string[]): string => (names.length === 1 ? 'is' : 'are');

/** What the reader should know, each once with the bands it is about; `bands` is null where it is about all of them. */
export function sharedNotes(result: HfResult): readonly { readonly bands: string | null; readonly note: string }[] {
  const about = new Map<string, string[]>();
  for (const { name, notes } of result.bands)
    for (const note of notes) about.set(note, [...(about.get(note) ?? []), name]);
  return [
    ...result.notes.map((note) => ({ bands: null, note })),
    ...[...about].map(([note, names]) => ({ bands: bandList(names), note })),
  ];
}
