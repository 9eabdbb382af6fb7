import type { Project } from '../model/project.ts';

const numbers = new WeakMap<Project['items'], ReadonlyMap<string, number>>();

/**
 * Number of an item on the drawing and in the equipment list: its place in the document, from 1.
 * @throws RangeError when the project has no such item.
 */
export function balloonNumber(project: Project, itemId: string): number {
  let known = numbers.get(project.items);
  if (!known) {
    known = new Map(project.items.map((item, index) => [item.id, index + 1]));
    numbers.set(project.items, known);
  }
  const number = known.get(itemId);
  if (number === undefined) throw new RangeError(`There is no item ${itemId} to number.`);
  return number;
}
