import type { AppStore } from './store.ts';

/** What the program must ask before it goes on; each with what is needed to word it. */
export type Question =
  | { readonly kind: 'unsaved'; readonly title: string }
  | {
      readonly kind: 'changed-on-disk';
      readonly name: string;
      /** When the file was changed, and when it was last read or written here; ISO 8601, empty where not known. */
      readonly modifiedAt: string;
      readonly seenAt: string;
    }
  | { readonly kind: 'save-failed'; readonly name: string; readonly reason: string };

export type Choice = 'save' | 'discard' | 'overwrite' | 'save-as' | 'theirs' | 'again' | 'cancel';

/** A question that is being asked, and the way its answer goes back. */
export interface OpenQuestion {
  readonly question: Question;
  answer(choice: Choice): void;
}

/**
 * Asks and waits for the answer. Closing the question without choosing is `cancel`; so is asking while another question
 * is open, because nothing may be done on a question that was never seen.
 */
export function ask(store: AppStore, question: Question): Promise<Choice> {
  if (store.getState().question !== null) return Promise.resolve('cancel');
  return new Promise((resolve) => {
    const answer = (choice: Choice): void => {
      store.getState().setView({ question: null });
      resolve(choice);
    };
    store.getState().setView({ question: { question, answer } });
  });
}
