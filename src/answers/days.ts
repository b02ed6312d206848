import { writtenDay } from "../way-of-writing.ts";

const DAY = 86_400_000;
const ISO = /^\d{4}-\d{2}-\d{2}$/;

/** Mean days in a month and in a year, leap years counted. */
export const MONTH_DAYS = 30.4375;
export const YEAR_DAYS = 365.25;

/** Whether a text is a day of the calendar written `YYYY-MM-DD`. */
export function isDay(text: string): boolean {
  const time = ISO.test(text) ? Date.parse(`${text}T00:00:00Z`) : NaN;
  return !Number.isNaN(time) && new Date(time).toISOString().slice(0, 10) === text;
}

/**
 * @throws {RangeError} unless `day` is a day of the calendar written `YYYY-MM-DD`
 */
export function requireDay(caller: string, name: string, day: string): void {
  if (!isDay(day)) throw new RangeError(`${caller}: ${name} must be a day written YYYY-MM-DD, got ${day}`);
}

/** The day `days` later (earlier when negative). */
export function dayAfter(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * DAY).toISOString().slice(0, 10);
}

/** Days from one day to another, 0 when they are the same. */
export function daysFrom(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY);
}

/**
 * A day as it stands in a sentence, by the way of writing.
 *
 * @throws {RangeError} unless `day` is a day of the calendar written `YYYY-MM-DD`
 * @example
 * dayInWords("2026-01-19"); // => "19 January 2026"
 */
export function dayInWords(day: string): string {
  requireDay("dayInWords", "day", day);
  return writtenDay(day);
}
