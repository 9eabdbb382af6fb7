import { existsSync, mkdtempSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { IpcMainInvokeEvent, MenuItemConstructorOptions } from 'electron';
import { describe, expect, it } from 'vitest';
import { CHANNELS, MAX_DOCUMENT_BYTES, MENU_COMMANDS } from '../../../electron/contract.ts';
import { type HandlerParts, registerHandlers } from '../../../electron/main/handlers.ts';
import { menuTemplate } from '../../../electron/main/menu.ts';
import { confine, refusePermissions, windowOptions } from '../../../electron/main/window.ts';
import { DocumentTable, readDocument, writeWhole } from '../../../electron/node/documents.ts';

const folder = mkdtempSync(join(tmpdir(), 'backstay-shell-'));

type Handler = (event: IpcMainInvokeEvent, ...sent: unknown[]) => Promise<unknown>;

function shell(choices: { openPath?: string; savePath?: string; own?: boolean } = {}): {
  call: (channel: string, request: unknown) => Promise<unknown>;
  said: unknown[];
} {
  const handlers = new Map<string, Handler>();
  const said: unknown[] = [];
  const parts: HandlerParts = {
    ipcMain: { handle: (channel: string, handler: Handler) => void handlers.set(channel, handler) },
    documents: new DocumentTable(),
    showOpenDialog: async () => ({
      canceled: choices.openPath === undefined,
      filePaths: choices.openPath === undefined ? [] : [choices.openPath],
    }),
    showSaveDialog: async () => ({ canceled: choices.savePath === undefined, filePath: choices.savePath ?? '' }),
    setUnsaved: (...words) => void said.push(words),
    isOwnPage: () => choices.own ?? true,
  };
  registerHandlers(parts);
  const event = {} as IpcMainInvokeEvent;
  return {
    said,
    call: async (channel, request) => {
      const handler = handlers.get(channel);
      if (!handler) throw new Error(`no handler for ${channel}`);
      return handler(event, request);
    },
  };
}

describe('handlers', () => {
  it('answer every channel of the contract', async () => {
    const { call } = shell({ own: false });
    for (const channel of Object.keys(CHANNELS)) {
      await expect(call(channel, null)).rejects.toThrow('refused');
    }
  });

  it('open, save and save as without ever telling the page a path', async () => {
    const path = join(folder, 'boat.backstay');
    writeFileSync(path, '{"a":1}');
    const { call } = shell({ openPath: path, savePath: join(folder, 'copy.backstay') });
    const opened = (await call('open', null)) as { value: { handle: string; name: string; text: string } };
    expect(opened.value).toMatchObject({ name: 'boat.backstay', text: '{"a":1}' });
    expect(JSON.stringify(opened)).not.toContain(folder);
    await call('save', { handle: opened.value.handle, text: '{"a":2}' });
    expect(readFileSync(path, 'utf8')).toBe('{"a":2}');
    await call('saveAs', { suggestedName: '../../evil', text: '{"a":3}' });
    expect(readFileSync(join(folder, 'copy.backstay'), 'utf8')).toBe('{"a":3}');
  });

  it('answer a cancelled dialog with null and a forged handle with a sentence', async () => {
    const { call } = shell();
    expect(await call('open', null)).toEqual({ ok: true, value: null });
    expect(await call('save', { handle: '/etc/passwd', text: '' })).toEqual({
      ok: false,
      message: 'This document has no file yet. Use Save as and choose one.',
    });
  });

  it('refuse what does not fit the contract', async () => {
    const { call } = shell();
    await expect(call('save', { handle: 1, text: '' })).rejects.toThrow();
    await expect(call('exportFile', { suggestedName: 'x', kind: 'exe', bytes: new Uint8Array() })).rejects.toThrow();
    await expect(call('setUnsaved', { unsaved: true, title: 't', extra: 1 })).rejects.toThrow();
  });

  it('export bytes as they are', async () => {
    const path = join(folder, 'sheet.pdf');
    const { call } = shell({ savePath: path });
    await call('exportFile', { suggestedName: 'sheet.pdf', kind: 'pdf', bytes: new Uint8Array([37, 80, 68, 70]) });
    expect([...readFileSync(path)]).toEqual([37, 80, 68, 70]);
  });
});

describe('documents', () => {
  it('a file over the limit is refused with the limit and a mend, without being read', async () => {
    const path = join(folder, 'huge.backstay');
    writeFileSync(path, '');
    truncateSync(path, 4 * MAX_DOCUMENT_BYTES);
    await expect(readDocument(path)).rejects.toThrow(/huge\.backstay is 200 MB; .* up to 50 MB\. Check/);
  });

  it('a missing file and a file that is not text get sentences', async () => {
    await expect(readDocument(join(folder, 'none.backstay'))).rejects.toThrow('there is no such file or folder');
    const path = join(folder, 'picture.backstay');
    writeFileSync(path, Buffer.from([0xff, 0xd8, 0xff, 0xe0]));
    await expect(readDocument(path)).rejects.toThrow('is not UTF-8 text');
  });

  it('a write that fails leaves the old file whole and no litter', async () => {
    const path = join(folder, 'missing-folder', 'boat.backstay');
    await expect(writeWhole(path, new Uint8Array())).rejects.toThrow('Your work is still open here');
    expect(existsSync(path)).toBe(false);
    const good = join(folder, 'good.backstay');
    await writeWhole(good, new TextEncoder().encode('old'));
    await writeWhole(good, new TextEncoder().encode('new'));
    expect(readFileSync(good, 'utf8')).toBe('new');
    expect(readdirSync(folder).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  });
});

describe('window', () => {
  it('is sandboxed, isolated and without Node', () => {
    expect(windowOptions('/p').webPreferences).toMatchObject({
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webviewTag: false,
    });
  });

  it('stays on its page', () => {
    const listeners = new Map<string, (event: { preventDefault(): void }) => void>();
    let answer: unknown;
    confine({
      on: ((name: string, listener: never) => listeners.set(name, listener)) as never,
      setWindowOpenHandler: (handler) => {
        answer = handler({} as never);
      },
    });
    for (const name of ['will-navigate', 'will-redirect', 'will-attach-webview']) {
      let prevented = false;
      listeners.get(name)?.({
        preventDefault: () => {
          prevented = true;
        },
      });
      expect(prevented, name).toBe(true);
    }
    expect(answer).toEqual({ action: 'deny' });
  });

  it('grants no permission', () => {
    const granted: unknown[] = [];
    refusePermissions({
      setPermissionRequestHandler: (handler) =>
        handler?.({} as never, 'geolocation' as never, (ok) => granted.push(ok), {} as never),
      setPermissionCheckHandler: (handler) => granted.push(handler?.({} as never, 'media', '', {} as never)),
    });
    expect(granted).toEqual([false, false]);
  });
});

describe('menu', () => {
  const entries = (template: readonly MenuItemConstructorOptions[]): MenuItemConstructorOptions[] =>
    template.flatMap((entry) => [entry, ...(Array.isArray(entry.submenu) ? entries(entry.submenu) : [])]);

  it('sends every command of the contract', () => {
    const sent: string[] = [];
    for (const entry of entries(menuTemplate(false, (command) => sent.push(command)))) {
      entry.click?.({} as never, undefined, {} as never);
    }
    expect(sent.sort()).toEqual([...MENU_COMMANDS].sort());
  });

  it('gives no key twice', () => {
    const keys = entries(menuTemplate(true, () => {})).flatMap(({ accelerator }) => accelerator ?? []);
    expect(new Set(keys).size).toBe(keys.length);
  });
});
