import type { ChanceOf } from '../../../../core/redundancy/types.ts';
import { formatChance } from '../../../../core/units/format.ts';
import { useApp } from '../../../store/context.ts';

/** A chance, and the span of one, in the reader's decimal mark. */
export function useChanceText(): {
  readonly chanceText: (chance: number) => string;
  readonly intervalText: (span: Pick<ChanceOf, 'low' | 'high'>) => string;
} {
  const preferences = useApp((state) => state.preferences);
  const chanceText = (chance: number): string => formatChance(chance, preferences);
  return { chanceText, intervalText: ({ low, high }) => `${chanceText(low)} to ${chanceText(high)}` };
}

/** A share of the outages, in whole per cent. */
export function shareText(share: number | null): string {
  if (share === null) return '–';
  if (share > 0 && share < 0.005) return '< 1 %';
  return `${Math.round(100 * share)} %`;
}

export const BASIS_WORDS: Readonly<Record<ChanceOf['basis'], string>> = {
  published: 'published count',
  assumed: 'assumed',
  stated: 'your own',
};
