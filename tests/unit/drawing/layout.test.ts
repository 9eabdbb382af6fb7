import { describe, expect, it } from 'vitest';
import { distanceToSegment } from '../../../core/drawing/geometry.ts';
import { drawInstallation, drawProfile } from '../../../core/drawing/profile.ts';
import type { Shape } from '../../../core/drawing/types.ts';
import type { Project } from '../../../core/model/project.ts';
import { balloonsIn, DEMOS, demo, optionsFor, overlap, resultsOf, runLabelsIn, textBounds } from './demo.ts';

const SHEETS = [
  [1280, 800, 11],
  [1000, 640, 12],
  [283, 178, 2.6],
  [190, 240, 2.6],
] as const;

const cases = DEMOS.flatMap((name) => SHEETS.map(([w, h, size]) => [name, w, h, size] as const));

function drawnOn(project: Project, width: number, height: number, textSize: number): readonly Shape[] {
  return drawInstallation(project, resultsOf(project), optionsFor(project, width, height, textSize));
}

type Circle = Extract<Shape, { kind: 'circle' }>;
type Words = Extract<Shape, { kind: 'text' }>;
const circles = (shapes: readonly Shape[]): readonly Circle[] =>
  balloonsIn(shapes).filter((shape) => shape.kind === 'circle');
const words = (shapes: readonly Shape[]): readonly Words[] =>
  runLabelsIn(shapes).filter((shape) => shape.kind === 'text');

describe.each(cases)('%s on a sheet of %d by %d', (name, width, height, textSize) => {
  const project = demo(name);
  const shapes = drawnOn(project, width, height, textSize);

  it('gives every item exactly one balloon, on the sheet', () => {
    const ids = circles(shapes).map(({ subject }) => subject?.id);
    expect([...ids].sort()).toEqual(project.items.map(({ id }) => id).sort());
    for (const { x, y, radius } of circles(shapes)) {
      expect(x - radius).toBeGreaterThan(0);
      expect(x + radius).toBeLessThan(width);
      expect(y - radius).toBeGreaterThan(0);
      expect(y + radius).toBeLessThan(height);
    }
  });

  it('numbers them in document order', () => {
    const numbers = shapes.filter(
      (shape) => shape.kind === 'text' && shape.layer === 'marks' && /^\d+$/.test(shape.text),
    );
    for (const shape of numbers) {
      if (shape.kind !== 'text') continue;
      expect(project.items[Number(shape.text) - 1]?.id).toBe(shape.subject?.id);
    }
    expect(numbers).toHaveLength(project.items.length);
  });

  it('lets no two balloons overlap', () => {
    const all = circles(shapes);
    all.forEach((a, index) => {
      for (const b of all.slice(index + 1)) {
        expect(Math.hypot(a.x - b.x, a.y - b.y), `${a.subject?.id} and ${b.subject?.id}`).toBeGreaterThan(
          a.radius + b.radius,
        );
      }
    });
  });

  it('lets no label overlap a balloon or another run’s label', () => {
    const labels = words(shapes);
    for (const label of labels) {
      const box = textBounds(label);
      for (const { x, y, radius, subject } of circles(shapes)) {
        const nearX = Math.min(Math.max(x, box.left), box.right);
        const nearY = Math.min(Math.max(y, box.top), box.bottom);
        expect(Math.hypot(nearX - x, nearY - y), `${label.text} on ${subject?.id}`).toBeGreaterThan(radius);
      }
      for (const other of labels) {
        if (other.subject?.id === label.subject?.id) continue;
        expect(overlap(box, textBounds(other)), `${label.text} on ${other.text}`).toBe(false);
      }
    }
  });

  it('names every run', () => {
    const named = new Set(words(shapes).map(({ subject }) => subject?.id));
    expect([...named].sort()).toEqual(project.runs.map(({ id }) => id).sort());
  });

  it('crosses no leader with another, and runs none under a balloon', () => {
    expect(crossings(shapes)).toEqual([]);
    const under = leadersIn(shapes).flatMap(({ x1, y1, x2, y2 }) =>
      circles(shapes).filter(({ x, y, radius }) => {
        // The leader's own balloon is where it ends: a radius from the middle.
        if (Math.hypot(x - x2, y - y2) < 1.05 * radius) return false;
        return distanceToSegment({ x, y }, { x: x1, y: y1 }, { x: x2, y: y2 }) < radius;
      }),
    );
    expect(under.map(({ subject }) => subject?.id)).toEqual([]);
  });
});

/** Leaders are the straight two-point lines in ink among the labels. */
function leadersIn(shapes: readonly Shape[]) {
  return shapes.flatMap((shape) => {
    if (shape.kind !== 'path' || shape.layer !== 'labels' || shape.stroke !== 'ink') return [];
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = shape.d.match(/-?[\d.]+/g)?.map(Number) ?? [];
    return [{ x1, y1, x2, y2, d: shape.d }];
  });
}

function crossings(shapes: readonly Shape[]): readonly string[] {
  const leaders = leadersIn(shapes);
  const side = (px: number, py: number, qx: number, qy: number, rx: number, ry: number): number =>
    (qx - px) * (ry - py) - (qy - py) * (rx - px);
  return leaders.flatMap((a, index) =>
    leaders
      .slice(index + 1)
      .filter(
        (b) =>
          side(a.x1, a.y1, a.x2, a.y2, b.x1, b.y1) * side(a.x1, a.y1, a.x2, a.y2, b.x2, b.y2) < 0 &&
          side(b.x1, b.y1, b.x2, b.y2, a.x1, a.y1) * side(b.x1, b.y1, b.x2, b.y2, a.x2, a.y2) < 0,
      )
      .map((b) => `${a.d} x ${b.d}`),
  );
}

describe('layout', () => {
  it('is the same every time', () => {
    const first = demo('vessarine');
    const second = demo('vessarine');
    expect(drawProfile(second, resultsOf(second), optionsFor(second))).toEqual(
      drawProfile(first, resultsOf(first), optionsFor(first)),
    );
  });

  it('moves balloons little when an item moves little', () => {
    const project = demo('brannoch-tern');
    const options = optionsFor(project);
    const before = new Map(
      circles(drawInstallation(project, resultsOf(project), options)).map((c) => [c.subject?.id, c]),
    );
    let jumps = 0;
    for (const moved of project.items) {
      const items = project.items.map((item) =>
        item === moved ? { ...item, position: { ...item.position, xM: item.position.xM + 0.03 } } : item,
      );
      const after = circles(drawInstallation({ ...project, items }, resultsOf(project), options));
      for (const balloon of after) {
        const was = before.get(balloon.subject?.id);
        if (was && Math.hypot(balloon.x - was.x, balloon.y - was.y) > 2 * balloon.radius) jumps++;
      }
    }
    // 20 items each moved by 3 cm make 400 balloons; now and then two neighbours change places.
    expect(jumps).toBeLessThanOrEqual(12);
  });

  it('draws no balloon for what is off the sheet when zoomed in', () => {
    const project = demo('brannoch-tern');
    const options = { ...optionsFor(project), projection: { originX: 1400, originY: 500, scale: 130 } };
    const shapes = drawInstallation(project, resultsOf(project), options);
    const ids = new Set(circles(shapes).map(({ subject }) => subject?.id));
    expect(ids.has('vhf-1')).toBe(true);
    expect(ids.has('a1')).toBe(false);
    for (const { x, y, radius } of circles(shapes)) {
      expect(x - radius).toBeGreaterThan(0);
      expect(x + radius).toBeLessThan(options.width);
      expect(y + radius).toBeLessThan(options.height);
    }
  });
});
