import { describe, expect, it } from 'vitest';
import { movedPath, movedShape } from '../../../core/report/movedShape.ts';
import { drawingArea } from '../../../core/report/pageSize.ts';
import { profileSvg, sheetDrawing } from '../../../core/report/profileSheet.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import { ASSESSMENT, BOAT } from './boat.ts';

describe('shapes moved on the sheet', () => {
  it('moves points and leaves radii and flags', () => {
    expect(movedPath('M1 2 L3 4 C1 1 2 2 3 3 Q0 0 -1.5 1 A5 6 0 0 1 7 8 Z', 10, 100)).toBe(
      'M11 102 L13 104 C11 101 12 102 13 103 Q10 100 8.5 101 A5 6 0 0 1 17 108 Z',
    );
    const circle = {
      kind: 'circle',
      x: 1,
      y: 2,
      radius: 3,
      stroke: 'ink',
      fill: 'none',
      width: 1,
      layer: 'boat',
    } as const;
    expect(movedShape(circle, 1, 1)).toEqual({ ...circle, x: 2, y: 3 });
  });

  it('refuses what a drawing never has', () => {
    for (const d of ['M1', 'm1 1', 'H3', 'M1 1 Z4']) expect(() => movedPath(d, 1, 1)).toThrow(RangeError);
  });
});

describe('the profile on paper', () => {
  it('stands upright for a tall rig and lies for a long low boat, at a scale of the drawing office', () => {
    const tall = sheetDrawing(BOAT, ASSESSMENT, 'A4', METRIC_PREFERENCES);
    expect(tall.page).toBe('flow');
    const low = { ...BOAT, boat: { ...BOAT.boat, masts: [], airDraughtM: 4 }, items: [], runs: [], feeds: [] };
    const flat = sheetDrawing(low, { ...ASSESSMENT, paths: [], findings: [] }, 'A4', METRIC_PREFERENCES);
    expect(flat.page).toBe('landscape');
    for (const { drawing, page } of [tall, flat]) {
      const area = drawingArea('A4', page);
      expect([drawing.width, drawing.height]).toEqual([area.widthMm, area.heightMm]);
      const denominator = 1000 / drawing.projection.scale;
      expect(denominator / 5).toBeCloseTo(Math.round(denominator / 5), 9);
    }
    // The low boat is 12.4 m long on 267 mm less margins, so it is drawn larger than the 18 m high rig.
    expect(flat.drawing.projection.scale).toBeGreaterThan(tall.drawing.projection.scale);
  });

  it('is one framed SVG the size of the paper, with title block and scale', () => {
    const svg = profileSvg(BOAT, ASSESSMENT, 'Letter', METRIC_PREFERENCES);
    expect(svg).toContain('width="215.9mm" height="279.4mm"');
    const denominator = Number(/>Scale 1:(\d+)</.exec(svg)?.[1]);
    expect(denominator % 5).toBe(0);
    expect(svg).toContain('Test Ketch');
    expect(svg).not.toMatch(/NaN|undefined/);
  });
});
