import type { AppState } from '../store/store.ts';

/** Why the last edit was refused, for the field that asked for it. */
export function refusalText({ message }: Pick<AppState, 'message'>): string {
  return message?.tone === 'refusal' ? message.text : 'This was refused.';
}
