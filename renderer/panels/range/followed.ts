import { useState } from 'react';
import type { Subject } from '../../../core/model/project.ts';
import { useApp } from '../../store/context.ts';

/** What a panel shows and the selection it was chosen under; `id` is null until something has been shown. */
export interface Held {
  readonly id: string | null;
  readonly selection: readonly Subject[];
}

/**
 * What a panel that follows the selection shows: what it showed before, unless the selection has changed since and is
 * about something else; at first, or when that is gone, the fallback.
 * @param ids everything that can be shown
 * @param touched what the selection is about, in order of preference
 */
export function followedId(
  ids: readonly string[],
  touched: readonly string[],
  held: Held,
  selection: readonly Subject[],
  fallbackId: string | null,
): string | null {
  const known = held.id !== null && ids.includes(held.id) ? held.id : null;
  const isNews = held.id === null || selection !== held.selection;
  const [first] = touched;
  if (isNews && first !== undefined && (known === null || !touched.includes(known))) return first;
  return known ?? first ?? fallbackId;
}

/** `followedId` kept between renders, and the way to choose another. */
export function useFollowed(
  ids: readonly string[],
  touchedBy: (selection: readonly Subject[]) => readonly string[],
  fallbackId: string | null,
): [id: string | null, choose: (id: string) => void] {
  const selection = useApp((state) => state.selection);
  const [held, setHeld] = useState<Held>({ id: null, selection: [] });
  const id = followedId(ids, touchedBy(selection), held, selection, fallbackId);
  if (id !== held.id || selection !== held.selection) setHeld({ id, selection });
  return [id, (chosen) => setHeld({ id: chosen, selection })];
}
