import { describe, expect, it } from 'vitest';
import { itemBounds, itemPoint } from '../../../renderer/canvas/handles.ts';
import { meantSubject } from '../../../renderer/canvas/hit.ts';
import { smallProject } from './canvasFixture.ts';

const VIEW = { originX: 600, originY: 600, scale: 40 };

describe('what a hit means', () => {
  const base = smallProject();
  // Two sets so near each other that their symbols touch.
  const project = {
    ...base,
    items: base.items.map((item) => (item.id === 'spare' ? { ...item, position: { xM: 8.5, yM: 0, zM: 1 } } : item)),
  };
  const pointOf = (id: string) => {
    const item = project.items.find((known) => known.id === id);
    if (!item) throw new Error(id);
    return { point: itemPoint(project, item, VIEW), bounds: itemBounds(project, item, VIEW) };
  };

  it('is the item whose middle is nearest, whichever was drawn last', () => {
    // The symbols stand side by side; the left edge of one is within reach of the other.
    const { bounds, point } = pointOf('vhf');
    const edge = { x: bounds.x + 1, y: point.y };
    expect(meantSubject(project, VIEW, edge, { kind: 'item', id: 'spare' }).id).toBe('vhf');
    const other = pointOf('spare');
    const otherEdge = { x: other.bounds.x + other.bounds.width - 1, y: other.point.y };
    expect(meantSubject(project, VIEW, otherEdge, { kind: 'item', id: 'vhf' }).id).toBe('spare');
  });

  it('is what was hit for a balloon, which stands away from every symbol', () => {
    const far = { x: pointOf('vhf').point.x, y: pointOf('vhf').bounds.y + 200 };
    expect(meantSubject(project, VIEW, far, { kind: 'item', id: 'whip' }).id).toBe('whip');
  });

  it('leaves runs alone', () => {
    const { point } = pointOf('vhf');
    expect(meantSubject(project, VIEW, point, { kind: 'run', id: 'w' })).toEqual({ kind: 'run', id: 'w' });
  });
});
