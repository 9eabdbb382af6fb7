import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseProject } from '../../../core/document/load.ts';
import { serialiseProject } from '../../../core/document/save.ts';
import { boatKindSchema } from '../../../core/model/boat.ts';
import { FORTY_PERCENT_DB, type NewProjectInput, newProject } from '../../../core/model/defaults.ts';
import { idMaker, nextId } from '../../../core/model/ids.ts';
import { smallBoat } from '../document/boat.ts';

const SEED = 20_261_125;
const KINDS = boatKindSchema.options;
const input = (change: Partial<NewProjectInput> = {}): NewProjectInput => ({
  name: 'Testling',
  kind: 'sloop',
  loaM: 12,
  beamM: 3.8,
  draughtM: 1.9,
  airDraughtM: 17,
  freeboardM: 1.1,
  ...change,
});

describe('a new boat', () => {
  it.each(KINDS)('of kind %s loads without a note and has places to fit things to', (kind) => {
    const project = newProject(input({ kind }));
    expect(parseProject(serialiseProject(project))).toEqual({ ok: true, project, notes: [] });
    expect(project.places.length).toBeGreaterThan(3);
    expect(project.boat.compartments.length).toBeGreaterThan(1);
  });

  it(`is sound whatever its numbers (seed ${SEED})`, () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...KINDS),
        number(2, 120),
        number(0.5, 40),
        number(0.1, 15),
        number(0, 15),
        number(0.31, 75),
        fc.integer({ min: 0, max: 3 }),
        (kind, loaM, beamM, draughtM, freeboardM, aboveM, mastCount) => {
          const airDraughtM = Math.min(90, freeboardM + aboveM);
          const project = newProject(input({ kind, loaM, beamM, draughtM, freeboardM, airDraughtM, mastCount }));
          const result = parseProject(serialiseProject(project));
          if (!result.ok) throw new Error(JSON.stringify(result.problems));
          for (const mast of project.boat.masts) {
            if (mast.truckZM > Math.max(airDraughtM, mast.footZM + 0.3) + 0.01)
              throw new Error('mast above the air draught');
          }
          return result.notes.length === 0;
        },
      ),
      { seed: SEED, numRuns: 500 },
    );
  });

  // Boat A of the demo set: a 12.4 m ketch, 17.2 m air draught, main truck at 16.2 m, mizzen truck at 11.4 m,
  // masts 4.8 m and 9.6 m aft. Proportions are common practice, so within a tenth.
  it('of a 12.4 m ketch is drawn much as such a ketch is', () => {
    const { boat } = newProject(input({ kind: 'ketch', loaM: 12.4, airDraughtM: 17.2 }));
    const [main, mizzen] = boat.masts;
    expect(main?.name).toBe('Main mast');
    expect(main?.truckZM).toBeCloseTo(16.2, 1);
    expect(main?.xM).toBeCloseTo(4.8, 0);
    expect(mizzen?.truckZM).toBeCloseTo(11.4, 0);
    expect(mizzen?.xM).toBeCloseTo(9.6, 1);
    expect(main?.spreaderZM).toHaveLength(2);
    expect(boat.lwlM).toBeCloseTo(10.6, 0);
  });

  it('has as many masts as asked for, the tallest last dropped', () => {
    const names = (mastCount: number) =>
      newProject(input({ kind: 'schooner', mastCount })).boat.masts.map(({ name }) => name);
    expect(names(2)).toEqual(['Fore mast', 'Main mast']);
    expect(names(1)).toEqual(['Main mast']);
    expect(names(0)).toEqual([]);
    expect(names(3)).toEqual(['Mast 1', 'Mast 2', 'Mast 3']);
    const unstepped = newProject(input({ kind: 'open-boat', loaM: 5, airDraughtM: 2, freeboardM: 0.5 }));
    expect(unstepped.boat.masts).toEqual([]);
  });

  it('starts with the limits of common practice', () => {
    const { settings, stations } = newProject(input());
    // 40 per cent lost leaves 60: 10 log10(1 / 0.6).
    expect(FORTY_PERCENT_DB).toBeCloseTo(2.218, 3);
    expect(settings).toMatchObject({ horizonRule: 'four-thirds-earth', voltageDropLimitPercent: 3 });
    expect(stations.map(({ antennaHeightM }) => antennaHeightM)).toEqual([15, 2, 25, 100, 150, 1.2, 40, 6]);
  });

  it('is refused with a sentence for numbers that cannot be', () => {
    expect(() => newProject(input({ loaM: 0 }))).toThrow(
      new RangeError('Length over all must be a number from 2 to 120 m; 0 is not.'),
    );
    expect(() => newProject(input({ beamM: Number.NaN }))).toThrow(
      'Beam must be a number from 0.5 to 40 m; NaN is not.',
    );
    expect(() => newProject(input({ mastCount: 4 }))).toThrow('Masts must be a whole number from 0 to 3; 4 is not.');
    expect(() => newProject(input({ airDraughtM: 1 }))).toThrow(
      'Air draught (1 m) must be more than the freeboard (1.1 m): it is the height of the highest point above the waterline.',
    );
  });
});

describe('ids', () => {
  it('follow the highest number anywhere in the project', () => {
    const project = smallBoat();
    expect(nextId(project, 'run')).toBe('run-2');
    expect(nextId(project, 'item')).toBe('item-1');
    expect(nextId(project, 'mast')).toBe('mast-2');
    const { items, feeds, dataLinks, runs } = project;
    const other = {
      id: 'layout-4',
      name: 'x',
      note: '',
      items,
      feeds,
      dataLinks,
      runs: runs.map((run) => ({ ...run, id: 'run-30' })),
    };
    expect(nextId({ ...project, alternatives: [other] }, 'run')).toBe('run-31');
    expect(nextId({ ...project, alternatives: [other] }, 'layout')).toBe('layout-5');
  });

  it('are the same for the same project and all different in one edit', () => {
    const make = idMaker(smallBoat());
    expect([make('run'), make('run'), make('feed')]).toEqual(['run-2', 'run-3', 'feed-3']);
    expect(nextId(smallBoat(), 'run')).toBe(nextId(smallBoat(), 'run'));
  });
});
