import { browserLocale } from "../way-of-writing.ts";
import { date } from "./format.ts";

const PARTS: Readonly<Record<string, string>> = { day: "day", month: "month", year: "year" };

/**
 * In which order a date field wants its numbers; browsers go by their own language, whatever the shop chose to write by.
 *
 * @example
 * typedAs("en-US"); // => "month/day/year"
 */
export function typedAs(locale = browserLocale()): string {
  const parts = new Intl.DateTimeFormat(locale, { day: "numeric", month: "numeric", year: "numeric", timeZone: "UTC" }).formatToParts(0);
  return parts.map(({ type, value }) => PARTS[type] ?? value).join("").replace(/\u200f/g, "").trim();
}

/** What stands beside a date field: the order to type in, and once there is a day, which day it is. */
export const typedDay = (value: string): string => (value === "" ? typedAs() : date(value));
