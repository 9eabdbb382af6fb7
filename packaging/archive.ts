import { extractFile, listPackage, statFile } from '@electron/asar';

/** One file of the archive, by its path within, `/` between folders. */
export interface ArchivedFile {
  readonly path: string;
  readonly bytes: Buffer;
}

/** All that the archive may hold. A file that none of these names is refused, so that nothing goes along unseen. */
const ALLOWED: readonly RegExp[] = [
  /^package\.json$/,
  /^dist\/electron\/(main\.js|preload\.cjs)$/,
  /^dist\/renderer\/(index\.html|licences\.json)$/,
  /^dist\/renderer\/assets\/[\w.-]+-[\w-]{8}\.(js|css)$/,
  /^dist\/renderer\/assets\/BarlowSemiCondensed-(Regular|Medium|SemiBold|Bold)-[\w-]{8}\.ttf$/,
  /^dist\/renderer\/assets\/backstay-[\w-]{8}\.svg$/,
];

/** What the program cannot do without. */
const NEEDED: readonly string[] = [
  'package.json',
  'dist/electron/main.js',
  'dist/electron/preload.cjs',
  'dist/renderer/index.html',
  'dist/renderer/licences.json',
];

/** Bounds that only a mistake would pass: a doubled bundle, a picture or data set that got in. */
export const LARGEST_FILE_BYTES = 4_000_000;
export const LARGEST_ARCHIVE_BYTES = 6_000_000;

const TEXT = /\.(js|cjs|css|html|json|svg)$/;

/** Reads every file of an asar archive back, in the archive's own order. */
export function readArchive(asar: string): ArchivedFile[] {
  return listPackage(asar, { isPack: false })
    .map((path) => path.replaceAll('\\', '/').slice(1))
    .filter((path) => !('files' in statFile(asar, path)))
    .map((path) => ({ path, bytes: extractFile(asar, path) }));
}

/**
 * What is wrong with an archive, as sentences; none when it may be shipped.
 * @param files as `readArchive` gives them
 * @param foreignTexts what must be in no file: the folders of the machine it was built on
 */
export function archiveFaults(files: readonly ArchivedFile[], foreignTexts: readonly string[]): string[] {
  const faults: string[] = [];
  const paths = files.map(({ path }) => path);
  for (const path of NEEDED) if (!paths.includes(path)) faults.push(`${path} is missing.`);
  for (const { path, bytes } of files) {
    if (!ALLOWED.some((pattern) => pattern.test(path))) faults.push(`${path} is not on the list of what is shipped.`);
    if (bytes.length > LARGEST_FILE_BYTES) faults.push(`${path} has ${bytes.length} bytes, more than a part should.`);
    if (TEXT.test(path)) faults.push(...textFaults(path, bytes.toString('utf8'), foreignTexts));
  }
  const total = files.reduce((sum, { bytes }) => sum + bytes.length, 0);
  if (total > LARGEST_ARCHIVE_BYTES)
    faults.push(`The files have ${total} bytes together, more than the program should.`);
  return faults;
}

function textFaults(path: string, text: string, foreignTexts: readonly string[]): string[] {
  const faults = foreignTexts
    .filter((foreign) => text.includes(foreign))
    .map((foreign) => `${path} names a folder of this machine: ${foreign}.`);
  if (/^\/[/*][#@] sourceMappingURL=/m.test(text)) faults.push(`${path} points to a source map.`);
  return faults;
}
