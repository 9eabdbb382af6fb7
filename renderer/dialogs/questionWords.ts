import type { Choice, Question } from '../store/questions.ts';

export interface QuestionWords {
  readonly title: string;
  readonly sentences: readonly string[];
  /** Buttons from left to right; the last is the one that Enter presses. */
  readonly choices: readonly { readonly id: Choice; readonly name: string; readonly loses?: true }[];
}

/** Said once: the machine’s own sentence may have it already. */
const STILL_OPEN = 'still open here';

/**
 * A question in words, and its answers.
 * @param when says an instant to the reader; empty for an instant that is not known
 */
export function questionWords(question: Question, when: (instant: string) => string): QuestionWords {
  switch (question.kind) {
    case 'unsaved':
      return {
        title: `Save the changes to “${question.title}”?`,
        sentences: ['Another document takes its place. What is not saved would be lost.'],
        choices: [
          { id: 'cancel', name: 'Cancel' },
          { id: 'discard', name: 'Do not save', loses: true },
          { id: 'save', name: 'Save' },
        ],
      };
    case 'changed-on-disk':
      return {
        title: `${question.name} was changed by someone else`,
        sentences: [
          ...changeTimes(question, when),
          'Nothing has been written yet. Overwrite puts your work in the place of theirs. Save as keeps both. Open theirs shows what they wrote; your work then waits in a recovery copy, offered at the next start.',
        ],
        choices: [
          { id: 'cancel', name: 'Cancel' },
          { id: 'overwrite', name: 'Overwrite theirs', loses: true },
          { id: 'theirs', name: 'Open theirs' },
          { id: 'save-as', name: 'Save as…' },
        ],
      };
    case 'save-failed':
      return {
        title: question.name === '' ? 'The document is not saved' : `${question.name} is not saved`,
        sentences: [
          question.reason,
          ...(question.reason.includes(STILL_OPEN) ? [] : [`Your work is ${STILL_OPEN}.`]),
          'Save it under another name or in another folder, or try again once the cause is mended.',
        ],
        choices: [
          { id: 'cancel', name: 'Not now' },
          { id: 'again', name: 'Try again' },
          { id: 'save-as', name: 'Save as…' },
        ],
      };
  }
}

function changeTimes(
  { modifiedAt, seenAt }: Extract<Question, { kind: 'changed-on-disk' }>,
  when: (instant: string) => string,
): string[] {
  const [changed, seen] = [when(modifiedAt), when(seenAt)];
  return [
    ...(changed === '' ? [] : [`On the disk it was changed ${changed}.`]),
    ...(seen === '' ? [] : [`It was last read or saved here ${seen}.`]),
  ];
}
