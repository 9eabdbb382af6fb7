import type { MarginItem } from '../../../core/model/project.ts';

/** One more loss for the margin, to be named and sized by the user; its id and name are not taken yet. */
export function newMarginItem(margin: readonly MarginItem[]): MarginItem {
  const ids = new Set(margin.map(({ id }) => id));
  const labels = new Set(margin.map(({ label }) => label));
  let number = margin.length + 1;
  while (ids.has(`loss-${number}`) || labels.has(`Loss ${number}`)) number += 1;
  return { id: `loss-${number}`, label: `Loss ${number}`, lossDb: 1, source: 'own judgement' };
}

/** The margin with one item changed. */
export function changedMargin(
  margin: readonly MarginItem[],
  id: string,
  change: Partial<Omit<MarginItem, 'id'>>,
): MarginItem[] {
  return margin.map((item) => (item.id === id ? { ...item, ...change } : item));
}
