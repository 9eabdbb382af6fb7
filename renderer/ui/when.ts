const SAME_DAY = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const OTHER_DAY = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeStyle: 'short' });

/** An instant as a reader says it: `today at 14:05`, `3 May 2026 at 14:05`; empty when it is none. */
export function whenSaid(instant: string, now: Date = new Date()): string {
  const at = new Date(instant);
  if (Number.isNaN(at.getTime())) return '';
  if (at.toDateString() === now.toDateString()) return `today at ${SAME_DAY.format(at)}`;
  return `on ${OTHER_DAY.format(at)}`;
}
