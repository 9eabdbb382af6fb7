import { describe, expect, it } from 'vitest';
import { isInside, nearest, nearestSegment, rectBetween } from '../../../renderer/canvas/geometry.ts';

describe('geometry of the sheet', () => {
  it('makes the same rectangle from either diagonal', () => {
    const expected = { x: 2, y: 1, width: 8, height: 5 };
    expect(rectBetween({ x: 2, y: 1 }, { x: 10, y: 6 })).toEqual(expected);
    expect(rectBetween({ x: 10, y: 1 }, { x: 2, y: 6 })).toEqual(expected);
  });

  it('tells inside from outside with a margin', () => {
    const rect = { x: 0, y: 0, width: 10, height: 10 };
    expect(isInside({ x: 12, y: 5 }, rect)).toBe(false);
    expect(isInside({ x: 12, y: 5 }, rect, 2)).toBe(true);
  });

  it('finds the segment a click is on and where along it', () => {
    const line = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 20 },
    ];
    expect(nearestSegment({ x: 12, y: 5 }, line)).toEqual({ index: 1, t: 0.25, distance: 2 });
    expect(nearestSegment({ x: -3, y: 4 }, line)).toEqual({ index: 0, t: 0, distance: 5 });
    expect(nearestSegment({ x: 0, y: 0 }, [{ x: 1, y: 1 }])).toBeNull();
  });

  it('survives a segment of no length', () => {
    const same = { x: 3, y: 4 };
    expect(nearestSegment({ x: 0, y: 0 }, [same, same])).toEqual({ index: 0, t: 0, distance: 5 });
  });

  it('takes the nearest within reach, nothing beyond it', () => {
    const entries = [{ at: { x: 0, y: 0 } }, { at: { x: 6, y: 0 } }];
    expect(nearest({ x: 4, y: 0 }, entries, 10)).toBe(entries[1]);
    expect(nearest({ x: 40, y: 0 }, entries, 10)).toBeNull();
  });
});
