import { safeName } from './fileWork.ts';
import type { Work } from './handlers.ts';
import type { HandlerParts } from './parts.ts';

type ShellChannel = 'print' | 'setUnsaved' | 'newWindow' | 'openExternal' | 'about' | 'showLog' | 'editText';

/** What the window, the system's viewer and browser, and the log do for the page. */
export function shellWork(parts: HandlerParts): Work<ShellChannel> {
  return {
    print: async ({ suggestedName, bytes }) => {
      if (!isPdf(bytes)) throw new Error('Only a PDF can be printed, and this is none.');
      return parts.showPdf({ suggestedName: pdfName(suggestedName), bytes });
    },
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

/** Source: ISO 32000-1, 7.5.2: a PDF begins with this. */
const isPdf = (bytes: Uint8Array): boolean => [...'%PDF-'].every((letter, at) => bytes[at] === letter.charCodeAt(0));

/**
 * A name that the system can only take for a PDF's, whatever was suggested: it chooses by the ending what to open a file
 * with, and for some endings that is the file itself.
 */
const pdfName = (suggested: string): string => `${safeName(suggested).replace(/\.[^.]*$/, '')}.pdf`;

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
