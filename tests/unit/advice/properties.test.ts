import { describe, expect, it } from 'vitest';
import { adviceSteps, advise, knownAdvice } from '../../../core/advice/advise.ts';
import type { RankedChange } from '../../../core/advice/types.ts';
import { assess } from '../../../core/assess.ts';
import { parseProject } from '../../../core/document/load.ts';
import { checkReferences } from '../../../core/document/references.ts';
import { serialiseProject } from '../../../core/document/save.ts';
import type { Project } from '../../../core/model/project.ts';
import { studyFailures } from '../../../core/redundancy/study.ts';
import { loadPreferences } from '../../../renderer/store/preferences.ts';
import { createAppStore } from '../../../renderer/store/store.ts';
import { smallBoat } from '../redundancy/smallBoat.ts';
import { demo } from './support.ts';

const BOATS: readonly (readonly [string, Project])[] = [
  ['Brannoch Tern', demo('brannoch-tern')],
  ['Pelluna', demo('pelluna')],
  ['Vessarine', demo('vessarine')],
  ['a small sloop', smallBoat()],
];

/** Single points of each service of a project, studied afresh. */
function singlesOf(project: Project): ReadonlyMap<string, readonly string[]> {
  const cuts = studyFailures(project, assess(project).paths).cuts;
  return new Map(cuts.map((cut) => [cut.serviceId, cut.lostFromStart ? [`lost:${cut.serviceId}`] : cut.singles]));
}

/** Minimal cut sets by order of every service that has a way. */
function countsOf(project: Project): ReadonlyMap<string, readonly number[]> {
  const cuts = studyFailures(project, assess(project).paths).cuts.filter(({ lostFromStart }) => !lostFromStart);
  return new Map(cuts.map(({ serviceId, countByOrder }) => [serviceId, countByOrder]));
}

/** Cells that both matrices have and that rise, and that fall. */
function movedCells(before: Project, after: Project): readonly number[] {
  const order = ['lost', 'reduced', 'full'];
  const cells = (project: Project): ReadonlyMap<string, number> =>
    new Map(
      assess(project).redundancy.matrix.flatMap(({ event, states }) =>
        states.map(({ serviceId, grade }) => [`${event.id} ${serviceId}`, order.indexOf(grade)] as const),
      ),
    );
  const was = cells(before);
  const moves = [...cells(after)].map(([key, rank]) => rank - (was.get(key) ?? rank));
  return [moves.filter((move) => move > 0).length, moves.filter((move) => move < 0).length];
}

describe.each(BOATS)('advice for %s', (_, project) => {
  const advice = advise(project);
  const made = (change: RankedChange): Project => change.candidate.apply(project);

  it('helps with something', () => expect(advice.changes.length).toBeGreaterThan(5));

  it('every change gives a document that is sound and loads again as it was', () => {
    for (const change of advice.changes) {
      const after = made(change);
      expect(checkReferences(after).problems, change.candidate.id).toEqual([]);
      const loaded = parseProject(serialiseProject(after));
      expect(loaded.ok && loaded.project, change.candidate.id).toEqual(after);
    }
  });

  it('a point that a change is said to free a service of no longer takes it alone', () => {
    for (const change of advice.changes) {
      const after = singlesOf(made(change));
      for (const { pointId, serviceIds } of change.effect.rescues) {
        for (const id of serviceIds) expect(after.get(id), `${change.candidate.id} ${pointId}`).not.toContain(pointId);
      }
    }
  });

  it('what was measured is what a fresh look at the changed boat says', () => {
    const before = countsOf(project);
    for (const change of advice.changes) {
      const after = countsOf(made(change));
      const shared = [...before.keys()].filter((id) => after.has(id));
      const sum = (counts: ReadonlyMap<string, readonly number[]>, order: number): number =>
        shared.reduce((total, id) => total + (counts.get(id)?.[order] ?? 0), 0);
      const { before: was, after: is, cellsBetter, cellsWorse } = change.effect;
      expect([was, is], change.candidate.id).toEqual([
        { singles: sum(before, 0), pairs: sum(before, 1) },
        { singles: sum(after, 0), pairs: sum(after, 1) },
      ]);
      expect([cellsBetter, cellsWorse], change.candidate.id).toEqual(movedCells(project, made(change)));
    }
  });

  it('no change touches the boat it is tried on, and making it twice gives the same', () => {
    const text = serialiseProject(project);
    for (const change of advice.changes) expect(made(change)).toEqual(made(change));
    expect(serialiseProject(project)).toBe(text);
  });

  it('making a change is one step, and undoing it gives the very same document back', () => {
    for (const { candidate } of advice.changes) {
      const store = createAppStore(project, loadPreferences({ getItem: () => null }));
      expect(store.getState().edit(candidate.title, candidate.apply), candidate.id).toBe(true);
      expect(store.getState().project).not.toBe(project);
      store.getState().undo();
      expect(store.getState().project).toBe(project);
    }
  });

  it('every single point has changes or a sentence why not, and none is missing', () => {
    const expected = new Set([...singlesOf(project).values()].flat());
    expect(new Set(advice.points.map(({ pointId }) => pointId))).toEqual(expected);
    for (const { pointId, changes, why } of advice.points) {
      expect(changes.length > 0, pointId).toBe(why === null);
      if (why !== null) expect(why).toMatch(/^[A-Z].*\.$/);
    }
  });

  it('every change says what it takes and what to mind', () => {
    for (const { candidate, material } of advice.changes) {
      expect(material.adds.length, candidate.id).toBeGreaterThan(0);
      if (/battery|feed|breaker/.test(candidate.kind)) {
        expect(candidate.cautions.join(' '), candidate.id).toMatch(/qualified marine electrician/);
      }
      expect(candidate.title).not.toMatch(/\.$/);
    }
  });

  it('every feed it draws has a fuse or a breaker at its source', () => {
    const unprotected = (of: Project): readonly string[] =>
      assess(of)
        .feeds.filter(({ protection }) => protection.verdict !== 'good')
        .map(({ feedId }) => feedId);
    for (const change of advice.changes) {
      const fresh = unprotected(made(change)).filter((id) => !project.feeds.some((feed) => feed.id === id));
      expect(fresh, change.candidate.id).toEqual([]);
    }
  });

  it('is in order: services freed, then single points gone', () => {
    const worth = advice.changes.map(({ effect }) => [
      effect.serviceIds.length,
      effect.before.singles - effect.after.singles,
    ]);
    const sorted = worth.toSorted(([a = 0, b = 0], [c = 0, d = 0]) => c - a || d - b);
    expect(worth).toEqual(sorted);
  });

  it('is kept for the same document, and worked out step by step gives the same', () => {
    expect(advise(project)).toBe(advice);
    expect(knownAdvice(project)).toBe(advice);
    const again: Project = { ...project };
    const steps = adviceSteps(again);
    const done: number[] = [];
    let step = steps.next();
    for (; !step.done; step = steps.next()) {
      expect(step.value.total).toBe(advice.tried);
      done.push(step.value.done);
    }
    expect(done).toEqual(done.toSorted((a, b) => a - b));
    expect(new Set(done).size).toBe(advice.tried);
    const ids = (of: readonly RankedChange[]) => of.map(({ candidate }) => candidate.id);
    expect(ids(step.value.changes)).toEqual(ids(advice.changes));
  });

  it('leaves the results of the drawing on the screen alone', () => {
    const fresh: Project = { ...project };
    const { redundancy } = assess(fresh);
    advise({ ...fresh });
    expect(assess({ ...fresh }).redundancy).toBe(redundancy);
  });
});

describe('what is marked for removal', () => {
  it('is neither advised on nor built upon', () => {
    const boat = demo('brannoch-tern');
    const items = boat.items.map((item) =>
      item.id === 'ais-1' || item.id === 'b2' ? { ...item, status: 'remove' as const } : item,
    );
    const { changes } = advise({ ...boat, items });
    const about = changes.filter(({ candidate }) => candidate.subjects.some(({ id }) => id === 'ais-1' || id === 'b2'));
    expect(about.map(({ candidate }) => candidate.id)).toEqual([]);
  });
});
