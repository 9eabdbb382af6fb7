import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { licencesAsText, packageOfModule, shippedLicences } from '../../../electron/node/licences.ts';
import { ROOT } from '../../../electron/node/paths.ts';

// What the program is made of is read from npm itself, not from our own reading of the lock file.

/** Every licence a shipped work may come under: each lets a program be passed on with its text kept. */
const ALLOWED = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', '0BSD', 'OFL-1.1'];

function productionTree(): string[] {
  const printed = execFileSync('npm', ['ls', '--omit=dev', '--all', '--parseable', '--long', '--package-lock-only'], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  const named = printed.split('\n').map((line) => line.split(':')[1] ?? '');
  return [...new Set(named)].filter((name) => /.@\d/.test(name) && !name.startsWith('backstay@'));
}

const licences = await shippedLicences();

describe('licences of what is shipped', () => {
  const named = licences.map(({ name, version }) => `${name}@${version}`);

  it('lists every package of the production tree as npm sees it', () => {
    const tree = productionTree();
    expect(tree.length).toBeGreaterThan(40);
    expect(tree.filter((name) => !named.includes(name))).toEqual([]);
  });

  it('lists nothing else but Electron, the fonts and what the PDF library brings in its bundle', () => {
    const tree = productionTree();
    const own = JSON.parse(readFileSync(resolve(ROOT, 'package.json'), 'utf8'));
    expect(named.filter((name) => !tree.includes(name))).toEqual([
      `Backstay@${own.version}`,
      'Barlow Semi Condensed@1.408',
      'buffer@within pdfkit',
      `electron@${own.devDependencies.electron}`,
      'ieee754@within pdfkit',
    ]);
  });

  it('gives each an allowed licence and its text with a notice of whose it is', () => {
    for (const { name, licence, text } of licences) {
      for (const part of licence.split(' AND ')) expect(ALLOWED, `${name}: ${licence}`).toContain(part);
      expect(text.length, name).toBeGreaterThan(400);
      expect(text, name).toMatch(/copyright/i);
    }
  });

  it('gives a text that is of the licence named', () => {
    const mark: Readonly<Record<string, RegExp>> = {
      MIT: /Permission is hereby granted, free of charge/,
      ISC: /Permission to use, copy, modify, and\/or distribute/i,
      'BSD-3-Clause': /Neither the name of the copyright holder|may not be used to endorse/,
      'Apache-2.0': /Apache License\s+Version 2\.0/,
      '0BSD': /Permission to use, copy, modify, and\/or distribute/i,
      'OFL-1.1': /SIL OPEN FONT LICENSE Version 1\.1/,
    };
    for (const { name, licence, text } of licences) {
      for (const part of licence.split(' AND ')) expect(text, `${name}: ${part}`).toMatch(mark[part] ?? /never/);
    }
  });

  it('knows every package that the PDF library bundles, so that none goes unnamed', () => {
    const bundle = readFileSync(resolve(ROOT, 'node_modules/pdfkit/js/pdfkit.standalone.js'), 'utf8');
    // The tables of a browserify bundle: `},{"./sibling":12,"buffer":34}]`.
    const wanted = [...bundle.matchAll(/^\},\{([^}]*)\}\]/gm)].flatMap((table) =>
      [...(table[1] ?? '').matchAll(/"([^".][^"]*)":/g)].map((name) => name[1] ?? ''),
    );
    expect(wanted.length).toBeGreaterThan(15);
    const packages = wanted.map((name) => packageOfModule(`/node_modules/${name}/`) ?? '');
    const listed = licences.map(({ name }) => name);
    expect(packages.filter((name) => !listed.includes(name))).toEqual([]);
  });

  it('writes the same list as one text', () => {
    const text = licencesAsText(licences);
    for (const licence of licences) {
      expect(text).toContain(`\n${licence.name} ${licence.version} — ${licence.licence}\n`);
      expect(text).toContain(licence.text);
    }
  });
});

describe('the package a module comes from', () => {
  it.each([
    ['/home/x/node_modules/konva/lib/Core.js', 'konva'],
    ['/home/x/node_modules/@noble/hashes/crypto.js', '@noble/hashes'],
    ['C:\\x\\node_modules\\konva\\lib\\Core.js', 'konva'],
    ['/home/x/node_modules/linebreak/node_modules/base64-js/lib/b64.js', 'base64-js'],
    ['/home/x/core/assess.ts', null],
  ])('%s', (id, name) => expect(packageOfModule(id)).toBe(name));
});
