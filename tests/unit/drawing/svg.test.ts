import { describe, expect, it } from 'vitest';
import { PALETTES } from '../../../core/drawing/palette.ts';
import { drawProfile } from '../../../core/drawing/profile.ts';
import { escapeXml, svgOf } from '../../../core/drawing/svg.ts';
import type { Drawing, Ink } from '../../../core/drawing/types.ts';
import { DEMOS, demo, optionsFor, resultsOf } from './demo.ts';

const HOSTILE = '</text><script>alert("x")</script> & \'quoted\' \u0000\u000b \ud800 ]]> <!--';

/** Reads XML by its own rules: balanced tags, quoted attributes, known entities. Returns the element names or throws. */
function elementsOf(xml: string): readonly string[] {
  const names: string[] = [];
  const open: string[] = [];
  let rest = xml.replace(/^<\?xml [^?]*\?>\s*/, '');
  while (rest !== '') {
    const text = /^[^<]+/.exec(rest)?.[0];
    if (text !== undefined) {
      if (/&(?!(amp|lt|gt|quot|#39);)/.test(text)) throw new Error(`Bare ampersand in ${text}`);
      rest = rest.slice(text.length);
      continue;
    }
    const tag = /^<(\/?)([A-Za-z]+)((?:\s+[A-Za-z:-]+="[^"<]*")*)\s*(\/?)>/.exec(rest);
    if (!tag) throw new Error(`Not a tag: ${rest.slice(0, 60)}`);
    const [whole, closes, name = '', , empty] = tag;
    if (closes) {
      if (open.pop() !== name) throw new Error(`</${name}> closes nothing`);
    } else {
      names.push(name);
      if (!empty) open.push(name);
    }
    rest = rest.slice(whole.length);
  }
  if (open.length > 0) throw new Error(`Left open: ${open.join(' ')}`);
  return names;
}

describe('svgOf', () => {
  it.each(DEMOS)('writes %s as well-formed XML with a title and a description', (name) => {
    const project = demo(name);
    const drawing = drawProfile(project, resultsOf(project), optionsFor(project));
    const svg = svgOf(drawing, PALETTES.print, { title: 'Profile', description: 'A side view' });
    const names = elementsOf(svg.trim());
    expect(names.slice(0, 3)).toEqual(['svg', 'title', 'desc']);
    expect(new Set(names)).toEqual(new Set(['svg', 'title', 'desc', 'rect', 'path', 'circle', 'text']));
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('escapes hostile text in names, tags and titles', () => {
    const project = demo('pelluna');
    const [first, ...others] = project.items;
    const [run, ...runs] = project.runs;
    if (!first || !run) throw new Error('The demo boat has items and runs.');
    const hostile = {
      ...project,
      boat: { ...project.boat, name: HOSTILE },
      items: [{ ...first, tag: HOSTILE.slice(0, 12) }, ...others],
      runs: [{ ...run, number: HOSTILE }, ...runs],
    };
    const drawing = drawProfile(hostile, resultsOf(hostile), optionsFor(hostile));
    const svg = svgOf(drawing, PALETTES.light, { title: HOSTILE, description: HOSTILE });
    expect(elementsOf(svg.trim())).not.toContain('script');
    expect(svg).toContain('&lt;script&gt;');
  });

  it('leaves out characters XML does not allow', () => {
    expect(escapeXml('a\u0000b\u000bc\ud800d\ufffee\tf')).toBe('abcde\tf');
    expect(escapeXml('Zürich ≤ 50 Ω, 船')).toBe('Zürich ≤ 50 Ω, 船');
  });

  it('says its size in millimetres on the sheet', () => {
    const drawing: Drawing = { width: 297, height: 210, projection: { originX: 0, originY: 0, scale: 1 }, shapes: [] };
    expect(svgOf(drawing, PALETTES.print, { title: '', description: '', unit: 'mm' })).toContain('width="297mm"');
  });
});

/** Relative luminance and contrast ratio, WCAG 2.2 (from memory). */
function contrast(a: string, b: string): number {
  const luminance = (hex: string): number => {
    const [r = 0, g = 0, bl = 0] = [1, 3, 5].map((at) => {
      const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
      return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * bl;
  };
  const [high, low] = [luminance(a), luminance(b)].sort((p, q) => q - p) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

describe('palettes', () => {
  const text: readonly Ink[] = [
    'ink',
    'boat',
    'grid-text',
    'water',
    'run',
    'run-selected',
    'feed',
    'link',
    'finding',
    'lost',
    'live',
    'accent',
  ];
  it.each(Object.entries(PALETTES))(
    '%s: text in any ink has at least 4.5 to 1 on paper, and paper on a flag',
    (_, palette) => {
      for (const ink of text) expect(contrast(palette[ink], palette.paper), ink).toBeGreaterThanOrEqual(4.5);
    },
  );
});
