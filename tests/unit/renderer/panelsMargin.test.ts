import { describe, expect, it } from 'vitest';
import { setSettings } from '../../../core/edit/stations.ts';
import { DEFAULT_MARGIN } from '../../../core/model/margin.ts';
import { changedMargin, newMarginItem } from '../../../renderer/panels/range/margin.ts';
import { smallProject } from './canvasFixture.ts';

describe('the real-life margin, item by item', () => {
  it('gets one more item that the document takes, under an id and a name of its own', () => {
    const once = [...DEFAULT_MARGIN, newMarginItem(DEFAULT_MARGIN)];
    const twice = [...once, newMarginItem(once)];
    expect(new Set(twice.map(({ id }) => id)).size).toBe(twice.length);
    expect(new Set(twice.map(({ label }) => label)).size).toBe(twice.length);
    // One of them is taken out again: what is added next must not be mistaken for another.
    const rest = twice.filter(({ id }) => id !== once.at(-1)?.id);
    expect(rest.map(({ id }) => id)).not.toContain(newMarginItem(rest).id);
    expect(setSettings(smallProject(), { margin: twice }).settings.margin).toHaveLength(twice.length);
  });

  it('changes the one item and leaves the others as they are', () => {
    const [first, second] = DEFAULT_MARGIN;
    const changed = changedMargin(DEFAULT_MARGIN, first?.id ?? '', { lossDb: 4, source: 'measured' });
    expect(changed[0]).toEqual({ ...first, lossDb: 4, source: 'measured' });
    expect(changed[1]).toBe(second);
  });
});
