import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { IpcMainInvokeEvent } from 'electron';
import { afterAll } from 'vitest';
import type { TextCommand } from '../../../electron/contract.ts';
import { registerHandlers } from '../../../electron/main/handlers.ts';
import type { Caller } from '../../../electron/main/parts.ts';
import { DocumentTable, writeWhole } from '../../../electron/node/documents.ts';
import { RecentFiles } from '../../../electron/node/recent.ts';
import { RecoveryStore } from '../../../electron/node/recovery/recovery.ts';

// The real handlers over the real file modules, with the dialogs, the window and the system answered by the test.

/** A folder of its own under the system's, taken away when the tests of this file have run. */
export function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'backstay-shell-'));
  folders.push(folder);
  return folder;
}
const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

type Handler = (event: IpcMainInvokeEvent, ...sent: unknown[]) => Promise<unknown>;

export interface Choices {
  openPath?: string | null;
  savePath?: string | null;
  /** Whether the user agrees to open an address. */
  agrees?: boolean;
  /** Whether calls come from the app's own page. */
  isOwn?: boolean;
}

export class FakeCaller implements Caller {
  readonly handles = new Set<string>();
  readonly documentIds = new Set<string>();
  opening: AbortController | null = null;
  readonly said: unknown[] = [];
  readonly suggested: string[] = [];
  readonly choices: Choices;
  constructor(choices: Choices) {
    this.choices = choices;
  }
  async chooseFile(): Promise<string | null> {
    return this.choices.openPath ?? null;
  }
  async chooseTarget(suggestedName: string): Promise<string | null> {
    this.suggested.push(suggestedName);
    return this.choices.savePath ?? null;
  }
  setUnsaved(...words: [boolean, string]): void {
    this.said.push(words);
  }
  saveBegan(): void {}
  saveEnded(isSaved: boolean): void {
    this.said.push(isSaved ? 'saved' : 'not saved');
  }
  tellProgress(): void {}
  editText(command: TextCommand): void {
    this.said.push(command);
  }
  async mayOpen(): Promise<boolean> {
    return this.choices.agrees ?? false;
  }
}

export interface Shell {
  readonly folder: string;
  readonly caller: FakeCaller;
  readonly log: string[];
  /** What was asked of the system: addresses opened, PDFs shown. */
  readonly asked: string[];
  /** All callers there are; the first is `caller`. */
  readonly callers: FakeCaller[];
  call(channel: string, ...sent: unknown[]): Promise<unknown>;
  callAs(caller: Caller, channel: string, ...sent: unknown[]): Promise<unknown>;
}

export function shell(choices: Choices = {}): Shell {
  const folder = freshFolder();
  const handlers = new Map<string, Handler>();
  const caller = new FakeCaller(choices);
  const [log, asked, callers]: [string[], string[], FakeCaller[]] = [[], [], [caller]];
  let current: Caller = caller;
  registerHandlers({
    ipcMain: { handle: (channel: string, handler: Handler) => void handlers.set(channel, handler) },
    documents: new DocumentTable(),
    recovery: new RecoveryStore(join(folder, 'recovery')),
    recents: new RecentFiles(join(folder, 'recent.json')),
    about: { version: '1.2.3', electron: '45', chromium: '140' },
    callerOf: () => (choices.isOwn === false ? null : current),
    idsInUseBeside: (one) =>
      new Set(callers.filter((other) => other !== one).flatMap((other) => [...other.documentIds])),
    writeWhole: async (path, bytes) => {
      await writeWhole(path, bytes);
    },
    showPdf: async ({ suggestedName }) => {
      asked.push(`pdf ${suggestedName}`);
      return { name: suggestedName };
    },
    openExternal: async (url) => void asked.push(url),
    openWindow: () => void asked.push('window'),
    showLog: async () => void asked.push('log'),
    log: (code, details) => void log.push(`${code} ${JSON.stringify(details ?? {})}`),
    recentsChanged: () => {},
  });
  const callAs = async (one: Caller, channel: string, ...sent: unknown[]): Promise<unknown> => {
    const handler = handlers.get(channel);
    if (!handler) throw new Error(`no handler for ${channel}`);
    current = one;
    return handler({} as IpcMainInvokeEvent, ...sent);
  };
  return { folder, caller, log, asked, callers, callAs, call: (...sent) => callAs(caller, ...sent) };
}
