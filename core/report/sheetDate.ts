/**
 * The day of an ISO date, as printed: `2031-04-12`.
 * @throws RangeError when the text is not an ISO date
 */
export function printedDate(iso: string): string {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime()) || !/^\d{4}-\d{2}-\d{2}/u.test(iso)) {
    throw new RangeError(`"${iso}" is not an ISO date.`);
  }
  return iso.slice(0, 10);
}
