import { describe, expect, it } from 'vitest';
import { cameraOf, MAX_SCALE, panned, projectionOf, zoomed } from '../../../renderer/canvas/camera.ts';

const SIZE = { width: 800, height: 500 };
const VIEW = { originX: 700, originY: 400, scale: 40 };

describe('camera', () => {
  it('is the inverse of its projection', () => {
    const back = projectionOf(cameraOf(VIEW, SIZE), SIZE);
    expect(back.originX).toBeCloseTo(700, 9);
    expect(back.originY).toBeCloseTo(400, 9);
    expect(back.scale).toBe(40);
  });

  it('keeps the point under the pointer when zooming', () => {
    const at = { x: 123, y: 77 };
    const metresAt = (p: typeof VIEW) => [(p.originX - at.x) / p.scale, (p.originY - at.y) / p.scale];
    const after = projectionOf(zoomed(VIEW, SIZE, 1.7, at), SIZE);
    expect(after.scale).toBeCloseTo(68, 9);
    metresAt(after).forEach((value, i) => {
      expect(value).toBeCloseTo(metresAt(VIEW)[i] ?? Number.NaN, 9);
    });
  });

  it('stops at the closest view without drifting', () => {
    const near = projectionOf(zoomed(VIEW, SIZE, 1e6, { x: 700, y: 400 }), SIZE);
    expect(near.scale).toBe(MAX_SCALE);
    expect(near.originX).toBeCloseTo(700, 6);
  });

  it('pans by pixels', () => {
    const after = projectionOf(panned(VIEW, SIZE, 30, -12), SIZE);
    expect(after.originX).toBeCloseTo(730, 9);
    expect(after.originY).toBeCloseTo(388, 9);
  });
});
