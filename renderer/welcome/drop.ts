/** How the names of documents end. */
const DOCUMENT_ENDING = '.backstay';

/** What a drop can be before it is let go: how many files the browser says there are, and of which kinds it says so. */
export interface Hanging {
  readonly count: number;
  /** Whether a dialog is open, under which nothing may be replaced. */
  readonly isBusy: boolean;
  readonly isUnsaved: boolean;
}

/** What will happen if the files over the window are let go: a sentence, and whether they will be taken. */
export function dropPromise({ count, isBusy, isUnsaved }: Hanging): { readonly text: string; readonly takes: boolean } {
  if (isBusy) return { takes: false, text: 'Close the dialog first, then drop the file.' };
  if (count > 1) return { takes: false, text: 'Drop one document at a time.' };
  const after = isUnsaved ? 'You are asked about your unsaved changes first.' : 'It takes the place of the one shown.';
  return { takes: true, text: `Drop a Backstay document (${DOCUMENT_ENDING}) to open it. ${after}` };
}

/** Why dropped files are not opened, as a sentence; null when they are. */
export function dropRefusal(names: readonly string[]): string | null {
  const [name, ...others] = names;
  if (name === undefined) return 'Nothing was dropped that can be opened. Drop a file whose name ends in .backstay.';
  if (others.length > 0) return `${names.length} files were dropped. Drop one document at a time.`;
  if (name.toLowerCase().endsWith(DOCUMENT_ENDING)) return null;
  return `${name} is not a Backstay document. Only files whose name ends in ${DOCUMENT_ENDING} can be opened here.`;
}
