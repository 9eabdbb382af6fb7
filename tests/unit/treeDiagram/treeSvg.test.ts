import { describe, expect, it } from 'vitest';
import type { Project } from '../../../core/model/project.ts';
import { TREE_SCOPE, treeSvg } from '../../../core/treeDiagram/treeSvg.ts';
import { DEMOS, demo, treesOf } from './boats.ts';

const HOSTILE = '</text><script>alert("x")</script> & \'q\' \u0000\u000b ]]> <!--';

/** Reads XML by its own rules: balanced tags, quoted attributes, known entities. Returns the element names or throws. */
function elementsOf(xml: string): readonly string[] {
  const names: string[] = [];
  const open: string[] = [];
  const body = xml.replace(/^<\?xml [^?]*\?>\s*/, '').trim();
  for (const piece of body.match(/<[^>]*>|[^<]+/g) ?? []) {
    if (!piece.startsWith('<')) {
      if (/&(?!(amp|lt|gt|quot|#39);)/.test(piece) || [...piece].some(isForbidden))
        throw new Error(`Not allowed: ${piece}`);
      continue;
    }
    const tag = /^<(\/?)([A-Za-z]+)((?:\s+[A-Za-z:-]+="[^"<]*")*)\s*(\/?)>$/.exec(piece);
    if (!tag) throw new Error(`Not a tag: ${piece.slice(0, 60)}`);
    const [, closes, name = '', , empty] = tag;
    if (closes && open.pop() !== name) throw new Error(`</${name}> closes nothing`);
    if (closes) continue;
    names.push(name);
    if (!empty) open.push(name);
  }
  if (open.length > 0) throw new Error(`Left open: ${open.join(' ')}`);
  return names;
}

/** XML 1.0, production 2: of the control characters only tab, line feed and carriage return. */
const isForbidden = (letter: string): boolean => letter < ' ' && !'\t\n\r'.includes(letter);

const written = (svg: string): string => [...svg.matchAll(/<text[^>]*>([^<]*)</g)].map((match) => match[1]).join(' ');

describe.each(DEMOS)('%s', (name) => {
  const project = demo(name);

  it('writes each service’s tree as well-formed XML that names boat, layout, service and scope', () => {
    for (const tree of treesOf(project).trees) {
      const svg = treeSvg(project, tree);
      const names = elementsOf(svg);
      expect(names.slice(0, 3)).toEqual(['svg', 'title', 'desc']);
      expect(
        names.filter((each) => !['svg', 'title', 'desc', 'rect', 'path', 'circle', 'text'].includes(each)),
      ).toEqual([]);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      const words = written(svg);
      expect(words).toContain(project.boat.name);
      expect(words).toContain(project.layoutName);
      expect(words).toContain(tree.serviceName);
      expect(words).toContain(TREE_SCOPE);
    }
  });

  it('explains every sign it uses, and none it does not', () => {
    for (const tree of treesOf(project).trees) {
      const words = written(treeSvg(project, tree));
      expect(words.includes('common cause: takes several')).toBe(JSON.stringify(tree).includes('"kind":"cause"'));
      expect(words.includes('branch drawn once')).toBe(JSON.stringify(tree).includes('"kind":"reference"'));
      expect(words.includes('heavy: alone')).toBe(JSON.stringify(tree).includes('"isAlone":true'));
    }
  });
});

describe('hostile names', () => {
  it('are written as text, whatever they hold', () => {
    const plain = demo('vessarine');
    const hostile: Project = {
      ...plain,
      layoutName: HOSTILE,
      boat: { ...plain.boat, name: HOSTILE, masts: plain.boat.masts.map((mast) => ({ ...mast, name: HOSTILE })) },
      items: plain.items.map((item) => ({ ...item, tag: HOSTILE })),
      runs: plain.runs.map((run) => ({ ...run, number: HOSTILE })),
      feeds: plain.feeds.map((feed) => ({ ...feed, number: HOSTILE })),
    };
    for (const tree of treesOf(hostile).trees) {
      const svg = treeSvg(hostile, tree);
      expect(elementsOf(svg)).not.toContain('script');
      expect(svg).toContain('&lt;');
    }
  });
});
