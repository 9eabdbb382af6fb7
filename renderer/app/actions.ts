import type { Host } from '../../electron/contract.ts';
import type { Action } from './action.ts';
import { DRAW_ACTIONS } from './actionsDraw.ts';
import { EDIT_ACTIONS } from './actionsEdit.ts';
import { DEMO_ACTIONS, FILE_ACTIONS } from './actionsFile.ts';
import { HELP_ACTIONS } from './actionsHelp.ts';
import { VIEW_ACTIONS } from './actionsView.ts';

/**
 * Everything the user can do. Where two share a chord the first that is enabled answers: Escape leaves a failure event
 * before it drops the selection.
 */
export const ACTIONS: readonly Action[] = [
  ...FILE_ACTIONS,
  ...DEMO_ACTIONS,
  ...VIEW_ACTIONS,
  ...EDIT_ACTIONS,
  ...DRAW_ACTIONS,
  ...HELP_ACTIONS,
];

const byId: ReadonlyMap<string, Action> = new Map(ACTIONS.map((action) => [action.id, action]));

/** The action of that id. @throws RangeError for an id no action has */
export function actionById(id: string): Action {
  const action = byId.get(id);
  if (!action) throw new RangeError(`There is no action ${id}`);
  return action;
}

/** Actions to offer on this kind of host. */
export const actionsFor = (host: Pick<Host, 'kind'>): readonly Action[] =>
  ACTIONS.filter(({ isDesktopOnly }) => !isDesktopOnly || host.kind === 'electron');

export const actionsById = (ids: readonly string[]): readonly Action[] => ids.map(actionById);
