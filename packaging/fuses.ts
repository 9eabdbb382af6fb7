import { FuseV1Options, getCurrentFuseWire } from '@electron/fuses';

/** States on the wire are the characters 1 and 0. */
const ON = '1'.charCodeAt(0);
const OFF = '0'.charCodeAt(0);

/** How each fuse must stand in what is shipped (docs/security.md says why), by its place on the wire. */
const WANTED: ReadonlyMap<FuseV1Options, boolean> = new Map([
  [FuseV1Options.RunAsNode, false],
  [FuseV1Options.EnableCookieEncryption, true],
  [FuseV1Options.EnableNodeOptionsEnvironmentVariable, false],
  [FuseV1Options.EnableNodeCliInspectArguments, false],
  [FuseV1Options.EnableEmbeddedAsarIntegrityValidation, true],
  [FuseV1Options.OnlyLoadAppFromAsar, true],
  [FuseV1Options.LoadBrowserProcessSpecificV8Snapshot, false],
  [FuseV1Options.GrantFileProtocolExtraPrivileges, false],
]);

/**
 * Reads the fuses of a packaged binary back and says which stand wrongly; none when all are as they must be. This list
 * is apart from the one that sets them, so that one slip does not pass unseen.
 * @param executable the program's binary, or the .app folder
 * @throws Error when no fuse wire is in it
 */
export async function fuseFaults(executable: string): Promise<string[]> {
  const wire = await getCurrentFuseWire(executable);
  return [...WANTED]
    .filter(([fuse, on]) => wire[fuse] !== (on ? ON : OFF))
    .map(([fuse, on]) => `Fuse ${FuseV1Options[fuse]} must be ${on ? 'on' : 'off'} and is not.`);
}
