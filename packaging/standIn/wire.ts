/** What marks the fuse wire in Electron's binary (read in @electron/fuses; the reader there must find it again). */
const SENTINEL = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
const VERSION = 1;
/** As a runtime comes: run-as-node, node options, inspect and file privileges on, the rest off, a ninth on (from memory). */
const AS_DELIVERED = '101100011';

/** A fuse wire as Electron's binary carries one. */
export const fuseWire = (): Buffer =>
  Buffer.concat([Buffer.from(SENTINEL), Buffer.from([VERSION, AS_DELIVERED.length]), Buffer.from(AS_DELIVERED)]);
