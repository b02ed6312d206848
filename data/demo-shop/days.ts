/** A day as the number of days since 1970-01-01: no clock, no time zone. */
export type Day = number;

const MS = 86_400_000;

/** @param month 1…12 */
export const dayOf = (year: number, month: number, date: number): Day => Date.UTC(year, month - 1, date) / MS;
export const iso = (day: Day): string => new Date(day * MS).toISOString().slice(0, 10);
/** 0 Sunday … 6 Saturday */
export const weekday = (day: Day): number => (((day + 4) % 7) + 7) % 7;
export const parts = (day: Day): { year: number; month: number; date: number } => {
  const date = new Date(day * MS);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, date: date.getUTCDate() };
};
export const daysIn = (year: number, month: number): number => dayOf(year, month + 1, 1) - dayOf(year, month, 1);

/** Whether the bench is closed: Sundays, and five weeks a year. */
export function closed(day: Day): boolean {
  if (weekday(day) === 0) return true;
  const { month, date } = parts(day);
  return (month === 12 && date >= 24) || (month === 1 && date <= 2) || (month === 8 && date >= 10 && date <= 20) || (month === 11 && date >= 10 && date <= 21);
}

/** The first open day on or after `day`. */
export function openFrom(day: Day): Day {
  while (closed(day)) day++;
  return day;
}
