import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minimalCutSets } from '../../../core/faultTree/cutSets.ts';
import { addColumn, downColumns, emptyColumns, hasColumn } from '../../../core/faultTree/scenarios.ts';
import type { FaultModel } from '../../../core/faultTree/types.ts';
import { budgetPaths } from '../../../core/links/budget.ts';
import type { Project, Subject } from '../../../core/model/project.ts';
import { assessRedundancy } from '../../../core/redundancy/redundancy.ts';
import { studyFailures } from '../../../core/redundancy/study.ts';
import type { FailureStudy, Redundancy, ServiceState } from '../../../core/redundancy/types.ts';
import { boatOf, boatPlans, plannedSets } from '../../support/generatedBoats.ts';

// Laws of redundancy on made-up boats; each follows from what the words mean, so no source is needed.

const RUNS = { numRuns: 120, seed: 20_261_126 };
const studied = (project: Project): FailureStudy => studyFailures(project, budgetPaths(project));
const everything = ({ events, causes }: FaultModel): string[] => [...events, ...causes.map(({ id }) => id)];

/** Gates down in each of several failures: what fails, and what the causes among it hit, is down; the meaning, no diagrams. */
function downIn(
  model: FaultModel,
  failures: readonly (readonly string[])[],
): (gate: string, failure: number) => boolean {
  const hits = new Map(model.causes.map((cause) => [cause.id, cause.hits]));
  const down = new Map<string, Uint32Array>();
  failures.forEach((failure, column) => {
    for (const id of failure.flatMap((each) => [each, ...(hits.get(each) ?? [])])) {
      const columns = down.get(id) ?? emptyColumns(failures.length);
      addColumn(columns, column);
      down.set(id, columns);
    }
  });
  const columnsOf = downColumns(model.gates, down, failures.length);
  return (gate, failure) => hasColumn(columnsOf(gate), failure);
}

/** Picks that become ids of one model: any model has them, whatever its size. */
const picks = (maxLength: number) => fc.array(fc.nat(10_000), { maxLength });
const named = (model: FaultModel, numbers: readonly number[]): string[] => {
  const ids = everything(model);
  return [...new Set(numbers.map((n) => ids[n % ids.length] ?? ''))];
};

describe('one more way beside those there are', () => {
  it('saves the boat from failures and costs none: what takes a service with it, took it before', () => {
    let lost = 0;
    fc.assert(
      fc.property(
        boatPlans(4),
        plannedSets,
        fc.array(picks(12), { minLength: 20, maxLength: 20 }),
        (plan, set, numbers) => {
          const before = studied(boatOf(plan));
          const after = studied(boatOf({ ...plan, sets: [...plan.sets, set] }));
          const same = sameCauses(before.model, after.model);
          const isAlike = (id: string): boolean => same.has(id) || isNew(before.model, id);
          const failures = numbers.map((each) => named(after.model, each).filter(isAlike));
          const [isDownBefore, isDownAfter] = [downIn(before.model, failures), downIn(after.model, failures)];
          for (const [service, top] of before.tops) {
            failures.forEach((failure, n) => {
              if (!isDownAfter(top, n)) return;
              lost += 1;
              expect(isDownBefore(top, n), `${service} by ${failure.join()}`).toBe(true);
            });
          }
        },
      ),
      RUNS,
    );
    expect(lost).toBeGreaterThan(1000);
  });

  it('adds no cut set that does not hold an old one, so none of a lower order', () => {
    fc.assert(
      fc.property(boatPlans(3), plannedSets, (plan, set) => {
        const before = studied(boatOf(plan));
        const after = studied(boatOf({ ...plan, sets: [...plan.sets, set] }));
        const same = sameCauses(before.model, after.model);
        for (const [service, top] of before.tops) {
          const old = minimalCutSets({ ...before.model, top }, 3);
          if (old.lostFromStart) continue;
          const olds = [1, 2, 3].flatMap((order) => old.ofOrder(order)).map((each) => new Set(each));
          const now = minimalCutSets({ ...after.model, top }, 3);
          expect(now.lostFromStart).toBe(false);
          for (const each of [1, 2, 3].flatMap((order) => now.ofOrder(order))) {
            if (!each.every((id) => same.has(id) || isNew(before.model, id))) continue;
            const members = new Set(each);
            const held = olds.some((set) => [...set].every((id) => members.has(id)));
            expect(held, `${service}: ${each.join()}`).toBe(true);
          }
        }
      }),
      RUNS,
    );
  });
});

/**
 * Components, and causes that hit the same of the old boat: with one more set a fire may start elsewhere, and then the two
 * fires are not one failure.
 */
function sameCauses(before: FaultModel, after: FaultModel): ReadonlySet<string> {
  const old = new Set(before.events);
  const oldHits = (hits: readonly string[]): string =>
    hits
      .filter((id) => old.has(id))
      .sort()
      .join();
  const now = new Map(after.causes.map((cause) => [cause.id, oldHits(cause.hits)]));
  const causes = before.causes.filter((cause) => now.get(cause.id) === oldHits(cause.hits));
  return new Set([...before.events, ...causes.map(({ id }) => id)]);
}

/** A component that only the new boat has; a cause is not meant. */
const isNew = (before: FaultModel, id: string): boolean => !id.startsWith('cause:') && !before.events.includes(id);

describe('one more failure', () => {
  it('mends no way and no service', () => {
    fc.assert(
      fc.property(boatPlans(5), picks(8), picks(4), (plan, some, more) => {
        const { model } = studied(boatOf(plan));
        const [few, many] = [named(model, some), named(model, [...some, ...more])];
        const isDown = downIn(model, [[], few, many]);
        for (const gate of model.gates.keys()) {
          if (isDown(gate, 0)) expect(isDown(gate, 1), gate).toBe(true);
          if (isDown(gate, 1)) expect(isDown(gate, 2), gate).toBe(true);
        }
      }),
      RUNS,
    );
  });

  it('betters no grade of the matrix, but that a set is taken off its mount to be used on deck', () => {
    fc.assert(
      fc.property(boatPlans(5), picks(5), picks(3), (plan, some, more) => {
        const boat = boatOf(plan);
        const { model } = studied(boat);
        const redundancy = withOwnEvents(boat, [subjects(model, some), subjects(model, [...some, ...more])]);
        const [drawn, few, many] = ['none', 'own:0', 'own:1'].map((id) => statesIn(redundancy, id));
        const carried = new Set(redundancy.ways.filter((way) => way.carried).map(({ id }) => id));
        drawn?.forEach((whole, index) => {
          expectNoBetter(whole, few?.[index], carried);
          expectNoBetter(few?.[index], many?.[index], carried);
        });
      }),
      RUNS,
    );
  });
});

/** An antenna that voice has borrowed and gives back when it is lost too would be another way up; no generated boat lends one. */
const RANK = { full: 2, reduced: 1, lost: 0 } as const;

function expectNoBetter(
  before: ServiceState | undefined,
  after: ServiceState | undefined,
  carried: ReadonlySet<string>,
): void {
  if (!before || !after) throw new Error('A state is missing.');
  const rising = after.liveWayIds.filter((id) => !before.liveWayIds.includes(id));
  for (const id of rising) expect(carried.has(id), `${after.serviceId} gains ${id}`).toBe(true);
  if (rising.length > 0) return;
  expect(RANK[after.grade], `${after.serviceId}: ${after.reason}`).toBeLessThanOrEqual(RANK[before.grade]);
}

/** Things of the drawing that own events can name; structures take what stands on them, which a tree knows another way. */
function subjects(model: FaultModel, numbers: readonly number[]): Subject[] {
  const things = model.events.filter((id) => !id.startsWith('structure:'));
  return [...new Set(numbers.map((n) => things[n % things.length] ?? ''))].map((id) => ({
    kind: id.slice(0, id.indexOf(':')) as Subject['kind'],
    id: id.slice(id.indexOf(':') + 1),
  }));
}

function withOwnEvents(boat: Project, failures: readonly Subject[][]): Redundancy {
  const events = failures.map((hits, n) => ({ id: `${n}`, label: `Own ${n}`, hits, note: '' }));
  const settings = { ...boat.settings, redundancy: { ...boat.settings.redundancy, events } };
  const project = { ...boat, settings };
  return assessRedundancy(project, { paths: budgetPaths(project), ranges: [] });
}

const statesIn = ({ matrix }: Redundancy, eventId: string): readonly ServiceState[] =>
  matrix.find(({ event }) => event.id === eventId)?.states ?? [];

describe('the what-if state', () => {
  it('is a loss just when a minimal cut set is down, whatever subset fails', () => {
    let [lost, kept] = [0, 0];
    fc.assert(
      fc.property(boatPlans(3), fc.array(picks(14), { minLength: 30, maxLength: 30 }), (plan, numbers) => {
        const { model, tops } = studied(boatOf(plan));
        const failures = numbers.map((each) => named(model, each));
        const isDown = downIn(model, failures);
        for (const top of tops.values()) {
          const sets = minimalCutSets({ ...model, top });
          if (sets.count > 4000) continue;
          const all = sets.countByOrder.flatMap((_, index) => sets.ofOrder(index + 1));
          failures.forEach((failure, n) => {
            const down = new Set(failure);
            const byCutSets = sets.lostFromStart || all.some((set) => set.every((id) => down.has(id)));
            expect(isDown(top, n), failure.join()).toBe(byCutSets);
            if (sets.lostFromStart) return;
            if (byCutSets) lost += 1;
            else kept += 1;
          });
        }
      }),
      RUNS,
    );
    // The subsets tried are of both kinds, or the test would prove nothing.
    expect(Math.min(lost, kept)).toBeGreaterThan(500);
  });

  it('of the matrix agrees with the trees: lost there just when lost here, but for what is carried out by hand', () => {
    fc.assert(
      fc.property(boatPlans(4), picks(6), (plan, some) => {
        const boat = boatOf(plan);
        const { model, tops } = studied(boat);
        const failed = subjects(model, some);
        const redundancy = withOwnEvents(boat, [failed]);
        const carried = new Set(redundancy.ways.filter((way) => way.carried).map(({ id }) => id));
        const isDown = downIn(model, [failed.map(({ kind, id }) => `${kind}:${id}`)]);
        for (const { serviceId, grade, liveWayIds } of statesIn(redundancy, 'own:0')) {
          const isLost = isDown(tops.get(serviceId) ?? '', 0);
          if (!isLost) expect(grade).not.toBe('lost');
          else expect(liveWayIds.every((id) => carried.has(id))).toBe(true);
        }
      }),
      RUNS,
    );
  });
});

describe('the study after an edit', () => {
  it('is that of the same boat seen for the first time, though it takes over what the edit left as it was', () => {
    fc.assert(
      fc.property(boatPlans(4), fc.array(fc.nat(200), { minLength: 1, maxLength: 4 }), (plan, numbers) => {
        let boat = boatOf(plan);
        told(boat);
        for (const n of numbers) {
          boat = edited(boat, n);
          expect(told(boat)).toEqual(told(structuredClone(boat)));
        }
      }),
      { ...RUNS, numRuns: 60 },
    );
  });
});

/** An item out of service or back in it, a feed gone, or a longer passage. */
function edited(boat: Project, n: number): Project {
  if (n % 5 === 0) {
    const redundancy = { ...boat.settings.redundancy, passageDays: 1 + n };
    return { ...boat, settings: { ...boat.settings, redundancy } };
  }
  if (n % 5 === 1) return { ...boat, feeds: boat.feeds.filter((_, index) => index !== n % boat.feeds.length) };
  const items = boat.items.map((item, index) =>
    index === n % boat.items.length
      ? { ...item, status: item.status === 'keep' ? ('remove' as const) : ('keep' as const) }
      : item,
  );
  return { ...boat, items };
}

/** All that a study says. */
function told(boat: Project) {
  const { cuts, riskOf, labels, chances, independence, model, tops } = studied(boat);
  const risks = cuts.map(({ serviceId }) => {
    const { low, nominal, high, isExact, rows } = riskOf(serviceId);
    return { serviceId, low, nominal, high, isExact, rows };
  });
  return { cuts, risks, labels, chances, independence, model, tops };
}
