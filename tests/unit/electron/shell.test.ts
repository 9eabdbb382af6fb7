import { existsSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { MenuItemConstructorOptions } from 'electron';
import { describe, expect, it } from 'vitest';
import { CHANNELS, MAX_DOCUMENT_BYTES, menuCommandSchema } from '../../../electron/contract.ts';
import { acceleratorOf, menuTemplate } from '../../../electron/main/menu.ts';
import { confine, refuseNetwork, refusePermissions, windowOptions } from '../../../electron/main/window.ts';
import { readDocument, writeWhole } from '../../../electron/node/documents.ts';
import { ACTIONS } from '../../../renderer/app/actions.ts';
import { FakeCaller, freshFolder, shell } from './rig.ts';

const folder = freshFolder();

describe('handlers', () => {
  it('answer every channel of the contract, and only to the own page', async () => {
    const { call, log } = shell({ isOwn: false });
    for (const channel of Object.keys(CHANNELS)) {
      await expect(call(channel, {}), channel).rejects.toThrow('refused');
    }
    expect(log[0]).toBe('call-refused {"channel":"open","why":"sender"}');
  });

  it('open, save and save as without ever telling the page a path', async () => {
    const path = join(folder, 'boat.backstay');
    writeFileSync(path, '{"a":1}');
    const { call } = shell({ openPath: path, savePath: join(folder, 'copy.backstay') });
    const opened = (await call('open', {})) as { value: { handle: string; name: string; text: string } };
    expect(opened.value).toMatchObject({ name: 'boat.backstay', text: '{"a":1}' });
    expect(JSON.stringify(opened)).not.toContain(folder);
    const saved = await call('save', { handle: opened.value.handle, text: '{"a":2}', overwrite: false });
    expect(saved).toMatchObject({ ok: true, value: { kind: 'saved' } });
    expect(readFileSync(path, 'utf8')).toBe('{"a":2}');
    await call('saveAs', { suggestedName: '../../evil', text: '{"a":3}' });
    expect(readFileSync(join(folder, 'copy.backstay'), 'utf8')).toBe('{"a":3}');
    expect(JSON.stringify(await call('recents', {}))).not.toContain(folder);
  });

  it('notice a file someone else has written, and overwrite it only when told to', async () => {
    const path = join(folder, 'shared.backstay');
    writeFileSync(path, 'one');
    const { call, caller } = shell({ openPath: path });
    const { value } = (await call('open', {})) as { value: { handle: string } };
    writeFileSync(path, 'someone else');
    const request = { handle: value.handle, text: 'two', overwrite: false };
    expect(await call('save', request)).toMatchObject({ value: { kind: 'changed-on-disk', name: 'shared.backstay' } });
    expect(readFileSync(path, 'utf8')).toBe('someone else');
    expect(await call('save', { ...request, overwrite: true })).toMatchObject({ value: { kind: 'saved' } });
    expect(caller.said).toEqual(['not saved', 'saved']);
  });

  it('tell the window of a picture that could not be kept as of a save that failed', async () => {
    const path = join(folder, 'blocked.backstay');
    writeFileSync(path, 'one');
    writeFileSync(join(folder, 'blocked.pictures'), 'a file of that name');
    const { call, caller } = shell({ openPath: path });
    const { value } = (await call('open', {})) as { value: { handle: string } };
    const request = { handle: value.handle, fileName: 'picture-1.png', bytes: new Uint8Array([1]) };
    expect(await call('keepBeside', request)).toMatchObject({ ok: false });
    expect(caller.said).toEqual(['not saved']);
  });

  it('answer a cancelled dialog with null and a forged handle with a sentence', async () => {
    const { call } = shell();
    expect(await call('open', {})).toEqual({ ok: true, value: null });
    expect(await call('save', { handle: '/etc/passwd', text: '', overwrite: true })).toEqual({
      ok: false,
      message: 'This document has no file yet. Use Save as and choose one.',
    });
  });

  it('refuse what does not fit the contract', async () => {
    const { call } = shell();
    await expect(call('save', { handle: 1, text: '', overwrite: false })).rejects.toThrow('refused');
    await expect(call('exportFile', { suggestedName: 'x', kind: 'exe', bytes: new Uint8Array() })).rejects.toThrow(
      'refused',
    );
    await expect(call('setUnsaved', { unsaved: true, title: 't', extra: 1 })).rejects.toThrow('refused');
    await expect(call('about', {}, {})).rejects.toThrow('refused');
  });

  it('export bytes as they are', async () => {
    const path = join(folder, 'sheet.pdf');
    const { call } = shell({ savePath: path });
    await call('exportFile', { suggestedName: 'sheet.pdf', kind: 'pdf', bytes: new Uint8Array([37, 80, 68, 70]) });
    expect([...readFileSync(path)]).toEqual([37, 80, 68, 70]);
  });

  it('keep a recovery copy, list it, give it back with its file, and let it go', async () => {
    const path = join(folder, 'kept.backstay');
    writeFileSync(path, 'old');
    const { call, caller } = shell({ openPath: path });
    const { value } = (await call('open', {})) as { value: { handle: string; documentId: string } };
    const kept = {
      documentId: value.documentId,
      handle: value.handle,
      name: 'kept.backstay',
      title: 'Kept',
      text: '{}',
    };
    expect(await call('keepRecovery', kept)).toEqual({ ok: true, value: null });
    expect(await call('recoveries', {})).toMatchObject({ value: [{ id: value.documentId, title: 'Kept' }] });
    caller.handles.clear();
    const back = (await call('openRecovery', { id: value.documentId })) as { value: { handle: string; text: string } };
    expect(back.value.text).toBe('{}');
    await call('save', { handle: back.value.handle, text: 'new', overwrite: false });
    expect(readFileSync(path, 'utf8')).toBe('new');
    await call('dropRecovery', { documentId: value.documentId });
    expect(await call('recoveries', {})).toEqual({ ok: true, value: [] });
  });

  it('leave alone what another window has open', async () => {
    const { call, callAs, callers } = shell();
    const other = new FakeCaller({});
    callers.push(other);
    await callAs(other, 'keepRecovery', { documentId: 'theirs', handle: null, name: 'n', title: 't', text: '{}' });
    expect(await call('recoveries', {})).toEqual({ ok: true, value: [] });
    for (const channel of ['openRecovery', 'discardRecovery']) {
      expect(await call(channel, { id: 'theirs' })).toMatchObject({ ok: false });
    }
    expect(await call('dropRecovery', { documentId: 'theirs' })).toMatchObject({ ok: false });
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
    expect(windowOptions('/p', { isDark: false, isPackaged: true }).webPreferences).toMatchObject({
      devTools: false,
      webSecurity: true,
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
      setWebRTCIPHandlingPolicy: (policy) => expect(policy).toBe('disable_non_proxied_udp'),
    });
    for (const name of ['will-navigate', 'will-frame-navigate', 'will-redirect', 'will-attach-webview']) {
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
      setDevicePermissionHandler: (handler) => granted.push(handler?.({} as never)),
      setDisplayMediaRequestHandler: (handler) => granted.push(handler !== null),
    });
    expect(granted).toEqual([false, false, false, false]);
  });

  it.each([
    ['app://backstay/index.html', true],
    ['blob:app://backstay/1', true],
    ['data:image/png;base64,', true],
    ['https://example.org/', false],
    ['http://127.0.0.1/', false],
    ['wss://example.org/', false],
    ['file:///etc/passwd', false],
    ['devtools://devtools/bundled/', false],
    ['nonsense', false],
  ])('lets a page load %s: %s', (url, isAllowed) => {
    const cancelled: unknown[] = [];
    let refused = 0;
    const webRequest = {
      onBeforeRequest: (listener: (details: { url: string }, answer: (how: unknown) => void) => void) =>
        listener({ url }, (how) => cancelled.push(how)),
    };
    refuseNetwork({ webRequest } as never, true, () => {
      refused += 1;
    });
    expect(cancelled).toEqual([{ cancel: !isAllowed }]);
    expect(refused).toBe(isAllowed ? 0 : 1);
  });
});

describe('menu', () => {
  const entries = (template: readonly MenuItemConstructorOptions[]): MenuItemConstructorOptions[] =>
    template.flatMap((entry) => [entry, ...(Array.isArray(entry.submenu) ? entries(entry.submenu) : [])]);

  const template = (isMac: boolean, sent: string[] = []): MenuItemConstructorOptions[] =>
    menuTemplate({
      isMac,
      recents: [{ id: 'r1', name: 'Tern & Co.backstay', folder: 'boats', lastUsed: '', missing: false }],
      send: (command) => sent.push(command),
      newWindow: () => {},
      forgetRecents: () => {},
    });

  it('sends commands that fit the contract, recent files among them', () => {
    const sent: string[] = [];
    for (const entry of entries(template(false, sent))) entry.click?.({} as never, undefined, {} as never);
    expect(sent.filter((command) => !menuCommandSchema.safeParse(command).success)).toEqual([]);
    expect(sent).toContain('recent:r1');
    expect(sent.length).toBe(new Set(sent).size);
  });

  it.each([true, false])(
    'has every action of the page once, by its own name and with its own key (Mac: %s)',
    (isMac) => {
      const shown = entries(template(isMac)).filter(({ id }) => id !== undefined && !id.startsWith('recent:'));
      expect(shown.map(({ id }) => id).sort()).toEqual(ACTIONS.map(({ id }) => id).sort());
      for (const { id, label, accelerator } of shown) {
        const action = ACTIONS.find((known) => known.id === id);
        const [chord] = action?.keys ?? [];
        // On a Mac a key without Command, Control or Alt stands behind the name.
        const name = accelerator === undefined && chord !== undefined ? label?.replace(/ \([^)]+\)$/, '') : label;
        expect(name, id).toBe(action?.name);
        if (accelerator !== undefined) expect(accelerator, id).toBe(acceleratorOf(chord ?? ''));
        else if (chord !== undefined) expect(isMac && /\([^)]+\)$/.test(label ?? ''), id).toBe(true);
      }
    },
  );

  it.each([true, false])('registers no key twice (Mac: %s)', (isMac) => {
    const keys = entries(template(isMac)).flatMap(({ accelerator, registerAccelerator }) =>
      accelerator !== undefined && registerAccelerator !== false ? [accelerator] : [],
    );
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('shows an ampersand in a file name as one', () => {
    expect(entries(template(false)).map(({ label }) => label)).toContain('Tern && Co.backstay — boats');
  });
});
