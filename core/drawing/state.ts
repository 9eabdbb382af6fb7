import { type ProfileOptions, subjectKey } from './options.ts';
import type { Ink } from './types.ts';

/** How one thing stands: what a failure did to it, and whether it is chosen. */
export interface State {
  readonly fate: 'whole' | 'lost' | 'live';
  readonly selected: boolean;
  readonly opacity: number | undefined;
}

/** Opacity of what a failure has taken away. */
export const LOST_OPACITY = 0.38;

export function stateOf(options: ProfileOptions, kind: string, id: string): State {
  const key = subjectKey({ kind, id });
  const selected = options.selection?.has(key) ?? false;
  if (options.failure?.lost.has(key)) return { fate: 'lost', selected, opacity: LOST_OPACITY };
  return { fate: options.failure?.live.has(key) ? 'live' : 'whole', selected, opacity: undefined };
}

/** The ink of a thing that is normally drawn in `plain`. */
export function inkOf(state: State, plain: Ink): Ink {
  if (state.selected) return 'run-selected';
  return state.fate === 'live' ? 'live' : plain;
}
