import { describe, expect, it } from 'vitest';
import { addedSubjects, copyItems } from '../../../core/edit/copy.ts';
import { resetItemFigure, resetItemTrait, setItemFigure, setItemTrait } from '../../../core/edit/figures.ts';
import { nearestPlace } from '../../../core/edit/geometry.ts';
import {
  addItem,
  moveItems,
  renameItem,
  setItem,
  setItemEndPosition,
  setItemPosition,
  snapToPlace,
} from '../../../core/edit/items.ts';
import { removeSubjects } from '../../../core/edit/remove.ts';
import { reorder } from '../../../core/edit/reorder.ts';
import type { Project } from '../../../core/model/project.ts';
import { BANK, item, JOINT, run, SPLITTER, SWITCH, smallBoat, THIN, VHF, WHIP } from '../document/boat.ts';
import { byId, expectSound, frozen, last, refusal } from './support.ts';

const boat = (): Project => frozen(smallBoat());

describe('adding an item', () => {
  it('gives the next free tag of its kind and an id of its own', () => {
    const after = [VHF.id, VHF.id, WHIP.id, JOINT.id, SPLITTER.id, BANK.id].reduce(
      (project, partId) => addItem(project, { partId }),
      boat(),
    );
    expect(after.items.slice(4).map(({ tag }) => tag)).toEqual(['VHF-2', 'VHF-3', 'A2', 'J1', 'SP-1', 'BAT-2']);
    expect(new Set(after.items.map(({ id }) => id)).size).toBe(10);
    expectSound(after);
  });

  it('fills a gap in the tags', () => {
    const renamed = renameItem(boat(), 'vhf', 'VHF-2');
    expect(last(addItem(renamed, { partId: VHF.id }).items).tag).toBe('VHF-1');
  });

  it('snaps to a place within 0.3 m and stands free elsewhere', () => {
    const near = addItem(boat(), { partId: WHIP.id, position: { xM: 4.8, yM: 0, zM: 1.7 } });
    expect(last(near.items)).toMatchObject({ placeId: 'mast-1-foot', position: { xM: 4.68, yM: 0, zM: 1.64 } });
    const free = addItem(boat(), { partId: WHIP.id, position: { xM: 9.00049, yM: 0.1, zM: 3 } });
    expect(last(free.items)).toMatchObject({ placeId: null, position: { xM: 9, yM: 0.1, zM: 3 } });
    const asked = addItem(boat(), { partId: WHIP.id, position: { xM: 4.8, yM: 0, zM: 1.7 }, placeId: null });
    expect(last(asked.items)).toMatchObject({ placeId: null, position: { xM: 4.8, yM: 0, zM: 1.7 } });
  });

  it('without a position goes where such a part usually is', () => {
    const place = (partId: string) => last(addItem(boat(), { partId }).items).placeId;
    expect(place(WHIP.id)).toBe('mast-1-head');
    expect(place(VHF.id)).toBe('nav-station');
    expect(place(BANK.id)).toBe('battery-space');
  });

  it('stands beside what is already on the spot', () => {
    const once = addItem(boat(), { partId: VHF.id, placeId: 'nav-station' });
    const twice = addItem(once, { partId: VHF.id, placeId: 'nav-station' });
    const [a, b] = twice.items.slice(-2);
    expect((b?.position.xM ?? 0) - (a?.position.xM ?? 0)).toBeCloseTo(0.25, 9);
    expect(b?.placeId).toBe('nav-station');
  });

  it('is refused for what is not placed and for what nobody knows', () => {
    expect(refusal(() => addItem(boat(), { partId: THIN.id }))).toBe(
      't-thin is not placed on its own. Choose it for a cable run instead.',
    );
    expect(refusal(() => addItem(boat(), { partId: 'x' }))).toBe(
      'There is no part "x": choose one from the list of parts.',
    );
    expect(refusal(() => addItem(boat(), { partId: WHIP.id, placeId: 'x' }))).toBe(
      'There is no place "x" in this project.',
    );
    expect(refusal(() => addItem(boat(), { partId: WHIP.id, position: { xM: Number.NaN, yM: 0, zM: 0 } }))).toBe(
      'A2: X (aft of the stem) is not a number. Put in a number.',
    );
  });
});

describe('moving items', () => {
  it('moves the item and the upper end of its wire, and keeps everything else as it is', () => {
    const before = frozen(setItemEndPosition(boat(), 'whip', { xM: 4, yM: 0, zM: 17 }));
    const after = moveItems(before, ['whip'], { dxM: 0.5, dyM: -0.1, dzM: 0.25 });
    expect(byId(after.items, 'whip')).toMatchObject({
      position: { xM: 5.2, yM: -0.1, zM: 16.25 },
      endPosition: { xM: 4.5, yM: -0.1, zM: 17.25 },
    });
    expect(after.items[1]).toBe(before.items[1]);
    expect(after.runs).toBe(before.runs);
    expect(after.boat).toBe(before.boat);
    expect(after.places).toBe(before.places);
    expectSound(after);
  });

  it('keeps the place while it stays within a metre, and leaves it beyond', () => {
    const near = moveItems(boat(), ['whip'], { dxM: 0.6, dyM: 0, dzM: 0 });
    expect(byId(near.items, 'whip').placeId).toBe('mast-1-head');
    const far = moveItems(boat(), ['whip'], { dxM: 3, dyM: 0, dzM: 0 });
    expect(byId(far.items, 'whip').placeId).toBeNull();
  });

  it('by nothing is no edit', () => {
    const before = boat();
    expect(moveItems(before, ['whip', 'vhf'], { dxM: 0, dyM: 0, dzM: 0 })).toBe(before);
  });

  it('off the drawing is refused', () => {
    expect(refusal(() => moveItems(boat(), ['whip'], { dxM: 500, dyM: 0, dzM: 0 }))).toBe(
      'A1 would leave the drawing: X (aft of the stem) is 504.7 m; the most allowed is 200 m. Put in a value from −20 to 200 m.',
    );
    expect(refusal(() => moveItems(boat(), ['gone'], { dxM: 1, dyM: 0, dzM: 0 }))).toBe(
      'There is no item "gone" in this project.',
    );
  });

  it('sets down on a position or a place', () => {
    const set = setItemPosition(boat(), 'vhf', { xM: 6.1234567, yM: 0, zM: 0.8 });
    expect(byId(set.items, 'vhf').position.xM).toBe(6.123);
    const snapped = snapToPlace(set, 'vhf', 'helm');
    expect(byId(snapped.items, 'vhf')).toMatchObject({ placeId: 'helm', position: byId(set.places, 'helm').position });
    expectSound(snapped);
  });

  it('knows the nearest place', () => {
    expect(nearestPlace(boat(), { xM: 4.7, yM: 0, zM: 15.9 }, 0.5)?.id).toBe('mast-1-head');
    expect(nearestPlace(boat(), { xM: 4.7, yM: 0, zM: 12 }, 0.1)).toBeUndefined();
  });
});

describe('particulars of an item', () => {
  it('set and forget facts', () => {
    const set = setItem(boat(), 'whip', { name: 'Main whip', status: 'remove', facts: { mount: 'metal', wet: true } });
    expect(byId(set.items, 'whip')).toMatchObject({ name: 'Main whip', facts: { mount: 'metal', wet: true } });
    const forgotten = setItem(set, 'whip', { facts: { wet: undefined } });
    expect(byId(forgotten.items, 'whip').facts).toEqual({ mount: 'metal' });
    expectSound(forgotten);
  });

  it('that change nothing are no edit', () => {
    const before = boat();
    expect(setItem(before, 'whip', { tag: 'A1', facts: {}, notes: '' })).toBe(before);
  });

  it('are refused when a tag is empty or taken, a place unknown, a fact out of range', () => {
    expect(refusal(() => renameItem(boat(), 'whip', ' '))).toBe(
      'A1 needs a tag: it stands on the drawing and the labels.',
    );
    expect(refusal(() => renameItem(boat(), 'whip', 'VHF-1'))).toBe('The tag VHF-1 is taken: choose another.');
    expect(refusal(() => setItem(boat(), 'whip', { placeId: 'x' }))).toBe('There is no place "x" in this project.');
    expect(refusal(() => setItem(boat(), 'whip', { facts: { nearestPersonM: -1 } }))).toBe(
      'A1: Nearest person is −1 m; the least allowed is 0 m. Put in a value from 0 to 2000 m.',
    );
  });

  it('another part needs the ports in use, and figures of its own to be reset', () => {
    expect(refusal(() => setItem(boat(), 'vhf', { partId: WHIP.id }))).toBe(
      'Test VHF whip has no port "ant", where W01 is connected to VHF-1: take W01 off first.',
    );
    const own = setItemFigure(boat(), 'whip', 'gainDbi', { value: 3 });
    expect(refusal(() => setItem(own, 'whip', { partId: 't-gnss-antenna' }))).toBe(
      'A1 has figures of its own (gain): reset them before choosing another part.',
    );
  });
});

describe('figures of an item', () => {
  it('replace the part figure for this item, and go back', () => {
    const set = setItemFigure(boat(), 'vhf', 'txPowerW', {
      value: 19,
      tolerance: 1,
      basis: 'measured',
      source: 'meter',
    });
    expect(byId(set.items, 'vhf').overrides.figures).toEqual({
      txPowerW: { value: 19, tolerance: 1, basis: 'measured', source: 'meter' },
    });
    expectSound(set);
    expect(resetItemFigure(set, 'vhf', 'txPowerW')).toEqual(smallBoat());
    const before = boat();
    expect(resetItemFigure(before, 'vhf', 'txPowerW')).toBe(before);
  });

  it('may be one the part only could have', () => {
    const set = setItemFigure(boat(), 'whip', 'amplifierGainDb', { value: 20 });
    expect(byId(set.items, 'whip').overrides.figures.amplifierGainDb).toMatchObject({ value: 20, basis: 'assumed' });
    expectSound(set);
  });

  it('are refused when unknown, not finite or out of range', () => {
    expect(refusal(() => setItemFigure(boat(), 'vhf', 'gainDbi', { value: 3 }))).toBe(
      'VHF-1 (Test VHF set) has no gain to set.',
    );
    expect(refusal(() => setItemFigure(boat(), 'vhf', 'txPowerW', { value: Number.NaN }))).toBe(
      'VHF-1: Transmit power is not a number. Put in a number.',
    );
    expect(refusal(() => setItemFigure(boat(), 'vhf', 'txPowerW', { value: Number.POSITIVE_INFINITY }))).toBe(
      'VHF-1: Transmit power is infinite. Put in a number.',
    );
    expect(refusal(() => setItemFigure(boat(), 'vhf', 'txPowerW', { value: -25 }))).toBe(
      'VHF-1: The transmit power is −25 W, which no such part has. Put in a value from 0 to 50000 W.',
    );
    expect(refusal(() => setItemFigure(boat(), 'vhf', 'txPowerW', { value: 25, tolerance: -1 }))).toBe(
      'VHF-1: Transmit power is −1 W; the least allowed is 0 W. Put in a value from 0 W upward.',
    );
    const unknown = frozen({ ...smallBoat(), items: [item('x', 'of-2031', 'X1', 1, 1)], runs: [], feeds: [] });
    expect(refusal(() => setItemFigure(unknown, 'x', 'gainDbi', { value: 1 }))).toBe(
      'X1 is a part this program does not know ("of-2031"): choose a known part for it first.',
    );
  });

  it('traits are set, checked and go back', () => {
    const set = setItemTrait(boat(), 'vhf', 'dsc', false);
    expect(byId(set.items, 'vhf').overrides.traits).toEqual({ dsc: false });
    expect(resetItemTrait(set, 'vhf', 'dsc')).toEqual(smallBoat());
    expect(refusal(() => setItemTrait(boat(), 'vhf', 'dsc', 'yes'))).toBe(
      'VHF-1: DSC is "yes"; it has to be true or false. Put in true or false.',
    );
    expect(refusal(() => setItemTrait(boat(), 'vhf', 'range', 3))).toBe(
      'VHF-1: "range" is not one of the traits of Test VHF set. Take it out, or use one it has: "dsc", "internalGnss", "needsFixToTransmit", "ownBattery", "portable", "integralAntenna".',
    );
  });

  it('a switch is not turned into a loop of coax', () => {
    const project = smallBoat();
    const items = [...project.items, item('k1', SWITCH.id, 'SW-1', 6, 1), item('s1', SPLITTER.id, 'SP-1', 7, 1)];
    const runs = [run('W02', ['k1', 'antenna'], ['s1', 'vhf']), run('W03', ['k1', 'p2'], ['s1', 'ais'])];
    expect(refusal(() => setItemTrait(frozen({ ...project, items, runs }), 'k1', 'position', 2))).toBe(
      'SW-1 cannot be changed so. Coax closes a loop: SW-1 – W03 – SP-1 – W02 – SW-1. Take one of these runs out.',
    );
  });
});

describe('copying items', () => {
  it('takes along what runs between them, with new tags, ids and numbers', () => {
    const before = boat();
    const after = copyItems(before, ['whip', 'vhf']);
    expect(after.items.slice(4)).toMatchObject([
      { id: 'item-1', tag: 'A2', partId: WHIP.id, position: { xM: 5.2, zM: 16 } },
      { id: 'item-2', tag: 'VHF-2', partId: VHF.id },
    ]);
    expect(last(after.runs)).toMatchObject({
      id: 'run-2',
      number: 'W02',
      from: { itemId: 'item-1', portId: 'feed' },
      to: { itemId: 'item-2', portId: 'ant' },
      via: [{ position: { xM: 5.2, yM: 0, zM: 0.8 }, placeId: null }],
    });
    expect(after.feeds).toBe(before.feeds);
    expect(addedSubjects(before, after)).toEqual([
      { kind: 'item', id: 'item-1' },
      { kind: 'item', id: 'item-2' },
      { kind: 'run', id: 'run-2' },
    ]);
    expectSound(after);
  });

  it('leaves out what goes to an item not copied', () => {
    const after = copyItems(boat(), ['vhf']);
    expect(after.runs).toHaveLength(1);
    expect(after.feeds).toHaveLength(2);
  });

  it('copies feeds between copied items and parts nobody knows', () => {
    expect(last(copyItems(boat(), ['breaker', 'vhf']).feeds)).toMatchObject({ number: 'F03' });
    const unknown = frozen({ ...smallBoat(), items: [item('x', 'of-2031', 'X1', 1, 1)], runs: [], feeds: [] });
    expect(copyItems(unknown, ['x']).items.map(({ tag }) => tag)).toEqual(['X1', 'X1-2']);
  });
});

describe('removing', () => {
  const measured = (): Project =>
    frozen({
      ...smallBoat(),
      measurements: ['run-1', 'vhf', 'bank'].map((id, index) => ({
        id: `m${index}`,
        subject: { kind: id === 'run-1' ? ('run' as const) : ('item' as const), id },
        kind: 'vswr' as const,
        value: 1.2,
        frequencyMhz: null,
        date: null,
        instrument: '',
        note: '',
      })),
      findingOverrides: [
        { findingKey: 'feeder-loss:run-1', reason: 'r', by: '' },
        { findingKey: 'position:vhf', reason: 'r', by: '' },
        { findingKey: 'bank-low:bank,run-12', reason: 'r', by: '' },
      ],
    });

  it('an item takes its runs, feeds, measurements and overrides along', () => {
    const after = removeSubjects(measured(), [{ kind: 'item', id: 'vhf' }]);
    expect(after.items.map(({ id }) => id)).toEqual(['whip', 'bank', 'breaker']);
    expect(after.runs).toEqual([]);
    expect(after.feeds.map(({ number }) => number)).toEqual(['F01']);
    expect(after.measurements.map(({ id }) => id)).toEqual(['m2']);
    expect(after.findingOverrides.map(({ findingKey }) => findingKey)).toEqual(['bank-low:bank,run-12']);
    expectSound(after);
  });

  it('a run leaves its items', () => {
    const after = removeSubjects(measured(), [{ kind: 'run', id: 'run-1' }]);
    expect(after.items).toHaveLength(4);
    expect(after.measurements.map(({ id }) => id)).toEqual(['m1', 'm2']);
  });

  it('what lives on in an alternative keeps its records', () => {
    const { items, runs, feeds, dataLinks } = smallBoat();
    const project = frozen({
      ...measured(),
      alternatives: [{ id: 'layout-1', name: 'Other', note: '', items, runs, feeds, dataLinks }],
    });
    const after = removeSubjects(project, [{ kind: 'item', id: 'vhf' }]);
    expect(after.measurements).toHaveLength(3);
    expect(after.findingOverrides).toHaveLength(3);
    expectSound(after);
  });

  it('the boat is refused', () => {
    expect(refusal(() => removeSubjects(boat(), [{ kind: 'boat', id: 'boat' }]))).toBe(
      'The boat itself cannot be removed: start a new project for another boat.',
    );
  });
});

describe('order', () => {
  it('moves an entry, kept inside the list', () => {
    const order = (project: Project) => project.items.map(({ id }) => id);
    expect(order(reorder(boat(), 'items', 'whip', 2))).toEqual(['vhf', 'bank', 'whip', 'breaker']);
    expect(order(reorder(boat(), 'items', 'breaker', -5))).toEqual(['breaker', 'whip', 'vhf', 'bank']);
    expect(order(reorder(boat(), 'items', 'whip', 99))).toEqual(['vhf', 'bank', 'breaker', 'whip']);
    const before = boat();
    expect(reorder(before, 'items', 'whip', 0)).toBe(before);
  });
});
