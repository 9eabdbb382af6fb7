import { describe, expect, it } from 'vitest';
import { drawBackdrop } from '../../../core/drawing/backdrop.ts';
import { hullLines } from '../../../core/drawing/hulls.ts';
import { drawn } from '../../../core/drawing/pen.ts';
import { bareExtent, boatExtent, fitProjection, fromDrawing, toDrawing } from '../../../core/drawing/projection.ts';
import { DEMOS, demo, KINDS, optionsFor, pathBounds } from './demo.ts';

describe('scale', () => {
  it.each(KINDS.map((project) => [project.boat.kind, project] as const))(
    'draws the hull of a %s as long as its length over all, and as deep as its draught',
    (_, project) => {
      const options = optionsFor(project);
      const { scale, originX, originY } = options.projection;
      const { boat } = project;
      const hull = hullLines(boat);
      const outline = pathBounds(drawn(options.projection, hull.outline));
      expect(outline.right).toBeCloseTo(originX, 1);
      expect(outline.right - outline.left).toBeCloseTo(boat.loaM * scale, 1);
      const below = [hull.outline, ...hull.appendages].map(
        (curve) => pathBounds(drawn(options.projection, curve)).bottom,
      );
      // The foot of a fair curve may swell past its points by a hair.
      const draughtM = (Math.max(...below) - originY) / scale;
      expect(draughtM).toBeGreaterThan(0.93 * boat.draughtM);
      expect(draughtM).toBeLessThan(1.02 * boat.draughtM);
      const paths = drawBackdrop(project, options).map((shape) => (shape.kind === 'path' ? shape.d : ''));
      expect(paths).toContain(drawn(options.projection, hull.outline));
    },
  );

  it('puts the truck of a mast at its height above the waterline', () => {
    const project = demo('brannoch-tern');
    const options = optionsFor(project);
    const { scale, originY, originX } = options.projection;
    const tops = drawBackdrop(project, options).flatMap((shape) =>
      shape.kind === 'path' && shape.stroke === 'boat' ? [pathBounds(shape.d)] : [],
    );
    for (const mast of project.boat.masts) {
      const x = originX - mast.xM * scale;
      const found = tops.filter(
        ({ left, right, top }) => left < x && x < right && Math.abs(top - (originY - mast.truckZM * scale)) < 0.1,
      );
      expect(found, mast.name).toHaveLength(1);
    }
  });

  it('keeps the bow to the right and turns back what it projects', () => {
    const projection = fitProjection(demo('pelluna'), 900, 600, 10);
    expect(toDrawing(projection, { xM: 0, zM: 0 }).x).toBeGreaterThan(toDrawing(projection, { xM: 11, zM: 0 }).x);
    const there = toDrawing(projection, { xM: 3.21, zM: -0.4 });
    expect(fromDrawing(projection, there).xM).toBeCloseTo(3.21, 9);
    expect(fromDrawing(projection, there).zM).toBeCloseTo(-0.4, 9);
  });

  it.each([
    [1280, 800, 11],
    [640, 480, 11],
    [297, 178, 2.6],
    [210, 250, 2.6],
  ])('fits every boat with its antennas on a sheet of %d by %d', (width, height, textSize) => {
    for (const project of [...DEMOS.map(demo), ...KINDS]) {
      const projection = fitProjection(project, width, height, textSize, textSize);
      const extent = boatExtent(project);
      const bow = toDrawing(projection, { xM: extent.xForeM, zM: extent.zHighM });
      const stern = toDrawing(projection, { xM: extent.xAftM, zM: extent.zLowM });
      expect(bow.x).toBeLessThan(width - textSize);
      expect(stern.x).toBeGreaterThan(textSize);
      expect(bow.y).toBeGreaterThan(textSize);
      expect(stern.y).toBeLessThan(height - 3 * textSize);
    }
  });

  it('counts an antenna at its length, not only its base', () => {
    const project = demo('brannoch-tern');
    expect(boatExtent(project).zHighM).toBeCloseTo(17.2, 1);
    const taller = { ...project, boat: { ...project.boat, airDraughtM: 10 } };
    expect(bareExtent(taller.boat).zHighM).toBe(16.2);
    expect(boatExtent(taller).zHighM).toBeGreaterThan(17);
  });

  it('refuses a sheet without a size', () => {
    expect(() => fitProjection(demo('pelluna'), 0, 600, 10)).toThrow(RangeError);
    expect(() => fitProjection(demo('pelluna'), 600, Number.NaN, 10)).toThrow(RangeError);
  });
});
