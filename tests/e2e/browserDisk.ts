import type { Page } from '@playwright/test';

/** A disk as the browser's file access shows it, with one file on it; the page's host uses it through the real calls. */
export interface BrowserDisk {
  /** What the file holds now. */
  text(): Promise<string>;
  /** Someone else writes to it. */
  changeBehindTheBack(text: string): Promise<void>;
  /** From now on writing fails with this reason; null mends it. */
  failWith(reason: string | null): Promise<void>;
}

interface DiskInPage {
  text: string;
  modified: number;
  failure: string | null;
}

declare global {
  interface Window {
    __disk?: DiskInPage;
  }
}

/**
 * Gives the page a disk with `boat.backstay` on it: both pickers answer with that file, since a test cannot press
 * anything in the system's own dialogs.
 */
export async function giveDisk(page: Page, text: string): Promise<BrowserDisk> {
  await page.evaluate((content) => {
    const disk: DiskInPage = { text: content, modified: Date.now() - 60_000, failure: null };
    const handle = {
      kind: 'file',
      name: 'boat.backstay',
      getFile: async () => new File([disk.text], 'boat.backstay', { lastModified: disk.modified }),
      createWritable: async () => {
        if (disk.failure !== null) throw new Error(disk.failure);
        let written = '';
        return {
          write: async (piece: string) => {
            written += piece;
          },
          close: async () => {
            disk.text = written;
            disk.modified = Date.now();
          },
        };
      },
    };
    Object.assign(window, {
      __disk: disk,
      showOpenFilePicker: async () => [handle],
      showSaveFilePicker: async () => handle,
    });
  }, text);
  const change = (part: Partial<DiskInPage>): Promise<void> =>
    page.evaluate((change) => void Object.assign(window.__disk ?? {}, change), part);
  return {
    text: () => page.evaluate(() => window.__disk?.text ?? ''),
    changeBehindTheBack: (changed) => change({ text: changed, modified: Date.now() + 5000 }),
    failWith: (failure) => change({ failure }),
  };
}

/** Drags a file over the window, as far as `dragover`, and lets it go when `isDropped`. */
export async function dragFile(page: Page, name: string, text: string, isDropped = true): Promise<void> {
  await page.evaluate(
    ({ name: fileName, text: content, types }) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([content], fileName));
      for (const type of types) {
        window.dispatchEvent(new DragEvent(type, { dataTransfer, bubbles: true, cancelable: true }));
      }
    },
    { name, text, types: isDropped ? ['dragover', 'drop'] : ['dragover'] },
  );
}
