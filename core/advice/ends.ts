import { indexProject } from '../catalogue/lookup.ts';
import type { Endpoint, Item, Project } from '../model/project.ts';

/** The terminal of an item that takes or gives current; null where it has none. */
export function dcEnd(project: Project, itemId: string, role: 'in' | 'out'): Endpoint | null {
  const ports = indexProject(project).effective.get(itemId)?.ports ?? [];
  const port = ports.find((each) => each.medium === 'dc' && each.role === role);
  return port ? { itemId, portId: port.id } : null;
}

/** A data port of an item, an unused one where there is one; null where it has none. */
export function dataEnd(project: Project, itemId: string): Endpoint | null {
  const { effective, linksAtItem } = indexProject(project);
  const used = new Set(
    (linksAtItem.get(itemId) ?? [])
      .flatMap(({ from, to }) => [from, to])
      .filter((end) => end.itemId === itemId)
      .map(({ portId }) => portId),
  );
  const ports = (effective.get(itemId)?.ports ?? []).filter(({ medium }) => medium === 'data');
  const port = ports.find(({ id }) => !used.has(id)) ?? ports[0];
  return port ? { itemId, portId: port.id } : null;
}

/** The item an edit has just put aboard. */
export function newest(project: Project): Item {
  const item = project.items.at(-1);
  if (!item) throw new RangeError('Nothing is aboard.');
  return item;
}
