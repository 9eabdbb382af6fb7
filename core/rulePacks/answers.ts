import type { Subject } from '../model/project.ts';
import type { RichText } from '../units/quantity.ts';
import type { Answer, PackInput, Verdict } from './types.ts';

type Words = string | RichText;

const answer =
  (verdict: Verdict) =>
  (because: Words, subjects: readonly Subject[] = []): Answer => ({
    verdict,
    because: typeof because === 'string' ? [because] : because,
    subjects: distinct(subjects),
  });

export const met = answer('met');
export const notMet = answer('not-met');
export const cannotTell = answer('cannot-tell');
export const doesNotApply = answer('does-not-apply');

function distinct(subjects: readonly Subject[]): readonly Subject[] {
  return [...new Map(subjects.map((subject) => [`${subject.kind}:${subject.id}`, subject])).values()];
}

export const itemSubject = (id: string): Subject => ({ kind: 'item', id });

export const itemSubjects = (ids: readonly string[]): readonly Subject[] => ids.map(itemSubject);

/** Designation of an item, its id where it is unknown. */
export const tagOf = (input: PackInput, itemId: string): string => input.index.items.get(itemId)?.tag ?? itemId;

export const tagsOf = (input: PackInput, itemIds: readonly string[]): string =>
  listInWords(itemIds.map((id) => tagOf(input, id)));

/** `A`, `A and B`, `A, B and C`. */
export function listInWords(names: readonly string[]): string {
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** `hangs` or `hang`, by how many there are. */
export const verb = (things: readonly unknown[], one: string, several: string): string =>
  things.length === 1 ? one : several;

/** The answer with one more sentence behind it. */
export function adding(given: Answer, sentence: Words, subjects: readonly Subject[] = []): Answer {
  const more = typeof sentence === 'string' ? [sentence] : sentence;
  if (more.length === 0 || more.join('') === '') return given;
  return {
    verdict: given.verdict,
    because: [...given.because, ' ', ...more],
    subjects: distinct([...given.subjects, ...subjects]),
  };
}

/** Several demands of one rule: the first that is not met speaks, else the first left open, else all of them. */
export function together(first: Answer, ...more: readonly Answer[]): Answer {
  const all = [first, ...more];
  const short = all.find(({ verdict }) => verdict === 'not-met') ?? all.find(({ verdict }) => verdict !== 'met');
  return short ?? more.reduce((sum, { because, subjects }) => adding(sum, because, subjects), first);
}
