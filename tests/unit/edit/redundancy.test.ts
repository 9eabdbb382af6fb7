import { describe, expect, it } from 'vitest';
import { parseProject } from '../../../core/document/load.ts';
import { serialiseProject } from '../../../core/document/save.ts';
import {
  addOwnEvent,
  removeOwnEvent,
  setChance,
  setEventExcluded,
  setOwnEvent,
  setRedundancy,
} from '../../../core/edit/redundancy.ts';
import type { Project, Subject } from '../../../core/model/project.ts';
import { smallBoat } from '../document/boat.ts';
import { expectSound, frozen, refusal } from './support.ts';

const boat = (): Project => frozen(smallBoat());
const hits: Subject[] = [{ kind: 'boat', id: 'boat' }];

describe('failures of the user’s own', () => {
  it('are added, changed and taken away', () => {
    const added = addOwnEvent(boat(), { label: 'Locker floods', hits, note: '' });
    expect(added.settings.redundancy.events).toEqual([{ id: 'event-1', label: 'Locker floods', hits, note: '' }]);
    expectSound(added);
    const again = addOwnEvent(added, { label: 'Other', hits, note: '' });
    expect(again.settings.redundancy.events[1]?.id).toBe('event-2');
    const renamed = setOwnEvent(again, 'event-1', { label: 'Aft locker floods' });
    expect(renamed.settings.redundancy.events.map(({ label }) => label)).toEqual(['Aft locker floods', 'Other']);
    expect(removeOwnEvent(renamed, 'event-2').settings.redundancy.events).toHaveLength(1);
  });

  it('leave nothing behind that the next one of the same id would inherit', () => {
    const added = setEventExcluded(addOwnEvent(boat(), { label: 'A', hits, note: '' }), 'own:event-1', true);
    const stated = setChance(added, 'own:event-1', { lowPercent: 1, percent: 2, highPercent: 3, source: 'log' });
    expect(removeOwnEvent(stated, 'event-1')).toEqual(boat());
  });

  it('of one id twice are refused when read', () => {
    const once = addOwnEvent(boat(), { label: 'A', hits, note: '' });
    const twice = setRedundancy(once, {
      events: [...once.settings.redundancy.events, ...once.settings.redundancy.events],
    });
    const loaded = parseProject(serialiseProject(twice));
    expect(loaded.ok ? [] : loaded.problems.map(({ what }) => what)).toEqual([
      expect.stringMatching(/^The id "event-1" is already that of/),
    ]);
  });

  it('are refused without a name or without anything they take down', () => {
    expect(refusal(() => addOwnEvent(boat(), { label: '  ', hits, note: '' }))).toBe(
      'A failure of your own needs a name: it stands in the matrix.',
    );
    expect(refusal(() => addOwnEvent(boat(), { label: 'Nothing', hits: [], note: '' }))).toBe(
      'Nothing takes nothing down: choose at least one thing it hits.',
    );
    expect(refusal(() => setOwnEvent(boat(), 'event-9', { label: 'x' }))).toBe(
      'There is no failure "event-9" of your own in this project.',
    );
  });
});

describe('events left out', () => {
  it('are kept once each, and come back', () => {
    const out = setEventExcluded(boat(), 'lightning', true);
    expect(setEventExcluded(out, 'lightning', true)).toBe(out);
    expect(out.settings.redundancy.excludedEventIds).toEqual(['lightning']);
    expect(setEventExcluded(out, 'lightning', false).settings.redundancy.excludedEventIds).toEqual([]);
    expectSound(out);
  });
});

describe('chances', () => {
  const chance = { lowPercent: 1, percent: 2, highPercent: 5, source: 'own log' };

  it('are stated and taken back', () => {
    const stated = setChance(boat(), 'radio', chance);
    expect(stated.settings.redundancy.chances).toEqual({ radio: chance });
    expectSound(stated);
    expect(setChance(stated, 'radio', null).settings.redundancy.chances).toEqual({});
  });

  it('are refused beyond 100 per cent, or where the middle lies outside', () => {
    expect(refusal(() => setChance(boat(), 'radio', { ...chance, highPercent: 120 }))).toContain('100');
    expect(refusal(() => setChance(boat(), 'radio', { ...chance, percent: 7 }))).toBe(
      'Chance of failure: 7 % must lie between the least, 1 %, and the most, 5 %.',
    );
  });
});

it('the passage is at least a tenth of a day', () => {
  expect(refusal(() => setRedundancy(boat(), { passageDays: 0 }))).toMatch(/^Redundancy: /);
  expect(setRedundancy(boat(), { seaArea: 'A3' }).settings.redundancy.seaArea).toBe('A3');
});
