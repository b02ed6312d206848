/**
 * Newest day that a date in a file may name: a year from today.
 *
 * @param today `YYYY-MM-DD`
 * @throws {RangeError} when it is no such date
 */
export function lastDay(today: string): string {
  if (!/^\d{4}-\d\d-\d\d$/.test(today)) throw new RangeError(`lastDay: needs today as YYYY-MM-DD, got ${today}`);
  return `${Number(today.slice(0, 4)) + 1}${today.slice(4)}`;
}
