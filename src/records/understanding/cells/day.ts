import { Wrong, quoted } from "../../checking/wrong.ts";
import { dateCell, dayInWords } from "../../checking/date-cell.ts";
import type { DateOrder } from "../answers.ts";

/** Two numbers of a date whose order the cell does not say by itself, with its year if there is one. */
export interface NumberedDay {
  readonly first: number;
  readonly second: number;
  readonly year: number | null;
  /** The year had two digits. */
  readonly short_year: boolean;
  readonly dotted: boolean;
}

export interface DayContext {
  readonly order: DateOrder | null;
  /** Year of a date that has none; null when it is not known. */
  readonly year: number | null;
  /** Newest day a date may name, `YYYY-MM-DD`. */
  readonly last_day: string;
}

const TIME = /^(.*\d)(?:T|,?\s+)\d{1,2}[:.]\d\d(?:[:.]\d\d(?:\.\d+)?)?\s*(?:[ap]m)?(?:Z|[+-]\d\d:?\d\d)?$/i;
const WEEKDAY = /^(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*\.?,?\s+/i;
const NUMBERED = /^(\d{1,2})\s?([-/. ])\s?(\d{1,2})(?:\s?[-/. ]\s?(\d{4}|\d{2}))?\.?$/;
const NAMED_SHORT = /^(?:(\d{1,2})(?:st|nd|rd|th)?[-/. ]?\s?([a-z]{3,9})|([a-z]{3,9})\.?[-/ ](\d{1,2})(?:st|nd|rd|th)?)\.?,?(?:[-/ ](\d{2}))?$/i;
const ZERO = /^0{1,4}(?:[-/.]0{1,2}[-/.]0{1,4})?$/;
const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

const bare = (text: string) => (TIME.exec(text)?.[1] ?? text).replace(WEEKDAY, "").trim();
const two = (value: number) => String(value).padStart(2, "0");

/** A year of two digits is the latest that is not after `last_day`. */
function wholeYear(short: number, last_day: string): number {
  const latest = Number(last_day.slice(0, 4)), year = Math.floor(latest / 100) * 100 + short;
  return year > latest ? year - 100 : year;
}

/** True for what databases write where no date is known: `00/00/0000`. */
export const isZeroDay = (text: string): boolean => ZERO.test(text);

/**
 * Two numbers with or without a year behind them; null for anything else (a year in front, a month's name).
 *
 * @example
 * numberedDay("14/4", "2026-12-31") // => { first: 14, second: 4, year: null, short_year: false, dotted: false }
 */
export function numberedDay(text: string, last_day: string): NumberedDay | null {
  const found = NUMBERED.exec(bare(text));
  if (!found) return null;
  const [, first, sign, second, year] = found, short_year = year?.length === 2;
  const whole = year === undefined ? null : short_year ? wholeYear(Number(year), last_day) : Number(year);
  return { first: Number(first), second: Number(second), year: whole, short_year, dotted: sign === "." };
}

/** The order a day proves by a number over 12; null when both numbers could be months. */
export function provedOrder({ first, second }: NumberedDay): DateOrder | null {
  if (first > 12 && second <= 12) return "day first";
  return second > 12 && first <= 12 ? "month first" : null;
}

const iso = (year: number, month: number, day: number) => `${String(year).padStart(4, "0")}-${two(month)}-${two(day)}`;

function ordered(text: string, parts: NumberedDay, { order, year, last_day }: DayContext): string | Wrong {
  const own = parts.year ?? year;
  if (own === null) return new Wrong(`${quoted(text)} has no year; write the date with its year, as 2026-03-14`);
  const which = provedOrder(parts) ?? (parts.first === parts.second ? "day first" : order);
  if (which === null || which === "year first") {
    const one = iso(own, parts.second, parts.first), other = iso(own, parts.first, parts.second);
    return new Wrong(`${quoted(text)} could be ${dayInWords(one)} or ${dayInWords(other)}; say which comes first, day or month`);
  }
  const [day, month] = which === "day first" ? [parts.first, parts.second] : [parts.second, parts.first];
  const read = dateCell(iso(own, month, day), last_day);
  return read instanceof Wrong ? new Wrong(read.reason.replace(/^“[^”]*”/, quoted(text))) : read;
}

/** `12-Nov` or `12 Nov 25`; undefined when it is no such day. */
function named(text: string, { year, last_day }: DayContext): string | Wrong | undefined {
  const found = NAMED_SHORT.exec(text);
  const month = MONTHS.indexOf((found?.[2] ?? found?.[3] ?? "").slice(0, 3).toLowerCase()) + 1;
  if (!found || month === 0) return undefined;
  const own = found[5] === undefined ? year : wholeYear(Number(found[5]), last_day);
  return own === null ? new Wrong(`${quoted(text)} has no year; write the date with its year, as 2026-03-14`) : dateCell(iso(own, month, Number(found[1] ?? found[4])), last_day);
}

/**
 * Reads a day as `YYYY-MM-DD`, with the order and the year that hold for its file.
 *
 * @param text not blank
 * @returns null for a zero date, which says that there is none
 * @example
 * dayOf("5.4.25", { order: "day first", year: null, last_day: "2026-12-31" }) // => "2025-04-05"
 */
export function dayOf(text: string, context: DayContext): string | null | Wrong {
  if (isZeroDay(text)) return null;
  const parts = numberedDay(text, context.last_day);
  if (parts) return ordered(text, parts, context);
  const plain = bare(text);
  return named(plain, context) ?? dateCell(plain, context.last_day);
}
