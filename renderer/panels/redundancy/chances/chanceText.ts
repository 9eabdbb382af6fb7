import type { ChanceOf } from '../../../../core/redundancy/types.ts';

/** A chance for the eye: two figures, per cent down to a tenth of a per mille, and then only that it is less. */
export function chanceText(chance: number): string {
  const percent = 100 * chance;
  if (percent === 0) return '0 %';
  if (percent < 0.001) return '< 0.001 %';
  if (percent >= 99.95) return '100 %';
  return `${Number(percent.toPrecision(2))} %`;
}

export const intervalText = ({ low, high }: Pick<ChanceOf, 'low' | 'high'>): string =>
  `${chanceText(low)} to ${chanceText(high)}`;

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
