import { copyFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';
import type { Project } from '../../core/model/project.ts';
import { ROOT } from '../../electron/node/paths.ts';
import { type Desktop, firstPage, RUNTIMES } from './desktop.ts';

// The built main process and preload, end to end: on the stand-in for Electron, and on the real runtime where it is.

const readProject = (path: string): Project => JSON.parse(readFileSync(path, 'utf8')) as Project;

function demoIn(folder: string, name = 'pelluna'): string {
  const path = join(folder, `${name}.backstay`);
  copyFileSync(join(ROOT, `assets/demo/${name}.backstay`), path);
  return path;
}

const heading = (page: Page) => page.getByRole('heading', { level: 1 });
const titleField = (page: Page) => page.getByRole('textbox', { name: 'Title', exact: true });

/** Types a title, which is a change like any other. */
async function retitle(page: Page, title: string): Promise<void> {
  await titleField(page).fill(title);
  await titleField(page).press('Enter');
  await expect(heading(page)).toContainText(title);
}

async function openFile(desktop: Desktop, page: Page, path: string): Promise<void> {
  const { title } = readProject(path);
  await desktop.answerNext('showOpenDialog', { canceled: false, filePaths: [path] });
  await desktop.clickMenu('open');
  await expect(heading(page)).toContainText(title);
}

const questions = async (desktop: Desktop): Promise<string[]> =>
  (await desktop.asked()).flatMap(({ method, options }) =>
    method === 'showMessageBox' && typeof options === 'object' ? [String(options.message)] : [],
  );

for (const { name, test, missing } of RUNTIMES) {
  test.describe(`desktop on ${name}`, () => {
    test.skip(missing !== null, missing ?? '');

    test('opens, edits and saves a document, and keeps the version before it', async ({ start, folder }) => {
      const path = demoIn(folder);
      const before = readFileSync(path, 'utf8');
      const desktop = await start();
      const page = await firstPage(desktop);
      await openFile(desktop, page, path);
      await retitle(page, 'Pelluna, second visit');
      await expect.poll(() => desktop.titles()).toEqual(['• Pelluna, second visit — Backstay']);
      await desktop.clickMenu('save');
      await expect.poll(() => readProject(path).title).toBe('Pelluna, second visit');
      await expect.poll(() => desktop.titles()).toEqual(['Pelluna, second visit — Backstay']);
      expect(readFileSync(`${path}~`, 'utf8')).toBe(before);
    });

    test('brings unsaved work back after it was killed', async ({ start, folder }) => {
      const path = demoIn(folder);
      const killed = await start();
      const page = await firstPage(killed);
      await openFile(killed, page, path);
      await retitle(page, 'Never saved');
      const kept = join(killed.userData, 'recovery');
      await expect
        .poll(() => existsSync(kept) && readdirSync(kept).some((file) => file.endsWith('.recovery')))
        .toBe(true);
      await killed.kill();
      expect(readProject(path).title).not.toBe('Never saved');

      const desktop = await start({ userData: killed.userData });
      const [again] = (await desktop.pages(1)) as [Page];
      await expect(again.getByRole('dialog', { name: 'Recovered work' })).toContainText('Never saved');
      await again.getByRole('button', { name: 'Open Never saved' }).click();
      await expect(heading(again)).toContainText('Never saved');
      await desktop.clickMenu('save');
      await expect.poll(() => readProject(path).title).toBe('Never saved');
      await expect.poll(() => readdirSync(kept).filter((file) => file.endsWith('.recovery'))).toEqual([]);
    });

    test('comes back with the work when its page crashes', async ({ start }) => {
      const desktop = await start();
      const page = await firstPage(desktop);
      await retitle(page, 'Held through a crash');
      const kept = join(desktop.userData, 'recovery');
      await expect.poll(() => existsSync(kept) && readdirSync(kept).length > 0).toBe(true);
      await desktop.crashPage();
      await expect
        .poll(async () => {
          const [back] = await desktop.pages(1);
          return back
            ?.getByRole('dialog', { name: 'Recovered work' })
            .textContent({ timeout: 1000 })
            .catch(() => '');
        })
        .toContain('Held through a crash');
      const [back] = (await desktop.pages(1)) as [Page];
      await back.getByRole('button', { name: 'Open Held through a crash' }).click();
      await expect(heading(back)).toContainText('Held through a crash');
    });

    test('exports the install sheet to where the user says, and prints it by the system’s viewer', async ({
      start,
      folder,
    }) => {
      const desktop = await start();
      const page = await firstPage(desktop);
      const path = join(folder, 'sheet.pdf');
      await desktop.answerNext('showSaveDialog', { canceled: false, filePath: path });
      await desktop.clickMenu('export-pdf');
      await expect.poll(() => existsSync(path)).toBe(true);
      expect(readFileSync(path).subarray(0, 5).toString()).toBe('%PDF-');
      await desktop.clickMenu('print');
      const shown = async (): Promise<string> =>
        String((await desktop.asked()).find(({ method }) => method === 'openPath')?.options ?? '');
      await expect.poll(shown).toMatch(/\.pdf$/);
      expect(
        readFileSync(await shown())
          .subarray(0, 5)
          .toString(),
      ).toBe('%PDF-');
      await expect(page.getByRole('status').first()).toBeVisible();
    });

    test('does by its menu what the page can do', async ({ start }) => {
      const desktop = await start();
      const page = await firstPage(desktop);
      await desktop.clickMenu('panel-findings');
      await expect(page.getByRole('tab', { name: 'Findings' })).toHaveAttribute('aria-selected', 'true');
      await desktop.clickMenu('about');
      await expect(page.getByRole('dialog', { name: /About/ })).toBeVisible();
      await page.keyboard.press('Escape');
      await desktop.clickMenu('demo-vessarine');
      await expect(heading(page)).toContainText('Vessarine');
    });

    test('lets Undo mean the text field that has the focus, and else the drawing', async ({ start }) => {
      const desktop = await start();
      const page = await firstPage(desktop);
      const title = (await heading(page).textContent()) ?? '';
      await titleField(page).click();
      await page.keyboard.press('End');
      await page.keyboard.type(' once');
      await expect(titleField(page)).toHaveValue(`${title} once`);
      await desktop.clickMenu('undo');
      await expect(titleField(page)).toHaveValue(title);
      await retitle(page, 'Changed');
      await page.locator('[data-area="drawing"]').focus();
      await desktop.clickMenu('undo');
      await expect(heading(page)).toContainText(title);
    });

    test('shows files of a second start in this program, each in a window of its own', async ({ start, folder }) => {
      const [pelluna, vessarine] = [demoIn(folder), demoIn(folder, 'vessarine')];
      const desktop = await start({ files: [pelluna] });
      const page = await firstPage(desktop);
      await expect(heading(page)).toContainText('Pelluna');
      await desktop.startAgain([vessarine]);
      const [first, second] = (await desktop.pages(2)) as [Page, Page];
      await expect(heading(second)).toContainText('Vessarine');
      await expect(heading(first)).toContainText('Pelluna');
    });

    test('opens a file dropped on it', async ({ start, folder }) => {
      const path = demoIn(folder);
      const desktop = await start();
      const page = await firstPage(desktop);
      await desktop.namePath(page, 'pelluna.backstay', path);
      await page.evaluate(() => {
        document.body.append(Object.assign(document.createElement('input'), { type: 'file', id: 'dropped' }));
      });
      await page.locator('#dropped').setInputFiles(path);
      await page.evaluate(() => {
        const input = document.querySelector<HTMLInputElement>('#dropped');
        const dataTransfer = new DataTransfer();
        const [file] = input?.files ?? [];
        if (file) dataTransfer.items.add(file);
        input?.remove();
        window.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
      });
      await expect(heading(page)).toContainText('Pelluna');
      await retitle(page, 'Dropped');
      await desktop.clickMenu('save');
      await expect.poll(() => readProject(path).title).toBe('Dropped');
    });

    test('remembers the files used last, in the menu too', async ({ start, folder }) => {
      const path = demoIn(folder);
      const desktop = await start();
      const page = await firstPage(desktop);
      await openFile(desktop, page, path);
      await desktop.kill();
      const later = await start({ userData: desktop.userData });
      const again = await firstPage(later);
      const { id } = JSON.parse(readFileSync(join(later.userData, 'recent.json'), 'utf8')).files[0] as { id: string };
      await later.clickMenu(`recent:${id}`);
      await expect(heading(again)).toContainText('Pelluna');
    });

    test('notices a file someone else has written before it overwrites it', async ({ start, folder }) => {
      const path = demoIn(folder);
      const desktop = await start();
      const page = await firstPage(desktop);
      await openFile(desktop, page, path);
      await retitle(page, 'Mine');
      const theirs = { ...readProject(path), title: 'Theirs' };
      writeFileSync(path, JSON.stringify(theirs));
      await desktop.clickMenu('save');
      const question = page.getByRole('alertdialog').or(page.getByRole('dialog'));
      await expect(question).toContainText('was changed by someone else');
      expect(readProject(path).title).toBe('Theirs');
      await question.getByRole('button', { name: 'Overwrite theirs' }).click();
      await expect.poll(() => readProject(path).title).toBe('Mine');
    });

    test('keeps pictures in a folder beside the document where that is chosen, and finds them again', async ({
      start,
      folder,
    }) => {
      const path = demoIn(folder);
      const desktop = await start();
      const page = await firstPage(desktop);
      await openFile(desktop, page, path);
      const section = page.getByRole('region', { name: 'Picture under the drawing' });
      await section.locator('input[type=file]').setInputFiles(join(ROOT, 'docs/pictures/range.png'));
      await section.getByRole('radio', { name: 'In a folder beside it' }).click();
      await desktop.clickMenu('save');
      await expect.poll(() => readProject(path).picturesBeside).toBe(true);
      expect(readFileSync(path, 'utf8')).not.toContain('base64');
      const id = readProject(path).pictures?.[0]?.id ?? '';
      expect(id).toMatch(/^picture-[0-9a-f]{16}$/);
      expect(readdirSync(join(folder, 'pelluna.pictures'))).toEqual([`${id}.png`]);
      await desktop.kill();
      const again = await firstPage(await start({ files: [path] }));
      await expect(again.getByRole('img', { name: /range\.png with the stem and the stern marked/ })).toBeVisible();
    });

    test('opens two documents that are named together in two windows', async ({ start, folder }) => {
      const paths = [demoIn(folder, 'vessarine'), demoIn(folder, 'brannoch-tern')];
      const pages = await (await start({ files: paths })).pages(2);
      const shown = async (): Promise<string> =>
        (await Promise.all(pages.map((page) => heading(page).textContent()))).sort().join(' | ');
      for (const path of paths) await expect.poll(shown).toContain(readProject(path).title);
    });

    test('asks before it closes on unsaved work: keep open, save, or let it go', async ({ start, folder }) => {
      const path = demoIn(folder);
      const desktop = await start();
      const page = await firstPage(desktop);
      await openFile(desktop, page, path);
      await retitle(page, 'Asked about');
      await desktop.answerNext('showMessageBox', { response: 2 });
      await desktop.closeWindow();
      await expect.poll(() => questions(desktop)).toEqual(['Save the changes before closing?']);
      await expect(heading(page)).toContainText('Asked about');
      await desktop.answerNext('showMessageBox', { response: 0 });
      await desktop.closeWindow();
      await desktop.gone();
      expect(readProject(path).title).toBe('Asked about');
    });

    test('closes without saving when that is chosen, and leaves nothing to recover', async ({ start, folder }) => {
      const path = demoIn(folder);
      const before = readFileSync(path, 'utf8');
      const desktop = await start();
      const page = await firstPage(desktop);
      await openFile(desktop, page, path);
      await retitle(page, 'Given up');
      const kept = join(desktop.userData, 'recovery');
      await expect.poll(() => existsSync(kept) && readdirSync(kept).length > 0).toBe(true);
      await desktop.answerNext('showMessageBox', { response: 1 });
      await desktop.closeWindow();
      await desktop.gone();
      expect(readFileSync(path, 'utf8')).toBe(before);
      expect(readdirSync(kept).filter((file) => file.endsWith('.recovery'))).toEqual([]);
    });

    test('refuses navigation, new windows, the network and permissions', async ({ start }) => {
      const desktop = await start();
      const page = await firstPage(desktop);
      const address = page.url();
      await page.evaluate(() => {
        location.href = 'https://example.org/';
      });
      await page.evaluate(() => {
        window.open('https://example.org/', '_blank');
        const link = Object.assign(document.createElement('a'), { href: 'https://example.org/', target: '_blank' });
        document.body.append(link);
        link.click();
        link.remove();
      });
      const outcome = await page.evaluate(async () => {
        const blocked: string[] = [];
        document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) =>
          blocked.push(effectiveDirective),
        );
        const fetched = await fetch('https://example.org/').then(
          () => 'answered',
          () => 'refused',
        );
        const image = await new Promise<string>((done) => {
          const picture = new Image();
          picture.onload = () => done('loaded');
          picture.onerror = () => done('refused');
          picture.src = 'https://example.org/picture.png';
        });
        const script = document.createElement('script');
        script.textContent = 'globalThis.ranInline = true';
        document.body.append(script);
        let evaluated = 'refused';
        try {
          // biome-ignore lint/security/noGlobalEval: that it is refused is what is tested
          evaluated = String(globalThis.eval('1 + 1'));
        } catch {
          // As it should be.
        }
        const frame = Object.assign(document.createElement('iframe'), { src: 'https://example.org/' });
        document.body.append(frame);
        const asksForPlace = await new Promise<string>((done) =>
          navigator.geolocation.getCurrentPosition(
            () => done('granted'),
            ({ code }) => done(code === GeolocationPositionError.PERMISSION_DENIED ? 'denied' : 'other'),
          ),
        );
        const notification = await Notification.requestPermission();
        await new Promise((done) => setTimeout(done, 200));
        return { fetched, image, evaluated, asksForPlace, notification, inline: 'ranInline' in globalThis, blocked };
      });
      expect(outcome).toMatchObject({
        fetched: 'refused',
        image: 'refused',
        evaluated: 'refused',
        asksForPlace: 'denied',
        notification: 'denied',
        inline: false,
      });
      for (const directive of ['connect-src', 'img-src', 'script-src-elem', 'script-src', 'frame-src']) {
        expect(outcome.blocked).toContain(directive);
      }
      await expect.poll(async () => (await desktop.pages(1)).map((shown) => shown.url())).toEqual([address]);
      await expect(heading(page)).toBeVisible();
    });

    test('gives the page named functions and nothing of Node', async ({ start }) => {
      const desktop = await start();
      const page = await firstPage(desktop);
      const found = await page.evaluate(() => ({
        node: ['require', 'process', 'Buffer', 'module'].filter((global) => global in globalThis),
        bridge: Object.keys((globalThis as unknown as { backstayHost: object }).backstayHost).sort(),
      }));
      expect(found.node).toEqual([]);
      expect(found.bridge).toEqual(BRIDGE);
    });

    test('logs codes and never a title, a path or an address', async ({ start, folder }) => {
      const path = demoIn(folder);
      const desktop = await start();
      const page = await firstPage(desktop);
      await openFile(desktop, page, path);
      await retitle(page, 'Secret title');
      await desktop.clickMenu('save');
      await expect.poll(() => readProject(path).title).toBe('Secret title');
      await desktop.clickMenu('show-log');
      const shown = async () => (await desktop.asked()).find(({ method }) => method === 'showItemInFolder')?.options;
      await expect.poll(shown).toMatch(/backstay\.log$/);
      const log = readFileSync(String(await shown()), 'utf8');
      expect(log).toMatch(/^\S+Z start version=\S+ platform=\S+$/m);
      expect(log).not.toMatch(/Secret|pelluna|example|\//i);
    });
  });
}

/** Every function the page has of the shell; a new one is a decision, and changes this list. */
const BRIDGE = [
  'about',
  'cancelOpen',
  'discardRecovery',
  'dropRecovery',
  'editText',
  'exportFile',
  'forgetRecents',
  'keepBeside',
  'keepRecovery',
  'kind',
  'newWindow',
  'onMenu',
  'onOpened',
  'onProgress',
  'open',
  'openDropped',
  'openExternal',
  'openRecent',
  'openRecovery',
  'print',
  'readBeside',
  'recents',
  'recoveries',
  'save',
  'saveAs',
  'setAside',
  'setUnsaved',
  'showLog',
];
