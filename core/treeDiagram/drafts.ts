import type { Subject } from '../model/project.ts';
import type { TreeNode } from './types.ts';

/** A place of a diagram before it is known what else the diagram holds. */
export interface Draft extends Pick<TreeNode, 'kind' | 'modelId' | 'label' | 'op' | 'k' | 'isAlone' | 'remark'> {
  /** The same for branches that say the same. */
  readonly key: string;
  readonly subjects: readonly Subject[];
  readonly children: readonly Draft[];
  /** How many ends its branch has as drawn. */
  readonly ends: number;
  /** The branch a reference stands for. */
  readonly target: Draft | null;
}

/** Gives every place its id, numbers events drawn more than once, and letters branches that are referred to. */
export function finished(top: Draft): TreeNode {
  const places = new Map<string, number>();
  const uses = new Map<string, number>();
  const firstIds = new Map<string, string>();
  visit(top, top.modelId, (draft, id) => {
    if (draft.kind === 'reference') count(uses, draft.key);
    else if (draft.kind === 'gate') firstIds.set(draft.key, id);
    else count(places, draft.modelId);
  });
  const marks = new Map([...places].filter(([, many]) => many > 1).map(([id], index) => [id, index + 1]));
  const lettered = [...firstIds.keys()].filter((key) => uses.has(key));
  const letters = new Map(lettered.map((key, index) => [key, letterOf(index)]));
  const node = (draft: Draft, id: string): TreeNode => {
    const { kind, modelId, label, subjects, op, k, isAlone, remark, key } = draft;
    const isBranch = kind === 'gate' || kind === 'reference';
    return {
      ...{ id, kind, modelId, label, subjects, op, k, isAlone, remark },
      children: withIds(draft, id).map(([child, childId]) => node(child, childId)),
      mark: isBranch ? null : (marks.get(modelId) ?? null),
      places: isBranch ? 1 + (uses.get(key) ?? 0) : (places.get(modelId) ?? 1),
      letter: isBranch ? (letters.get(key) ?? null) : null,
      target: kind === 'reference' ? (firstIds.get(key) ?? null) : null,
    };
  };
  return node(top, top.modelId);
}

function count(counts: Map<string, number>, key: string): void {
  counts.set(key, (counts.get(key) ?? 0) + 1);
}

function visit(draft: Draft, id: string, met: (draft: Draft, id: string) => void): void {
  met(draft, id);
  for (const [child, childId] of withIds(draft, id)) visit(child, childId, met);
}

/** Children with ids that only change when what they stand for does; a vote may name one thing twice. */
function withIds({ children }: Draft, id: string): readonly (readonly [Draft, string])[] {
  const met = new Map<string, number>();
  return children.map((child) => {
    count(met, child.modelId);
    const nth = met.get(child.modelId) ?? 1;
    return [child, `${id}/${child.modelId}${nth > 1 ? `#${nth}` : ''}`] as const;
  });
}

/** A to Z, then AA, AB and on. */
function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : `${letterOf(Math.floor(index / 26) - 1)}${last}`;
}
