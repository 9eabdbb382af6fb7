/** What was done and what there is to say about it, as one line for the status line. */
export function told(done: string, notes: readonly string[]): string {
  if (notes.length === 0) return done;
  return [done, ...notes].map((sentence) => `${sentence.replace(/\.$/, '')}.`).join(' ');
}
