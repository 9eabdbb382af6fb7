import { app, Menu, type MenuTemplateItem, openWindows } from './app.ts';
import { debuggingPort } from './browser.ts';
import type { BrowserWindow } from './browserWindow.ts';
import { answerNext, asked } from './dialog.ts';

// What the test may ask of the process under test, over the channel a forked process has to its parent.

const windows = (): BrowserWindow[] => [...openWindows] as BrowserWindow[];

const flat = (items: readonly MenuTemplateItem[]): readonly MenuTemplateItem[] =>
  items.flatMap((item) => [item, ...flat(item.submenu ?? [])]);

function clickMenu(id: string): void {
  const item = flat(Menu.current).find((known) => known.id === id || known.label === id);
  if (!item?.click) throw new Error(`the menu has no entry ${id}`);
  item.click();
}

const CONTROLS: Readonly<Record<string, (...given: never[]) => unknown>> = {
  answerNext,
  asked: () => asked,
  clickMenu,
  menu: () => flat(Menu.current).map(({ id, label, role, accelerator }) => ({ id, label, role, accelerator })),
  debuggingPort,
  titles: () => windows().map(({ title }) => title),
  crashPage: () => windows()[0]?.webContents.forcefullyCrashRenderer(),
  closeWindow: () => windows()[0]?.close(),
  quit: () => app.quit(),
};

process.on('message', ({ id, name, given }: { id: number; name: string; given: never[] }) => {
  try {
    process.send?.({ id, value: CONTROLS[name]?.(...given) ?? null });
  } catch (error) {
    process.send?.({ id, problem: String(error) });
  }
});
// Without the test there is nobody to close this process.
process.on('disconnect', () => void app.exit(0));
