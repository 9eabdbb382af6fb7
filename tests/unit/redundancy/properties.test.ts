import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { budgetPaths } from '../../../core/links/budget.ts';
import type { Project } from '../../../core/model/project.ts';
import { assessRedundancy } from '../../../core/redundancy/redundancy.ts';
import type { Redundancy } from '../../../core/redundancy/types.ts';
import { feed, item, link, run, smallBoat } from './smallBoat.ts';

const assessed = (project: Project): Redundancy =>
  assessRedundancy(project, { paths: budgetPaths(project), ranges: [] });

const RANK = { full: 2, reduced: 1, lost: 0 } as const;

/** Another fixed set: its own or a shared antenna, its own bank or the breaker of the first, with or without position. */
interface Extra {
  readonly antenna: 'arch' | 'masthead';
  readonly supply: 'BAT2' | 'BRK' | 'none';
  readonly position: boolean;
  readonly lengthM: number;
}

const extras: fc.Arbitrary<Extra> = fc.record({
  antenna: fc.constantFrom('arch', 'masthead'),
  supply: fc.constantFrom('BAT2', 'BRK', 'none'),
  position: fc.boolean(),
  lengthM: fc.integer({ min: 1, max: 80 }),
});

function withExtras(boat: Project, sets: readonly Extra[]): Project {
  const items = [...boat.items];
  const runs = [...boat.runs];
  const feeds = [...boat.feeds];
  const dataLinks = [...boat.dataLinks];
  sets.forEach((extra, n) => {
    items.push(item(`X${n}`, 'vhf', 'hut'), item(`Y${n}`, 'whip', extra.antenna));
    runs.push(run(`Z${n}`, `X${n}.ant`, `Y${n}.rf`, { measuredLengthM: extra.lengthM }));
    if (extra.supply !== 'none') feeds.push(feed(`S${n}`, extra.supply, `X${n}`));
    if (extra.position) dataLinks.push(link(`L${n}`, 'BUS', `X${n}`));
  });
  return { ...boat, items, runs, feeds, dataLinks };
}

const base = (() => {
  const boat = smallBoat();
  return { ...boat, items: [...boat.items, item('BAT2', 'bank', 'locker')] };
})();

describe('one more set', () => {
  it('never adds a single point of a service that worked', () => {
    fc.assert(
      fc.property(fc.array(extras, { maxLength: 3 }), extras, (sets, more) => {
        const before = assessed(withExtras(base, sets));
        const after = assessed(withExtras(base, [...sets, more]));
        const points = (redundancy: Redundancy) =>
          redundancy.singlePoints.flatMap(({ componentId, serviceIds }) =>
            serviceIds.map((id) => `${componentId} ${id}`),
          );
        expect(points(before)).toEqual(expect.arrayContaining(points(after)));
      }),
      { numRuns: 60 },
    );
  });

  it('never makes a service worse in any event', () => {
    fc.assert(
      fc.property(fc.array(extras, { maxLength: 3 }), extras, (sets, more) => {
        const before = assessed(withExtras(base, sets));
        const after = new Map(assessed(withExtras(base, [...sets, more])).matrix.map((row) => [row.event.id, row]));
        for (const { event, states } of before.matrix) {
          states.forEach((state, index) => {
            const now = after.get(event.id)?.states[index]?.grade ?? 'lost';
            expect(RANK[now], `${event.id} ${state.serviceId}`).toBeGreaterThanOrEqual(RANK[state.grade]);
          });
        }
      }),
      { numRuns: 60 },
    );
  });

  it('never makes a service better to lose something', () => {
    fc.assert(
      fc.property(fc.array(extras, { maxLength: 3 }), (sets) => {
        const { matrix } = assessed(withExtras(base, sets));
        const [asDrawn] = matrix;
        for (const { event, states } of matrix) {
          states.forEach((state, index) => {
            const whole = asDrawn?.states[index]?.grade ?? 'lost';
            expect(RANK[state.grade], `${event.id} ${state.serviceId}`).toBeLessThanOrEqual(RANK[whole]);
          });
        }
      }),
      { numRuns: 60 },
    );
  });
});
