import { safeName } from './fileWork.ts';
import type { Work } from './handlers.ts';
import type { HandlerParts } from './parts.ts';

type ShellChannel = 'print' | 'setUnsaved' | 'newWindow' | 'openExternal' | 'about' | 'showLog' | 'editText';

/** What the window, the system's viewer and browser, and the log do for the page. */
export function shellWork(parts: HandlerParts): Work<ShellChannel> {
  return {
    print: async ({ suggestedName, bytes }) => parts.showPdf({ suggestedName: safeName(suggestedName), bytes }),
    setUnsaved: async ({ unsaved, title }, caller) => {
      caller.setUnsaved(unsaved, title);
      return null;
    },
    newWindow: async () => {
      parts.openWindow();
      return null;
    },
    openExternal: async ({ url }, caller) => {
      const address = externalAddress(url);
      if (!(await caller.mayOpen(address))) return false;
      await parts.openExternal(address);
      return true;
    },
    about: async () => parts.about,
    showLog: async () => {
      await parts.showLog();
      return null;
    },
    editText: async ({ command }, caller) => {
      caller.editText(command);
      return null;
    },
  };
}

/**
 * An address that may be offered to the system's browser, in its normal spelling.
 * @throws Error with a sentence for anything but https to a named host without a password in it
 */
export function externalAddress(url: string): string {
  const refusal = 'Only web addresses that begin with https:// can be opened.';
  if (!URL.canParse(url)) throw new Error(refusal);
  const { protocol, username, password, hostname, href } = new URL(url);
  if (protocol !== 'https:' || hostname === '' || username !== '' || password !== '') throw new Error(refusal);
  return href;
}
