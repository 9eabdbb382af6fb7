import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawPlan } from '../../../core/drawing/plan.ts';
import { drawProfile } from '../../../core/drawing/profile.ts';
import type { Shape } from '../../../core/drawing/types.ts';
import { boatKindSchema } from '../../../core/model/boat.ts';
import { newProject } from '../../../core/model/defaults.ts';
import type { Project } from '../../../core/model/project.ts';
import { DEMOS, demo, KINDS, optionsFor, resultsOf } from './demo.ts';

/** Every number in a shape, from its own fields and its path. */
function numbersIn(shape: Shape): readonly number[] {
  const own = Object.values(shape).filter((value) => typeof value === 'number');
  if (shape.kind !== 'path') return own;
  const steps = shape.d
    .replace(/[MLCQAZ]/g, ' ')
    .trim()
    .split(/\s+/)
    .map(Number);
  return [...own, ...steps, ...(shape.dash ?? [])];
}

function expectFinite(shapes: readonly Shape[]): void {
  for (const shape of shapes) {
    for (const value of numbersIn(shape)) expect(Number.isFinite(value), JSON.stringify(shape)).toBe(true);
    if (shape.kind === 'path') expect(shape.d).toMatch(/^M/);
    if (shape.kind !== 'text') expect(shape.width).toBeGreaterThanOrEqual(0);
  }
}

describe('any boat', () => {
  it('is drawn in finite numbers from any six believable ones', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...boatKindSchema.options),
        fc.double({ min: 2, max: 120, noNaN: true }),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        fc.double({ min: 0.1, max: 15, noNaN: true }),
        fc.double({ min: 0.1, max: 14, noNaN: true }),
        fc.double({ min: 0.2, max: 70, noNaN: true }),
        fc.integer({ min: 0, max: 3 }),
        (kind, loaM, beamM, draughtM, freeboardM, aboveM, mastCount) => {
          const airDraughtM = Math.min(90, freeboardM + aboveM);
          const project = newProject({ name: 'Any', kind, loaM, beamM, draughtM, airDraughtM, freeboardM, mastCount });
          expectFinite(drawProfile(project, { paths: [], findings: [] }, optionsFor(project)).shapes);
          expectFinite(drawPlan(project, { width: 300, height: 160, textSize: 11 }).shapes);
        },
      ),
      { seed: 20_251, numRuns: 150 },
    );
  });

  it('may have fittings, houses and masts of no size at all', () => {
    for (const project of KINDS) {
      const boat = {
        ...project.boat,
        lwlM: project.boat.loaM,
        fittings: (
          ['arch', 'hardtop', 'radar-pole', 'pulpit', 'pushpit', 'wheelhouse', 'flybridge', 'bowsprit', 'pole'] as const
        ).map((kind) => ({
          id: kind,
          name: kind,
          kind,
          xForeM: 1,
          xAftM: 1,
          zBaseM: 1,
          zTopM: 1,
          material: 'steel' as const,
        })),
        deckhouses: [{ xForeM: 2, xAftM: 2, zTopM: 0, material: 'grp' as const }],
        masts: project.boat.masts.map((mast) => ({ ...mast, truckZM: mast.footZM, boomZM: 2, boomLengthM: 0.01 })),
      };
      const flat: Project = { ...project, boat };
      const down = {
        lost: new Set<string>(),
        live: new Set<string>(),
        mastsDown: new Set(boat.masts.map(({ id }) => id)),
      };
      expectFinite(drawProfile(flat, { paths: [], findings: [] }, { ...optionsFor(flat), failure: down }).shapes);
    }
  });

  it.each(DEMOS)('%s is finite in profile and plan, in feet too, near and far', (name) => {
    const project = demo(name);
    const options = optionsFor(project);
    const feet = { ...options.preferences, length: 'ft', decimal: ',' } as const;
    for (const scale of [4, 30, 900]) {
      const projection = { originX: 700, originY: 500, scale };
      const show = { ...options.show, places: true };
      expectFinite(
        drawProfile(project, resultsOf(project), { ...options, preferences: feet, projection, show }).shapes,
      );
    }
    const plan = drawPlan(project, { width: 400, height: 200, textSize: 11 }).shapes;
    expectFinite(plan);
    const numbers = plan.flatMap((shape) =>
      shape.kind === 'text' && shape.layer === 'marks' ? [Number(shape.text)] : [],
    );
    expect(numbers).toEqual(project.items.map((_, index) => index + 1));
  });

  it('draws an item whose part nobody knows, a run to nothing and a boat with nothing aboard', () => {
    const project = demo('pelluna');
    const [item, ...rest] = project.items;
    if (!item) throw new Error('The demo boat has items.');
    const odd: Project = { ...project, items: [{ ...item, partId: 'gone' }, ...rest.slice(0, 2)] };
    expectFinite(drawProfile(odd, { paths: [], findings: [] }, optionsFor(odd)).shapes);
    const bare: Project = { ...project, items: [], runs: [], feeds: [], dataLinks: [] };
    expectFinite(drawProfile(bare, { paths: [], findings: [] }, optionsFor(bare)).shapes);
  });

  it('lays out two thousand items without overlapping what it has room for', () => {
    const project = demo('vessarine');
    const items = Array.from({ length: 2000 }, (_, index) => {
      const like = project.items[index % project.items.length];
      if (!like) throw new Error('The demo boat has items.');
      const position = { xM: (index * 0.61803) % 13, yM: 0, zM: ((index * 0.7548) % 4) - 1 };
      return { ...like, id: `many-${index}`, position };
    });
    const many: Project = { ...project, items, runs: [], feeds: [], dataLinks: [] };
    const { shapes } = drawProfile(many, { paths: [], findings: [] }, optionsFor(many));
    expectFinite(shapes);
    const balloons = shapes.filter((shape) => shape.kind === 'circle' && shape.layer === 'marks');
    expect(balloons).toHaveLength(2000);
  });
});
