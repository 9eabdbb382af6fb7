import { indexProject } from '../../../core/catalogue/lookup.ts';
import type { Project } from '../../../core/model/project.ts';
import type { Grade, ServiceId } from '../../../core/model/services.ts';
import type { Component, Redundancy } from '../../../core/redundancy/types.ts';
import { itemName } from '../../../core/report/words.ts';

/** Letter, word and class of each grade; the letter carries the meaning, the shade only helps. */
export const GRADE_SIGNS: Readonly<Record<Grade, { sign: string; word: string; className: string }>> = {
  full: { sign: 'F', word: 'full', className: 'full' },
  reduced: { sign: 'R', word: 'reduced', className: 'reduced' },
  lost: { sign: '–', word: 'lost', className: 'lost' },
};

/** Single points with their components, those that take most services first; document order among equals. */
export function singlePointsOf(
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

/** What a component is, where its label is only a tag or a number; empty where the label says it already. */
export function componentWords(project: Project, { subject }: Pick<Component, 'subject'>): string {
  const { items, parts } = indexProject(project);
  if (subject.kind === 'item') {
    const item = items.get(subject.id);
    return item ? itemName(project, item) : '';
  }
  if (subject.kind !== 'run') return '';
  const run = project.runs.find(({ id }) => id === subject.id);
  return (run && parts.get(run.cableId)?.name) ?? '';
}
