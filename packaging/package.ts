import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { build, type Configuration, type Platform } from 'electron-builder';
import { buildInto } from '../electron/node/build.ts';
import { ROOT } from '../electron/node/paths.ts';
import { archiveFaults, readArchive } from './archive.ts';
import configuration from './configuration.ts';
import { fuseFaults } from './fuses.ts';
import { integrityFaults } from './integrity.ts';
import { emptyOwnFolder } from './ownFolder.ts';
import { startFaults } from './startCheck.ts';

/** What of package.json goes along; the rest is for those who build. */
const PACKAGE_FIELDS = ['name', 'version', 'description', 'license', 'author', 'private', 'type', 'main'];

export interface PackageOrder {
  /** Folder that everything is made in: new, empty, or one that packing made before. */
  readonly out: string;
  readonly targets: ReturnType<Platform['createTarget']>;
  /** Folder of the Electron distribution to use for a system (as Node names it) instead of the one electron-builder fetches. */
  readonly electronDist?: (system: string) => string;
  /** Refuse to make anything that is not signed. */
  readonly signed: boolean;
}

/** Builds the program afresh and packs it; the checks come after. Answers with the paths of what was made. */
export async function makePackage({ out, targets, electronDist, signed }: PackageOrder): Promise<string[]> {
  await emptyOwnFolder(out);
  const app = join(out, 'app');
  await buildInto(join(app, 'dist'));
  const all = JSON.parse(await readFile(resolve(ROOT, 'package.json'), 'utf8')) as Record<string, unknown>;
  await mkdir(app, { recursive: true });
  await writeFile(
    join(app, 'package.json'),
    `${JSON.stringify(Object.fromEntries(PACKAGE_FIELDS.map((field) => [field, all[field]])), null, 2)}\n`,
  );
  const config: Configuration = {
    ...configuration,
    directories: { ...configuration.directories, output: out },
    forceCodeSigning: signed,
    ...(electronDist === undefined ? {} : { electronDist: ({ platformName }) => electronDist(platformName) }),
  };
  return build({ projectDir: app, targets, config });
}

/** A packed program as it lies on disk before an installer is made of it. */
export interface Unpacked {
  readonly asar: string;
  readonly executable: string;
}

/** What is wrong with a packed program, as sentences: its archive, its fuses, its hash of the archive, its start. */
export async function packageFaults({ asar, executable }: Unpacked): Promise<string[]> {
  return [
    ...archiveFaults(readArchive(asar), [ROOT, homedir()]),
    ...(await fuseFaults(executable)),
    ...integrityFaults(asar, executable),
    ...startFaults(asar),
  ];
}
