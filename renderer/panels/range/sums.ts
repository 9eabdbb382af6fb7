import type { RangeExplanation, SumLine, WaySum } from '../../../core/reach/types.ts';
import { formatNumber } from '../../../core/units/format.ts';
import type { UnitPreferences } from '../../../core/units/preferences.ts';

/** A line of a sum with what it comes to so far, dB or dBm as the lines are. */
export interface RunningLine {
  readonly line: SumLine;
  readonly sumDb: number;
}

/** Lines of one way with their running sum. */
export function runningLines(lines: readonly SumLine[]): readonly RunningLine[] {
  let sumDb = 0;
  return lines.map((line) => {
    sumDb += line.value;
    return { line, sumDb };
  });
}

/** `+44.0`, `−5.3`: signed, because each line adds to what may lie between the antennas or takes from it. */
export function signed(value: number, digits: number, preferences: UnitPreferences): string {
  const text = formatNumber(value, digits, preferences);
  return Number(value.toFixed(digits)) > 0 ? `+${text}` : text;
}

/** The ways there are, the one that gives out first in front. */
export function waysOf({ range, transmit, receive }: RangeExplanation): readonly WaySum[] {
  const ways = range.limitedBy === 'transmit' ? [transmit, receive] : [receive, transmit];
  return ways.filter((way) => way !== null);
}

export const WAY_WORDS: Readonly<Record<WaySum['direction'], string>> = {
  transmit: 'They hear you',
  receive: 'You hear them',
};
