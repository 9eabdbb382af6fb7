import type { Part, PlaceablePart } from '../../core/model/part.ts';
import { isPlaceable } from '../../core/model/placeable.ts';

const GROUPS: readonly { readonly kind: PlaceablePart['kind']; readonly name: string }[] = [
  { kind: 'radio', name: 'Radios' },
  { kind: 'antenna', name: 'Antennas' },
  { kind: 'inline', name: 'In the feeder' },
  { kind: 'position-source', name: 'Position sources' },
  { kind: 'power', name: 'Power and breakers' },
  { kind: 'standalone', name: 'Stand-alone sets' },
  { kind: 'equipment', name: 'Other equipment' },
];

export interface PartGroup {
  readonly id: string;
  readonly name: string;
  readonly parts: readonly PlaceablePart[];
}

/**
 * The Parts list: the user's own parts first, then the catalogue by kind; only what has every word of `search` in its
 * name, description or kind. Groups with nothing in them are left out.
 */
export function partGroups(catalogue: readonly Part[], own: readonly Part[], search: string): readonly PartGroup[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const matches = (part: PlaceablePart, group: string): boolean => {
    const text = `${part.name} ${part.description} ${group}`.toLowerCase();
    return words.every((word) => text.includes(word));
  };
  const ownParts = own.filter(isPlaceable).filter((part) => matches(part, 'own parts'));
  const groups = GROUPS.map(({ kind, name }) => ({
    id: kind,
    name,
    parts: catalogue.filter(isPlaceable).filter((part) => part.kind === kind && matches(part, name)),
  }));
  return [{ id: 'own', name: 'Your own parts', parts: ownParts }, ...groups].filter(({ parts }) => parts.length > 0);
}
