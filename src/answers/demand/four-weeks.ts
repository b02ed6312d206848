import { YEAR_DAYS } from "../days.ts";

/** Use is counted in blocks of four weeks back from the day asked for, thirteen to a year; the last of a year takes its odd day or two. */
export const BLOCK_DAYS = 28;
export const YEAR_BLOCKS = 13;

/**
 * Block of a day that lies `days_back` before the newest one: 0 holds the newest four weeks, 13 begins the same day a year
 * earlier, so that blocks thirteen apart are the same time of year. `use-by-block.sql` counts alike.
 *
 * @example
 * blockOf(27); // => 0
 * blockOf(365); // => 12
 * blockOf(366); // => 13
 */
export function blockOf(days_back: number): number {
  const year = Math.floor(days_back / YEAR_DAYS), into = days_back - Math.ceil(year * YEAR_DAYS);
  return year * YEAR_BLOCKS + Math.min(YEAR_BLOCKS - 1, Math.floor(into / BLOCK_DAYS));
}

/**
 * Days of each block of records `days` long, newest first; the oldest may be a part of one.
 *
 * @example
 * blockDays(60); // => [28, 28, 4]
 */
export function blockDays(days: number): number[] {
  const found: number[] = [];
  for (let back = 0; back < days; back += 1) found[blockOf(back)] = (found[blockOf(back)] ?? 0) + 1;
  return found;
}

/** Sum of a list's entries `from` up to, not with, `to`; what is not in the list counts nothing. */
export function between(list: readonly number[], from: number, to: number): number {
  let sum = 0;
  for (let at = Math.max(0, from); at < Math.min(to, list.length); at += 1) sum += list[at] ?? 0;
  return sum;
}
