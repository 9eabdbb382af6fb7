import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { assess, assessAlternative } from '../../../core/assess.ts';
import { parseProject } from '../../../core/document/load.ts';
import { swapAlternative } from '../../../core/edit/alternatives.ts';
import { moveItems } from '../../../core/edit/items.ts';

const loaded = parseProject(
  readFileSync(join(import.meta.dirname, '../../../assets/demo/brannoch-tern.backstay'), 'utf8'),
);
if (!loaded.ok) throw new Error('the demo boat does not load');
const { project } = loaded;
const [proposed] = project.alternatives;
if (!proposed) throw new Error('the demo boat has no alternative');

describe('assess', () => {
  it('gives the same assessment for the same project, and the same content for an equal one', () => {
    expect(assess(project)).toBe(assess(project));
    expect(assess(structuredClone(project))).toEqual(assess(project));
  });

  it('after an edit equals an assessment from scratch', () => {
    const moved = moveItems(project, ['a1'], { dxM: 0, dyM: 0, dzM: -3 });
    expect(assess(moved)).toEqual(assess(structuredClone(moved)));
    expect(assess(moved)).not.toEqual(assess(project));
  });

  it('assesses an alternative as if it were the layout', () => {
    const swapped = swapAlternative(project, proposed.id);
    const strip = ({ redundancy, paths, findings }: ReturnType<typeof assess>) => ({ redundancy, paths, findings });
    expect(strip(assessAlternative(project, proposed))).toEqual(strip(assess(swapped)));
  });

  it('keeps an alternative’s assessment while only the current layout changes', () => {
    const before = assessAlternative(project, proposed);
    const moved = moveItems(project, ['a1'], { dxM: 0.1, dyM: 0, dzM: 0 });
    const [same] = moved.alternatives;
    expect(same && assessAlternative(moved, same)).toBe(before);
  });

  it('never gives a number that is none', () => {
    const walk = (value: unknown, where: string): string[] => {
      if (typeof value === 'number') return Number.isFinite(value) ? [] : [where];
      if (value === null || typeof value !== 'object') return [];
      return Object.entries(value).flatMap(([key, inner]) => walk(inner, `${where}.${key}`));
    };
    expect(walk(assess(project), 'assessment')).toEqual([]);
  });
});
