import { describe, expect, it } from 'vitest';
import {
  addCompartment,
  addFitting,
  addMast,
  setBoat,
  setCompartment,
  setFitting,
  setMast,
} from '../../../core/edit/boat.ts';
import { setParticulars } from '../../../core/edit/particulars.ts';
import { addPart, removePart, setPart } from '../../../core/edit/parts.ts';
import { addPlace, removeCompartment, removePlace, removeStructure, setPlace } from '../../../core/edit/places.ts';
import { removeSubjects } from '../../../core/edit/remove.ts';
import type { Part } from '../../../core/model/part.ts';
import type { Project } from '../../../core/model/project.ts';
import { item, PLUG, smallBoat, THICK, VHF, WHIP } from '../document/boat.ts';
import { byId, expectSound, frozen, last, refusal } from './support.ts';

const boat = (): Project => frozen(smallBoat());

describe('particulars of the boat', () => {
  it('are set and sound', () => {
    const after = setBoat(boat(), { name: 'Other', loaM: 13, speedKn: 7 });
    expect(after.boat).toMatchObject({ name: 'Other', loaM: 13, speedKn: 7 });
    expect(after.boat.masts).toBe(after.boat.masts);
    expectSound(after);
    const before = boat();
    expect(setBoat(before, { loaM: 12 })).toBe(before);
  });

  it('out of range or against each other are refused', () => {
    expect(refusal(() => setBoat(boat(), { loaM: 500 }))).toBe(
      'Boat: Length over all is 500 m; the most allowed is 120 m. Put in a value from 2 to 120 m.',
    );
    expect(refusal(() => setBoat(boat(), { beamM: Number.NaN }))).toBe('Boat: Beam is not a number. Put in a number.');
    expect(refusal(() => setBoat(boat(), { loaM: 9 }))).toBe(
      'The waterline length, 10.44 m, is more than the length over all, 9 m. Correct one of the two.',
    );
    expect(setBoat(boat(), { loaM: 9, lwlM: 8 }).boat.lwlM).toBe(8);
  });

  it('of the title block are set, and a note can be taken away', () => {
    const after = setParticulars(boat(), { title: 'T', layoutNote: 'As in spring' });
    expect(after).toMatchObject({ title: 'T', layoutNote: 'As in spring' });
    expectSound(after);
    expect(setParticulars(after, { layoutNote: undefined })).not.toHaveProperty('layoutNote');
    const before = boat();
    expect(setParticulars(before, { title: before.title })).toBe(before);
  });
});

describe('masts and fittings', () => {
  it('a longer mast takes its places, spreaders and what stands there with it', () => {
    const before = boat();
    const mast = before.boat.masts[0];
    if (!mast) throw new Error('a sloop has a mast');
    const after = setMast(before, mast.id, { truckZM: mast.truckZM + 2, xM: mast.xM - 0.5 });
    const head = byId(after.places, 'mast-1-head');
    expect(head.position).toEqual({ xM: mast.xM - 0.5, yM: 0, zM: mast.truckZM + 2 });
    expect(byId(after.places, 'mast-1-spreaders-1').position.zM).toBeCloseTo(
      after.boat.masts[0]?.spreaderZM[0] ?? 0,
      6,
    );
    expect(byId(after.items, 'whip').position.zM).toBeCloseTo(16 + 2, 9);
    expect(byId(after.items, 'whip').position.xM).toBeCloseTo(4.7 - 0.5, 9);
    expect(byId(after.items, 'vhf')).toBe(byId(before.items, 'vhf'));
    expectSound(after);
  });

  it('a mast does not carry anything off the drawing', () => {
    const high = setPlace(boat(), 'mast-1-head', { position: { xM: 4.68, yM: 0, zM: 130 } });
    expect(refusal(() => setMast(high, 'mast-1', { truckZM: 80 }))).toBe(
      'Mast, masthead would leave the drawing: Z (above the waterline) is 194 m; the most allowed is 150 m. Put in a value from −20 to 150 m.',
    );
  });

  it('a mast upside down is refused', () => {
    expect(refusal(() => setMast(boat(), 'mast-1', { truckZM: 1 }))).toBe(
      'The truck of Mast, 1 m, is not above its foot, 1.64 m. Give both heights above the waterline, the truck the greater.',
    );
    expect(refusal(() => setMast(boat(), 'mast-9', {}))).toBe('There is no mast "mast-9" on this boat.');
  });

  it('are added with ids of their own', () => {
    const mast = byId(boat().boat.masts, 'mast-1');
    const after = addMast(boat(), { ...mast, name: 'Mizzen', xM: 9, truckZM: 10 });
    expect(last(after.boat.masts)).toMatchObject({ id: 'mast-2', name: 'Mizzen' });
    const pulpit = byId(boat().boat.fittings, 'pulpit');
    const arch = addFitting(after, { ...pulpit, kind: 'arch', name: 'Arch', xForeM: 11, xAftM: 11.5, zTopM: 3.5 });
    expect(last(arch.boat.fittings).id).toBe('fitting-1');
    expectSound(arch);
    expect(refusal(() => addFitting(boat(), { ...pulpit, xForeM: 3, xAftM: 1 }))).toBe(
      'Pulpit ends at 1 m, forward of where it begins at 3 m. Stations are metres aft of the stem: the after end has the greater number.',
    );
  });

  it('a fitting takes its places along', () => {
    const before = boat();
    const pushpit = byId(before.boat.fittings, 'pushpit');
    const after = setFitting(before, 'pushpit', { zTopM: pushpit.zTopM + 0.5 });
    const [then, now] = [before, after].map((project) => byId(project.places, 'pushpit-top').position.zM);
    expect(now).toBeCloseTo((then ?? 0) + 0.5, 9);
    expectSound(after);
  });

  it('are not removed while something stands on them', () => {
    expect(refusal(() => removeStructure(boat(), 'mast-1'))).toBe(
      'Mast carries A1: move them elsewhere or delete them first.',
    );
    const bare = removeSubjects(boat(), [
      { kind: 'item', id: 'whip' },
      { kind: 'structure', id: 'mast-1' },
    ]);
    expect(bare.boat.masts).toEqual([]);
    expect(bare.places.some((place) => place.structureId === 'mast-1')).toBe(false);
    expectSound(bare);
  });

  it('count what stands on them in an alternative', () => {
    const { items, runs, feeds, dataLinks } = smallBoat();
    const alternatives = [{ id: 'layout-1', name: 'Other', note: '', items, runs, feeds, dataLinks }];
    const without = removeSubjects(frozen({ ...smallBoat(), alternatives }), [{ kind: 'item', id: 'whip' }]);
    expect(refusal(() => removeStructure(without, 'mast-1'))).toBe(
      'Mast carries A1 (in the alternative "Other"): move them elsewhere or delete them first.',
    );
  });
});

describe('compartments and places', () => {
  it('are added, changed and removed', () => {
    const added = addCompartment(boat(), { name: 'Locker', side: 'port', xForeM: 8, xAftM: 9, soleZM: 0.2 });
    const set = setCompartment(added, 'compartment-1', { soleZM: 0.3 });
    const placed = addPlace(set, {
      name: 'Locker shelf',
      position: { xM: 8.5, yM: 1, zM: 0.8 },
      structureId: null,
      compartmentId: 'compartment-1',
      outdoors: false,
      overhead: 'grp',
    });
    expectSound(placed);
    expect(refusal(() => removeCompartment(placed, 'compartment-1'))).toBe(
      'Locker contains Locker shelf: put those places into another compartment first.',
    );
    const gone = removeSubjects(placed, [
      { kind: 'compartment', id: 'compartment-1' },
      { kind: 'place', id: 'place-1' },
    ]);
    expect(gone.boat.compartments).toEqual(boat().boat.compartments);
    expectSound(gone);
  });

  it('a place that moves takes items and bends along, in every layout', () => {
    const base = smallBoat();
    const runs = base.runs.map((run) => ({
      ...run,
      via: [{ position: { xM: 4.7, yM: 0, zM: 1.64 }, placeId: 'mast-1-foot' }],
    }));
    const { items, feeds, dataLinks } = base;
    const before = frozen({
      ...base,
      runs,
      alternatives: [{ id: 'layout-1', name: 'Other', note: '', items, runs, feeds, dataLinks }],
    });
    const up = setPlace(before, 'mast-1-head', { position: { xM: 5, yM: 0, zM: 17 } });
    const head = byId(before.places, 'mast-1-head').position;
    for (const layout of [up, ...up.alternatives]) {
      expect(byId(layout.items, 'whip').position.zM).toBeCloseTo(16 + 17 - head.zM, 9);
      expect(layout.runs[0]).toBe(runs[0]);
    }
    const foot = setPlace(before, 'mast-1-foot', { position: { xM: 5, yM: 0, zM: 1.64 } });
    for (const layout of [foot, ...foot.alternatives]) expect(layout.runs[0]?.via[0]?.position.xM).toBeCloseTo(5.02, 9);
    expectSound(up);
    expectSound(foot);
  });

  it('a place in use is not removed; a bend there stays where it is', () => {
    expect(refusal(() => removePlace(boat(), 'nav-station'))).toBe(
      'Nav station is in use by VHF-1: move them elsewhere or delete them first.',
    );
    const base = smallBoat();
    const runs = base.runs.map((run) => ({
      ...run,
      via: [{ position: { xM: 4.7, yM: 0, zM: 1.64 }, placeId: 'mast-1-foot' }],
    }));
    const after = removePlace(frozen({ ...base, runs }), 'mast-1-foot');
    expect(after.runs[0]?.via).toEqual([{ position: { xM: 4.7, yM: 0, zM: 1.64 }, placeId: null }]);
    expectSound(after);
  });

  it('refuse structures and compartments that are not there', () => {
    expect(refusal(() => setPlace(boat(), 'helm', { structureId: 'x' }))).toBe(
      'Helm: there is no mast or fitting "x" on this boat.',
    );
    expect(refusal(() => setPlace(boat(), 'helm', { compartmentId: 'x' }))).toBe(
      'Helm: there is no compartment "x" in this boat.',
    );
  });
});

describe('parts of the user', () => {
  const own: Part = { ...VHF, id: '', name: 'Set of my own' };

  it('get an id, can be changed, and removed while unused', () => {
    const added = addPart(boat(), own);
    expect(last(added.parts)).toMatchObject({ id: 'own-part-1', name: 'Set of my own' });
    const changed = setPart(added, { ...own, id: 'own-part-1', name: 'Better set' });
    expect(last(changed.parts).name).toBe('Better set');
    expectSound(changed);
    expect(removePart(changed, 'own-part-1').parts).toEqual(boat().parts);
  });

  it('are not removed while in use, by whatever it is', () => {
    expect(refusal(() => removePart(boat(), VHF.id))).toBe(
      'Test VHF set is in use by VHF-1: choose another part there first.',
    );
    expect(refusal(() => removePart(boat(), THICK.id))).toBe(
      't-thick is in use by W01: choose another part there first.',
    );
    expect(refusal(() => removePart(boat(), 't-wire'))).toBe(
      '2.5 mm2 test wire is in use by F01, F02: choose another part there first.',
    );
    expect(removePart(boat(), PLUG.id).parts).toHaveLength(boat().parts.length - 1);
  });

  it('are refused without a name, with a taken id, or with figures no part has', () => {
    expect(refusal(() => addPart(boat(), { ...own, name: '' }))).toBe(
      'The part needs a name: it stands in the lists and on the install sheet.',
    );
    expect(refusal(() => addPart(boat(), { ...own, id: VHF.id }))).toBe(
      'There is already a part with the id "t-vhf": give the new one another.',
    );
    const wrong = { ...VHF, id: '', figures: { ...VHF.figures, txPowerW: { ...VHF.figures.txPowerW, value: -1 } } };
    expect(refusal(() => addPart(boat(), wrong))).toBe(
      'Test VHF set: The transmit power is −1 W, which no such part has. Put in a value from 0 to 50000 W.',
    );
  });

  it('keep the ports in use and the figures that items have of their own', () => {
    expect(refusal(() => setPart(boat(), { ...VHF, ports: VHF.ports.slice(1) }))).toBe(
      'The port "Antenna" of Test VHF set is in use at VHF-1: take off what is connected there first.',
    );
    expect(refusal(() => setPart(boat(), { ...WHIP, id: VHF.id }))).toBe(
      'Test VHF set is in use as a radio: make a new part for another kind of thing.',
    );
  });

  it('do not make a part known that would turn what is fitted into nonsense', () => {
    const unknown = frozen({ ...smallBoat(), items: [...smallBoat().items, item('x', 'of-2031', 'X1', 1, 1)] });
    expectSound(addPart(unknown, { ...VHF, id: 'of-2031' }));
    const run0 = smallBoat().runs[0];
    if (!run0) throw new Error('a run');
    const connected = frozen({ ...unknown, runs: [{ ...run0, to: { itemId: 'x', portId: 'zz' } }] });
    expect(refusal(() => addPart(connected, { ...VHF, id: 'of-2031' }))).toBe(
      'Test VHF set cannot be changed so. X1 (Test VHF set) has no port "zz". Name one of its ports: "ant", "dc", "nmea".',
    );
  });
});
