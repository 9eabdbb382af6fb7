import type { Grade, ServiceId } from '../../core/model/services.ts';
import type { Component, Redundancy } from '../../core/redundancy/types.ts';

/** Letter, word and class of each grade; the letter carries the meaning, the shade only helps. */
export const GRADE_SIGNS: Readonly<Record<Grade, { sign: string; word: string; className: string }>> = {
  full: { sign: 'F', word: 'full', className: 'full' },
  reduced: { sign: 'R', word: 'reduced', className: 'reduced' },
  lost: { sign: '–', word: 'lost', className: 'lost' },
};

/** Cells lost and reduced over all failure events, the intact boat left out. */
export function lostAndReduced(redundancy: Redundancy): { lost: number; reduced: number } {
  const states = redundancy.matrix.filter(({ event }) => event.kind !== 'none').flatMap((row) => row.states);
  return {
    lost: states.filter(({ grade }) => grade === 'lost').length,
    reduced: states.filter(({ grade }) => grade === 'reduced').length,
  };
}

/** Single points with their components, those that take most services first; document order among equals. */
export function sharedWays(
  redundancy: Redundancy,
): readonly { component: Component; serviceIds: readonly ServiceId[] }[] {
  const components = new Map(redundancy.components.map((component) => [component.id, component]));
  return redundancy.singlePoints
    .flatMap(({ componentId, serviceIds }) => {
      const component = components.get(componentId);
      return component ? [{ component, serviceIds }] : [];
    })
    .toSorted((a, b) => b.serviceIds.length - a.serviceIds.length);
}
