import { expect, it } from 'vitest';
import type { Host } from '../../../electron/contract.ts';
import { EDIT_ACTIONS } from '../../../renderer/app/actionsEdit.ts';
import { smallProject, testScene } from './canvasFixture.ts';

const action = (id: string) => {
  const found = EDIT_ACTIONS.find((known) => known.id === id);
  if (!found) throw new Error(`no action ${id}`);
  return found;
};
/** None of these actions touches the machine. */
const noHost = {} as Host;

it('moves by a tenth of a metre, five with Shift, says where, and is one step to undo', () => {
  const { store } = testScene(smallProject());
  const before = store.getState().project;
  store.getState().select([{ kind: 'item', id: 'spare' }]);
  void action('move-up-1').perform(store, noHost);
  void action('move-up-1').perform(store, noHost);
  void action('move-towards the bow-5').perform(store, noHost);
  const spare = store.getState().project.items.find(({ id }) => id === 'spare');
  expect(spare?.position).toEqual({ xM: 9.5, yM: 0, zM: 1.2 });
  expect(store.getState().message?.text).toBe('VHF-2 moved to x 9.5, z 1.2');
  store.getState().undo();
  expect(store.getState().project).toBe(before);
});

it('starts a new step for another item', () => {
  const { store } = testScene(smallProject());
  store.getState().select([{ kind: 'item', id: 'spare' }]);
  void action('move-up-1').perform(store, noHost);
  store.getState().select([{ kind: 'item', id: 'vhf' }]);
  void action('move-up-1').perform(store, noHost);
  expect(store.getState().history.past).toHaveLength(2);
});

it('deletes the pressed bend before the run it is on', () => {
  const { store } = testScene(smallProject());
  store.getState().select([{ kind: 'run', id: 'w' }]);
  store.getState().setView({ bend: { runId: 'w', index: 0 } });
  void action('delete').perform(store, noHost);
  expect(store.getState().project.runs[0]?.via).toEqual([]);
  void action('delete').perform(store, noHost);
  expect(store.getState().project.runs).toEqual([]);
  expect(store.getState().message?.text).toBe('W01 deleted');
});

it('copies and pastes what is selected, and the copies are selected', () => {
  const { store } = testScene(smallProject());
  store.getState().select([
    { kind: 'item', id: 'vhf' },
    { kind: 'item', id: 'whip' },
  ]);
  void action('copy').perform(store, noHost);
  store.getState().select([]);
  void action('paste').perform(store, noHost);
  expect(store.getState().project.items.map(({ tag }) => tag)).toEqual(['VHF-1', 'A1', 'VHF-2', 'VHF-3', 'A2']);
  expect(store.getState().project.runs).toHaveLength(2);
  expect(store.getState().selection).toHaveLength(2);
});
