import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../../core/catalogue/catalogue.ts';
import { balloonNumber } from '../../../core/drawing/balloons.ts';
import { crosses, lengthInBox } from '../../../core/drawing/geometry.ts';
import { Occupancy } from '../../../core/drawing/occupancy.ts';
import { portOffsets, portPoint, portPosition, symbolBounds } from '../../../core/drawing/ports.ts';
import { toDrawing } from '../../../core/drawing/projection.ts';
import { cableStyle } from '../../../core/drawing/runLines.ts';
import { spread } from '../../../core/drawing/spread.ts';
import { symbolGlyph } from '../../../core/drawing/symbols.ts';
import { fitted, textWidth } from '../../../core/drawing/textWidth.ts';
import { scaleText, titleBlock } from '../../../core/drawing/titleBlock.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import { DEMOS, demo, optionsFor } from './demo.ts';

describe('symbols and ports', () => {
  it('has a symbol with all its ports for every part of the catalogue that can be placed', () => {
    const project = demo('pelluna');
    const [like] = project.items;
    if (!like) throw new Error('The demo boat has items.');
    for (const part of CATALOGUE) {
      if (part.kind === 'coax' || part.kind === 'connector' || part.kind === 'conductor') continue;
      const item = { ...like, id: 'new', partId: part.id, overrides: { figures: {}, traits: {} } };
      const one = { ...project, items: [item] };
      const glyph = symbolGlyph(one, item, { originX: 0, originY: 0, scale: 40 }, 1);
      expect(glyph.strokes.length, part.id).toBeGreaterThan(0);
      expect([...glyph.ports.keys()].sort(), part.id).toEqual(part.ports.map(({ id }) => id).sort());
      const places = new Set([...glyph.ports.values()].map(({ x, y }) => `${x},${y}`));
      if (part.kind !== 'antenna') expect(places.size, `${part.id}: ports apart`).toBe(part.ports.length);
      for (const { x, y } of glyph.ports.values()) {
        expect(
          x >= glyph.box.left && x <= glyph.box.right && y >= glyph.box.top && y <= glyph.box.bottom,
          part.id,
        ).toBe(true);
      }
    }
  });

  it('puts antennas exactly where they are and moves crowded boxes only a little', () => {
    for (const name of DEMOS) {
      const project = demo(name);
      const { projection } = optionsFor(project);
      const boxes = project.items.map((item) => symbolBounds(project, item, projection));
      project.items.forEach((item, index) => {
        const spot = toDrawing(projection, item.position);
        const box = boxes[index];
        if (!box) throw new Error('One box for each item.');
        const glyph = symbolGlyph(project, item, projection, 1);
        if (item.endPosition) return;
        const foot = glyph.fixed ? box.bottom : (box.top + box.bottom) / 2;
        const away = Math.hypot((box.left + box.right) / 2 - spot.x, foot - spot.y);
        expect(away, `${name} ${item.tag}`).toBeLessThan(glyph.fixed ? 12 : 45);
      });
      const boxed = project.items.flatMap((item, index) => {
        const glyph = symbolGlyph(project, item, projection, 1);
        const box = boxes[index];
        return glyph.fixed || !box ? [] : [box];
      });
      boxed.forEach((a, index) => {
        for (const b of boxed.slice(index + 1)) {
          expect(a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom).toBe(false);
        }
      });
    }
  });

  it('tells where a port is in the boat and on the drawing', () => {
    const project = demo('brannoch-tern');
    const { projection } = optionsFor(project);
    const splitter = project.items.find(({ tag }) => tag === 'SP-1');
    if (!splitter) throw new Error('The ketch has a splitter.');
    const endpoint = { itemId: splitter.id, portId: 'antenna' };
    expect(portPosition(project, endpoint)).toEqual(splitter.position);
    const point = portPoint(project, endpoint, projection);
    expect(point?.y).toBeCloseTo(symbolBounds(project, splitter, projection).top, 6);
    expect(portOffsets(project, splitter).get('antenna')?.y).toBeLessThan(0);
    expect(portPoint(project, { ...endpoint, portId: 'none' }, projection)).toBeUndefined();
    expect(() => portPosition(project, { itemId: 'none', portId: 'rf' })).toThrow(RangeError);
    expect(() => portPoint(project, { itemId: 'none', portId: 'rf' }, projection)).toThrow(RangeError);
    expect(() => symbolBounds(project, { ...splitter, id: 'none' }, projection)).toThrow(RangeError);
    expect(() => balloonNumber(project, 'none')).toThrow(RangeError);
  });

  it('draws each family of coax in its own line', () => {
    const styles = CATALOGUE.filter((part) => part.kind === 'coax').map(cableStyle);
    const byFamily = new Map(styles.map((style) => [style.family, JSON.stringify([style.width, style.dash])]));
    expect(byFamily.size).toBeGreaterThanOrEqual(7);
    expect(new Set(byFamily.values()).size).toBe(byFamily.size);
    const family = (id: string) => cableStyle(CATALOGUE.find((part) => part.id === id)).family;
    expect(family('coax-400-class')).toBe('Thick low-loss coax');
    expect(family('coax-rg-213-u')).toBe('Thick coax');
    expect(family('coax-rg-59b-u')).toBe('75 ohm coax');
    expect(family('coax-240-class')).not.toBe(family('coax-rg-8x'));
  });
});

describe('spread', () => {
  it('leaves alone what has room and parts what has not', () => {
    expect(spread([0, 50, 100], [10, 10, 10], -500, 500)).toEqual([0, 50, 100]);
    expect(spread([50, 50], [20, 20], -500, 500)).toEqual([40, 60]);
    expect(spread([0, 0, 300], [10, 10, 10], 0, 500)).toEqual([0, 10, 300]);
    expect(spread([], [], 0, 1)).toEqual([]);
  });

  it('keeps order and gaps, and never moves further than the wishes do', () => {
    const wishes = fc.array(fc.double({ min: -1000, max: 1000, noNaN: true }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(wishes, fc.double({ min: 0, max: 5, noNaN: true }), (unsorted, shift) => {
        const sorted = [...unsorted].sort((a, b) => a - b);
        const gaps = sorted.map(() => 25);
        const places = spread(sorted, gaps, -1e6, 1e6);
        const moved = spread(
          sorted.map((wish) => wish + shift),
          gaps,
          -1e6,
          1e6,
        );
        places.forEach((place, index) => {
          const next = places[index + 1];
          if (next !== undefined) expect(next - place).toBeGreaterThanOrEqual(25 - 1e-6);
          expect(Math.abs((moved[index] ?? 0) - place)).toBeLessThanOrEqual(shift + 1e-6);
        });
      }),
      { seed: 7, numRuns: 200 },
    );
  });
});

describe('geometry', () => {
  it('knows crossing from touching', () => {
    const p = (x: number, y: number) => ({ x, y });
    expect(crosses(p(0, 0), p(10, 10), p(0, 10), p(10, 0))).toBe(true);
    expect(crosses(p(0, 0), p(10, 10), p(0, 0), p(10, 0))).toBe(false);
    expect(crosses(p(0, 0), p(10, 0), p(0, 5), p(10, 5))).toBe(false);
  });

  it('measures the part of a line inside a box', () => {
    const box = { left: 0, right: 10, top: 0, bottom: 10 };
    expect(lengthInBox({ x: -5, y: 5 }, { x: 15, y: 5 }, box)).toBeCloseTo(10, 9);
    expect(lengthInBox({ x: 2, y: 2 }, { x: 5, y: 6 }, box)).toBeCloseTo(5, 9);
    expect(lengthInBox({ x: -5, y: 12 }, { x: 15, y: 12 }, box)).toBe(0);
  });

  it('finds what is taken, near and across cells', () => {
    const taken = new Occupancy(10);
    taken.addBox({ left: 0, right: 100, top: 0, bottom: 5 });
    taken.addLine({ x: 0, y: 50 }, { x: 100, y: 50 }, 2, 'own');
    expect(taken.hits({ left: 95, right: 120, top: 4, bottom: 20 })).toBe(true);
    expect(taken.hits({ left: 100, right: 120, top: 5, bottom: 20 })).toBe(false);
    expect(taken.lineCost({ left: 20, right: 40, top: 45, bottom: 55 })).toBeCloseTo(40, 6);
    expect(taken.lineCost({ left: 20, right: 40, top: 45, bottom: 55 }, 'own')).toBe(0);
    expect(() => new Occupancy(0)).toThrow(RangeError);
  });
});

describe('words', () => {
  // Sums of the font's own advances: V 514, H 563, F 486 of 1000.
  it('measures a line by the typeface', () => {
    expect(textWidth('VHF', 10)).toBeCloseTo(15.63, 6);
    expect(textWidth('', 10)).toBe(0);
  });

  it('cuts a line that is too long with an ellipsis', () => {
    expect(fitted('short', 10, 100)).toBe('short');
    const cut = fitted('a much longer line than there is room for', 10, 60);
    expect(cut.endsWith('…')).toBe(true);
    expect(textWidth(cut, 10)).toBeLessThanOrEqual(60);
  });
});

describe('title block', () => {
  const project = demo('brannoch-tern');
  const texts = titleBlock(project, {
    widthMm: 297,
    heightMm: 210,
    projection: { originX: 0, originY: 0, scale: 1000 / 75 },
    preferences: METRIC_PREFERENCES,
    sheet: 1,
    sheets: 6,
  }).flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));

  it('says boat, view, scale, limit, revision, sheet and who has the last word', () => {
    expect(texts[0]).toMatch(/^Brannoch Tern · 12\.4 m steel ketch · /);
    expect(texts.slice(1)).toEqual([
      'Profile, starboard side',
      'Scale 1:75',
      'Loss limit 2.22 dB (40 %)',
      `Revision ${project.revision}`,
      'A licensed installer and local rules govern',
      'Sheet 1 of 6',
    ]);
  });

  it('reads a scale off the projection', () => {
    expect(scaleText({ originX: 0, originY: 0, scale: 20 })).toBe('1:50');
  });

  it('cuts a boat’s name that does not fit', () => {
    const long = { ...project, boat: { ...project.boat, name: 'A name that goes on and on '.repeat(8) } };
    const [first] = titleBlock(long, {
      widthMm: 297,
      heightMm: 210,
      projection: { originX: 0, originY: 0, scale: 20 },
      preferences: METRIC_PREFERENCES,
      sheet: 1,
      sheets: 1,
    }).filter((shape) => shape.kind === 'text');
    expect(first?.kind === 'text' && textWidth(first.text, first.size, first.bold)).toBeLessThan(112);
  });
});
