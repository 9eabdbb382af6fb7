import type { FileHandle } from 'node:fs/promises';
import { type FileParts, MACHINE_PARTS } from '../../electron/node/files/parts.ts';

/** What happens in place of a step: null for nothing, else something that throws or ends the process. */
export type Fault = (step: { readonly name: string; readonly number: number }) => (() => void) | null;

const HANDLE_STEPS = ['writeFile', 'sync', 'stat', 'read', 'chown', 'chmod', 'close'] as const;
const PLAIN_STEPS = ['access', 'copyFile', 'link', 'readdir', 'readlink', 'realpath', 'rename', 'rm', 'stat'] as const;

/**
 * The machine's own file calls, counted from 1, with a fault asked for before each. A write that is to fail writes the
 * first half of its bytes, as a full disk does. No pause is really waited for.
 */
export function faultyParts(fault: Fault): { readonly parts: FileParts; readonly steps: string[] } {
  const steps: string[] = [];
  const before = async (name: string, half: () => Promise<unknown> = async () => {}): Promise<void> => {
    steps.push(name);
    const happens = fault({ name, number: steps.length });
    if (happens === null) return;
    await half();
    happens();
  };
  const counted = <A extends unknown[], R>(name: string, call: (...args: A) => Promise<R>) => {
    return async (...args: A): Promise<R> => {
      await before(name);
      return call(...args);
    };
  };
  const wrapped = (file: FileHandle): FileHandle => {
    const own: Record<string, unknown> = {};
    for (const name of HANDLE_STEPS) {
      const call = file[name].bind(file) as (...args: unknown[]) => Promise<unknown>;
      own[name] = async (...args: unknown[]) => {
        const bytes = args[0];
        const half = async (): Promise<void> => {
          if (name === 'writeFile' && bytes instanceof Uint8Array) {
            await file.write(bytes.subarray(0, bytes.length / 2));
          }
          // The file is never left open, whatever the system says of closing it.
          if (name === 'close') await file.close();
        };
        await before(name, half);
        return call(...args);
      };
    }
    return own as unknown as FileHandle;
  };
  const { fs } = MACHINE_PARTS;
  const open = async (...args: Parameters<typeof fs.open>): Promise<FileHandle> => {
    await before('open');
    return wrapped(await fs.open(...args));
  };
  const calls = PLAIN_STEPS.map((name) => [name, counted(name, fs[name] as (...args: unknown[]) => Promise<unknown>)]);
  const parts = { fs: { ...Object.fromEntries(calls), open } as FileParts['fs'], now: Date.now, sleep: async () => {} };
  return { parts, steps };
}

/** A failure as the system gives it. */
export const failsWith = (code: string) => (): never => {
  throw Object.assign(new Error(`${code}: as if`), { code });
};
