type Method = 'showOpenDialog' | 'showSaveDialog' | 'showMessageBox' | 'showErrorBox';
type Answer = Readonly<Record<string, unknown>>;

/** What was asked of the user and of the system, in order. */
export const asked: { method: string; options: unknown }[] = [];
const answers: { method: Method; answer: Answer }[] = [];

/** Says how the next dialog of this kind is answered. Without an answer a dialog is closed. */
export function answerNext(method: Method, answer: Answer): void {
  answers.push({ method, answer });
}

function ask(method: Method, options: unknown, closed: Answer): Answer {
  asked.push({ method, options });
  const at = answers.findIndex((known) => known.method === method);
  return at < 0 ? closed : (answers.splice(at, 1)[0]?.answer ?? closed);
}

/** The options, with or without the window they belong to before them. */
const optionsIn = (given: readonly unknown[]): Record<string, unknown> => given.at(-1) as Record<string, unknown>;

export const dialog = {
  showOpenDialog: async (...given: unknown[]): Promise<Answer> =>
    ask('showOpenDialog', optionsIn(given), { canceled: true, filePaths: [] }),
  showSaveDialog: async (...given: unknown[]): Promise<Answer> =>
    ask('showSaveDialog', optionsIn(given), { canceled: true, filePath: '' }),
  showMessageBox: async (...given: unknown[]): Promise<Answer> => {
    const options = optionsIn(given);
    return ask('showMessageBox', options, { response: options.cancelId ?? 0, checkboxChecked: false });
  },
  showErrorBox: (title: string, content: string): void => void ask('showErrorBox', { title, content }, {}),
};

export const shell = {
  openPath: async (path: string): Promise<string> => {
    asked.push({ method: 'openPath', options: path });
    return '';
  },
  openExternal: async (url: string): Promise<void> => void asked.push({ method: 'openExternal', options: url }),
  showItemInFolder: (path: string): void => void asked.push({ method: 'showItemInFolder', options: path }),
};
