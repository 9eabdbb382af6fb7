import { basename } from 'node:path';
import type { FileParts } from '../../electron/node/files/parts.ts';

// One folder on a disk whose cache a power cut empties. What has been flushed stays. Of what has not, anything may have
// reached the disk: of a file's bytes none, half, zeros in their place or all; of the changes to the folder any of them.

interface Inode {
  /** What programs see. */
  bytes: Buffer;
  /** What is on the disk for certain; null before the first flush. */
  flushed: Buffer | null;
}

type Folder = ReadonlyMap<string, Inode>;
/** One change to the folder, which happens whole or not at all. */
type Change = (folder: Map<string, Inode>) => void;

const problem = (code: string): Error => Object.assign(new Error(`${code}: as if`), { code });

export class MemoryDisk {
  #onDisk = new Map<string, Inode>();
  #pending: Change[] = [];
  readonly #hasLinks: boolean;
  readonly #flushes: boolean;
  /** Called after each change of anything: the moments at which the power may go. */
  onStep: () => void = () => {};

  /**
   * @param hasLinks whether the disk knows hard links
   * @param flushes false for a disk that says it has flushed and has not: a control that the test can fail
   */
  constructor(files: Readonly<Record<string, string>>, { hasLinks = true, flushes = true } = {}) {
    this.#hasLinks = hasLinks;
    this.#flushes = flushes;
    for (const [name, text] of Object.entries(files)) {
      this.#onDisk.set(name, { bytes: Buffer.from(text), flushed: Buffer.from(text) });
    }
  }

  /** What each name may hold if the power goes now: null where the name is not there. */
  afterPowerCut(): Map<string, (string | null)[]>[] {
    const outcomes: Map<string, (string | null)[]>[] = [];
    for (let chosen = 0; chosen < 2 ** this.#pending.length; chosen += 1) {
      const folder = new Map(this.#onDisk);
      this.#pending.forEach((change, index) => {
        if (chosen & (1 << index)) change(folder);
      });
      outcomes.push(new Map([...folder].map(([name, inode]) => [name, contentsOf(inode)])));
    }
    return outcomes;
  }

  readonly parts: FileParts = {
    now: () => 0,
    sleep: async () => {},
    fs: {
      access: async () => {},
      realpath: async (path: string) => (this.#inode(path) ? path : this.#missing()),
      readlink: async () => this.#missing(),
      readdir: async () => [...this.#now().keys()],
      stat: async (path: string) => {
        const { bytes } = this.#inode(path) ?? this.#missing();
        return { size: bytes.length, mode: 0o644, isFile: () => true, isDirectory: () => false };
      },
      rename: async (from: string, to: string) => {
        const inode = this.#inode(from) ?? this.#missing();
        // Two names of one file: a rename between them does nothing.
        if (this.#inode(to) === inode) return;
        this.#change((folder) => {
          folder.delete(basename(from));
          folder.set(basename(to), inode);
        });
      },
      link: async (from: string, to: string) => {
        if (!this.#hasLinks) throw problem('EPERM');
        const inode = this.#inode(from) ?? this.#missing();
        this.#change((folder) => void folder.set(basename(to), inode));
      },
      copyFile: async (from: string, to: string) => {
        const { bytes } = this.#inode(from) ?? this.#missing();
        const copy = { bytes: Buffer.from(bytes), flushed: null };
        this.#change((folder) => void folder.set(basename(to), copy));
      },
      rm: async (path: string) => {
        if (this.#inode(path)) this.#change((folder) => void folder.delete(basename(path)));
      },
      open: async (path: string, flags: string) => (flags === 'r' ? this.#openFolder() : this.#openFile(path, flags)),
    } as unknown as FileParts['fs'],
  };

  #openFile(path: string, flags: string): object {
    const fresh: Inode = { bytes: Buffer.alloc(0), flushed: null };
    if (flags === 'wx') this.#change((folder) => void folder.set(basename(path), fresh));
    const inode = this.#inode(path) ?? this.#missing();
    return {
      writeFile: async (bytes: Uint8Array) => {
        inode.bytes = Buffer.from(bytes);
        this.onStep();
      },
      sync: async () => {
        if (this.#flushes) inode.flushed = Buffer.from(inode.bytes);
        this.onStep();
      },
      stat: async () => ({ mtimeMs: 0 }),
      chown: async () => {},
      chmod: async () => {},
      close: async () => {},
    };
  }

  #openFolder(): object {
    return {
      sync: async () => {
        if (this.#flushes) {
          this.#onDisk = this.#now();
          this.#pending = [];
        }
        this.onStep();
      },
      close: async () => {},
    };
  }

  #change(change: Change): void {
    this.#pending.push(change);
    this.onStep();
  }

  #now(): Map<string, Inode> {
    const folder = new Map(this.#onDisk);
    for (const change of this.#pending) change(folder);
    return folder;
  }

  #inode(path: string): Inode | undefined {
    const folder: Folder = this.#now();
    return folder.get(basename(path));
  }

  #missing(): never {
    throw problem('ENOENT');
  }
}

function contentsOf({ bytes, flushed }: Inode): (string | null)[] {
  const isOnDisk = flushed?.equals(bytes) ?? false;
  const whole = bytes.toString();
  if (isOnDisk) return [whole];
  const half = bytes.subarray(0, bytes.length / 2).toString();
  return [...new Set([whole, '', half, '\0'.repeat(bytes.length), ...(flushed === null ? [] : [flushed.toString()])])];
}
