import { describe, expect, it } from 'vitest';
import { drawBackdrop, drawInstallation } from '../../../core/drawing/profile.ts';
import type { Shape } from '../../../core/drawing/types.ts';
import { demo, optionsFor, resultsOf } from './demo.ts';

const project = demo('brannoch-tern');
const failure = {
  lost: new Set(['item:a1', 'run:run-w01', 'structure:mast-main']),
  live: new Set(['item:vhf-2']),
  mastsDown: new Set(['mast-main']),
};
const [firstRun] = project.runs;
if (!firstRun) throw new Error('The demo boat has runs.');
const lost = new Set(['item:a1', `run:${firstRun.id}`, 'structure:mast-main']);
const options = { ...optionsFor(project), failure: { ...failure, lost } };
const plain = optionsFor(project);

const of = (shapes: readonly Shape[], kind: string, id: string): readonly Shape[] =>
  shapes.filter(({ subject }) => subject?.kind === kind && subject.id === id);
const strokeOf = (shape: Shape): string => (shape.kind === 'text' ? shape.ink : shape.stroke);

describe('failure view', () => {
  const shapes = drawInstallation(project, resultsOf(project), options);

  it('fades everything of a lost item and a lost run', () => {
    const drawn = [...of(shapes, 'item', 'a1'), ...of(shapes, 'run', firstRun.id)].filter(
      (shape) =>
        !(shape.kind !== 'text' && shape.fill === 'finding') && !(shape.kind === 'text' && shape.ink === 'paper'),
    );
    expect(drawn.length).toBeGreaterThan(3);
    for (const shape of drawn) expect(shape.opacity, JSON.stringify(shape)).toBeLessThan(0.7);
  });

  it('crosses out each of them once', () => {
    const crosses = shapes.filter((shape) => shape.kind === 'path' && shape.stroke === 'lost');
    expect(crosses).toHaveLength(2);
  });

  it('leaves whole what is not lost, and inks what still lives', () => {
    for (const item of project.items.filter(({ id }) => id !== 'a1')) {
      for (const shape of of(shapes, 'item', item.id)) expect(shape.opacity ?? 1).toBe(1);
    }
    expect(new Set(of(shapes, 'item', 'vhf-2').map(strokeOf))).toContain('live');
    expect(new Set(of(shapes, 'item', 'vhf-1').map(strokeOf))).not.toContain('live');
  });

  it('draws a lost mast as a ghost and lying down, and only that one', () => {
    const before = drawBackdrop(project, plain);
    const after = drawBackdrop(project, options);
    const ghosts = after.filter(
      (shape) => shape.layer === 'boat' && shape.kind === 'path' && shape.dash && shape.opacity,
    );
    expect(ghosts.length).toBeGreaterThan(5);
    expect(before.some((shape) => shape.layer === 'boat' && shape.opacity !== undefined)).toBe(false);
    expect(after.filter((shape) => shape.kind === 'path' && shape.stroke === 'lost')).toHaveLength(1);
    expect(before.filter((shape) => shape.kind === 'path' && shape.stroke === 'lost')).toHaveLength(0);
  });
});

describe('selection', () => {
  it('marks what is chosen and nothing else', () => {
    const selection = new Set(['item:vhf-1', `run:${firstRun.id}`]);
    const shapes = drawInstallation(project, resultsOf(project), { ...plain, selection });
    const chosen = shapes.filter((shape) => strokeOf(shape) === 'run-selected' && shape.subject);
    expect(new Set(chosen.map(({ subject }) => `${subject?.kind}:${subject?.id}`))).toEqual(selection);
    const none = drawInstallation(project, resultsOf(project), plain);
    expect(none.some((shape) => strokeOf(shape) === 'run-selected')).toBe(false);
  });
});

describe('remarks', () => {
  const [item] = project.items;
  if (!item) throw new Error('The demo boat has items.');
  const finding = (
    mark: string,
    subjects: readonly { kind: 'item' | 'structure' | 'feed'; id: string }[],
    overruled = false,
  ) => ({
    key: mark,
    ruleId: 'rule',
    severity: mark.startsWith('A') ? ('A' as const) : ('B' as const),
    mark,
    title: '',
    subjects,
    measured: [],
    limit: [],
    authority: { name: '', strength: 'practice' as const },
    action: [],
    overruled: overruled ? { reason: 'known', by: '' } : null,
  });
  const flagsOf = (findings: readonly ReturnType<typeof finding>[], show = plain.show) =>
    drawInstallation(project, { paths: [], findings }, { ...plain, show }).flatMap((shape) =>
      shape.kind === 'text' && shape.ink === 'paper' ? [`${shape.text} at ${shape.subject?.kind}`] : [],
    );
  const here = [{ kind: 'item', id: item.id }] as const;

  it('collapses several on one item behind the worst', () => {
    expect(flagsOf([finding('B10', here), finding('A4', here), finding('A12', here)])).toEqual(['A4 +2 at item']);
  });

  it('does not draw one that was overruled, and marks a structure only when no item is meant', () => {
    expect(flagsOf([finding('A1', here, true)])).toEqual([]);
    const mast = { kind: 'structure', id: 'mast-main' } as const;
    expect(flagsOf([finding('A1', [mast, ...here])])).toEqual(['A1 at item']);
    expect(flagsOf([finding('A1', [mast])])).toEqual(['A1 at structure']);
  });

  it('marks the load when feeds are not shown', () => {
    const [feed] = project.feeds;
    if (!feed) throw new Error('The demo boat has feeds.');
    const about = [finding('B2', [{ kind: 'feed', id: feed.id }])];
    expect(flagsOf(about)).toEqual(['B2 at feed']);
    expect(flagsOf(about, { ...plain.show, feeds: false })).toEqual(['B2 at item']);
  });
});
