import { readdir, readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { ROOT } from './paths.ts';

/** One shipped work and the terms it comes under. */
export interface Licence {
  readonly name: string;
  readonly version: string;
  /** SPDX expression. */
  readonly licence: string;
  /** The terms in full, with the copyright notice they ask to be kept. */
  readonly text: string;
}

/** Packages whose package.json says too little: where the right answer was read is said beside it. */
const LICENCE_OF: Readonly<Record<string, string>> = {
  // The decoder's own sources are marked as Google's, under Apache-2.0.
  brotli: 'MIT AND Apache-2.0',
  // No word in package.json; the licence file is the MIT one.
  'png-js': 'MIT',
};

/** Texts for packages that carry none, and for works that are not packages here: assets/licences/NAME.txt. */
const OWN_TEXTS = 'assets/licences';

/** Shipped, but no package of the lock file: our own files, the fonts, and what pdfkit's ready-made bundle brings along. */
const OTHER_WORKS: readonly (Omit<Licence, 'text'> & { readonly textFile: string })[] = [
  { name: 'Barlow Semi Condensed', version: '1.408', licence: 'OFL-1.1', textFile: 'assets/fonts/OFL.txt' },
  { name: 'buffer', version: 'within pdfkit', licence: 'MIT', textFile: `${OWN_TEXTS}/buffer.txt` },
  { name: 'ieee754', version: 'within pdfkit', licence: 'BSD-3-Clause', textFile: `${OWN_TEXTS}/ieee754.txt` },
];

interface LockedPackage {
  readonly version: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
}

const readText = (path: string): Promise<string> => readFile(resolve(ROOT, path), 'utf8');

/** Folders of every package the program is made of, through the whole tree: `node_modules/konva`. */
export async function productionFolders(): Promise<string[]> {
  const lock = JSON.parse(await readText('package-lock.json')) as { packages: Record<string, LockedPackage> };
  return Object.entries(lock.packages)
    .filter(([folder, entry]) => folder !== '' && entry.dev !== true && entry.devOptional !== true)
    .map(([folder]) => folder);
}

/**
 * The licences of everything shipped: the program, its typefaces, every package of the production tree and, for the
 * desktop, Electron. Sorted by name, the program first; the same tree gives the same list.
 * @throws Error naming the package that states no licence or carries no text, and how to mend it
 */
export async function shippedLicences(): Promise<Licence[]> {
  const folders = [...(await productionFolders()), 'node_modules/electron'];
  const packages = await Promise.all(folders.map(licenceOf));
  const others = await Promise.all(
    OTHER_WORKS.map(async ({ textFile, ...work }) => ({ ...work, text: tidied(await readText(textFile)) })),
  );
  const own = { ...(await licenceOf('.')), name: 'Backstay' };
  return [own, ...[...packages, ...others].sort(byNameAndVersion)];
}

const byNameAndVersion = (a: Licence, b: Licence): number => {
  const [left, right] = [`${a.name}@${a.version}`, `${b.name}@${b.version}`];
  return left < right ? -1 : Number(left > right);
};

async function licenceOf(folder: string): Promise<Licence> {
  const { name, version, license } = JSON.parse(await readText(`${folder}/package.json`)) as Record<string, unknown>;
  if (typeof name !== 'string' || typeof version !== 'string') throw new Error(`${folder} has no name or version`);
  const licence = LICENCE_OF[name] ?? license;
  if (typeof licence !== 'string')
    throw new Error(`${name} ${version} states no licence: read its files and say it in electron/node/licences.ts`);
  return { name, version, licence, text: tidied(await licenceText(folder, name)) };
}

/** Our own text first: it is there because the package's is missing or leaves something out. */
async function licenceText(folder: string, name: string): Promise<string> {
  const own = (await readdir(resolve(ROOT, OWN_TEXTS))).includes(`${name}.txt`);
  if (own) return readText(`${OWN_TEXTS}/${name}.txt`);
  const file = (await readdir(resolve(ROOT, folder))).sort().find((entry) => /^licen[cs]e(\.|$)/i.test(entry));
  if (file === undefined) throw new Error(`${name} carries no licence text: put it into ${OWN_TEXTS}/${name}.txt`);
  return readText(`${folder}/${file}`);
}

const tidied = (text: string): string => `${text.replaceAll('\r\n', '\n').trim()}\n`;

/** The same list as one plain text, for the installed program's folder. */
export function licencesAsText(licences: readonly Licence[]): string {
  const head = 'Backstay is made of the works below. Each is listed with its licence and the text that goes with it.\n';
  const rule = '='.repeat(80);
  return [
    head,
    ...licences.map(
      ({ name, version, licence, text }) => `${rule}\n${name} ${version} — ${licence}\n${rule}\n\n${text}`,
    ),
  ].join('\n');
}

/** Name of the package a bundled module comes from, or null for our own. */
export function packageOfModule(moduleId: string): string | null {
  const parts = moduleId.replaceAll('\\', '/').split('/node_modules/');
  const [first, second] = parts.length > 1 ? (parts.at(-1)?.split('/') ?? []) : [];
  if (first === undefined) return null;
  return first.startsWith('@') ? `${first}/${second}` : first;
}
