import { EventEmitter } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserWindow } from 'electron';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { fileLog } from '../../../electron/main/log.ts';
import { boundsOn, readPlacement, writePlacement } from '../../../electron/main/placement.ts';
import { filesIn, Windows } from '../../../electron/main/windows.ts';
import { electronHost } from '../../../renderer/host/electronHost.ts';
import { freshFolder, shell } from './rig.ts';

const folder = freshFolder();
const settled = (): Promise<void> => new Promise((done) => setTimeout(done, 5));

class FakeWindow extends EventEmitter {
  readonly sent: unknown[][] = [];
  readonly mainFrame = { origin: 'app://backstay' };
  readonly webContents = Object.assign(new EventEmitter(), {
    mainFrame: this.mainFrame,
    send: (...words: unknown[]) => void this.sent.push(words),
    reload: () => void this.sent.push(['reloaded']),
  });
  title = '';
  isGone = false;
  focused = false;
  loadURL = async (): Promise<void> => {};
  setTitle = (title: string): void => {
    this.title = title;
  };
  setDocumentEdited(): void {}
  show(): void {}
  focus(): void {}
  isMinimized = (): boolean => false;
  isFocused = (): boolean => this.focused;
  isDestroyed = (): boolean => this.isGone;
  isMaximized = (): boolean => false;
  getNormalBounds = () => ({ x: 1, y: 2, width: 1200, height: 800 });
  close(): void {
    let isPrevented = false;
    this.emit('close', {
      preventDefault: () => {
        isPrevented = true;
      },
    });
    if (isPrevented) return;
    this.isGone = true;
    this.emit('closed');
  }
}

/** Windows over fakes; `answers` are what the user chooses in message boxes, one after another. */
function desk(answers: number[] = []) {
  const made: FakeWindow[] = [];
  const done: string[] = [];
  let now = 0;
  const windows = new Windows({
    dialog: {
      showMessageBox: (async (_window: unknown, { message }: { message: string }) => {
        done.push(message);
        return { response: answers.shift() ?? 0 };
      }) as never,
      showOpenDialog: (async () => ({ canceled: true, filePaths: [] })) as never,
      showSaveDialog: (async () => ({ canceled: true, filePath: '' })) as never,
    },
    log: (code) => void done.push(code),
    now: () => now,
    create: () => {
      const window = new FakeWindow();
      made.push(window);
      return window as unknown as BrowserWindow;
    },
    workAreas: () => [],
    readPlacement: () => null,
    writePlacement: ({ bounds }) => void done.push(`placed ${bounds.width}`),
    giveUp: async (id) => void done.push(`given up ${id}`),
    quit: () => void done.push('quit'),
  });
  const open = (): { one: ReturnType<Windows['open']>; window: FakeWindow } => {
    const one = windows.open();
    const window = made.at(-1) as FakeWindow;
    window.webContents.emit('did-finish-load');
    return { one, window };
  };
  return { windows, open, done, pass: (ms: number) => (now += ms) };
}

describe('closing a window', () => {
  it('asks nothing when nothing is unsaved, and remembers where it stood', () => {
    const { open, done } = desk();
    open().window.close();
    expect(done).toEqual(['placed 1200']);
  });

  it('saves first when that is chosen, and closes when the page says it is saved', async () => {
    const { open, done } = desk([0]);
    const { one, window } = open();
    one.setUnsaved(true, 'Tern');
    window.close();
    await settled();
    expect(window.sent).toEqual([['menu', 'save']]);
    expect(window.isGone).toBe(false);
    one.saveBegan();
    one.setUnsaved(false, 'Tern');
    await settled();
    expect(window.isGone).toBe(true);
    expect(done[0]).toBe('Save the changes before closing?');
  });

  it('stays when the save did not come about, and does not close at a later save', async () => {
    const { open } = desk([0]);
    const { one, window } = open();
    one.setUnsaved(true, 'Tern');
    window.close();
    await settled();
    one.saveBegan();
    one.saveEnded(false);
    one.setUnsaved(false, 'Tern');
    await settled();
    expect(window.isGone).toBe(false);
  });

  describe('after a save whose document is written and whose pictures are not', () => {
    beforeEach(() => void vi.useFakeTimers());
    afterEach(() => void vi.useRealTimers());

    /** A window that was to close after a save, at the moment its document is written. */
    const written = async () => {
      const desktop = desk([0]);
      const { one, window } = desktop.open();
      one.setUnsaved(true, 'Tern');
      window.close();
      await vi.advanceTimersByTimeAsync(5);
      one.saveBegan();
      await vi.advanceTimersByTimeAsync(60_000);
      one.saveEnded(true);
      return { one, window };
    };

    it('closes when the page says in time that all is saved', async () => {
      const { one, window } = await written();
      await vi.advanceTimersByTimeAsync(4900);
      one.setUnsaved(false, 'Tern');
      await vi.runAllTimersAsync();
      expect(window.isGone).toBe(true);
    });

    it('stays when the page says nothing, and does not close at a later save', async () => {
      const { one, window } = await written();
      await vi.advanceTimersByTimeAsync(5100);
      one.setUnsaved(false, 'Tern');
      await vi.runAllTimersAsync();
      expect(window.isGone).toBe(false);
    });

    it('waits as long as pictures are being written, and stays when one fails', async () => {
      const { one, window } = await written();
      one.saveBegan();
      await vi.advanceTimersByTimeAsync(60_000);
      one.saveEnded(true);
      one.saveBegan();
      one.saveEnded(false);
      one.setUnsaved(false, 'Tern');
      await vi.runAllTimersAsync();
      expect(window.isGone).toBe(false);
    });
  });

  it('gives up the recovery copies when the user closes without saving', async () => {
    const { open, done } = desk([1]);
    const { one, window } = open();
    one.documentIds.add('d1');
    one.setUnsaved(true, 'Tern');
    window.close();
    await settled();
    expect(window.isGone).toBe(true);
    expect(done).toContain('given up d1');
  });

  it('leaves alone the copies of documents that were open before, such as work set aside for someone else’s', async () => {
    const { open, done } = desk([1]);
    const { one, window } = open();
    const { callAs } = shell();
    const keep = (documentId: string) =>
      callAs(one, 'keepRecovery', { documentId, handle: null, name: 'n', title: 't', text: '{}' });
    for (const id of ['d2', 'd1', 'd2']) await keep(id);
    one.setUnsaved(true, 'Theirs');
    window.close();
    await settled();
    expect(window.isGone).toBe(true);
    expect(done.filter((word) => word.startsWith('given up'))).toEqual(['given up d2']);
    expect([...one.documentIds]).toEqual(['d1', 'd2']);
  });

  it('asks once, however often it is pressed', async () => {
    const { open, done } = desk([2]);
    const { one, window } = open();
    one.setUnsaved(true, 'Tern');
    window.close();
    window.close();
    await settled();
    expect(done.filter((word) => word.startsWith('Save the changes'))).toHaveLength(1);
  });

  it('goes on with a quit that waited for an answer, and ends it where the user keeps the window', async () => {
    const going = desk([1]);
    const first = going.open();
    first.one.setUnsaved(true, 'Tern');
    going.windows.quitting();
    first.window.close();
    await settled();
    expect(going.done).toContain('quit');

    const kept = desk([2]);
    const second = kept.open();
    second.one.setUnsaved(true, 'Tern');
    kept.windows.quitting();
    second.window.close();
    await settled();
    second.one.setUnsaved(false, 'Tern');
    second.window.close();
    expect(kept.done).not.toContain('quit');
  });
});

describe('a page whose process has gone', () => {
  it('comes back, with its recovery copies free to be taken up', () => {
    const { open, done } = desk();
    const { one, window } = open();
    one.documentIds.add('d1');
    one.handles.add('h1');
    window.webContents.emit('render-process-gone', {}, { reason: 'oom' });
    expect(window.sent).toEqual([['reloaded']]);
    expect([one.documentIds.size, one.handles.size]).toEqual([0, 0]);
    expect(done).toEqual(['page-gone']);
  });

  it('hears what was said meanwhile when it is there again', () => {
    const { open } = desk();
    const { one, window } = open();
    window.webContents.emit('render-process-gone', {}, { reason: 'crashed' });
    one.tell('menu', 'fit');
    expect(window.sent).toEqual([['reloaded']]);
    window.webContents.emit('did-finish-load');
    expect(window.sent.at(-1)).toEqual(['menu', 'fit']);
  });

  it('is started once more only if the user wishes when it goes again and again', async () => {
    const { open, done, pass } = desk([1]);
    const { window } = open();
    const crash = (): boolean => window.webContents.emit('render-process-gone', {}, { reason: 'crashed' });
    for (const ms of [0, 70_000, 1000]) {
      pass(ms);
      crash();
    }
    expect(window.sent).toHaveLength(3);
    crash();
    await settled();
    expect(done).toContain('Backstay’s page has stopped several times.');
    expect(window.isGone).toBe(true);
  });
});

describe('whose call it is', () => {
  it('is a window’s own page in its main frame, and nobody else’s', () => {
    const { open, windows } = desk();
    const { one, window } = open();
    const sender = window.webContents as never;
    const from = (senderFrame: unknown, by = sender) =>
      windows.callerOf({ sender: by, senderFrame: senderFrame as never });
    expect(from(window.mainFrame)).toBe(one);
    expect(from(null)).toBeNull();
    // A frame within the page, even of the same origin.
    expect(from({ origin: 'app://backstay' })).toBeNull();
    for (const origin of ['https://example.org', 'null', 'file://', 'app://backstay.attacker']) {
      window.mainFrame.origin = origin;
      expect(from(window.mainFrame), origin).toBeNull();
    }
    window.mainFrame.origin = 'app://backstay';
    const stranger = { mainFrame: window.mainFrame } as never;
    expect(from(window.mainFrame, stranger)).toBeNull();
  });

  it('a file from outside goes to a window nothing was done in, else to a new one', () => {
    const { open, windows } = desk();
    const { one } = open();
    expect(windows.forFile()).toBe(one);
    one.handles.add('h');
    expect(windows.forFile()).not.toBe(one);
    expect(windows.all.size).toBe(2);
  });

  it('two files from outside at once go to two windows, though the first is still being read', async () => {
    const { open, windows } = desk();
    const { one } = open();
    one.opening = new AbortController();
    const second = windows.forFile();
    expect(second).not.toBe(one);
    second.opening = new AbortController();
    // One that could not be opened leaves the window free for the next.
    one.opening = null;
    expect(windows.forFile()).toBe(one);
  });

  it('documents are found on a command line among whatever Chromium puts there', () => {
    expect(filesIn(['backstay', '--no-sandbox', 'a.backstay', '--x=b.backstay', 'B.BACKSTAY', 'c.txt'])).toEqual([
      'a.backstay',
      'B.BACKSTAY',
    ]);
  });
});

describe('where a window opens', () => {
  const screen = { x: 0, y: 0, width: 1920, height: 1040 };
  const left = { x: -1920, y: 0, width: 1920, height: 1040 };
  const bounds = { x: 100, y: 50, width: 1200, height: 800 };

  it('is where it was left, when that can still be seen', () => {
    expect(boundsOn(bounds, [screen])).toEqual(bounds);
    expect(boundsOn({ ...bounds, x: -1500 }, [screen, left])).toMatchObject({ x: -1500 });
    // Half off an edge, but there to be dragged.
    expect(boundsOn({ ...bounds, x: 1700 }, [screen])).toMatchObject({ x: 1700 });
  });

  it('is the system’s choice when the screen it was on is gone', () => {
    expect(boundsOn({ ...bounds, x: -1500 }, [screen])).toBeNull();
    expect(boundsOn({ ...bounds, y: 2000 }, [screen])).toBeNull();
    expect(boundsOn({ ...bounds, y: -600 }, [screen])).toBeNull();
    expect(boundsOn(bounds, [])).toBeNull();
  });

  it('steps aside for each further window', () => {
    expect(boundsOn(bounds, [screen], 2)).toEqual({ ...bounds, x: 156, y: 106 });
    expect(boundsOn({ ...bounds, x: 1790 }, [screen], 5)).toMatchObject({ x: 1790 });
  });

  it('is kept in a file that may hold anything', () => {
    const path = join(folder, 'window.json');
    expect(readPlacement(path)).toBeNull();
    writePlacement(path, { bounds, isMaximised: true });
    expect(readPlacement(path)).toEqual({ bounds, isMaximised: true });
    for (const text of ['', 'null', '[]', '{"bounds":{"x":1e300,"y":0,"width":1200,"height":800}}', '{"bounds":7}']) {
      writeFileSync(path, text);
      expect(readPlacement(path), text).toBeNull();
    }
    writePlacement(join(path, 'within-a-file'), { bounds, isMaximised: false });
  });
});

describe('the log', () => {
  const now = (): Date => new Date('2031-05-02T08:00:00Z');

  it('has an instant, a code and plain values, and nothing else whoever asks', () => {
    const path = join(folder, 'plain.log');
    const log = fileLog(path, now);
    log('start', { version: '1.0.0' });
    log('fault', { kind: '/home/someone/Bruyère.backstay', n: 3 });
    log('title: Secret');
    expect(readFileSync(path, 'utf8').split('\n')).toEqual([
      '2031-05-02T08:00:00.000Z start version=1.0.0',
      '2031-05-02T08:00:00.000Z fault kind=unprintable n=3',
      '2031-05-02T08:00:00.000Z unprintable',
      '',
    ]);
  });

  it('begins anew at half a megabyte, keeps the one before, and never stops the program', () => {
    const path = join(folder, 'full.log');
    writeFileSync(path, 'x'.repeat(600_000));
    fileLog(path, now)('start');
    expect(readFileSync(path, 'utf8')).toBe('2031-05-02T08:00:00.000Z start\n');
    expect(readFileSync(`${path}.old`, 'utf8')).toHaveLength(600_000);
    expect(() => fileLog(join(path, 'within-a-file'), now)('start')).not.toThrow();
  });
});

describe('the page’s side of the menu', () => {
  const element = (tagName: string, type: string | null = null) =>
    ({ tagName, getAttribute: () => type, closest: () => null }) as unknown as Element;

  it.each([
    ['a text field', element('INPUT'), 'undo', 'field'],
    ['a number field', element('INPUT', 'number'), 'paste', 'field'],
    ['a large text field', element('TEXTAREA'), 'select-all', 'field'],
    ['a tick box', element('INPUT', 'checkbox'), 'undo', 'page'],
    ['the drawing', element('DIV'), 'copy', 'page'],
    ['nothing', null, 'redo', 'page'],
    ['a text field, for what is no editing', element('INPUT'), 'save', 'page'],
  ])('%s has the focus: %s of the menu', (_, activeElement, command, expected) => {
    const got: string[] = [];
    const bridge = {
      onMenu: (listener: (command: string) => void) => {
        listener(command);
        return () => {};
      },
      editText: async () => void got.push('field'),
    };
    electronHost(bridge as never, { activeElement }).onMenu(() => void got.push('page'));
    expect(got).toEqual([expected]);
  });

  it('makes a sentence of a request that is refused, so that Save never ends without a word', async () => {
    const refuses = async (): Promise<never> => {
      throw new Error("Error invoking remote method 'keepBeside': refused");
    };
    const host = electronHost({ keepBeside: refuses, save: refuses } as never, { activeElement: null });
    const failure = {
      ok: false,
      message: 'The program refused this by its own checks. Your work is still open here.',
    };
    expect(await host.keepBeside({ handle: 'h', fileName: '../x', bytes: new Uint8Array() })).toEqual(failure);
    expect(await host.save({ handle: 'h', text: '', overwrite: false })).toEqual(failure);
  });

  it('refuses an answer that does not fit the contract', async () => {
    const bridge = { open: async () => ({ ok: true, value: { path: '/etc/passwd' } }) };
    await expect(electronHost(bridge as never, { activeElement: null }).open()).rejects.toThrow();
  });
});
