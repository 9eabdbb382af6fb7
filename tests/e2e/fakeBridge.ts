import type { Page } from '@playwright/test';
import type { RecentFile } from '../../electron/contract.ts';

declare global {
  interface Window {
    __asked?: string[];
  }
}

/**
 * Puts a bridge into the page as the desktop's preload does, before the page starts: for what only the desktop has. It
 * writes down what it is asked; the files it lists open as `text`, those marked missing do not.
 */
export async function giveBridge(page: Page, recents: readonly RecentFile[], text: string): Promise<void> {
  await page.addInitScript(
    ({ files, content }) => {
      const asked: string[] = [];
      let listed = [...files];
      const ok = (value: unknown) => ({ ok: true, value });
      const answers: Record<string, (request?: { id?: string }) => unknown> = {
        recents: () => ok(listed),
        forgetRecents: () => {
          listed = [];
          return ok(null);
        },
        openRecent: (request) => {
          const file = files.find(({ id }) => id === request?.id);
          if (!file || file.missing) return { ok: false, message: `${file?.name} is not there now.` };
          return ok({ handle: 'h1', name: file.name, text: content, documentId: 'd1', notes: [] });
        },
        recoveries: () => ok([]),
        about: () => ok({ version: '9.8.7', electron: '45.5.0', chromium: '140' }),
      };
      const bridge: Record<string, unknown> = { kind: 'electron' };
      for (const event of ['onMenu', 'onOpened', 'onProgress']) bridge[event] = () => () => {};
      for (const name of [
        ...[
          'open',
          'openDropped',
          'openRecent',
          'cancelOpen',
          'recents',
          'forgetRecents',
          'setAside',
          'save',
          'saveAs',
        ],
        ...['exportFile', 'print', 'keepRecovery', 'dropRecovery', 'recoveries', 'openRecovery', 'discardRecovery'],
        ...['readBeside', 'keepBeside', 'setUnsaved', 'newWindow', 'openExternal', 'about', 'showLog', 'editText'],
      ]) {
        bridge[name] = async (request?: { id?: string }) => {
          asked.push(name);
          return answers[name]?.(request) ?? ok(null);
        };
      }
      Object.assign(window, { backstayHost: bridge, __asked: asked });
      localStorage.setItem('backstay.preferences', JSON.stringify({ tourSeen: true }));
    },
    { files: recents, content: text },
  );
}
