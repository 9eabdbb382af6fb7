import { parseProject, problemSentence } from '../../core/document/load.ts';
import type { Project } from '../../core/model/project.ts';
import type { Opened } from '../../electron/contract.ts';
import { problemIndex } from '../store/problemPlace.ts';
import { readableText } from '../store/readable.ts';
import type { AppStore, DocumentFile, Opening } from '../store/store.ts';

/** A recovery copy's document id is that of the document it was kept for, so an empty one means: a new one. */
export const openingOf = ({ documentId }: Opened): Opening => (documentId === '' ? {} : { documentId });

/** The file of a document that was just read. */
export const fileOf = ({ handle, name }: { readonly handle: string; readonly name: string }): DocumentFile => ({
  handle,
  name,
  seenAt: new Date().toISOString(),
});

/**
 * Reads a document. Where that fails nothing of it is loaded, and a dialog says what is wrong, where, and what can be read.
 */
export function readOpened(
  store: AppStore,
  { text, name, handle }: Pick<Opened, 'text' | 'name' | 'handle'>,
): { readonly project: Project; readonly notes: readonly string[] } | null {
  const loaded = parseProject(text);
  if (loaded.ok) return loaded;
  const fileProblems = {
    name,
    handle,
    sentences: loaded.problems.map(problemSentence),
    readable: readableText(text, problemIndex(text, loaded.problems[0]?.where ?? '')),
  };
  store.getState().setView({ dialog: 'file-problems', fileProblems });
  store.getState().say({ tone: 'refusal', text: `${name} was not opened. What was open is as it was.` });
  return null;
}
