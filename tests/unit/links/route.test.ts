import { describe, expect, it } from 'vitest';
import { routedLengthM, runLengthM, runRoute } from '../../../core/links/route.ts';
import { item, project, run } from './fixture.ts';

const bend = (xM: number, yM: number, zM: number) => ({ position: { xM, yM, zM }, placeId: null });
const base = (over: Parameters<typeof run>[4] = {}) =>
  project(
    [item('a', 'vhf', 0), item('b', 'whip', 10)],
    [
      run('w', 'a.ant', 'b.feed', 0, {
        measuredLengthM: null,
        via: [bend(5, 3, 4), bend(5, 3, 10)],
        slackM: 1,
        ...over,
      }),
    ],
  );
const only = (p: ReturnType<typeof base>) => {
  const [first] = p.runs;
  if (!first) throw new Error('no run');
  return first;
};

describe('route of a run', () => {
  it('goes from item over bends to item', () => {
    const p = base();
    expect(runRoute(p, only(p)).map(({ yM, zM }) => [yM, zM])).toEqual([
      [0, 0],
      [3, 4],
      [3, 10],
      [0, 10],
    ]);
  });

  it('is as long as its legs in space plus the slack: 5 + 6 + 3 + 1 m', () => {
    const p = base();
    expect(routedLengthM(p, only(p))).toBeCloseTo(15, 12);
    expect(runLengthM(p, only(p))).toBeCloseTo(15, 12);
  });

  it('a length measured aboard stands before the drawn one', () => {
    const p = base({ measuredLengthM: 17 });
    expect(runLengthM(p, only(p))).toBe(17);
    expect(routedLengthM(p, only(p))).toBeCloseTo(15, 12);
  });

  it('is the same object until an end moves', () => {
    const p = base();
    const before = runRoute(p, only(p));
    expect(runRoute({ ...p, title: 'x' }, only(p))).toBe(before);
    const moved = {
      ...p,
      items: p.items.map((i) => (i.id === 'b' ? { ...i, position: { ...i.position, zM: 12 } } : i)),
    };
    expect(runRoute(moved, only(moved)).at(-1)?.zM).toBe(12);
  });

  it('an end that does not exist is left out', () => {
    const p = base();
    expect(runRoute({ ...p, items: [] }, only(p))).toHaveLength(2);
  });
});
