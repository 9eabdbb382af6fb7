import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import { indexProject } from '../../../core/catalogue/lookup.ts';
import { setItem } from '../../../core/edit/items.ts';
import { RefusedEdit } from '../../../core/edit/refused.ts';
import type { Part, PartKind } from '../../../core/model/part.ts';
import { isPlaceable } from '../../../core/model/placeable.ts';
import type { Item, Project } from '../../../core/model/project.ts';
import { Choice, type Option } from '../../app/Choice.tsx';
import { useEdit } from './fields.tsx';

/** Another part for an item: those of the same kind, and why one cannot take its place. */
export function PartChoice({
  project,
  item,
  kind,
  close,
}: {
  project: Project;
  item: Item;
  /** Kind of its present part; undefined for a part nobody knows, which may become anything. */
  kind: PartKind | undefined;
  close: () => void;
}) {
  const edit = useEdit();
  const options = useMemo(() => partOptions(project, item, kind), [project, item, kind]);
  return (
    <div className="card stack">
      <Choice
        label={`Part that ${item.tag} is`}
        options={options}
        value={item.partId}
        autoFocus
        onChange={(partId) => {
          if (edit(`${item.tag}: another part`, (before) => setItem(before, item.id, { partId }))) close();
        }}
      />
      <Button className="button start" onPress={close}>
        Leave it as it is
      </Button>
    </div>
  );
}

function partOptions(project: Project, item: Item, kind: PartKind | undefined): Option[] {
  const { parts } = indexProject(project);
  const own = classOf(parts.get(item.partId));
  return [...parts.values()]
    .filter((part) => isPlaceable(part) && (kind === undefined || part.kind === kind))
    .sort((a, b) => Number(classOf(b) === own) - Number(classOf(a) === own))
    .map((part) => {
      const reason = refusal(project, item, part.id);
      if (reason === null) return { id: part.id, name: part.name, note: part.description };
      return { id: part.id, name: part.name, note: reason, isRefused: true };
    });
}

/** What sort of its kind a part is, so that the nearest of its like stand first. */
function classOf(part: Part | undefined): string | null {
  switch (part?.kind) {
    case 'radio':
      return part.radioClass;
    case 'antenna':
      return part.antennaClass;
    case 'inline':
      return part.deviceClass;
    case 'power':
      return part.powerClass;
    case 'standalone':
      return part.standaloneClass;
    case 'equipment':
      return part.equipmentClass;
    default:
      return null;
  }
}

/** Why the part cannot take the item's place, by trying; null when it can. */
function refusal(project: Project, item: Item, partId: string): string | null {
  if (partId === item.partId) return null;
  try {
    setItem(project, item.id, { partId });
    return null;
  } catch (error) {
    if (error instanceof RefusedEdit) return error.message;
    throw error;
  }
}
