import type { Figure } from '../../core/model/figure.ts';

/**
 * A figure of one's own part after its value was typed. Another value than that of the generic part it began from is a
 * new statement: it does not go under that part's source. What the user said of it since stays said.
 */
export function withOwnValue(figure: Figure, generic: Figure | undefined, value: number): Figure {
  const isStillGeneric = generic !== undefined && figure.source === generic.source && figure.basis === generic.basis;
  if (!isStillGeneric || value === generic.value) return { ...figure, value };
  return { ...figure, value, basis: 'assumed', source: 'entered by hand' };
}
