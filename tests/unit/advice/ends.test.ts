import { describe, expect, it } from 'vitest';
import { advise } from '../../../core/advice/advise.ts';
import type { Project } from '../../../core/model/project.ts';
import { feed, item, link, P, run, smallBoat } from '../redundancy/smallBoat.ts';
import { plain } from './boats.ts';
import { idsOf } from './support.ts';

// The two ends of the scale: a boat that has all twice, apart from each other, and one that has nothing.

const SETS = ['VHF', 'VHF2', 'AIS', 'AIS2', 'GPS', 'GPS2'] as const;

/** Two of all, on two batteries, two structures and in two spaces; the crew have left lightning out. */
function allTwice(change: Partial<Project> = {}): Project {
  const locker = plain.places.filter(({ id }) => id === 'locker');
  const aft = locker.map((place) => ({ ...place, id: 'aft', name: 'Aft', position: P(10, 0.7), compartmentId: null }));
  const { settings } = plain;
  return smallBoat({
    places: [...plain.places, ...aft],
    items: [
      ...['VHF', 'AIS'].flatMap((id) => [
        item(id, id.toLowerCase(), 'hut'),
        item(`${id}2`, id.toLowerCase(), 'aft', { position: P(10, 0.7) }),
      ]),
      ...['A1', 'A3'].map((id) => item(id, 'whip', 'masthead')),
      ...['A2', 'A4'].map((id) => item(id, 'whip', 'arch')),
      item('GPS', 'gps', 'masthead'),
      item('GPS2', 'gps', 'arch'),
      item('BAT', 'bank', 'bilge'),
      item('BAT2', 'bank', 'aft', { position: P(10, 0.7) }),
      ...['handheld-dsc', 'beacon', 'handheld-satellite'].flatMap((id) => [
        item(`${id}-1`, id, null),
        item(`${id}-2`, id, null),
      ]),
    ],
    runs: [
      run('W1', 'VHF.ant', 'A1.rf'),
      run('W2', 'VHF2.ant', 'A2.rf'),
      run('W3', 'AIS.ant', 'A3.rf'),
      run('W4', 'AIS2.ant', 'A4.rf'),
    ],
    feeds: SETS.map((id, index) => feed(`F${index}`, index % 2 === 0 ? 'BAT' : 'BAT2', id)),
    dataLinks: ['VHF', 'VHF2'].flatMap((id) => [link(`D1-${id}`, 'GPS', id), link(`D2-${id}`, 'GPS2', id)]),
    settings: { ...settings, redundancy: { ...settings.redundancy, excludedEventIds: ['lightning'] } },
    ...change,
  });
}

describe('a boat with nothing to mend', () => {
  it('has no single point of failure, and no advice', () => {
    const { points, changes } = advise(allTwice());
    expect(points).toEqual([]);
    expect(changes.map(({ candidate }) => candidate.id)).toEqual([]);
  });

  it('has advice again as soon as one thing of two is gone', () => {
    const whole = allTwice();
    const { points } = advise({ ...whole, items: whole.items.filter(({ id }) => id !== 'beacon-2') });
    expect(points.map(({ pointId }) => pointId)).toEqual(['item:beacon-1']);
    const oneBank = allTwice({ feeds: SETS.map((id, index) => feed(`F${index}`, 'BAT', id)) });
    expect(idsOf(advise(oneBank))).toContain('second-feed:VHF:BAT2');
  });
});

describe('a boat with nothing aboard', () => {
  it('is told what to carry, and of all else that it takes a set', () => {
    const { points, changes, tried } = advise(smallBoat({ items: [], runs: [], feeds: [], dataLinks: [] }));
    const spares = ['spare:beacon-406-manual', 'spare:handheld-satellite', 'spare:handheld-vhf-dsc-5w'];
    expect(changes.map(({ candidate }) => candidate.id).toSorted()).toEqual(spares);
    expect(tried).toBe(spares.length);
    expect(points.every(({ pointId }) => pointId.startsWith('lost:'))).toBe(true);
    const without = points.filter((point) => point.changes.length === 0);
    expect(without.map(({ pointId }) => pointId)).toEqual([
      'lost:voice-fixed',
      'lost:ais-transmit',
      'lost:ais-receive',
    ]);
    for (const { why } of without) expect(why).toMatch(/^Nothing aboard gives it/);
  });
});
