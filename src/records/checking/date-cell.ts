import { Wrong, quoted } from "./wrong.ts";

const FIRST_DAY = "1950-01-01";
const MONTHS = [
  "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December",
] as const;

const YEAR_FIRST = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})$/;
const COMPACT = /^((?:19|20)\d\d)(\d\d)(\d\d)$/;
const YEAR_LAST = /^(\d{1,2})([-/. ])(\d{1,2})\2(\d{4})$/;
const SHORT_YEAR = /^\d{1,2}([-/. ])\d{1,2}\1\d{2}$/;
const NAMED = /^(?:(\d{1,2})(?:st|nd|rd|th)?[ -]([a-z]{3,9})\.?,?[ -](\d{4})|([a-z]{3,9})\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4}))$/i;
const TIME = /^(\d{4}-\d\d-\d\d)(?:T| +)\d{1,2}:\d\d(?::\d\d(?:\.\d+)?)?(?:Z|[+-]\d\d:?\d\d)?$/;

/**
 * A day in words.
 *
 * @param day `YYYY-MM-DD`
 * @example
 * dayInWords("2026-03-01") // => "1 March 2026"
 */
export function dayInWords(day: string): string {
  const [year = "", month = "", date = ""] = day.split("-");
  return `${Number(date)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

const two = (number: number) => String(number).padStart(2, "0");

/** The day as `YYYY-MM-DD`, or null when the calendar has no such day. */
function day(year: number, month: number, date: number): string | null {
  const at = new Date(Date.UTC(year, month - 1, date));
  return at.getUTCMonth() === month - 1 && at.getUTCDate() === date && at.getUTCFullYear() === year
    ? `${String(year).padStart(4, "0")}-${two(month)}-${two(date)}`
    : null;
}

function monthNamed(word: string): number {
  const start = word.toLowerCase();
  return MONTHS.findIndex((month) => month.toLowerCase() === start || month.slice(0, 3).toLowerCase() === start || (start === "sept" && month === "September")) + 1;
}

/** A day with the year last is read only when its numbers leave one reading. */
function yearLast(text: string, first: number, second: number, year: number): string | null | Wrong {
  if (first <= 12 && second <= 12 && first !== second) {
    const one = day(year, second, first), other = day(year, first, second);
    if (one !== null && other !== null) return new Wrong(`${quoted(text)} could be ${dayInWords(one)} or ${dayInWords(other)}; write ${one} or ${other}`);
  }
  return second > 12 ? day(year, first, second) : day(year, second, first);
}

function read(text: string): string | null | Wrong {
  const iso = YEAR_FIRST.exec(text) ?? COMPACT.exec(text);
  if (iso) return day(Number(iso[1]), Number(iso[iso.length - 2]), Number(iso[iso.length - 1]));
  const last = YEAR_LAST.exec(text);
  if (last) return yearLast(text, Number(last[1]), Number(last[3]), Number(last[4]));
  if (SHORT_YEAR.test(text)) return new Wrong(`${quoted(text)} has a year of two digits; write the date as 2026-03-14`);
  const named = NAMED.exec(text);
  if (named) return day(Number(named[3] ?? named[6]), monthNamed(named[2] ?? named[4] ?? ""), Number(named[1] ?? named[5]));
  return new Wrong(`${quoted(text)} is not a date; write it as 2026-03-14`);
}

/**
 * Reads a day; a time behind it is not kept.
 *
 * @param last_day newest day allowed, `YYYY-MM-DD`
 * @returns `YYYY-MM-DD`
 * @example
 * dateCell("14/03/2026", "2027-01-01") // => "2026-03-14"
 */
export function dateCell(text: string, last_day: string): string | Wrong {
  const found = read(TIME.exec(text)?.[1] ?? text);
  if (found instanceof Wrong) return found;
  if (found === null) return new Wrong(`${quoted(text)} is a day the calendar does not have; look it up and write it as 2026-03-14`);
  if (found < FIRST_DAY) return new Wrong(`${dayInWords(found)} is before 1950; is the year right?`);
  if (found > last_day) return new Wrong(`${dayInWords(found)} is more than a year from now; is the year right?`);
  return found;
}
