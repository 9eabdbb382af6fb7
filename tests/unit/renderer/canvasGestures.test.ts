import { describe, expect, it } from 'vitest';
import { isPlaceable } from '../../../core/model/placeable.ts';
import { placeGesture } from '../../../renderer/canvas/gestures/place.ts';
import { pressGesture } from '../../../renderer/canvas/gestures/press.ts';
import { portHandles, portPoint } from '../../../renderer/canvas/handles.ts';
import { PLAIN, px, smallProject, testPart, testScene } from './canvasFixture.ts';

const itemOf = (project: ReturnType<typeof smallProject>, id: string) => project.items.find((item) => item.id === id);

describe('moving', () => {
  it('previews while it moves, commits one step, and undo brings all back', () => {
    const { scene, store } = testScene(smallProject(), { kind: 'item', id: 'spare' });
    const before = store.getState().project;
    const gesture = pressGesture(scene, px(10, 1), null, PLAIN);
    expect(store.getState().selection).toEqual([{ kind: 'item', id: 'spare' }]);
    gesture.move(px(9.5, 1.5), PLAIN);
    gesture.move(px(9, 2), PLAIN);
    expect(store.getState().project).toBe(before);
    expect(itemOf(store.getState().preview ?? before, 'spare')?.position).toMatchObject({ xM: 9, zM: 2 });
    gesture.finish(true);
    expect(store.getState().history.past).toHaveLength(1);
    expect(store.getState().message?.text).toBe('VHF-2 moved to x 9.0, z 2.0');
    store.getState().undo();
    expect(store.getState().project).toBe(before);
  });

  it('snaps a single item to a place within reach, and not with Alt', () => {
    const { scene, store } = testScene(smallProject(), { kind: 'item', id: 'spare' });
    const gesture = pressGesture(scene, px(10, 1), null, PLAIN);
    gesture.move(px(6.4, 1.2), PLAIN);
    expect(store.getState().sketch?.snap?.name).toBe('Chart table');
    expect(itemOf(store.getState().preview ?? smallProject(), 'spare')).toMatchObject({
      placeId: 'table',
      position: { xM: 6, zM: 1 },
    });
    gesture.move(px(6.4, 1.2), { shift: false, alt: true });
    expect(itemOf(store.getState().preview ?? smallProject(), 'spare')).toMatchObject({
      placeId: null,
      position: { xM: 6.4, zM: 1.2 },
    });
    gesture.cancel();
    expect(store.getState().preview).toBeNull();
    expect(store.getState().sketch).toBeNull();
  });

  it('moves everything selected together', () => {
    const { scene, store } = testScene(smallProject(), { kind: 'item', id: 'vhf' });
    store.getState().select([
      { kind: 'item', id: 'vhf' },
      { kind: 'item', id: 'spare' },
    ]);
    const gesture = pressGesture(scene, px(8, 1), null, PLAIN);
    gesture.move(px(7, 1), PLAIN);
    gesture.finish(true);
    const { project } = store.getState();
    expect([itemOf(project, 'vhf')?.position.xM, itemOf(project, 'spare')?.position.xM]).toEqual([7, 9]);
    expect(store.getState().message?.text).toBe('2 items moved, VHF-1 to x 7.0, z 1.0');
  });

  it('a click without a move changes nothing but the selection', () => {
    const { scene, store } = testScene(smallProject(), { kind: 'item', id: 'vhf' });
    pressGesture(scene, px(8, 1), null, PLAIN).finish(false);
    expect(store.getState().history.past).toHaveLength(0);
    expect(store.getState().selection).toEqual([{ kind: 'item', id: 'vhf' }]);
  });
});

describe('selecting', () => {
  it('a rectangle takes the items inside it, bare paper clicked takes none', () => {
    const { scene, store } = testScene(smallProject());
    const gesture = pressGesture(scene, px(11, 2), null, PLAIN);
    gesture.move(px(7, 0), PLAIN);
    gesture.finish(true);
    expect(store.getState().selection.map(({ id }) => id)).toEqual(['vhf', 'spare']);
    pressGesture(scene, px(1, 8), null, PLAIN).finish(false);
    expect(store.getState().selection).toEqual([]);
  });

  it('Shift adds to and takes from the selection', () => {
    const { scene, store } = testScene(smallProject(), { kind: 'item', id: 'vhf' });
    store.getState().select([{ kind: 'item', id: 'spare' }]);
    pressGesture(scene, px(8, 1), null, { shift: true, alt: false }).finish(false);
    expect(store.getState().selection.map(({ id }) => id)).toEqual(['spare', 'vhf']);
    pressGesture(scene, px(8, 1), null, { shift: true, alt: false }).finish(false);
    expect(store.getState().selection.map(({ id }) => id)).toEqual(['spare']);
  });
});

describe('connecting', () => {
  it('refuses a port that is taken and says why, and draws nothing', () => {
    const { scene, store } = testScene(smallProject(), { kind: 'item', id: 'spare' });
    const { project } = store.getState();
    const from = portPoint(project, { itemId: 'spare', portId: 'ant' }, scene.projection());
    const to = portPoint(project, { itemId: 'whip', portId: 'feed' }, scene.projection());
    if (!from || !to) throw new Error('ports are missing');
    const gesture = pressGesture(scene, from, 'spare', PLAIN);
    expect(gesture.cursor).toBe('crosshair');
    gesture.move(to, PLAIN);
    expect(store.getState().sketch?.tip).toMatchObject({ refusal: true });
    expect(store.getState().sketch?.tip?.text).toContain('W01');
    gesture.finish(true);
    expect(store.getState().project.runs).toHaveLength(1);
    expect(store.getState().message).toMatchObject({ tone: 'refusal' });
  });

  it('draws a run between ports that fit, selects it and says so', () => {
    const project = smallProject();
    const free = testScene({ ...project, runs: [] }, { kind: 'item', id: 'spare' });
    const handles = portHandles(free.store.getState().project, 'spare', free.scene.projection());
    const from = handles.find(({ port }) => port.medium === 'rf')?.at;
    const to = portPoint(project, { itemId: 'whip', portId: 'feed' }, free.scene.projection());
    if (!from || !to) throw new Error('ports are missing');
    const gesture = pressGesture(free.scene, from, 'spare', PLAIN);
    gesture.move(to, PLAIN);
    expect(free.store.getState().sketch?.line?.fits).toBe(true);
    gesture.finish(true);
    const [run] = free.store.getState().project.runs;
    expect(run).toMatchObject({ from: { itemId: 'spare' }, to: { itemId: 'whip' } });
    expect(free.store.getState().selection).toEqual([{ kind: 'run', id: run?.id }]);
  });
});

describe('bending', () => {
  it('pulls a new bend out of a selected run and its length follows', () => {
    const { scene, store } = testScene(smallProject(), { kind: 'run', id: 'w' });
    store.getState().select([{ kind: 'run', id: 'w' }]);
    const gesture = pressGesture(scene, px(6, 1.5), null, PLAIN);
    gesture.move(px(6, 3), PLAIN);
    expect(store.getState().sketch?.tip?.text).toMatch(/^W01 \d+\.\d m$/);
    gesture.finish(true);
    expect(store.getState().project.runs[0]?.via.map(({ position }) => position.zM)).toEqual([2, 3]);
  });

  it('moves a bend, which snaps to a place', () => {
    const { scene, store } = testScene(smallProject(), { kind: 'run', id: 'w' });
    store.getState().select([{ kind: 'run', id: 'w' }]);
    const gesture = pressGesture(scene, px(4, 2), null, PLAIN);
    expect(store.getState().bend).toEqual({ runId: 'w', index: 0 });
    gesture.move(px(4.1, 2.3), PLAIN);
    gesture.finish(true);
    expect(store.getState().project.runs[0]?.via).toEqual([{ position: { xM: 4.2, yM: 0, zM: 2.4 }, placeId: 'foot' }]);
  });

  it('a click on a run that is not selected selects it and bends nothing', () => {
    const { scene, store } = testScene(smallProject(), { kind: 'run', id: 'w' });
    const gesture = pressGesture(scene, px(6, 1.5), null, PLAIN);
    gesture.move(px(6, 3), PLAIN);
    gesture.finish(true);
    expect(store.getState().project.runs[0]?.via).toHaveLength(1);
    expect(store.getState().selection).toEqual([{ kind: 'run', id: 'w' }]);
  });
});

describe('dropping a part', () => {
  it('lands on the place it is near, selected, and says where', () => {
    const { scene, store } = testScene(smallProject());
    const part = testPart('t-vhf');
    if (!isPlaceable(part)) throw new Error('not placeable');
    const gesture = placeGesture(scene, part);
    gesture.over(px(6.3, 1.2));
    expect(store.getState().sketch?.tip?.text).toBe('At Chart table');
    gesture.drop(px(6.3, 1.2));
    const added = store.getState().project.items.at(-1);
    expect(added).toMatchObject({ tag: 'VHF-3', placeId: 'table' });
    expect(store.getState().selection).toEqual([{ kind: 'item', id: added?.id }]);
    expect(store.getState().message?.text).toContain('at Chart table');
  });

  it('puts a joint into the run under it, in one undo step', () => {
    const { scene, store } = testScene(smallProject());
    const part = testPart('t-joint');
    if (!isPlaceable(part)) throw new Error('not placeable');
    const gesture = placeGesture(scene, part);
    gesture.over(px(6, 1.5));
    expect(store.getState().sketch?.tip?.text).toBe('Into W01');
    gesture.drop(px(6, 1.5));
    expect(store.getState().project.runs).toHaveLength(2);
    expect(store.getState().history.past).toHaveLength(1);
  });

  it('beside the sheet adds nothing and says so', () => {
    const { scene, store } = testScene(smallProject());
    const part = testPart('t-vhf');
    if (!isPlaceable(part)) throw new Error('not placeable');
    placeGesture(scene, part).drop(null);
    expect(store.getState().project.items).toHaveLength(3);
    expect(store.getState().message?.text).toContain('was not added');
  });
});
