import type { Item } from '../model/project.ts';
import type { Build } from './build.ts';
import { structuresUnder } from './components.ts';
import type { Component } from './types.ts';

/** A component that is an item, with the item and the structures it stands on. */
export interface Placed {
  readonly component: Component;
  readonly item: Item;
  readonly structures: readonly string[];
}

/** All components that are items. */
export function placedComponents(build: Build): readonly Placed[] {
  const placed: Placed[] = [];
  for (const component of build.components.values()) {
    const item = component.subject.kind === 'item' ? build.index.items.get(component.subject.id) : undefined;
    if (item) placed.push({ component, item, structures: structuresUnder(build.project, item) });
  }
  return placed;
}

/** The structures themselves and every component that stands on one of them. */
export function lostWith(placed: readonly Placed[], structureIds: readonly string[]): readonly string[] {
  const onThem = placed.filter(({ structures }) => structures.some((id) => structureIds.includes(id)));
  return [...structureIds.map((id) => `structure:${id}`), ...onThem.map(({ component }) => component.id)];
}
