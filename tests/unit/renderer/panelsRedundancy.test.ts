import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import { keepAsAlternative } from '../../../core/edit/alternatives.ts';
import { removeSubjects } from '../../../core/edit/remove.ts';
import type { Redundancy } from '../../../core/redundancy/types.ts';
import { compareLayouts } from '../../../renderer/panels/redundancy/layouts.ts';
import { movedSpot } from '../../../renderer/panels/redundancy/spot.ts';
import { componentWords, GRADE_SIGNS, singlePointsOf } from '../../../renderer/panels/redundancy/words.ts';
import { smallProject } from './canvasFixture.ts';

const project = smallProject();

describe('the signs of the matrix', () => {
  it('differ by letter and word, not by shade alone', () => {
    const signs = Object.values(GRADE_SIGNS);
    expect(new Set(signs.map(({ sign }) => sign)).size).toBe(3);
    expect(new Set(signs.map(({ word }) => word)).size).toBe(3);
  });
});

describe('single points', () => {
  const component = (id: string) => ({
    id,
    kind: 'cable' as const,
    label: id,
    subject: { kind: 'run' as const, id: 'w' },
  });
  const redundancy: Redundancy = {
    ...assess(project).redundancy,
    components: [component('one'), component('two'), component('also-one')],
    singlePoints: [
      { componentId: 'one', serviceIds: ['position'] },
      { componentId: 'two', serviceIds: ['voice-fixed', 'digital-alert'] },
      { componentId: 'also-one', serviceIds: ['beacon'] },
    ],
  };

  it('come with what takes most services first, equals in their order', () => {
    expect(singlePointsOf(redundancy).map((point) => point.component.id)).toEqual(['two', 'one', 'also-one']);
  });

  it('are named beyond their tag: a part by its name, a run by its cable, a mast not at all', () => {
    expect(componentWords(project, { subject: { kind: 'item', id: 'vhf' } })).toBe('Test VHF');
    expect(componentWords(project, { subject: { kind: 'run', id: 'w' } })).toBe('Test coax');
    expect(componentWords(project, { subject: { kind: 'structure', id: 'main' } })).toBe('');
    expect(componentWords(project, { subject: { kind: 'item', id: 'gone' } })).toBe('');
  });
});

describe('layouts side by side', () => {
  it('gives each layout its own numbers, the current one first', () => {
    const kept = keepAsAlternative(project, 'As it was');
    const current = removeSubjects(kept, [{ kind: 'run', id: 'w' }]);
    const { layouts, events } = compareLayouts(current);
    expect(layouts.map(({ name }) => name)).toEqual([project.layoutName, 'As it was']);
    const [now, before] = layouts;
    expect(before?.total).toEqual(compareLayouts(project).layouts[0]?.total);
    expect(now?.byEvent.get('none')?.lost).toBeGreaterThan(before?.byEvent.get('none')?.lost ?? Number.NaN);
    expect(events[0]?.id).toBe('none');
    expect(new Set(events.map(({ id }) => id)).size).toBe(events.length);
  });

  it('sums the failures without the intact boat, and counts the remarks that stand', () => {
    const [only] = compareLayouts(project).layouts;
    const { redundancy, findings } = assess(project);
    const failures = redundancy.matrix.filter(({ event }) => event.kind !== 'none');
    const lost = failures.flatMap(({ states }) => states).filter(({ grade }) => grade === 'lost');
    expect(only?.total.lost).toBe(lost.length);
    expect(only?.singlePoints).toBe(redundancy.singlePoints.length);
    const { A = 0, B = 0, C = 0 } = only?.remarks ?? {};
    expect(A + B + C).toBe(findings.filter(({ overruled }) => overruled === null).length);
  });
});

describe('moving through the matrix by key', () => {
  it('stays inside the table', () => {
    expect(movedSpot({ row: 0, column: 0 }, 'ArrowUp', 3, 4)).toEqual({ row: 0, column: 0 });
    expect(movedSpot({ row: 0, column: 0 }, 'ArrowDown', 3, 4)).toEqual({ row: 1, column: 0 });
    expect(movedSpot({ row: 2, column: 3 }, 'ArrowRight', 3, 4)).toEqual({ row: 2, column: 3 });
    expect(movedSpot({ row: 2, column: 3 }, 'ArrowLeft', 3, 4)).toEqual({ row: 2, column: 2 });
    expect(movedSpot({ row: 1, column: 2 }, 'Home', 3, 4)).toEqual({ row: 1, column: 0 });
    expect(movedSpot({ row: 1, column: 2 }, 'End', 3, 4)).toEqual({ row: 1, column: 3 });
  });

  it('leaves other keys to whoever wants them', () => {
    expect(movedSpot({ row: 1, column: 1 }, 'Enter', 3, 4)).toBeNull();
    expect(movedSpot({ row: 1, column: 1 }, 'Tab', 3, 4)).toBeNull();
  });
});
