import { indexProject } from '../../core/catalogue/lookup.ts';
import type { Position } from '../../core/model/boat.ts';
import type { Endpoint, Item, Project } from '../../core/model/project.ts';
import { formatNumber, shownQuantity } from '../../core/units/format.ts';
import type { UnitPreferences } from '../../core/units/preferences.ts';

/** `x 6.3, z 0.9` in the reader's unit of length. */
export function positionWords(position: Pick<Position, 'xM' | 'zM'>, preferences: UnitPreferences): string {
  const words = (value: number): string => {
    const shown = shownQuantity({ value, unit: 'm', digits: 1 }, preferences);
    return formatNumber(shown.value, shown.digits, preferences);
  };
  return `x ${words(position.xM)}, z ${words(position.zM)}`;
}

/** Where an item is, in words: `x 6.3, z 0.9, at Chart table`. */
export function whereWords(project: Project, item: Item, preferences: UnitPreferences): string {
  const place = item.placeId === null ? undefined : indexProject(project).places.get(item.placeId);
  const at = place ? `, at ${place.name}` : '';
  return `${positionWords(item.position, preferences)}${at}`;
}

/** What happened to items that were moved: `VHF-1 moved to x 6.3, z 0.9, at Chart table`. */
export function movedWords(project: Project, ids: readonly string[], preferences: UnitPreferences): string {
  const items = project.items.filter(({ id }) => ids.includes(id));
  const [first] = items;
  if (!first) return 'Nothing moved';
  if (items.length > 1)
    return `${items.length} items moved, ${first.tag} to ${whereWords(project, first, preferences)}`;
  return `${first.tag} moved to ${whereWords(project, first, preferences)}`;
}

/** `VHF-1, antenna socket`. */
export function portWords(project: Project, endpoint: Endpoint): string {
  const { items, effective } = indexProject(project);
  const port = effective.get(endpoint.itemId)?.ports.find(({ id }) => id === endpoint.portId);
  return `${items.get(endpoint.itemId)?.tag ?? endpoint.itemId}, ${port?.label ?? endpoint.portId}`;
}
