import {
  type Bridge,
  CHANNELS,
  type ChannelName,
  type Host,
  menuCommandSchema,
  openedSchema,
  progressSchema,
  type Response,
  TEXT_COMMANDS,
  type TextCommand,
} from '../../electron/contract.ts';

/** Input types that hold no text: the menu's Copy, Paste and Undo mean the drawing while one of them has the focus. */
const WITHOUT_TEXT = ['checkbox', 'radio', 'range', 'button', 'submit', 'color', 'file'];

/** What is said of a request that the main process refuses by its own checks; its own words are not for people. */
const REFUSED = {
  ok: false,
  message: 'The program refused this by its own checks. Your work is still open here.',
} as const;

/**
 * The desktop host: the bridge the preload exposes, with every answer checked against the contract. A request that is refused
 * is a failure with a sentence, so that nothing the user asked for ends without a word.
 */
export function electronHost(bridge: Bridge, page: Pick<Document, 'activeElement'> = document): Host {
  const checked = async <C extends ChannelName>(channel: C, answer: Promise<unknown>): Promise<Response<C>> =>
    CHANNELS[channel].response.parse(await answer.catch(() => REFUSED)) as Response<C>;
  return {
    kind: 'electron',
    open: () => checked('open', bridge.open()),
    openDropped: async ({ files: { 0: file } }) =>
      file ? checked('openDropped', bridge.openDropped(file)) : { ok: true, value: null },
    openRecent: (request) => checked('openRecent', bridge.openRecent(request)),
    cancelOpen: () => checked('cancelOpen', bridge.cancelOpen()),
    recents: () => checked('recents', bridge.recents()),
    forgetRecents: () => checked('forgetRecents', bridge.forgetRecents()),
    setAside: (request) => checked('setAside', bridge.setAside(request)),
    save: (request) => checked('save', bridge.save(request)),
    saveAs: (request) => checked('saveAs', bridge.saveAs(request)),
    readBeside: (request) => checked('readBeside', bridge.readBeside(request)),
    keepBeside: (request) => checked('keepBeside', bridge.keepBeside(request)),
    exportFile: (request) => checked('exportFile', bridge.exportFile(request)),
    print: (request) => checked('print', bridge.print(request)),
    keepRecovery: (request) => checked('keepRecovery', bridge.keepRecovery(request)),
    dropRecovery: (request) => checked('dropRecovery', bridge.dropRecovery(request)),
    recoveries: () => checked('recoveries', bridge.recoveries()),
    openRecovery: (request) => checked('openRecovery', bridge.openRecovery(request)),
    discardRecovery: (request) => checked('discardRecovery', bridge.discardRecovery(request)),
    setUnsaved: (request) => checked('setUnsaved', bridge.setUnsaved(request)),
    newWindow: () => checked('newWindow', bridge.newWindow()),
    openExternal: (request) => checked('openExternal', bridge.openExternal(request)),
    about: () => checked('about', bridge.about()),
    showLog: () => checked('showLog', bridge.showLog()),
    onMenu: (listener) =>
      bridge.onMenu((sent) => {
        const command = menuCommandSchema.parse(sent);
        if (isTextCommand(command) && holdsText(page.activeElement)) bridge.editText({ command });
        else listener(command);
      }),
    onOpened: (listener) => bridge.onOpened((opened) => listener(openedSchema.parse(opened))),
    onProgress: (listener) => bridge.onProgress((progress) => listener(progressSchema.parse(progress))),
  };
}

const isTextCommand = (command: string): command is TextCommand =>
  (TEXT_COMMANDS as readonly string[]).includes(command);

/** Whether Undo, Copy and the like belong to what has the focus, and not to the drawing. */
function holdsText(focused: Element | null): boolean {
  if (focused === null) return false;
  if (focused.tagName === 'INPUT') return !WITHOUT_TEXT.includes(focused.getAttribute('type') ?? 'text');
  return focused.tagName === 'TEXTAREA' || focused.closest('[contenteditable="true"]') !== null;
}
