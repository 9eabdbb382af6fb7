import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

// The layout shows the architecture; this holds it to its word (design: arrows point one way, type imports included).

const ROOT = resolve(import.meta.dirname, '../../..');

/** What each folder may import besides itself. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  'core/units': [],
  'core/model': ['core/units'],
  'core/faultTree': [],
  'core/catalogue': ['core/model', 'core/units'],
  'core/rf': ['core/model', 'core/units', 'core/catalogue'],
  'core/propagation': ['core/units', 'core/rf'],
  'core/document': ['core/model', 'core/units', 'core/catalogue'],
  'core/links': ['core/propagation', 'core/rf', 'core/catalogue', 'core/model', 'core/units'],
  'core/power': ['core/rf', 'core/catalogue', 'core/model', 'core/units'],
  'core/edit': ['core/document', 'core/links', 'core/catalogue', 'core/model', 'core/units'],
  'core/reckon': [
    'core/reach',
    'core/siting',
    'core/links',
    'core/power',
    'core/propagation',
    'core/rf',
    'core/catalogue',
    'core/model',
    'core/units',
  ],
  'core/reach': [
    'core/siting',
    'core/links',
    'core/propagation',
    'core/rf',
    'core/catalogue',
    'core/model',
    'core/units',
  ],
  'core/redundancy': [
    'core/faultTree',
    'core/reach',
    'core/links',
    'core/power',
    'core/rf',
    'core/catalogue',
    'core/model',
    'core/units',
  ],
  'core/treeDiagram': [
    'core/drawing',
    'core/redundancy',
    'core/faultTree',
    'core/catalogue',
    'core/model',
    'core/units',
  ],
  'core/siting': ['core/links', 'core/propagation', 'core/rf', 'core/catalogue', 'core/model', 'core/units'],
  'core/audit': [
    'core/siting',
    'core/reach',
    'core/redundancy',
    'core/power',
    'core/links',
    'core/rf',
    'core/catalogue',
    'core/model',
    'core/units',
  ],
  'core/advice': [
    'core/assess.ts',
    'core/edit',
    'core/redundancy',
    'core/faultTree',
    'core/reach',
    'core/links',
    'core/power',
    'core/catalogue',
    'core/model',
    'core/units',
  ],
  'core/rulePacks': [
    'core/redundancy',
    'core/faultTree',
    'core/reach',
    'core/power',
    'core/links',
    'core/rf',
    'core/catalogue',
    'core/model',
    'core/units',
  ],
  'core/assess.ts': [
    'core/audit',
    'core/redundancy',
    'core/power',
    'core/reach',
    'core/siting',
    'core/links',
    'core/model',
  ],
  'core/drawing': [
    'core/audit',
    'core/reach',
    'core/redundancy',
    'core/power',
    'core/links',
    'core/rf',
    'core/catalogue',
    'core/model',
    'core/units',
  ],
  'core/report': ['core'],
  'electron/contract.ts': ['core/model'],
  'electron/contentSecurity.ts': [],
  'electron/node': ['core', 'electron/contract.ts', 'electron/contentSecurity.ts'],
  'electron/main': ['core', 'electron/node', 'electron/contract.ts', 'electron/contentSecurity.ts'],
  'electron/preload': ['electron/contract.ts'],
  // The guide is the help inside the program.
  renderer: ['core', 'electron/contract.ts', 'assets', 'docs/user-guide.md'],
};

/** Packages each layer may use; `node:` stands for the built-in modules, `electron` in main for values, elsewhere types only. */
const MAY_USE: Readonly<Record<string, readonly string[]>> = {
  core: ['zod', 'immer'],
  'electron/contract.ts': ['zod'],
  'electron/contentSecurity.ts': [],
  'electron/node': ['node:', 'vite', 'pdfkit', 'csv-parse', 'csv-stringify'],
  'electron/main': ['node:', 'electron'],
  'electron/preload': ['electron'],
  renderer: [
    'react',
    'react-dom',
    'react-konva',
    'konva',
    'zustand',
    'zod',
    'react-aria-components',
    'd3-scale',
    'd3-shape',
    'pdfkit',
  ],
};

interface Import {
  readonly file: string;
  readonly target: string;
}

function sourceFiles(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name).replaceAll('\\', '/'))
    .filter((name) => /\.tsx?$/.test(name) && !name.endsWith('vite.config.ts'));
}

function importsOf(file: string): Import[] {
  const text = readFileSync(join(ROOT, file), 'utf8').replace(/^\s*(?:\*|\/\/).*$/gm, '');
  const found = text.matchAll(
    /^(?:import|export)\b[^;'"`]*?from\s+'([^']+)'|^import\s+'([^']+)'|\bimport\('([^']+)'\)/gm,
  );
  return [...found].map((match) => ({ file, target: match[1] ?? match[2] ?? match[3] ?? '' }));
}

const owner = (path: string, table: Readonly<Record<string, unknown>>): string | undefined =>
  Object.keys(table)
    .filter((folder) => path === folder || path.startsWith(`${folder}/`))
    .sort((a, b) => b.length - a.length)[0];

const files = ['core', 'electron', 'renderer'].flatMap(sourceFiles);
const imports = files.flatMap(importsOf);

describe('layers', () => {
  it('finds the sources', () => {
    expect(files.length).toBeGreaterThan(50);
    expect(imports.length).toBeGreaterThan(100);
  });

  it('every source file belongs to a known layer', () => {
    expect(files.filter((file) => owner(file, MAY_IMPORT) === undefined)).toEqual([]);
  });

  it('imports point downwards only', () => {
    const wrong = imports
      .filter(({ target }) => target.startsWith('.'))
      .map(({ file, target }) => ({
        file,
        to: relative(ROOT, resolve(ROOT, dirname(file), target.replace(/\?.*$/, ''))),
      }))
      .filter(({ file, to }) => {
        const from = owner(file, MAY_IMPORT);
        if (from === undefined) return true;
        const into = owner(to, MAY_IMPORT) ?? to;
        const allowed = MAY_IMPORT[from] ?? [];
        return into !== from && !allowed.some((folder) => to === folder || to.startsWith(`${folder}/`));
      });
    expect(wrong).toEqual([]);
  });

  it('each layer uses only its own packages', () => {
    const wrong = imports
      .filter(({ target }) => !target.startsWith('.'))
      .filter(({ file, target }) => {
        const allowed = MAY_USE[owner(file, MAY_USE) ?? ''] ?? [];
        return !allowed.some((name) => target === name || target.startsWith(name.endsWith(':') ? name : `${name}/`));
      });
    expect(wrong).toEqual([]);
  });

  it('only main.ts and the preload import electron values', () => {
    const wrong = files
      .filter((file) => !['electron/main/main.ts', 'electron/preload/preload.ts'].includes(file))
      .filter((file) => /^import (?!type )[^;]*'electron'/m.test(readFileSync(join(ROOT, file), 'utf8')));
    expect(wrong).toEqual([]);
  });

  it('core touches no clock and no chance', () => {
    const wrong = files
      .filter((file) => file.startsWith('core/'))
      .filter((file) =>
        /Date\.now|new Date\(\)|Math\.random|performance\.|setTimeout|process\./.test(
          readFileSync(join(ROOT, file), 'utf8'),
        ),
      );
    expect(wrong).toEqual([]);
  });
});
